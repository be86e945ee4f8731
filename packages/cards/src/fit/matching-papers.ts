import type { AnyPaper, Paper, PaperDesign, PaperWeight } from "../project.js";
import { labelledGrammage, usualGrade } from "../weight/paper-measures.js";

/** The papers that a choice of any paper means. */
export interface MatchingPapers {
  /** Ids of the faces that match, in the order of the project; never a printed back. */
  readonly faces: readonly string[];
  /** Papers that match but for their weight, which is not known; they are left out. */
  readonly unweighed: readonly Paper[];
  /** Papers that match but for their weight, which is less, and how much it is and should be, in g/m2. */
  readonly lighter: readonly { readonly paper: Paper; readonly weighs: number; readonly wanted: number }[];
}

/**
 * Finds the papers of a project that a choice such as `any plain cardstock of at least 65 lb cover` means. Weights are
 * compared in whole g/m2, as labels and tables give them, so that 176 gsm is 65 lb cover (175.8 g/m2). Pounds without a
 * grade, of a label or of the choice, are read in the grade that is usual for the paper that is looked at.
 *
 * @internal
 */
export function matchingPapers(any: AnyPaper, papers: readonly Paper[]): MatchingPapers {
  const faces: string[] = [];
  const unweighed: Paper[] = [];
  const lighter: MatchingPapers["lighter"][number][] = [];
  for (const paper of papers) {
    if (any.material !== null && paper.material !== any.material) continue;
    const own = paper.designs.filter((design) => any.look === null || lookOf(paper, design) === any.look);
    if (own.length === 0) continue;
    const weighs = grammageOf(paper.weight, paper);
    const wanted = grammageOf(any.atLeast, paper);
    if (wanted !== null && weighs === null) unweighed.push(paper);
    else if (wanted !== null && weighs !== null && weighs < wanted) lighter.push({ paper, weighs, wanted });
    else faces.push(...own.map(({ front }) => front.id));
  }
  return { faces, unweighed, lighter };
}

/** A pad is patterned paper, whichever way its patterns may be turned. */
function lookOf({ material }: Paper, { front }: PaperDesign): NonNullable<AnyPaper["look"]> {
  return material !== "pad" && front.pattern === "none" ? "plain" : "patterned";
}

/** The g/m2 of a weight, as a label gives them for a paper of that material; `null` where there is no weight. */
function grammageOf(weight: PaperWeight | null, { material }: Paper): number | null {
  return weight === null ? null : Math.round(labelledGrammage(weight, usualGrade(material)).value);
}
