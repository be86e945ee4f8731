import { millimetres, type Ticks } from "../ticks.js";

/** How far a dimension of an ISO 216 sheet may be off either way, for dimensions up to a length. */
export interface DimensionTolerance {
  /** The tolerance holds for dimensions longer than this, in ticks. */
  readonly above: Ticks;
  /** The tolerance holds for dimensions up to and including this, in ticks; absent where there is no end. */
  readonly upTo?: Ticks;
  /** In ticks, more or less. */
  readonly tolerance: Ticks;
}

/**
 * The tolerances of ISO 216 sheets: 1.5 mm up to 150 mm, 2 mm up to 600 mm, 3 mm above (ISO 216, as copied in
 * an encyclopaedia). A plan that uses the whole width of a sheet needs a trim that squares it up first.
 */
export const ISO_216_TOLERANCES: readonly DimensionTolerance[] = [
  { above: 0, upTo: millimetres(150), tolerance: millimetres(1.5) },
  { above: millimetres(150), upTo: millimetres(600), tolerance: millimetres(2) },
  { above: millimetres(600), tolerance: millimetres(3) },
];

/**
 * Gives how far a dimension of an ISO 216 sheet may be off either way, in ticks (ISO 216). Throws a
 * RangeError where the dimension is not a positive whole number of ticks.
 *
 * @example
 * iso216Tolerance(millimetres(210)) === millimetres(2) // => true
 */
export function iso216Tolerance(dimension: Ticks): Ticks {
  const row = ISO_216_TOLERANCES.find(
    ({ above, upTo }) => dimension > above && (upTo === undefined || dimension <= upTo),
  );
  if (row === undefined || !Number.isSafeInteger(dimension)) {
    throw new RangeError(`Expected a dimension above 0 in whole ticks, found ${dimension}.`);
  }
  return row.tolerance;
}
