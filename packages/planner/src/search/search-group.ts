import type { Paper, Piece } from "@sheetwright/cards";
import type { Packing } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";
import type { Shortage } from "../plan-model.js";
import { type Division, divideTask } from "../strips/divide-task.js";
import { mostInStrips, type StripWorkshop } from "../strips/strip-forms.js";
import { fewestSheets } from "./fewest-sheets.js";
import { findStrips } from "./find-strips.js";
import { followGrain } from "./follow-grain.js";
import { grainWish } from "./grain-wish.js";
import { type GroupSearch, proven, type Search } from "./group-search.js";
import { largestOffcuts } from "./largest-offcuts.js";
import { restate } from "./restate.js";
import { type SearchedGroup, searchVersions } from "./search-versions.js";
import { countMore, withMoreSheets } from "./with-more-sheets.js";

/** What was found for one group of papers. */
export interface GroupResult {
  /** What was asked of it: the task, or that with die blanks in strips where these save paper. */
  readonly task: GroupTask;
  readonly packing: Packing;
  /** Ways to cut its die blanks that are tried again for spare copies. */
  readonly divisions: readonly Division[];
  /** What is missing; `null` where nothing is. */
  readonly shortage: Omit<Shortage, "group"> | null;
}

/**
 * Packs the pieces of a group, die blanks in strips where that saves paper, by the order of aims; turns them along the
 * grain where that costs nothing; looks whether fewer choices of papers, folds and offcuts come to less; and says what is
 * missing.
 *
 * @param papers Those that the task was stated from.
 */
export function* searchGroup(
  task: GroupTask,
  pieces: readonly Piece[],
  papers: readonly Paper[],
  workshop: StripWorkshop,
  search: GroupSearch,
): Search<GroupResult> {
  const searchOwn = (one: GroupTask, own: readonly Piece[]) => searchTask(one, own, papers, workshop, search);
  const first = yield* searchOwn(task, pieces);
  const found = yield* searchVersions(task, pieces, papers, workshop, first, searchOwn, search);
  const { division } = found;
  const kept = yield* largestOffcuts(found.task, found.packing, search);
  const { cuts } = divideTask(task, pieces, division, workshop);
  const packing = kept === found.packing ? kept : yield* alongGrain(found.task, kept, cuts, papers, search);
  const divisions = division === first.division ? first.divisions : [division, ...first.divisions];
  const mayBeStrips = mostInStrips(task, pieces, workshop).size > 0;
  const shortage = yield* findShortage(task, packing, search);
  // With strips fewer sheets might do.
  const told = shortage !== null && mayBeStrips ? { ...shortage, atLeast: null } : shortage;
  return { task: found.task, packing, divisions, shortage: told };
}

/** A group of papers, searched, with the ways to cut its die blanks that came out well. */
interface SearchedTask extends SearchedGroup {
  readonly divisions: readonly Division[];
}

/** Searches a task with all choices that it has. */
function* searchTask(
  task: GroupTask,
  pieces: readonly Piece[],
  papers: readonly Paper[],
  workshop: StripWorkshop,
  search: GroupSearch,
): Search<SearchedTask> {
  const single = yield* search.pack(task.problem, "layouts");
  const { best, divisions, packings } = yield* findStrips(task, pieces, workshop, single, search);
  const { task: own, cuts, division } = best ?? { task, cuts: pieces, division: new Map() };
  const least =
    best === null
      ? single
      : restate(own.problem, best.packing.layouts, best.packing.bound, [single, ...packings]);
  const free = yield* fewestSheets(own, least, search);
  const packing = yield* alongGrain(own, free, cuts, papers, search);
  const tried: readonly Division[] = best === null ? [new Map(), ...divisions] : [...divisions, new Map()];
  return { task: own, packing, division, single, divisions: tried };
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
