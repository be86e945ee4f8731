import type { PaperGroup } from "../plan-model.js";
import type { ProjectFacts } from "./project-facts.js";

/** Bags that the papers of a group go into whole, by the project; `undefined` where they are cut for all. */
export function bagsOf(
  { designs }: Pick<PaperGroup, "designs">,
  { expansion }: ProjectFacts,
): number | undefined {
  return expansion.papers.find((paper) => paper.designs.some(({ id }) => designs.includes(id)))?.bags;
}

/**
 * What a project says of one bag, where a group is planned bag by bag: an equal share of the copies, and of the sheets as
 * many whole ones as every bag can get. Of any other group the facts as they are.
 */
export function bagFacts(group: Pick<PaperGroup, "designs">, facts: ProjectFacts): ProjectFacts {
  const bags = bagsOf(group, facts);
  if (bags === undefined) return facts;
  return {
    ...facts,
    sheets: new Map(
      [...facts.sheets].map(([id, sheet]) => {
        const { stock } = sheet;
        return [id, { ...sheet, stock: stock === null ? null : (stock - (stock % bags)) / bags }];
      }),
    ),
    pieces: new Map(
      [...facts.pieces].map(([id, piece]) => [id, { ...piece, quantity: piece.quantity / bags }]),
    ),
  };
}
