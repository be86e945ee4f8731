import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from "./ticks.js";

/** A unit that lengths are printed in, and that a bare number is read in: inches or millimetres. */
export type Unit = "in" | "mm";

/**
 * The usual precision of cutting by hand, in ticks: 1/16 in, the finest marks of most trimmers, or 0.5 mm
 * (common practice). It also is the default that derived divisions are rounded to.
 *
 * @example
 * CUTTING_PRECISION.in === inches(1 / 16) // => true
 * CUTTING_PRECISION.mm === millimetres(0.5) // => true
 */
export const CUTTING_PRECISION: Readonly<Record<Unit, Ticks>> = {
  in: TICKS_PER_INCH / 16,
  mm: TICKS_PER_MM / 2,
};

/**
 * Throws a TypeError unless the value is a unit; for callers without types. Knows `in` and `mm`.
 *
 * @internal
 */
export function requireUnit(unit: unknown): asserts unit is Unit {
  if (unit !== "in" && unit !== "mm") {
    throw new TypeError(`Expected the unit "in" or "mm", found ${JSON.stringify(unit) ?? String(unit)}.`);
  }
}
