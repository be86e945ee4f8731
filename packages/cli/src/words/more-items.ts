import type { ItemSummary } from "../project-plan/project-plan-summary.js";

/**
 * Rolls or single ones more of an item, with the number that there are then: as the project file says it, `1 more roll of plum ribbon
 * (count: 3)`. Of kits the file may tell those of one bag, so there it is `(3 in all)`.
 */
export function moreItems(
  { item, roll, onHand }: Pick<ItemSummary, "item" | "roll" | "onHand">,
  more: number,
  isInBags: boolean,
): string {
  const rolls = roll === null ? "" : more === 1 ? " roll" : " rolls";
  const all = (onHand ?? 0) + more;
  return `${more} more${rolls} of ${item} (${isInBags ? `${all} in all` : `count: ${all}`})`;
}
