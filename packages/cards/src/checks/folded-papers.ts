import type { Design, Paper, Project } from "../project.js";

/**
 * The papers that bases of some of a project's cards are folded from.
 *
 * @param which tells which cards count.
 * @internal
 */
export function foldedPapers(
  { papers, cards }: Pick<Project, "papers" | "cards">,
  which: (design: Design) => boolean,
): readonly Paper[] {
  const folded = new Set(
    cards
      .filter((design) => which(design) && design.flats.some(({ scores }) => scores.length > 0))
      .flatMap(({ base }) => base.faces),
  );
  return papers.filter(({ designs }) =>
    designs.some(({ front, back }) => folded.has(front.id) || (back !== null && folded.has(back.id))),
  );
}
