import type { Expansion } from "../expansion.js";
import { itemKey } from "../item-name.js";
import type { Project } from "../project.js";
import type { Found } from "./finding.js";

/**
 * Finds items of the bundle that no card uses.
 *
 * @internal
 */
export function findUnusedItems(project: Project, expansion: Expansion): readonly Found[] {
  return unusedItems(project, expansion).map(({ name, path }) => {
    const message = `No card uses ${name}. Leave it out, or name it in a card.`;
    return { code: "unused-item", path, message };
  });
}

/**
 * The items of the bundle that no card uses, in the order of the project.
 *
 * @example
 * const { project } = readProject(`
 * sheetwright: 1
 * title: One card
 * papers: { night: { cardstock: us-letter } }
 * items: { knot: 4, pearl: 12 }
 * cards: [{ name: Plain, format: us-a2, base: night, extras: [{ name: Knot, thickness: 1/8 }] }]
 * `);
 * unusedItems(project, expandProject(project)).map(({ name }) => name) // => ["pearl"]
 */
export function unusedItems(
  { items = [] }: Pick<Project, "items">,
  expansion: Pick<Expansion, "items" | "cards">,
): NonNullable<Project["items"]> {
  const named = [
    ...expansion.items.map(({ name }) => name),
    ...expansion.cards.flatMap(({ extras = [] }) => extras.map(({ name }) => name)),
  ];
  const used = new Set(named.map(itemKey));
  return items.filter(({ name }) => !used.has(itemKey(name)));
}
