import type { Paper } from "@sheetwright/cards";
import { designNames } from "../project-plan/design-names.js";

/**
 * Sheets more of a design, with the number that there are then: as the project file says it, `(count: 22)`. Of a paper that goes into
 * bags the file tells those of one bag, so there it is `(22 in all)`.
 */
export function moreSheets(papers: readonly Paper[], design: string, more: number): string {
  const paper = papers.find(({ designs }) => designs.some(({ id }) => id === design));
  const count = paper?.designs.find(({ id }) => id === design)?.count ?? null;
  const name = designNames(papers).get(design) ?? design;
  if (count === null) return `${more} more of ${name}`;
  const total = paper?.bags === undefined ? `count: ${count + more}` : `${count + more} in all`;
  return `${more} more of ${name} (${total})`;
}
