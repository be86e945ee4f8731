/** The greatest common divisor of two whole numbers from 0; that of 0 and another one is the other one (Euclid, Elements VII). */
export function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}
