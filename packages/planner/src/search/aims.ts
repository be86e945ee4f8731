/**
 * What makes one plan of a group better than another one that has all pieces as well: it costs less; or else cuts into
 * fewer sheets, offcuts counted; or else keeps the larger offcuts, of those on hand that it leaves alone and of its own
 * leftovers together: the largest, then the next, and so on.
 */

import type { Packing } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";
import { findLeftovers, isWorthKeeping } from "../totals/find-leftovers.js";

/** A group's sheets, and what is cut from them. */
export interface Judged {
  readonly task: Pick<GroupTask, "problem" | "sheets">;
  readonly packing: Packing;
}

/** Negative where the first of two complete plans of the same papers is better, positive where the second is. */
export function compareAims(a: Judged, b: Judged): number {
  const cost = BigInt(a.packing.cost) - BigInt(b.packing.cost);
  if (cost !== 0n) return cost < 0n ? -1 : 1;
  return a.packing.sheets - b.packing.sheets || compareKept(keptOffcuts(b), keptOffcuts(a));
}

/** Offcuts of one area. */
interface KeptOffcuts {
  readonly area: number;
  readonly count: number;
}

/** The offcuts that are there once the plan is cut, the largest first; leftovers too small to keep are left out. */
export function keptOffcuts({ task, packing }: Judged): readonly KeptOffcuts[] {
  const { problem, sheets } = task;
  const used = sheetsUsed(packing);
  const counts = new Map<number, number>();
  const add = (area: number, count: number): void => {
    if (count > 0) counts.set(area, (counts.get(area) ?? 0) + count);
  };
  const offcuts = new Set(sheets.filter(({ offcut }) => offcut !== null).map(({ sheet }) => sheet));
  for (const { id, width, height, stock } of problem.sheets) {
    if (offcuts.has(id) && isWorthKeeping({ width, height }, problem.smallestOffcut))
      add(width * height, (stock ?? 0) - (used.get(id) ?? 0));
  }
  for (const { width, height, count, keep } of findLeftovers(problem, packing)) {
    if (keep) add(width * height, count);
  }
  return [...counts].map(([area, count]) => ({ area, count })).sort((a, b) => b.area - a.area);
}

/** Positive where the first keeps more. */
function compareKept(a: readonly KeptOffcuts[], b: readonly KeptOffcuts[]): number {
  for (const [i, one] of a.entries()) {
    const other = b[i];
    if (other === undefined) return 1;
    if (one.area !== other.area) return one.area - other.area;
    // Of those that there are more of on one side, the next on the other side is smaller.
    if (one.count !== other.count) return one.count - other.count;
  }
  return a.length - b.length;
}

/** How many sheets of each id are cut into. */
export function sheetsUsed({ layouts }: Pick<Packing, "layouts">): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const { sheet, run } of layouts) used.set(sheet, (used.get(sheet) ?? 0) + run);
  return used;
}
