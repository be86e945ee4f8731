import type { CompiledProblem, CompiledSheet, Lay } from "../compiled-problem.js";

/**
 * Every way in which a kind may lie on a sheet, as flat arrays. A lay has a number; the lays of one kind on one sheet
 * have numbers in a row, from `first[sheet * kinds + kind]` up to, not including, the entry after it.
 */
export interface LayTable {
  readonly kinds: number;
  readonly width: Float64Array;
  readonly height: Float64Array;
  /** The kind of each lay. */
  readonly kind: Int32Array;
  readonly first: Int32Array;
  readonly lays: readonly Lay[];
  /** By kind: the forms it may have. */
  readonly forms: Int32Array;
  /** By sheet: no lay there is narrower, or lower, than this. */
  readonly leastWidth: Float64Array;
  readonly leastHeight: Float64Array;
}

/** Lists the lays of a problem that can be cut; those of kinds that are not wanted are left out. */
export function layTable(problem: CompiledProblem, wanted: readonly number[]): LayTable {
  const lays: Lay[] = [];
  const owner: number[] = [];
  const first: number[] = [];
  const leastWidth = new Float64Array(problem.sheets.length).fill(Number.POSITIVE_INFINITY);
  const leastHeight = new Float64Array(problem.sheets.length).fill(Number.POSITIVE_INFINITY);
  for (const sheet of problem.sheets) {
    for (const kind of problem.kinds) {
      first.push(lays.length);
      if ((wanted[kind.index] ?? 0) <= 0) continue;
      for (const lay of kind.lays[sheet.index] ?? []) {
        if (!canBeCut(problem, sheet, lay)) continue;
        lays.push(lay);
        owner.push(kind.index);
        leastWidth[sheet.index] = Math.min(leastWidth[sheet.index] as number, lay.width);
        leastHeight[sheet.index] = Math.min(leastHeight[sheet.index] as number, lay.height);
      }
    }
  }
  first.push(lays.length);
  return {
    kinds: problem.kinds.length,
    width: Float64Array.from(lays, (lay) => lay.width),
    height: Float64Array.from(lays, (lay) => lay.height),
    kind: Int32Array.from(owner),
    first: Int32Array.from(first),
    lays,
    forms: Int32Array.from(problem.source.kinds, (kind) => kind.forms.length),
    leastWidth,
    leastHeight,
  };
}

/** Whether a sheet that holds nothing else gives a piece of these extents; if not, no layout does. */
function canBeCut(problem: CompiledProblem, sheet: CompiledSheet, { width, height }: Lay): boolean {
  const { longestCut } = sheet;
  const acrossIsWhole = width === sheet.width;
  const downIsWhole = height === sheet.height;
  if (Number(!acrossIsWhole) + Number(!downIsWhole) > problem.stages) return false;
  // One of the two cuts crosses the whole sheet, the other one side of the piece.
  const firstAcross = !acrossIsWhole && sheet.height <= longestCut && (downIsWhole || width <= longestCut);
  const firstDown = !downIsWhole && sheet.width <= longestCut && (acrossIsWhole || height <= longestCut);
  return firstAcross || firstDown || (acrossIsWhole && downIsWhole);
}
