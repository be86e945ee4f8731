import type { Card } from "@sheetwright/cards";
import type { Effort } from "@sheetwright/packing";
import { mostSpares, type Spares } from "../search/find-spares.js";
import type { Search } from "../search/group-search.js";
import { areEnough, type Copies, type ItemTake } from "./item-takes.js";

/**
 * The spares of those that are wished for that items on hand are enough for, beside all copies that are asked for; none where
 * they are not enough for these. What more spares take is never less, so whatever the papers give of them has its items.
 */
export function* sparesWithItems(
  takes: readonly ItemTake[],
  cards: readonly Card[],
  wished: Spares,
  effort: Effort,
): Search<Spares> {
  if (wished.size === 0) return wished;
  if (!areEnough(takes, withSpares(cards, new Map()))) return new Map();
  return yield* mostSpares(wished, (spares) => answer(areEnough(takes, withSpares(cards, spares))), effort);
}

/** The copies of cards with some spares. */
export function withSpares(cards: readonly Card[], spares: Spares): Copies {
  return new Map(cards.map(({ number, copies }) => [number, copies + (spares.get(number) ?? 0)]));
}

/** An answer that needs no packing, where a search is asked for. */
export function* answer<Found>(found: Found): Search<Found> {
  yield* [];
  return found;
}
