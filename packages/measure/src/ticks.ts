/**
 * A length as a whole number of ticks: 1 tick = 1/1600 mm = 1/40640 in.
 *
 * The inch is exactly 25.4 mm (international yard and pound agreement, 1959), so 1/64 in (635 ticks) and
 * 0.01 mm (16 ticks) both lie on this grid, and lengths of both kinds add up without rounding.
 */
export type Ticks = number;

/** Ticks in a millimetre. */
export const TICKS_PER_MM = 1600;

/** Ticks in an inch: 25.4 mm exactly (international yard and pound agreement, 1959). */
export const TICKS_PER_INCH = 40640;

/**
 * The longest length, 10 m, in ticks. Longer than any sheet or roll on a maker's table, and short enough
 * that the area of a rectangle (at most 2.56e14 square ticks) stays an exact number.
 */
export const LONGEST_LENGTH: Ticks = 10_000 * TICKS_PER_MM;

/**
 * Turns inches into the nearest tick; every multiple of 1/64 in comes out exact. Negative values are
 * offsets. Throws a RangeError for a value that is not finite or is more than 10 m either way.
 *
 * @example
 * inches(8.5) // => 345440
 * inches(1 / 64) // => 635
 * inches(Infinity) // throws RangeError
 */
export function inches(value: number): Ticks {
  return nearestTick(value, TICKS_PER_INCH, "inches");
}

/**
 * Turns millimetres into the nearest tick; every multiple of 0.01 mm comes out exact. Negative values are
 * offsets. Throws a RangeError for a value that is not finite or is more than 10 m either way.
 *
 * @example
 * millimetres(210) // => 336000
 * millimetres(0.01) // => 16
 */
export function millimetres(value: number): Ticks {
  return nearestTick(value, TICKS_PER_MM, "millimetres");
}

/**
 * Turns centimetres into the nearest tick; every multiple of 0.001 cm comes out exact. Negative values are
 * offsets. Throws a RangeError for a value that is not finite or is more than 10 m either way.
 *
 * @example
 * centimetres(21.6) === millimetres(216) // => true
 */
export function centimetres(value: number): Ticks {
  return nearestTick(value, 10 * TICKS_PER_MM, "centimetres");
}

function nearestTick(value: number, ticksPerUnit: number, unit: string): Ticks {
  if (typeof value !== "number" || !Number.isFinite(value)) {
    throw new RangeError(`Expected a finite number of ${unit}, found ${String(value)}.`);
  }
  // Adding zero turns the -0 that rounds from a small negative value into 0.
  const ticks = Math.round(value * ticksPerUnit) + 0;
  if (Math.abs(ticks) > LONGEST_LENGTH) {
    throw new RangeError(`Expected at most 10 m, found ${value} ${unit}.`);
  }
  return ticks;
}
