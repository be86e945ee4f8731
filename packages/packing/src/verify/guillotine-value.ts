/**
 * The most that prices of pieces can sum to on one sheet when it is cut edge to edge, in any number of stages, with each
 * kind as often as it fits (P. C. Gilmore and R. E. Gomory, The theory and computation of knapsack functions, Operations
 * Research 14 (1966)).
 *
 * A part is worth what the best piece that fits is worth, or the sum over the two parts of its best cut. What the pieces
 * from a part need along an axis is a sum of their extents (each with its kerf), so parts whose sides are such sums are
 * all that need a value; any other part is worth as much as the next smaller one of these. Sums are of no more copies than
 * are wanted, which every layout that is asked for obeys. Worked out from small parts to large ones, in whole numbers:
 * prices up to 10^9 on at most `mostParts` parts stay exact.
 */

import type { KindFacts, SheetFacts } from "./read-problem.js";
import { waysToLie } from "./ways-to-lie.js";

/** Cuts that may still be looked at. */
interface CutsLeft {
  left: number;
}

/** So many parts are valued on one sheet. */
const mostParts = 4_000_000;

/** The most value, or `undefined` where that takes too long to find. */
export function mostGuillotineValue(
  kinds: readonly { readonly kind: KindFacts; readonly price: number }[],
  sheet: SheetFacts,
  kerf: number,
  cuts: CutsLeft,
): number | undefined {
  const items = kinds.flatMap(({ kind, price }) =>
    waysToLie(kind, sheet).map(({ width, height }) => ({ w: width + kerf, h: height + kerf, price })),
  );
  const extentsOf = (axis: "width" | "height") =>
    kinds.map(({ kind }) => ({
      quantity: kind.quantity,
      extents: waysToLie(kind, sheet).map((way) => way[axis] + kerf),
    }));
  const xs = sumsUpTo(extentsOf("width"), sheet.usable.width + kerf);
  const ys = sumsUpTo(extentsOf("height"), sheet.usable.height + kerf);
  if (xs === undefined || ys === undefined) return undefined;
  const [nx, ny] = [xs.length, ys.length];
  cuts.left -= (nx * ny * (nx + ny)) / 2;
  if (nx * ny > mostParts || cuts.left < 0) return undefined;

  const worth = new Float64Array(nx * ny);
  for (const { w, h, price } of items) {
    const at = xs.indexOf(w) * ny + ys.indexOf(h);
    worth[at] = Math.max(worth[at] ?? 0, price);
  }
  for (let i = 1; i < nx; i += 1) {
    for (let j = 1; j < ny; j += 1) {
      const at = i * ny + j;
      let most = Math.max(worth[at] ?? 0, worth[at - 1] ?? 0, worth[at - ny] ?? 0);
      // Two parts side by side: the left one grows as far as half, the right one is the largest that is left.
      const width = xs[i] ?? 0;
      for (let left = 1, right = i - 1; left <= right; left += 1) {
        while ((xs[left] ?? 0) + (xs[right] ?? 0) > width) right -= 1;
        if (left > right) break;
        most = Math.max(most, (worth[left * ny + j] ?? 0) + (worth[right * ny + j] ?? 0));
      }
      const height = ys[j] ?? 0;
      for (let upper = 1, lower = j - 1; upper <= lower; upper += 1) {
        while ((ys[upper] ?? 0) + (ys[lower] ?? 0) > height) lower -= 1;
        if (upper > lower) break;
        most = Math.max(most, (worth[i * ny + upper] ?? 0) + (worth[i * ny + lower] ?? 0));
      }
      worth[at] = most;
    }
  }
  return worth[nx * ny - 1] ?? 0;
}

/** The sums of extents of wanted copies up to a limit, rising from 0; `undefined` where there are too many. */
function sumsUpTo(
  kinds: readonly { readonly quantity: bigint | null; readonly extents: readonly number[] }[],
  limit: number,
): readonly number[] | undefined {
  const sums = new Set([0]);
  let looked = 0;
  for (const { quantity, extents } of kinds) {
    let ends: Iterable<number> = [...sums];
    for (let copy = 0n; quantity === null || copy < quantity; copy += 1n) {
      const next = new Set<number>();
      for (const end of ends) {
        for (const extent of extents) {
          looked += 1;
          const sum = end + extent;
          if (sum > limit || sums.has(sum)) continue;
          sums.add(sum);
          next.add(sum);
        }
      }
      if (sums.size * 4 > mostParts || looked > mostParts * 4) return undefined;
      if (next.size === 0) break;
      ends = next;
    }
  }
  return [...sums].sort((a, b) => a - b);
}
