/** What `verifyPlan` finds, and every code that it may find it under. */

/**
 * Every code of a {@link PlanFinding}, with what it means.
 *
 * @example
 * planFindingCodes["over-stock"] // => "More sheets of a paper are cut than there are."
 */
export const planFindingCodes = {
  // The data.
  "bad-project": "The project contradicts itself, so no plan can be judged against it.",
  malformed: "A value of the plan is absent, or of another type than a plan needs there.",
  "wrong-version": "The plan is of another version of the format.",
  "wrong-expansion": "The papers, cards or pieces are not what the project works out to.",
  // What is asked of each group of papers.
  "wrong-groups": "The papers planned together are not those that share pieces.",
  "wrong-bags":
    "A group is planned for other bags than its papers go into whole, or for bags though they are cut for all.",
  "wrong-sheet-list": "The list that says which sheet is of which paper is not right.",
  "piece-not-planned": "A piece is in no group, though some paper can give it.",
  "piece-twice": "A piece is in more than one place.",
  "unknown-piece": "A group cuts what is no piece of the project, or none of its papers' pieces.",
  "wrong-quantity": "Another number of copies of a piece is asked for than the project wants.",
  "wrong-forms": "A piece is cut in another size than it has.",
  "die-blank-too-small": "A die blank does not hold the shape that is cut from it, with its margin.",
  "wrong-strip":
    "A strip is of no kind or no die blank of its group, or holds no number of shapes that a strip can.",
  "strip-forbidden": "Shapes are cut from a strip though no die cuts them, or the project wants no strips.",
  "strip-too-wide": "A strip does not go through the die machine.",
  "strip-too-small": "A strip does not hold its shapes with a margin at its ends and between them.",
  "strips-too-soon": "Die blanks are cut in strips though their group does not give everything.",
  "wrong-endless": "What bounds all ways to cut strips is not what the die blanks make it, or is not proven.",
  "wrong-turns": "The ways a piece may lie on a paper are not those that pattern and required grain allow.",
  "wrong-kind": "A piece is given a value, a set or a condition that the project does not know.",
  "wrong-name": "A piece or a sheet is called something else than in the project.",
  "sheet-missing": "A sheet of the group's papers is left out.",
  "unknown-sheet": "A group cuts a sheet that is none of its papers.",
  "wrong-sheet": "A sheet has another size, trim or longest cut than the project says.",
  "wrong-stock": "There are more or fewer sheets than the project says.",
  "wrong-sheet-cost": "A sheet costs something else than the project says.",
  "wrong-tool": "Mode, aim, kerf or the smallest offcut are not what the project's trimmer says.",
  // What is cut.
  "packing-wrong": "A group's packing is not right for its problem.",
  "over-stock": "More sheets of a paper are cut than there are.",
  "too-many-pieces": "More copies of a piece are cut than are wanted.",
  "wrong-paper": "A piece is cut from a paper that it may not be cut from.",
  "piece-size": "A piece is cut in another size than it has.",
  "pattern-broken": "A piece lies turned on a paper whose pattern forbids it.",
  "grain-broken": "A piece lies across the grain though it must lie along it.",
  // What the plan says of itself.
  "wrong-no-paper": "The pieces that no paper can give are not those named.",
  "wrong-enough": "Whether there is enough is not what the packings amount to.",
  "wrong-complete": "The copies of a card that are complete are not what the packings hold.",
  "spares-too-soon": "Spare copies are planned though some copy that is asked for lacks a piece.",
  "wrong-shortage": "What is said to be missing is not what is missing.",
  "wrong-more-sheets":
    "The sheets that would help, or the fewest that can do, are not proven by the plan for them.",
  "wrong-items":
    "What is said of ribbons, tapes and extras on hand is not what copies take of them, or is not proven.",
  "wrong-use": "The sheets used and left are not those of the packings.",
  "wrong-leftovers": "The leftovers are not those of the packings.",
  "wrong-folds": "The grain at the folds is not what the packings make it.",
  "wrong-cost": "The cost is not that of the sheets used and the work on what is complete.",
  "wrong-search": "What is said of the search is not what its packings say.",
  "more-findings": "There are more findings than are listed.",
} as const;

/** A code of a {@link PlanFinding}; what each means is in {@link planFindingCodes}. */
export type PlanFindingCode = keyof typeof planFindingCodes;

/** One thing that is wrong with a plan, and where. */
export interface PlanFinding {
  readonly code: PlanFindingCode;
  /** Place of the value, such as `groups[0].problem.kinds[2].quantity`; `plan` for the whole. */
  readonly path: string;
  /** Full sentences: what is wrong, what was found and what was expected. Lengths are in ticks. */
  readonly message: string;
}

/** Takes one thing that is wrong. */
export type PlanReport = (code: PlanFindingCode, path: string, message: string) => void;

/** So many findings are listed; a plan that is wrong in more places is not read any better with all of them. */
const MOST_FINDINGS = 1000;

/** Starts an empty list and what adds to it. After 1,000 findings one `more-findings` closes it. */
export function startFindings(): { readonly list: readonly PlanFinding[]; readonly report: PlanReport } {
  const list: PlanFinding[] = [];
  const report: PlanReport = (code, path, message) => {
    if (list.length < MOST_FINDINGS) list.push({ code, path, message });
    else if (list.length === MOST_FINDINGS) {
      const closing = `More than ${MOST_FINDINGS} things are wrong; the rest is left out.`;
      list.push({ code: "more-findings", path: "plan", message: closing });
    }
  };
  return { list, report };
}
