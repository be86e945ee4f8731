/**
 * The most valuable guillotine layout of one sheet when copies are unlimited, exactly, by dynamic programming: the best
 * value of a part is that of the best piece that fits it, or of its best division in two.
 *
 * Source: P. Gilmore, R. Gomory, The theory and computation of knapsack functions, Operations Research 14 (1966), on
 * normal patterns (N. Christofides, C. Whitlock, Operations Research 25 (1977)): cuts at sums of piece extents lose
 * nothing. Kerf is added to pieces and sheet first. With one size in both turns there are few sums, so a sheet takes well
 * under a millisecond.
 *
 * Exact for any number of stages and cuts of any length; for other modes it is not used. Sums x sums x sums steps.
 */
import type { CutNode, SplitPart } from "../model.js";

/** A size that may be cut any number of times, as it lies. */
export interface UnlimitedPiece {
  readonly width: number;
  readonly height: number;
  readonly value: number;
  /** What the tree says of this piece. */
  readonly leaf: CutNode;
}

/** The best layout of one sheet. */
export interface UnlimitedLayout {
  readonly value: number;
  readonly tree: CutNode;
  /** Copies of each piece, by its place in the list. */
  readonly counts: readonly number[];
}

/** Steps above which the program is not worth running. */
const MOST_STEPS = 60_000_000;

/**
 * Finds the best layout, or undefined where there are too many sums of extents.
 * Values are whole numbers whose sum over one sheet stays below 2^53.
 */
export function bestUnlimitedLayout(
  width: number,
  height: number,
  kerf: number,
  pieces: readonly UnlimitedPiece[],
  mostSteps = MOST_STEPS,
): UnlimitedLayout | undefined {
  const fitting = pieces
    .map((piece, index) => ({ ...piece, index }))
    .filter((p) => p.width <= width && p.height <= height);
  const xs = extentSums(
    width + kerf,
    fitting.map((piece) => piece.width + kerf),
    mostSteps,
  );
  const ys = extentSums(
    height + kerf,
    fitting.map((piece) => piece.height + kerf),
    mostSteps,
  );
  if (xs === undefined || ys === undefined) return undefined;
  if (xs.length * ys.length * (xs.length + ys.length + fitting.length) > mostSteps) return undefined;
  const columns = xs.length;
  const value = new Float64Array(columns * ys.length);
  // Positive: piece index + 1. Negative: -(2 x cut index + axis) - 1. Zero: nothing fits.
  const choice = new Int32Array(columns * ys.length);
  const xBelow = largestSumBelow(xs);
  const yBelow = largestSumBelow(ys);
  for (let j = 0; j < ys.length; j++) {
    for (let i = 0; i < columns; i++) {
      const w = xs[i] as number;
      const h = ys[j] as number;
      let best = 0;
      let how = 0;
      for (const piece of fitting) {
        if (piece.value > best && piece.width + kerf <= w && piece.height + kerf <= h) {
          best = piece.value;
          how = piece.index + 1;
        }
      }
      for (let cut = 1; cut < i && 2 * (xs[cut] as number) <= w; cut++) {
        const rest = xBelow(w - (xs[cut] as number));
        const sum = (value[j * columns + cut] as number) + (value[j * columns + rest] as number);
        if (sum > best) {
          best = sum;
          how = -(2 * cut) - 1;
        }
      }
      for (let cut = 1; cut < j && 2 * (ys[cut] as number) <= h; cut++) {
        const rest = yBelow(h - (ys[cut] as number));
        const sum = (value[cut * columns + i] as number) + (value[rest * columns + i] as number);
        if (sum > best) {
          best = sum;
          how = -(2 * cut + 1) - 1;
        }
      }
      value[j * columns + i] = best;
      choice[j * columns + i] = how;
    }
  }
  const counts = pieces.map(() => 0);
  const rebuild = (w: number, h: number): CutNode => {
    const i = xBelow(w + kerf);
    const j = yBelow(h + kerf);
    const how = choice[j * columns + i] as number;
    if (how === 0) return { type: "waste" };
    if (how > 0) {
      const piece = pieces[how - 1] as UnlimitedPiece;
      counts[how - 1] = (counts[how - 1] ?? 0) + 1;
      return trimmed(w, h, kerf, piece);
    }
    const code = -how - 1;
    const along = code % 2 === 0 ? "x" : "y";
    const first = (along === "x" ? (xs[code / 2] as number) : (ys[(code - 1) / 2] as number)) - kerf;
    const extent = along === "x" ? w : h;
    const rest = extent - first - kerf;
    const parts: SplitPart[] = [
      { size: first, node: along === "x" ? rebuild(first, h) : rebuild(w, first) },
      { size: rest, node: along === "x" ? rebuild(rest, h) : rebuild(w, rest) },
    ];
    return { type: "split", axis: along, parts };
  };
  const tree = rebuild(width, height);
  return { value: value[columns * ys.length - 1] ?? 0, tree, counts };
}

/** A piece cut out of the corner of its part. */
function trimmed(width: number, height: number, kerf: number, piece: UnlimitedPiece): CutNode {
  let node = piece.leaf;
  if (piece.height < height) node = cornered("y", height, kerf, piece.height, node);
  if (piece.width < width) node = cornered("x", width, kerf, piece.width, node);
  return node;
}

function cornered(axis: "x" | "y", extent: number, kerf: number, size: number, node: CutNode): CutNode {
  const rest = extent - size - kerf;
  const parts: SplitPart[] = [{ size, node }];
  if (rest > 0) parts.push({ size: rest, node: { type: "waste" } });
  return { type: "split", axis, parts };
}

/** All sums of extents up to a limit, rising from 0, or undefined where they are too many. */
function extentSums(
  limit: number,
  extents: readonly number[],
  mostSteps: number,
): readonly number[] | undefined {
  const most = Math.floor(Math.sqrt(mostSteps / 4));
  const sums = new Set([0]);
  let fresh = [0];
  const distinct = [...new Set(extents)];
  while (fresh.length > 0) {
    const next: number[] = [];
    for (const sum of fresh) {
      for (const extent of distinct) {
        const longer = sum + extent;
        if (longer > limit || sums.has(longer)) continue;
        sums.add(longer);
        next.push(longer);
        if (sums.size > most) return undefined;
      }
    }
    fresh = next;
  }
  return [...sums].sort((a, b) => a - b);
}

/** Index of the largest sum that is at most a value, by bisection. */
function largestSumBelow(sums: readonly number[]): (value: number) => number {
  return (value) => {
    let low = 0;
    let high = sums.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((sums[middle] as number) <= value) low = middle;
      else high = middle - 1;
    }
    return low;
  };
}
