/** Whole numbers from `least` to `most`, both included, all as likely as one another to within 1 in 100,000. */
export type RandomWholeNumber = (least: number, most: number) => number;

/**
 * A stream of whole numbers that depends on the text alone. It is written out here, so that a set of pieces stays the same
 * whatever the next version of a library does, and results of different years can be compared.
 *
 * Sources: FNV-1a (draft-eastlake-fnv) turns the text into a seed; Mulberry32 (T. Ettinger, public domain) goes on from it.
 */
export function randomWholeNumbers(text: string): RandomWholeNumber {
  let state = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text)) state = Math.imul(state ^ byte, 0x01000193);
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (mixed ^ (mixed >>> 14)) >>> 0;
  };
  return (least, most) => least + (next() % (most - least + 1));
}
