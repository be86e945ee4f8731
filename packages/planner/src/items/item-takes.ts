import { type BundleItem, type Card, type Expansion, itemKey, type Project } from "@sheetwright/cards";
import type { Ticks } from "@sheetwright/measure";
import { cutRolls, type LengthCount, type RollCut, rollsOf, trimCuts } from "./cut-rolls.js";

/** Numbers of copies by the number of the card; a card without is absent. */
export type Copies = ReadonlyMap<Card["number"], number>;

/** What one copy of each card takes of an item of the bundle. */
export interface ItemTake {
  readonly item: BundleItem;
  /** Lengths of a ribbon or a tape, each one in a copy of its card. */
  readonly lengths: readonly { readonly card: Card["number"]; readonly length: Ticks }[];
  /** How many a copy of a card has of what is counted singly. */
  readonly singles: readonly { readonly card: Card["number"]; readonly count: number }[];
}

/** What is needed of an item for some copies. */
export interface Needed {
  /** Rolls, or single ones, of all bags. */
  readonly needed: number;
  /** No way takes fewer; proven. */
  readonly atLeast: number;
  /** How rolls are cut, of one bag where they go out whole; `null` for what is counted singly. */
  readonly cuts: readonly RollCut[] | null;
}

/** What the cards of a project take of the items that it says something of, in its order. */
export function itemTakes({ items = [] }: Project, expansion: Expansion): readonly ItemTake[] {
  return items.map((item) => {
    const isIts = ({ name }: { readonly name: string }): boolean => itemKey(name) === itemKey(item.name);
    return {
      item,
      lengths: expansion.items.filter(isIts).map(({ card, length }) => ({ card, length })),
      singles: expansion.cards.flatMap(({ number: card, extras = [] }) =>
        extras.filter(isIts).map(({ count }) => ({ card, count })),
      ),
    };
  });
}

/**
 * What so many copies take of an item, where more copies were found to take no more than there is: a search that asks for less
 * may take more.
 */
export function neededWithin(take: ItemTake, copies: Copies, more: Copies): Needed {
  const own = neededFor(take, copies);
  const { count, length, bags = 1 } = take.item;
  if (length === undefined || count === null || own.needed <= count) return own;
  const { cuts, needed } = neededFor(take, more);
  if (cuts === null || needed > count) return own;
  const trimmed = trimCuts(cuts, lengthsFor(take, copies));
  return { ...own, needed: rollsOf(trimmed) * bags, cuts: trimmed };
}

/**
 * What so many copies take of an item. Where rolls go out whole every bag gets what one of them needs, so that copies that do
 * not divide among the bags count as if they did.
 */
export function neededFor(take: ItemTake, copies: Copies): Needed {
  const { item, singles } = take;
  const of = (card: Card["number"]): number => copies.get(card) ?? 0;
  if (item.length === undefined) {
    const needed = singles.reduce((sum, { card, count }) => sum + count * of(card), 0);
    return { needed, atLeast: needed, cuts: null };
  }
  const { cuts, rolls, atLeast } = cutRolls(lengthsFor(take, copies), item.length);
  const bags = item.bags ?? 1;
  return { needed: rolls * bags, atLeast: atLeast * bags, cuts };
}

/** The lengths for so many copies, of one bag where rolls go out whole. */
function lengthsFor({ item: { bags = 1 }, lengths }: ItemTake, copies: Copies): readonly LengthCount[] {
  const counts = new Map<Ticks, number>();
  for (const { card, length } of lengths)
    counts.set(length, (counts.get(length) ?? 0) + Math.ceil((copies.get(card) ?? 0) / bags));
  return [...counts].map(([length, count]) => ({ length, count }));
}

/** Items of which there is too little for so many copies, as far as is found, and whether that is proven of some. */
export function lackingFor(
  takes: readonly ItemTake[],
  copies: Copies,
): readonly { readonly item: string; readonly proven: boolean }[] {
  return takes.flatMap((take) => {
    const { name, count } = take.item;
    const { needed, atLeast } = neededFor(take, copies);
    return count === null || needed <= count ? [] : [{ item: name, proven: atLeast > count }];
  });
}

/** Whether what is on hand of all these items is found to be enough for so many copies. */
export function areEnough(takes: readonly ItemTake[], copies: Copies): boolean {
  return takes.every((take) => !isTooLong(take, copies)) && lackingFor(takes, copies).length === 0;
}

/** Whether lengths come to more than all rolls, which shows at once that these are too few. */
function isTooLong(take: ItemTake, copies: Copies): boolean {
  const { count, length: roll, bags = 1 } = take.item;
  if (count === null || roll === undefined) return false;
  const inAll = lengthsFor(take, copies).reduce((sum, one) => sum + one.length * one.count, 0);
  return inAll * bags > count * roll;
}

/** Cards that take something of an item. */
export function cardsOf({ lengths, singles }: ItemTake): ReadonlySet<Card["number"]> {
  return new Set([...lengths, ...singles].map(({ card }) => card));
}
