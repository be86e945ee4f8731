import { itemKey, type Project } from "@sheetwright/cards";
import { formatLength, type Ticks, type Unit } from "@sheetwright/measure";
import type { ItemUse, Plan } from "@sheetwright/planner";
import { counted } from "./counted.js";
import { listed } from "./listed.js";
import { rollLength } from "./roll-length.js";

/** Whether more of an item is needed than there is. */
export function isItemShort({ onHand, needed }: Pick<ItemUse, "onHand" | "needed">): boolean {
  return onHand !== null && needed > onHand;
}

/** What a plan says of the item that cards call by a name; `undefined` where the project does not name it. */
export function itemUseOf(name: string, { itemUse = [] }: Pick<Plan, "itemUse">): ItemUse | undefined {
  return itemUse.find(({ item }) => itemKey(item) === itemKey(name));
}

/** How long one roll of an item is; `null` for what is counted singly. */
export function rollOf(item: string, { items = [] }: Pick<Project, "items">): Ticks | null {
  return items.find(({ name }) => name === item)?.length ?? null;
}

/** How the rolls of an item are cut, a line for those that are cut alike: `cut 2 rolls of 3 yd into 4 of 9 in and 2 of 6 in each`. */
export function rollCutsInWords({ cuts = [] }: ItemUse, roll: Ticks, unit: Unit): readonly string[] {
  return cuts.map(({ rolls, lengths }) => {
    const into = listed(lengths.map(({ length, count }) => `${count} of ${formatLength(length, { unit })}`));
    return `cut ${counted(rolls, "roll")} of ${rollLength(roll, unit)} into ${into}${rolls === 1 ? "" : " each"}`;
  });
}
