import type { Ticks } from "./ticks.js";

/**
 * Rounds a length to the nearest multiple of a precision, half up, both in ticks. Is never off by more than
 * half the precision. Throws a RangeError where the ticks are not an integer or the precision is not a
 * positive one.
 *
 * @example
 * roundToPrecision(inches(4.3), CUTTING_PRECISION.in) === inches(4 + 5 / 16) // => true
 * roundToPrecision(millimetres(99.2), CUTTING_PRECISION.mm) === millimetres(99) // => true
 */
export function roundToPrecision(ticks: Ticks, precision: Ticks): Ticks {
  if (!Number.isSafeInteger(ticks)) throw new RangeError(`Expected whole ticks, found ${ticks}.`);
  requirePrecision(precision);
  const remainder = ticks % precision;
  const above = remainder < 0 ? remainder + precision : remainder;
  // Adding zero turns the -0 that a small negative length rounds to into 0.
  return ticks - above + (2 * above >= precision ? precision : 0) + 0;
}

/**
 * Throws a RangeError unless the precision is a positive whole number of ticks.
 *
 * @internal
 */
export function requirePrecision(precision: Ticks): void {
  if (!Number.isSafeInteger(precision) || precision <= 0) {
    throw new RangeError(`Expected a precision of at least 1 whole tick, found ${precision}.`);
  }
}
