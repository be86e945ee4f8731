/**
 * Fewest sheets among plans of a group that cost the same: the search of packings looks for the least cost alone, so where
 * sheets cost differently, offcuts nothing, it is asked once more with every sheet counted.
 */

import type { Packing, Problem } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";
import { commonDivisor } from "../totals/common-divisor.js";
import { compareAims } from "./aims.js";
import { asOneSet } from "./grain-wish.js";
import type { GroupSearch, Search } from "./group-search.js";
import { restate } from "./restate.js";

/** Looks for a plan with fewer sheets, and gives the one it was given where there is none or it is proven to have the fewest. */
export function* fewestSheets(task: GroupTask, found: Packing, search: GroupSearch): Search<Packing> {
  const { problem } = task;
  const usable = problem.sheets.filter(({ stock }) => stock !== 0);
  const costs = new Set(usable.map(({ cost, width, height }) => cost ?? width * height));
  const isFewest = found.bound.aim === "all" && found.bound.sheets === found.sheets;
  if (found.outcome !== "complete" || costs.size < 2 || isFewest || search.isStopped()) return found;
  const counted = yield* packCounted(problem, found.sheets, search);
  if (counted?.outcome !== "complete") return found;
  const packing = restate(problem, counted.layouts, found.bound, [found, counted]);
  return compareAims({ task, packing }, { task, packing: found }) < 0 ? packing : found;
}

/**
 * Packs a problem in a short search by the cost of its sheets and then their number; only a plan with all pieces is of use. `null`
 * where that cannot be reckoned exactly.
 *
 * @param most More sheets than these need not be told from a higher cost.
 */
export function* packCounted(problem: Problem, most: number, search: GroupSearch): Search<Packing | null> {
  const counted = countingSheets(problem, most);
  if (counted === null) return null;
  return yield* search.pack({ ...counted, kinds: asOneSet(counted.kinds) }, "layouts", "quick");
}

/**
 * The problem with one more added to the cost of every sheet, so that of plans that cost the same the one with fewer sheets
 * costs less; what sheets cost counts so many times that no plan of up to `most` sheets is taken that costs more. `null` where the
 * sums would no longer be exact.
 */
function countingSheets(problem: Problem, most: number): Problem | null {
  const costs = problem.sheets.map(({ cost, width, height }) => cost ?? width * height);
  const unit = costs.reduce(commonDivisor, 0) || 1;
  const scale = most + 1;
  const dearest = Math.max(...costs) / unit;
  if (dearest * scale * scale > LARGEST_SUM) return null;
  const sheets = problem.sheets.map((sheet, i) => ({
    ...sheet,
    cost: ((costs[i] ?? 0) / unit) * scale + 1,
  }));
  return { ...problem, sheets };
}

/** Far below 2^53, up to which sums of whole numbers are exact. */
const LARGEST_SUM = 70_000_000_000_000;
