import { grammageOf } from "@sheetwright/measure";
import { envelopeGrammage } from "../envelope/envelope-mass.js";
import type { Expansion } from "../expansion.js";
import type { PaperWeight, Project } from "../project.js";
import { type PaperMeasures, paperMeasures } from "../weight/paper-measures.js";
import type { Found } from "./finding.js";

/**
 * Finds labels in pounds without a grade, of papers that some card uses and of envelopes.
 *
 * @internal
 */
export function findOddWeights({ papers, cards }: Project, { pieces }: Expansion): readonly Found[] {
  const used = new Set(pieces.flatMap(({ faces }) => faces));
  const inUse = papers.filter(({ designs }) =>
    designs.some(({ front, back }) => used.has(front.id) || (back !== null && used.has(back.id))),
  );
  return [
    ...inUse.flatMap((paper) =>
      oddWeight(paper.weight, paperMeasures(paper).grammage, `papers.${paper.id}.weight`, paper.name),
    ),
    ...cards.flatMap(({ envelope, path, name }) => {
      const weight = envelope?.weight ?? null;
      const what = `the envelope of ${name}`;
      return oddWeight(weight, envelopeGrammage(weight), `${path}.envelope.weight`, what);
    }),
  ];
}

function oddWeight(
  weight: PaperWeight | null,
  { value, readAs, orElse }: PaperMeasures["grammage"],
  path: string,
  what: string,
): readonly Found[] {
  if (weight?.unit !== "lb" || readAs === null) return [];
  const { pounds } = weight;
  const reckoned = `${readAs} weight, ${Math.round(value)} g/m2`;
  if (orElse === null) {
    const message =
      `The weight of ${what}, ${pounds} lb, has no grade behind it and is read as ${reckoned}. ` +
      `Write ${pounds} lb ${readAs}, or the grade that the label says.`;
    return [{ code: "weight-assumed", path, message }];
  }
  const other = Math.round(grammageOf(pounds, orElse));
  const message =
    `Is the weight of ${what}, ${pounds} lb, ${readAs} (${Math.round(value)} g/m2) or ${orElse} (${other} g/m2)? ` +
    `Both are sold. Until the grade is known it is reckoned as ${readAs}, the heavier one. ` +
    `Write ${pounds} lb ${readAs} or ${pounds} lb ${orElse}.`;
  return [{ code: "weight-ambiguous", path, message }];
}
