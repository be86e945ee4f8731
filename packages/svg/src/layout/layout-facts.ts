import type { Layout, Packing, Problem, Sheet } from "@sheetwright/packing";
import type { LayoutMarks, SheetMarks } from "@sheetwright/planner";
import { findLayout } from "./find-layout.js";
import { type LaidOut, layOut } from "./lay-out.js";
import { listOffcuts, type OffcutList } from "./list-leftovers.js";
import { type ListedPieces, listPieces, type PieceList } from "./list-pieces.js";
import { type ListedMarks, listMarks } from "./list-trade-marks.js";
import { type PlaceMarks, placeMarks, sheetMarksOf } from "./lying-marks.js";

/** What both the drawing and the cut list of a layout tell, so that their numbers are the same. */
export interface LayoutFacts {
  readonly sheet: Sheet;
  readonly layout: Layout;
  /** Width lost by each cut. */
  readonly kerf: number;
  readonly laidOut: LaidOut;
  readonly pieces: PieceList;
  /** Numbered on from the pieces. */
  readonly offcuts: OffcutList;
  readonly marks: FactsOfMarks;
}

/** What only the trade knows of the sheet and its pieces; nothing of it where no marks are given. */
interface FactsOfMarks {
  readonly sheet: SheetMarks | null;
  /** What is marked on each placed piece, in the order of the layout. */
  readonly places: readonly PlaceMarks[];
  /** Marked forms of all pieces on the sheet. */
  readonly listed: readonly ListedMarks[];
  /** Marked forms of the pieces under one entry of the list. */
  readonly ofEntry: (entry: ListedPieces) => readonly ListedMarks[];
}

/**
 * Gathers the facts of `packing.layouts[index]`. Throws a RangeError as {@link findLayout} does, and where the marks do not
 * go with the problem.
 */
export function layoutFacts(
  problem: Problem,
  packing: Packing,
  index: number,
  given?: LayoutMarks,
): LayoutFacts {
  const { sheet, layout } = findLayout(problem, packing, index);
  const kerf = problem.kerf ?? 0;
  const laidOut = layOut(sheet, layout, kerf);
  const kinds = new Map(problem.kinds.map((kind) => [kind.id, kind]));
  const places = placeMarks(laidOut.pieces, kinds, sheet.id, given);
  const pieces = listPieces(problem, laidOut, layout.run, places);
  const offcuts = listOffcuts(
    laidOut.leftovers.filter(({ what }) => what === "offcut"),
    pieces.entries.length,
  );
  const marks: FactsOfMarks = {
    sheet: sheetMarksOf(given, sheet.id),
    places,
    listed: listMarks(problem.kinds, laidOut.pieces, sheet.id, given),
    ofEntry: (entry) => {
      const own = laidOut.pieces.filter((_, i) => pieces.entryOf[i] === entry);
      return listMarks(problem.kinds, own, sheet.id, given);
    },
  };
  return { sheet, layout, kerf, laidOut, pieces, offcuts, marks };
}
