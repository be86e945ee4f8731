const QUARTER_INCH = 6.35;

/** The next whole number of quarter inches: a length of a page that no browser rounds when it prints. */
export function wholeQuarters(length: number): number {
  // A length that is one already may be a hair over it.
  return Math.ceil(length / QUARTER_INCH - 1e-9) * QUARTER_INCH;
}
