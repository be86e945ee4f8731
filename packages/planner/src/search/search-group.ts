import type { Paper, Piece } from "@sheetwright/cards";
import type { Packing } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";
import type { Shortage } from "../plan-model.js";
import { followGrain } from "./follow-grain.js";
import { grainWish } from "./grain-wish.js";
import { type GroupSearch, proven, type Search } from "./group-search.js";
import { countMore, withMoreSheets } from "./with-more-sheets.js";

/** What was found for one group of papers. */
export interface GroupResult {
  readonly packing: Packing;
  /** What is missing; `null` where nothing is. */
  readonly shortage: Omit<Shortage, "group"> | null;
}

/** Packs the pieces of a group, turns them along the grain where that costs nothing, and says what is missing. */
export function* searchGroup(
  task: GroupTask,
  pieces: readonly Piece[],
  papers: readonly Paper[],
  search: GroupSearch,
): Search<GroupResult> {
  const free = yield* search.pack(task.problem, "layouts");
  const packing = yield* alongGrain(task, free, pieces, papers, search);
  return { packing, shortage: yield* findShortage(task, packing, search) };
}

/** Turns the pieces of a packing along the grain where that costs nothing. The packing is proven right for the task. */
export function* alongGrain(
  task: GroupTask,
  free: Packing,
  pieces: readonly Piece[],
  papers: readonly Paper[],
  search: GroupSearch,
): Search<Packing> {
  const wish = grainWish(task, pieces, papers);
  return proven(task.problem, search.isStopped() ? free : yield* followGrain(wish, free, search));
}

function* findShortage(
  task: GroupTask,
  packing: Packing,
  search: GroupSearch,
): Search<GroupResult["shortage"]> {
  const { outcome, missing } = packing;
  if (outcome === "complete") return null;
  const pieces = missing.map(({ kind, count }) => ({ piece: kind, missing: count }));
  const none = { outcome, pieces, wouldHelp: [], atLeast: null, withMore: null };
  const problem = search.isStopped() ? null : withMoreSheets(task);
  if (problem === null) return none;
  const found = yield* search.pack(problem, "shortage");
  if (found.outcome !== "complete" || found.search.ended === "cancelled") return none;
  const atLeast = found.bound.aim === "all" ? found.bound.sheets : null;
  return { ...none, wouldHelp: countMore(task, found), atLeast, withMore: { problem, packing: found } };
}
