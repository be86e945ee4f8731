// Divides a length into shares without losing a tick. Each boundary is computed exactly, as the share of the
// total that lies before it, and then rounded; the parts are what lies between the boundaries. Rounding the
// widths instead would let their errors add up, and thirds of 8 1/2 in would no longer make 8 1/2 in.
//
//     total 8 1/2 in, ratios 1 : 1 : 1, precision 1/16 in
//     exact     0 ---- 2 5/6 ---- 5 2/3 ---- 8 1/2
//     rounded   0 --- 2 13/16 -- 5 11/16 --- 8 1/2     parts 2 13/16, 2 7/8, 2 13/16

import { formatLength } from "./format-length.js";
import { requirePrecision } from "./round-to-precision.js";
import type { Ticks } from "./ticks.js";
import type { Unit } from "./unit.js";

/** A boundary that had to be rounded. */
export interface BoundaryRounding {
  /** Its index in `boundaries`. */
  readonly boundary: number;
  /** Where it is after rounding, in ticks from the start. */
  readonly position: Ticks;
  /**
   * How far it was moved, in ticks, away from the start where positive; at most half the precision. May be a
   * fraction of a tick: it is for telling, not for reckoning.
   */
  readonly by: number;
}

/** A length divided into parts. */
export interface Division {
  /** The parts from the start, in ticks; they add up to the total. */
  readonly parts: readonly Ticks[];
  /** Where the parts meet, in ticks from the start, from 0 to the total: one more than parts. */
  readonly boundaries: readonly Ticks[];
  /** The boundaries that were rounded, in order; empty where all shares fall on the precision. */
  readonly roundings: readonly BoundaryRounding[];
}

/**
 * A length that is too short for its shares. `details` holds the same as plain data.
 *
 * @example
 * divideLength(millimetres(1), [9, 1], CUTTING_PRECISION.mm) // throws DivisionError: Part 2 of 2 vanishes
 */
export class DivisionError extends Error {
  override readonly name = "DivisionError";
  readonly code = "part-vanishes";
  /** Empty: whoever knows where the division stands in a file fills it in on showing the error. */
  readonly path = "";
  readonly details: {
    /** The index of the first part that vanishes. */
    readonly part: number;
    readonly total: Ticks;
    readonly ratios: readonly number[];
    readonly precision: Ticks;
  };

  constructor(details: DivisionError["details"]) {
    super(sayVanishing(details));
    this.details = details;
  }
}

/**
 * Divides a length in the ratios given (positive whole numbers, `[1, 3]` for a quarter and three quarters)
 * and rounds the boundaries, not the widths, to the precision, half up. The ends stay where they are, so the
 * parts always add up to the total, and every boundary is within half the precision of its exact place.
 * Throws a DivisionError where a part would come out narrower than half the precision, and a RangeError
 * where an argument is not a positive whole number.
 *
 * @example
 * const thirds = divideLength(inches(8.5), [1, 1, 1], CUTTING_PRECISION.in);
 * thirds.parts.map((part) => formatLength(part, { unit: "in" })) // => ["2 13/16 in", "2 7/8 in", "2 13/16 in"]
 * thirds.roundings.map(({ boundary }) => boundary) // => [1, 2]
 * divideLength(inches(4), [1, 3], CUTTING_PRECISION.in).roundings // => []
 * divideLength(inches(1 / 16), [1, 1, 1], CUTTING_PRECISION.in) // throws DivisionError: Part 1 of 3 vanishes
 */
export function divideLength(total: Ticks, ratios: readonly number[], precision: Ticks): Division {
  requirePositive(total, "a total length in ticks");
  requirePrecision(precision);
  if (ratios.length === 0) throw new RangeError("Expected at least one ratio, found none.");
  for (const ratio of ratios) requirePositive(ratio, "ratios");

  const shares = ratios.map(BigInt);
  const sum = shares.reduce((all, share) => all + share, 0n);
  const step = BigInt(precision);
  const boundaries: Ticks[] = [0];
  const roundings: BoundaryRounding[] = [];
  let before = 0n;
  for (const share of shares.slice(0, -1)) {
    before += share;
    // The exact boundary is scaled / sum ticks; it stays a ratio of integers until it is rounded.
    const scaled = BigInt(total) * before;
    const rounded = ((2n * scaled + step * sum) / (2n * step * sum)) * step;
    const moved = rounded * sum - scaled;
    const position = Number(rounded);
    if (moved !== 0n) {
      roundings.push({ boundary: boundaries.length, position, by: Number(moved) / Number(sum) });
    }
    boundaries.push(position);
  }
  boundaries.push(total);

  const parts = boundaries.slice(1).map((end, index) => end - (boundaries[index] ?? 0));
  const vanishing = parts.findIndex((part) => 2 * part < precision);
  if (vanishing >= 0) throw new DivisionError({ part: vanishing, total, ratios: [...ratios], precision });
  return { parts, boundaries, roundings };
}

function requirePositive(value: number, what: string): void {
  if (!Number.isSafeInteger(value) || value <= 0) {
    throw new RangeError(`Expected ${what} as positive whole numbers, found ${value}.`);
  }
}

function sayVanishing({ part, total, ratios, precision }: DivisionError["details"]): string {
  // The precision tells the maker's unit: one of 1/64 in is a fraction of an inch, any other is metric.
  const unit: Unit = precision % 635 === 0 ? "in" : "mm";
  const length = formatLength(total, { unit });
  const shown = ratios.length > 8 ? `${ratios.slice(0, 8).join(" : ")} : ...` : ratios.join(" : ");
  return (
    `Part ${part + 1} of ${ratios.length} vanishes when ${length} is divided ${shown} and rounded to ` +
    `${formatLength(precision, { unit })}. Divide a longer length, or use fewer parts or a finer precision.`
  );
}
