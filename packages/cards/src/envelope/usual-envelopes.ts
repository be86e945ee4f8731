import { cardSizes, type EnvelopeSize, findNamedSize, type Size } from "@sheetwright/measure";

/**
 * The envelopes that a card usually goes in, the most usual first: those of its format, else of the card formats of its
 * size, however it stands. None where the trade has none for it.
 *
 * @example
 * const inch = 40640;
 * usualEnvelopes("us-a2", { width: 4.25 * inch, height: 5.5 * inch }).map(({ id }) => id) // => ["env-us-a2"]
 * usualEnvelopes(null, { width: 7 * inch, height: 5 * inch }).map(({ id }) => id) // => ["env-us-a7"]
 * usualEnvelopes(null, { width: 2 * inch, height: 5 * inch }) // => []
 */
export function usualEnvelopes(format: string | null, closed: Size): readonly EnvelopeSize[] {
  const [short, long] = [Math.min(closed.width, closed.height), Math.max(closed.width, closed.height)];
  const own = cardSizes.filter(({ id }) => id === format);
  const alike =
    own.length > 0 ? own : cardSizes.filter(({ width, height }) => width === short && height === long);
  const ids = new Set(alike.flatMap(({ envelopes }) => envelopes));
  return [...ids].flatMap((id) => findNamedSize(id, "envelope") ?? []);
}
