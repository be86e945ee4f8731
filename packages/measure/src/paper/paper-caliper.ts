// How thick paper is where its label does not say. Paper of one sort has much the same density whatever its weight, so
// thickness is weight times bulk; bulk (cm3/g) is thickness in micrometres by g/m2.

import { TICKS_PER_MM, type Ticks } from "../ticks.js";

/** Sorts of paper that differ in bulk. */
export type PaperSort = "uncoated" | "coated" | "glitter" | "vellum";

/**
 * Bulk by sort, in thousandths of cm3/g. `uncoated` is what charts of the trade give for 65 to 130 lb cover (0.0090 in at
 * 176 g/m2 up to 0.0180 in at 352 g/m2) and, within a tenth, for bond and text. `coated` is the planning figure of 200
 * and 350 g/m2 in caliper charts of the paper trade. Glitter paper, whose rough face adds height, and translucent vellum
 * are from memory.
 */
const BULK: Readonly<Record<PaperSort, number>> = {
  uncoated: 1300,
  coated: 1010,
  glitter: 1500,
  vellum: 910,
};

/**
 * Estimates the thickness of a paper of so many g/m2, to the tick. An estimate: sheets of one weight differ by a tenth.
 * Throws a RangeError where the weight is no number above 0.
 *
 * @example
 * const ticks = estimateCaliper(216);
 * Math.round((ticks / 40640) * 1000) / 1000 // => 0.011
 * estimateCaliper(Number.NaN) // throws RangeError: above 0
 */
export function estimateCaliper(grammage: number, sort: PaperSort = "uncoated"): Ticks {
  if (!Number.isFinite(grammage) || grammage <= 0)
    throw new RangeError(`grammage: expected a number above 0, found ${grammage}.`);
  return Math.max(1, Math.round((grammage * BULK[sort] * TICKS_PER_MM) / 1_000_000));
}
