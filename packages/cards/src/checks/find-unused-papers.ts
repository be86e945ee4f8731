import type { Expansion } from "../expansion.js";
import type { Project } from "../project.js";
import type { Found } from "./finding.js";

/**
 * Finds papers, and designs of pads, that no card uses.
 *
 * @internal
 */
export function findUnusedPapers({ papers }: Project, { pieces }: Expansion): readonly Found[] {
  const used = new Set(pieces.flatMap(({ faces }) => faces));
  return papers.flatMap((paper): readonly Found[] => {
    const idle = paper.designs.filter(
      ({ front, back }) => !used.has(front.id) && !used.has(back?.id ?? front.id),
    );
    if (idle.length === 0) return [];
    if (idle.length === paper.designs.length) {
      const message = `No card uses ${paper.name}. Leave it out, or name it in a card.`;
      return [{ code: "unused-paper", path: `papers.${paper.id}`, message }];
    }
    return idle.map(({ id, name }) => ({
      code: "unused-paper",
      path: `papers.${paper.id}.designs.${id.slice(paper.id.length + 1)}`,
      message: `No card uses the design ${name} of ${paper.name}. Name it in a card, or keep it for another time.`,
    }));
  });
}
