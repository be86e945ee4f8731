/**
 * A group whose pieces have a choice of papers, folds or offcuts is also planned as if they had less of it, each lesser
 * version as the groups that it falls into, and the best of all is taken.
 *
 * A search does not always find more where more is possible. So that a choice never costs more than going without it, what
 * would be planned without it is planned as well, with the same effort and seed. Nothing is searched again where the
 * first plan is proven to cost the least, nor below a version that is proven not to cost less than the best so far. Groups
 * that several versions share are searched once.
 */

import type { Paper, Piece } from "@sheetwright/cards";
import type { CutNode, Layout, Packing, Problem } from "@sheetwright/packing";
import { groupPapers } from "../group/group-papers.js";
import { type GroupTask, groupProblem } from "../group/group-problem.js";
import { type Division, divideTask } from "../strips/divide-task.js";
import { mostInStrips, type StripWorkshop } from "../strips/strip-forms.js";
import { compareAims } from "./aims.js";
import { packDivided } from "./find-strips.js";
import { type GroupSearch, proven, type Search } from "./group-search.js";
import { isWithin, type LesserVersion, lesserVersions } from "./lesser-versions.js";
import { restate } from "./restate.js";

/** A group of papers as it was searched, one version of it. */
export interface SearchedGroup {
  /** What was asked of it: the task, or that with die blanks in strips where these save paper. */
  readonly task: GroupTask;
  readonly packing: Packing;
  /** How its die blanks are cut; empty where each is cut by itself. */
  readonly division: Division;
  /** The packing with single blanks. */
  readonly single: Packing;
}

/** Searches a task for pieces as they are. */
export type SearchTask<Searched extends SearchedGroup> = (
  task: GroupTask,
  pieces: readonly Piece[],
) => Search<Searched>;

/** The best of a group as it is, which was searched before, and of its lesser versions. */
export function* searchVersions<Searched extends SearchedGroup>(
  task: GroupTask,
  pieces: readonly Piece[],
  papers: readonly Paper[],
  workshop: StripWorkshop,
  first: Searched,
  searchTask: SearchTask<Searched>,
  search: GroupSearch,
): Search<Searched> {
  // A bound holds for single blanks only.
  const mayBeStrips = mostInStrips(task, pieces, workshop).size > 0;
  if (!mayBeStrips && isLeast(first)) return first;
  const hopeless = hopelessCards(task, pieces);
  const known = new Map<string, Searched>();
  const closed: LesserVersion[] = [];
  let best = first;
  for (const version of lesserVersions(papers, pieces)) {
    if (closed.some((other) => isWithin(version, other))) continue;
    const parts: Searched[] = [];
    let isComplete = true;
    for (const cluster of groupPapers(version, new Set())) {
      if (search.isStopped()) return best;
      const own = groupProblem(cluster, workshop, hopeless);
      const key = JSON.stringify(own.problem);
      const part: Searched = known.get(key) ?? (yield* searchTask(own, cluster.pieces));
      known.set(key, part);
      parts.push(part);
      isComplete = part.packing.outcome === "complete";
      if (!isComplete) break;
    }
    if (isComplete) {
      const joined = yield* joinParts(task, pieces, workshop, best, parts, search);
      if (best.packing.outcome !== "complete" || compareAims(joined, best) < 0) best = { ...best, ...joined };
    }
    if (!mayBeStrips && isNoLess(task, best.packing, parts)) closed.push(version);
  }
  return best;
}

/** Whether no other plan can cost less, or none has all pieces. */
function isLeast({ packing, single }: SearchedGroup): boolean {
  return single.outcome === "short" || (packing.outcome === "complete" && packing.proven);
}

/** Whether the groups of a version are proven not to come to less than a plan, by the costs that it is judged by. */
function isNoLess(task: GroupTask, best: Packing, parts: readonly SearchedGroup[]): boolean {
  const costs = new Map(task.problem.sheets.map(({ id, cost }) => [id, cost]));
  let least = 0n;
  for (const { single, task: own } of parts) {
    const { bound } = single;
    if (bound.aim !== "all") return false;
    if (bound.cost === null) return true;
    if (own.problem.sheets.some(({ id, cost }) => cost !== costs.get(id))) return false;
    least += BigInt(bound.cost);
  }
  return best.outcome === "complete" && least >= BigInt(best.cost);
}

/** Cards that cannot be completed, as the task was told: their pieces belong to no set. */
function hopelessCards({ problem }: GroupTask, pieces: readonly Piece[]): ReadonlySet<number> {
  const without = new Set(problem.kinds.filter(({ set }) => set === undefined).map(({ id }) => id));
  return new Set(
    pieces.filter(({ id, quantity }) => quantity > 0 && without.has(id)).map(({ card }) => card),
  );
}

/** The plans of the groups that a version falls into, as one plan of the whole group. */
function* joinParts(
  task: GroupTask,
  pieces: readonly Piece[],
  workshop: StripWorkshop,
  best: SearchedGroup,
  parts: readonly SearchedGroup[],
  search: GroupSearch,
): Search<Pick<SearchedGroup, "task" | "packing" | "division">> {
  const division: Division = new Map(parts.flatMap((part) => [...part.division]));
  const isDivided = division.size > 0;
  const whole = isDivided ? divideTask(task, pieces, division, workshop).task : task;
  const layouts = parts.flatMap(({ task: own, packing }) =>
    packing.layouts.map((layout) => restateForms(layout, own.problem, whole.problem)),
  );
  const searches = parts.map(({ packing }) => packing);
  // A bound holds for the kinds it was found for, and strips make other kinds.
  const bounding = isDivided
    ? (yield* packDivided({ task: whole, cuts: [] }, division, search, "strips", "quick")).packing
    : best.single;
  const packing = restate(whole.problem, layouts, bounding.bound, [bounding, ...searches]);
  return { task: whole, packing: proven(whole.problem, packing), division };
}

/** A layout whose shares name the forms of another problem with the same kinds. */
function restateForms(layout: Layout, from: Problem, to: Problem): Layout {
  const own = new Map(from.kinds.map((kind) => [kind.id, kind]));
  const others = new Map(to.kinds.map((kind) => [kind.id, kind]));
  const restated = (node: CutNode): CutNode => {
    if (node.type === "split")
      return { ...node, parts: node.parts.map((part) => ({ ...part, node: restated(part.node) })) };
    if (node.type !== "piece") return node;
    return {
      ...node,
      shares: node.shares.map((share) => {
        const size = own.get(share.kind)?.forms[share.form];
        const forms = others.get(share.kind)?.forms ?? [];
        const same = forms.findIndex(({ width, height }) => width === size?.width && height === size.height);
        if (same >= 0) return { ...share, form: same };
        // A strip of what is round has one form where it may lie either way.
        const turned = forms.findIndex(
          ({ width, height }) => width === size?.height && height === size.width,
        );
        return { ...share, form: turned, turned: !share.turned };
      }),
    };
  };
  return { ...layout, tree: restated(layout.tree) };
}
