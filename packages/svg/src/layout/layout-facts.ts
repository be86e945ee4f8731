import type { Layout, Packing, Problem, Sheet } from "@sheetwright/packing";
import { findLayout } from "./find-layout.js";
import { type LaidOut, layOut } from "./lay-out.js";
import { listOffcuts, type OffcutList } from "./list-leftovers.js";
import { listPieces, type PieceList } from "./list-pieces.js";

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
}

/** Gathers the facts of `packing.layouts[index]`. Throws a RangeError as {@link findLayout} does. */
export function layoutFacts(problem: Problem, packing: Packing, index: number): LayoutFacts {
  const { sheet, layout } = findLayout(problem, packing, index);
  const kerf = problem.kerf ?? 0;
  const laidOut = layOut(sheet, layout, kerf);
  const pieces = listPieces(problem, laidOut, layout.run);
  const offcuts = listOffcuts(
    laidOut.leftovers.filter(({ what }) => what === "offcut"),
    pieces.entries.length,
  );
  return { sheet, layout, kerf, laidOut, pieces, offcuts };
}
