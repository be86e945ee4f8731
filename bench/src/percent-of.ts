/**
 * A share in percent with one decimal, halves rounded up. Counted in whole numbers, so that every machine prints the same
 * and sums of areas may pass 2^53. Throws a RangeError where the whole is not positive.
 *
 * @example
 * percentOf(2n, 3n) // => 66.7
 */
export function percentOf(part: bigint, whole: bigint): number {
  if (whole <= 0n) throw new RangeError(`Expected a positive whole, found ${whole}.`);
  return Number((part * 2000n + whole) / (2n * whole)) / 10;
}
