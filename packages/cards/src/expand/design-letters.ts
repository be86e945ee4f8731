/**
 * The letters of the piece at an index of its design: a to z, then aa, ab and so on. Throws a RangeError where the index
 * is not a whole number from 0.
 *
 * @internal
 */
export function designLetters(index: number): string {
  if (!Number.isSafeInteger(index) || index < 0) throw new RangeError(`Expected an index, found ${index}.`);
  let letters = "";
  // Each digit counts from 1: there is no letter for nothing, so that after z comes aa and not ba.
  for (let rest = index + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(97 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}
