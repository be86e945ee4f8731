/**
 * What a plan takes of ribbons, tapes and extras on hand, and which copies they are enough for.
 *
 * Where an item is not enough for all copies, those that the papers complete share it by the rule by which papers that are
 * short are shared ({@link mostByRule}); so a copy counts as complete only where it has its pieces and its items. With kits
 * a copy for every bag comes first. What is said of an item that is enough holds for all copies that are asked for.
 */

import type { Card } from "@sheetwright/cards";
import type { ItemUse, Plan } from "../plan-model.js";
import type { Spares } from "../search/find-spares.js";
import type { Search } from "../search/group-search.js";
import { mostByRule } from "../sets/share-short-papers.js";
import {
  areEnough,
  type Copies,
  cardsOf,
  type ItemTake,
  type Needed,
  neededFor,
  neededWithin,
} from "./item-takes.js";
import { answer, withSpares } from "./spares-with-items.js";

/** What becomes of the items of a plan. */
export interface UsedItems {
  readonly itemUse: readonly ItemUse[];
  /** What the papers complete, without copies that an item is missing for. */
  readonly complete: Plan["complete"];
}

/**
 * Deals the items on hand out to the copies of a plan.
 *
 * @param complete what its papers complete.
 * @param spares those that are made.
 * @param wished those that items were found to be enough for: of each card as many, or more.
 * @param bags how many bags all hold the same; 1 in a class.
 */
export function* useItems(
  takes: readonly ItemTake[],
  cards: readonly Card[],
  complete: Plan["complete"],
  spares: Spares,
  wished: Spares,
  bags: number,
): Search<UsedItems> {
  const [asked, most] = [withSpares(cards, spares), withSpares(cards, wished)];
  const all = takes.map((take) => ({ take, ...neededWithin(take, asked, most) }));
  const short = all.filter(({ take, needed }) => isShort(take, needed)).map(({ take }) => take);
  const given = yield* copiesGiven(short, complete, bags);
  return {
    itemUse: all.map(({ take, ...needed }) => useOf(take, needed, given)),
    complete: complete.map((one) => ({ ...one, complete: given.get(one.card) ?? one.complete })),
  };
}

/** Copies of the cards that need an item that is short: as many as all such items give, and the papers complete. */
function* copiesGiven(short: readonly ItemTake[], complete: Plan["complete"], bags: number): Search<Copies> {
  const needed = new Set(short.flatMap((take) => [...cardsOf(take)]));
  const cards = complete.filter(({ card }) => needed.has(card));
  let copies: Copies = new Map(cards.map(({ card }) => [card, 0]));
  // Copies that are already dealt out stay, so that the second round goes on from the first.
  for (const step of new Set([bags, 1])) {
    const wanted = new Map(
      cards
        .map((one): [number, number] => [one.card, one.complete - (one.complete % step)])
        .filter(([, count]) => count > 0),
    );
    const gives = (some: Copies): Search<boolean> => answer(areEnough(short, some));
    copies = new Map([...copies, ...(yield* mostByRule(wanted, copies, step, gives))]);
  }
  return copies;
}

function isShort({ item }: ItemTake, needed: number): boolean {
  return item.count !== null && needed > item.count;
}

function useOf(take: ItemTake, { needed, atLeast, cuts }: Needed, given: Copies): ItemUse {
  const { item } = take;
  const head = { item: item.name, onHand: item.count, needed, atLeast };
  const bags = item.bags === undefined ? {} : { bags: item.bags };
  if (!isShort(take, needed)) return { ...head, used: needed, ...bags, ...(cuts === null ? {} : { cuts }) };
  const own = neededFor(take, given);
  return {
    ...head,
    used: own.needed,
    ...bags,
    ...(own.cuts === null || cuts === null ? {} : { cuts: own.cuts, withMore: cuts }),
  };
}
