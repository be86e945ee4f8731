/**
 * The most that the pieces of one sheet are worth when it is cut edge to edge, in any number of stages, with each kind as
 * often as it fits: unconstrained two-dimensional guillotine cutting (P. C. Gilmore and R. E. Gomory, The theory and
 * computation of knapsack functions, Operations Research 14 (1966); J. E. Beasley, Algorithms for unconstrained
 * two-dimensional guillotine cutting, J. Oper. Res. Soc. 36 (1985)).
 *
 * Parts are looked at by the sums of extents that wanted copies can reach (normal patterns): V(w, h) is the best of a
 * piece that fits, and of V(a, h) + V(w - a, h) and V(w, b) + V(w, h - b) over all cuts. A kerf is added to pieces and
 * sheet. Work: sums across x sums down x half of both.
 */
import type { CompiledKind, CompiledProblem, CompiledSheet } from "../search/compiled-problem.js";
import { reachableSums } from "./row-of-pieces.js";

/** A sheet, ready to be valued again and again with other prices. */
export interface GuillotineTable {
  /** Steps of one evaluation. */
  readonly work: number;
  /** The most value by prices of kinds (in the order given); counts the pieces of such a layout into `chosen`. */
  readonly most: (prices: Float64Array, chosen?: Float64Array) => number;
}

/** Sums of extents looked at along one axis at most. */
const MOST_SUMS = 2_000;
/** How a part is divided: below 0 nothing or a piece, then the index of a cut, with this added for a cut across. */
const ACROSS = 4096;
const NOTHING = -1;

/** Prepares a sheet; undefined where one evaluation would take more than `mostWork` steps. */
export function guillotineTable(
  problem: CompiledProblem,
  kinds: readonly CompiledKind[],
  sheet: CompiledSheet,
  mostWork: number,
): GuillotineTable | undefined {
  const { kerf } = problem;
  const lays = kinds.flatMap((kind, index) =>
    (kind.lays[sheet.index] ?? []).map((lay) => ({
      index,
      width: lay.width + kerf,
      height: lay.height + kerf,
    })),
  );
  const sumsAlong = (axis: "width" | "height"): readonly number[] | undefined => {
    const room = sheet[axis] + kerf;
    const groups = kinds.map((kind) => ({
      extents: [...new Set((kind.lays[sheet.index] ?? []).map((lay) => lay[axis] + kerf))],
      copies: kind.quantity,
    }));
    return reachableSums(groups, room, MOST_SUMS);
  };
  const across = sumsAlong("width");
  const down = sumsAlong("height");
  if (across === undefined || down === undefined) return undefined;
  const [columns, rows] = [across.length, down.length];
  const work = (columns * rows * (columns + rows)) / 2;
  if (work > mostWork) return undefined;
  const columnOf = floorIndex(across);
  const rowOf = floorIndex(down);
  // By part and cut: what remains beside it. Both fit in less than `ACROSS`.
  const beside = restsOf(across);
  const below = restsOf(down);
  const cells = columns * rows;
  const single = new Int16Array(cells);
  const best = new Float64Array(cells);
  const how = new Int16Array(cells);
  const places = lays.map(({ index, width, height }) => ({
    index,
    cell: columnOf(width) * rows + rowOf(height),
  }));
  const most = (prices: Float64Array, chosen?: Float64Array): number => {
    single.fill(-1);
    best.fill(0);
    how.fill(NOTHING);
    for (const { index, cell } of places) {
      const price = prices[index] as number;
      if (price <= (best[cell] as number)) continue;
      best[cell] = price;
      single[cell] = index;
    }
    for (let i = 1; i < columns; i++) {
      for (let j = 1; j < rows; j++) {
        const cell = i * rows + j;
        let value = best[cell] as number;
        let cut = NOTHING;
        // A cut at sum 0 leaves the next smaller part.
        for (let a = 0; a < i; a++) {
          const rest = beside[i * columns + a] as number;
          if (rest < a) break;
          const other =
            a === 0
              ? (best[cell - rows] as number)
              : (best[a * rows + j] as number) + (best[rest * rows + j] as number);
          if (other > value) {
            value = other;
            cut = a;
          }
        }
        for (let b = 0; b < j; b++) {
          const rest = below[j * rows + b] as number;
          if (rest < b) break;
          const other =
            b === 0
              ? (best[cell - 1] as number)
              : (best[i * rows + b] as number) + (best[i * rows + rest] as number);
          if (other > value) {
            value = other;
            cut = b + ACROSS;
          }
        }
        best[cell] = value;
        how[cell] = cut;
      }
    }
    if (chosen) count(columns - 1, rows - 1, chosen);
    return best[cells - 1] as number;
  };
  const count = (i: number, j: number, chosen: Float64Array): void => {
    if (i <= 0 || j <= 0) return;
    const cut = how[i * rows + j] as number;
    if (cut === NOTHING) {
      const index = single[i * rows + j] as number;
      if (index >= 0) chosen[index] = (chosen[index] as number) + 1;
    } else if (cut < ACROSS) {
      if (cut === 0) count(i - 1, j, chosen);
      else {
        count(cut, j, chosen);
        count(beside[i * columns + cut] as number, j, chosen);
      }
    } else if (cut === ACROSS) {
      count(i, j - 1, chosen);
    } else {
      count(i, cut - ACROSS, chosen);
      count(i, below[j * rows + cut - ACROSS] as number, chosen);
    }
  };
  return { work, most };
}

/** Index of the largest sum not above a number. */
function floorIndex(sums: readonly number[]): (value: number) => number {
  return (value) => {
    let [low, high] = [0, sums.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((sums[middle] as number) <= value) low = middle;
      else high = middle;
    }
    return low;
  };
}

/** By part and cut: the index of the largest sum that what remains holds. */
function restsOf(sums: readonly number[]): Int16Array {
  const size = sums.length;
  const rests = new Int16Array(size * size);
  for (let part = 0; part < size; part++) {
    let rest = part;
    for (let cut = 0; cut <= part; cut++) {
      while ((sums[rest] as number) > (sums[part] as number) - (sums[cut] as number)) rest--;
      rests[part * size + cut] = rest;
    }
  }
  return rests;
}
