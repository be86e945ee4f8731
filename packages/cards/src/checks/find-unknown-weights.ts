import { choicesOf } from "../expand/card-choices.js";
import { matchingPapers } from "../fit/matching-papers.js";
import type { Paper, Project } from "../project.js";
import type { Found } from "./finding.js";

/**
 * Finds papers that would do where any paper of some weight is asked for, if only their weight was known.
 *
 * @internal
 */
export function findUnknownWeights({ papers, cards }: Project): readonly Found[] {
  const places = new Map<Paper, string[]>();
  for (const { choice, path } of cards.flatMap(choicesOf)) {
    const left = (choice.any ?? []).flatMap((any) => matchingPapers(any, papers).unweighed);
    for (const paper of new Set(left)) {
      const own = `${choice.text} (${path})`;
      places.set(paper, [...(places.get(paper) ?? []), own]);
    }
  }
  return papers.flatMap((paper): readonly Found[] => {
    const [first, ...others] = places.get(paper) ?? [];
    if (first === undefined) return [];
    const more =
      others.length === 0 ? "" : `, nor in ${others.length} other place${others.length === 1 ? "" : "s"}`;
    const message =
      `The weight of ${paper.name} is not known, so it is not taken for ${first}${more}. ` +
      `Write what its label says at papers.${paper.id}.weight, such as weight: 80 lb cover.`;
    return [{ code: "weight-unknown", path: `papers.${paper.id}`, message }];
  });
}
