import type { Project } from "@sheetwright/cards";

/**
 * Rolls or single ones more of an item, with the number that there are then: as the project file says it, `1 more roll of plum ribbon
 * (count: 3)`. Of kits the file may tell those of one bag, so there it is `(3 in all)`.
 */
export function moreItems(
  { items = [], kits }: Pick<Project, "items" | "kits">,
  item: string,
  more: number,
): string {
  const own = items.find(({ name }) => name === item);
  const rolls = own?.length === undefined ? "" : more === 1 ? " roll" : " rolls";
  const all = (own?.count ?? 0) + more;
  return `${more} more${rolls} of ${item} (${kits === undefined ? `count: ${all}` : `${all} in all`})`;
}
