/**
 * A small reproducible stream of random numbers: sfc32 (Doty-Humphrey, PractRand, 2010), 128 bits of state, period
 * about 2^127 on average. Only 32-bit integer operations, so every engine yields the same stream.
 */
export interface RandomStream {
  /** A whole number from 0 to limit - 1; limit is at most 2^32. */
  readonly below: (limit: number) => number;
  /** A multiple of 2^-32 from 0 up to, not including, 1. */
  readonly unit: () => number;
}

/** Starts the stream of one search start: streams of different seeds or starts have nothing to do with each other. */
export function randomStream(seed: number, start: number): RandomStream {
  let a = seed >>> 0;
  let b = Math.floor(seed / 4294967296) >>> 0;
  let c = start >>> 0;
  let counter = 1;
  const next = (): number => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    return sum >>> 0;
  };
  // Seeds that differ in one bit need about a dozen rounds until their streams look unrelated.
  for (let round = 0; round < 16; round++) next();
  return {
    below: (limit) => Math.floor((next() / 4294967296) * limit),
    unit: () => next() / 4294967296,
  };
}
