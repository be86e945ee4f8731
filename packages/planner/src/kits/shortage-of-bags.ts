import type { PaperDesign } from "@sheetwright/cards";
import type { GroupTask } from "../group/group-problem.js";
import type { Shortage } from "../plan-model.js";

/** What all bags lack, where each lacks the same; a group that is not planned bag by bag stays as it is. */
export function shortageOfBags<Missing extends Omit<Shortage, "group">>(
  shortage: Missing,
  { bags, problem }: GroupTask,
  designs: readonly PaperDesign[],
): Missing {
  if (bags === undefined) return shortage;
  const onHand = new Map(designs.map(({ id, count }) => [id, count ?? 0]));
  const inOne = new Map(problem.sheets.map(({ id, stock }) => [id, stock ?? 0]));
  return {
    ...shortage,
    pieces: shortage.pieces.map(({ piece, missing }) => ({ piece, missing: missing * bags })),
    // Some sheets that do not divide among the bags may be on hand already.
    wouldHelp: shortage.wouldHelp.map(({ design, more }) => ({
      design,
      more: ((inOne.get(design) ?? 0) + more) * bags - (onHand.get(design) ?? 0),
    })),
    atLeast: shortage.atLeast === null ? null : shortage.atLeast * bags,
  };
}
