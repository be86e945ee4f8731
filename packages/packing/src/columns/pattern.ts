import type { CutNode } from "../model.js";
import type { CompiledKind, CompiledProblem, CompiledSheet } from "../search/compiled-problem.js";
import { type DraftLayout, leftoverSpread } from "../search/draft.js";

/** The rows of the program of patterns: the kinds that are wanted, then the sheets of which there are not enough. */
export interface PatternRows {
  readonly kinds: readonly CompiledKind[];
  /** By kind index: its row, or -1. */
  readonly rowOf: Int32Array;
  readonly limited: readonly CompiledSheet[];
  /** Rows of kinds and of sheets. */
  readonly size: number;
}

/** One way to cut a sheet, as a column of the program. */
export interface Pattern {
  readonly sheet: CompiledSheet;
  /** By row: the copies it gives, and -1 in the row of its sheet where that is limited. */
  readonly column: Float64Array;
  readonly tree: CutNode;
}

/** The rows for a demand. A sheet is limited where the largest area of all copies could take more of it than there are. */
export function patternRows(problem: CompiledProblem, wanted: readonly number[]): PatternRows {
  const kinds = problem.kinds.filter((kind) => (wanted[kind.index] ?? 0) > 0 && kind.fits);
  const rowOf = new Int32Array(problem.kinds.length).fill(-1);
  kinds.forEach((kind, row) => {
    rowOf[kind.index] = row;
  });
  const copies = kinds.reduce((sum, kind) => sum + (wanted[kind.index] ?? 0), 0);
  const limited = problem.sheets.filter((sheet) => sheet.stock < copies);
  return { kinds, rowOf, limited, size: kinds.length + limited.length };
}

/** A tree as a pattern; `counts` by row of a kind. */
export function patternOf(
  rows: PatternRows,
  sheet: CompiledSheet,
  counts: Float64Array,
  tree: CutNode,
): Pattern {
  const column = new Float64Array(rows.size);
  column.set(counts.subarray(0, rows.kinds.length));
  const limit = rows.limited.indexOf(sheet);
  if (limit >= 0) column[rows.kinds.length + limit] = -1;
  return { sheet, column, tree };
}

/** A layout of a plan as a pattern; kinds that have no row are not counted. */
export function patternOfLayout(rows: PatternRows, layout: DraftLayout): Pattern {
  const counts = new Float64Array(rows.kinds.length);
  for (const [kind, count] of layout.counts) {
    const row = rows.rowOf[kind] as number;
    if (row >= 0) counts[row] = count;
  }
  return patternOf(rows, layout.sheet, counts, layout.tree());
}

/** A number of sheets cut by a pattern, as a layout of a plan. */
export function layoutOf(
  problem: CompiledProblem,
  rows: PatternRows,
  pattern: Pattern,
  run: number,
): DraftLayout {
  const { sheet, column, tree } = pattern;
  const counts = new Map<number, number>();
  rows.kinds.forEach((kind, row) => {
    const count = column[row] as number;
    if (count > 0) counts.set(kind.index, count);
  });
  const spread = leftoverSpread(tree, { width: sheet.width, height: sheet.height }, problem.kerf);
  return { sheet, run, tree: () => tree, counts, spread };
}
