import type { Piece } from "@sheetwright/cards";
import type { Form, Kind, Problem } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";
import { asOneSet } from "../search/grain-wish.js";
import { type StripWorkshop, stripForms } from "./strip-forms.js";
import { stripShare } from "./strip-size.js";

/**
 * The problem of a group as if its strips had no end: a piece that may be cut in strips is no larger than its share of one,
 * shape and one margin, less the width of a cut. Every plan of the group, with whatever strips, can be cut up into a plan
 * for it by cuts from edge to edge, however long these are; so what is proven of it holds for all of them. `null` where no
 * piece may be cut in strips.
 *
 * @param task The group with single blanks.
 */
export function endlessProblem(
  task: GroupTask,
  pieces: readonly Piece[],
  workshop: StripWorkshop,
): Problem | null {
  const { problem } = task;
  const known = new Map(pieces.map((piece) => [piece.id, piece]));
  let hasStrips = false;
  const kinds = problem.kinds.map((kind): Kind => {
    const piece = known.get(kind.id);
    const [blank] = kind.forms;
    if (piece?.die === undefined || blank === undefined || (kind.quantity ?? 0) < 2) return kind;
    const shares = stripForms(piece, 2, task, workshop).map(
      ({ along }): Form => ({
        ...blank,
        [along]: (stripShare(piece, along) ?? blank[along]) - (problem.kerf ?? 0),
      }),
    );
    if (shares.length === 0) return kind;
    hasStrips = true;
    return { ...kind, forms: shares };
  });
  if (!hasStrips) return null;
  const sheets = problem.sheets.map(({ longestCut: _, ...sheet }) => sheet);
  return { ...problem, mode: "guillotine", kinds: asOneSet(kinds), sheets };
}
