/** In percent with one decimal, rounded to nearest; 0 and 100 only where they are exact. */
export function percentOf(part: bigint, whole: bigint): number {
  if (whole === 0n || part === 0n) return 0;
  if (part === whole) return 100;
  const tenths = Number((part * 2000n + whole) / (2n * whole));
  return Math.min(Math.max(tenths, 1), 999) / 10;
}
