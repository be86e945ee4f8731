import { inches, type Ticks } from "@sheetwright/measure";
import { indexFaces } from "../expand/face-index.js";
import { foldVerdict } from "../fold/fold-verdict.js";
import { patternTurns } from "../fold/turns.js";
import type { Design, Paper, Project } from "../project.js";
import { sayThickness } from "../thickness/say-thickness.js";
import { paperMeasures } from "../weight/paper-measures.js";
import type { Found } from "./finding.js";
import { foldedPapers } from "./folded-papers.js";

/** From this weight on paper is creased before it is folded (paper-merchant pages and bookbinding handbooks). */
const CREASED_FROM = 150;
/** From this thickness on paper is scored (print-finishing folding guides; paper-merchant pages and bookbinding handbooks). */
const SCORED_FROM: Ticks = inches(0.006);

/**
 * Finds folds that ask for a score: of paper whose label says that it is heavy or thick, and of bases that can only be cut
 * with their folds across the grain, since the pattern forbids the quarter turn. Where a base may be turned, how its folds
 * lie is for the plan to say.
 *
 * @internal
 */
export function findOddFolds(project: Project): readonly Found[] {
  return [...heavyFolds(project), ...foldsAcross(project)];
}

function heavyFolds(project: Project): readonly Found[] {
  return foldedPapers(project, () => true).flatMap((paper): readonly Found[] => {
    const heavy = sayHeavy(paper, project);
    if (heavy === null) return [];
    const message = `The folds of ${paper.name}, which ${heavy}, may crack. Score each before you fold it, on the side that the cut list names.`;
    return [{ code: "score-first", path: `papers.${paper.id}`, message }];
  });
}

/** How heavy or thick a paper is, where its label says enough of it; `null` where it says less, or nothing. */
function sayHeavy(paper: Paper, { units }: Project): string | null {
  const { grammage } = paperMeasures(paper);
  if (paper.weight !== null && grammage.value >= CREASED_FROM)
    return `weighs ${Math.round(grammage.value)} g/m2`;
  if (paper.thickness === null || paper.thickness < SCORED_FROM) return null;
  return `is ${sayThickness(paper.thickness, units)} thick`;
}

function foldsAcross(project: Project): readonly Found[] {
  const faces = indexFaces(project);
  return project.cards.flatMap((design): readonly Found[] => {
    const from = design.base.faces.flatMap((id) => faces.get(id) ?? []);
    const all = design.foldGrain !== "ignore" && from.length > 0;
    const isAcross = from.every(
      ({ face, paper }) =>
        patternTurns(face.pattern) === "upright" &&
        design.flats.every(({ scores }) =>
          scores.some((score) => foldVerdict(score, false, paper.grain) === "across"),
        ),
    );
    const [first] = from;
    if (!all || !isAcross || first === undefined) return [];
    const { face, paper } = first;
    const basis = paper.grainBasis === "assumed" ? " (assumed)" : "";
    const message =
      `Every fold of ${design.name} lies across the grain${basis}: the pattern of ${face.name} (${face.pattern}) forbids the ` +
      `quarter turn that would bring it along. Score it before you fold it, and fold it slowly${sayOther(design)}, or take a ` +
      "paper without a pattern.";
    return [{ code: "fold-across-grain", path: design.path, message }];
  });
}

/** A card with a side fold has a top fold as well, and the other way round. */
function sayOther({ flats }: Design): string {
  const [flat, other] = flats;
  if (flat === undefined || other !== undefined || (flat.fold !== "side" && flat.fold !== "top")) return "";
  return `; or fold it at the ${flat.fold === "side" ? "top" : "side"}`;
}
