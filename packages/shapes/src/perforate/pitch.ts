import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from "@sheetwright/measure";

/** How close holes or teeth lie: by teeth per inch, or by the stamp gauge (holes per 2 cm). */
export type PerforationPitch = TeethPerInch | StampGauge;

/** As perforating rules are named in print shops: how many teeth, each with its gap, make up an inch. */
export interface TeethPerInch {
  readonly teethPerInch: number;
}

/** As the perforations of stamps are measured: how many holes lie within 2 cm. */
export interface StampGauge {
  readonly gauge: number;
}

/** Finer than any in use: 0.2 mm. The finest laser forms have 72 teeth per inch, 0.353 mm. */
const FINEST: Ticks = TICKS_PER_MM / 5;

/** 1 m. */
const COARSEST: Ticks = 1000 * TICKS_PER_MM;

/**
 * How far it is from one hole or tooth to the next, in ticks with fractions.
 *
 * Throws a RangeError for a number that is not positive, or that gives less than 0.2 mm or more than 1 m.
 *
 * @example
 * pitchOf({ gauge: 10 }) // => 3200
 * pitchOf({ teethPerInch: 8 }) // => 5080
 * pitchOf({ teethPerInch: 0 }) // throws RangeError
 */
export function pitchOf(wish: PerforationPitch): number {
  const isByInch = "teethPerInch" in wish;
  const value = isByInch ? wish.teethPerInch : wish.gauge;
  const length = isByInch ? TICKS_PER_INCH : 20 * TICKS_PER_MM;
  const pitch = length / value;
  if (!(value > 0 && pitch >= FINEST && pitch <= COARSEST)) {
    const what = isByInch ? "teeth per inch" : "holes per 2 cm";
    throw new RangeError(
      `Expected a number of ${what} up to ${Math.floor(length / FINEST)}, found ${String(value)}. 72 teeth per inch, or about 56 holes per 2 cm, are the finest in use.`,
    );
  }
  return pitch;
}
