/** A whole search: first plans, a best layout of one sheet where that can be found, starts of ruin and recreate. */
import { columnPlan } from "../columns/column-plan.js";
import { wantsColumns } from "../columns/wants-columns.js";
import type { Bound } from "../model.js";
import type { Progress } from "../progress.js";
import type { LinearSolver } from "../solver.js";
import type { Demand } from "./best-fit.js";
import type { Budget } from "./budget.js";
import type { CompiledProblem } from "./compiled-problem.js";
import { demandOf, firstStarts } from "./demand.js";
import { type Draft, isBetterDraft } from "./draft.js";
import { exactFill } from "./exact-fill.js";
import { type Improvement, improvementWork, improvePlan } from "./improve-plan.js";
import { blockPlan } from "./joins/block-plan.js";
import { joinedPlan } from "./joins/joined-plan.js";
import { wantsJoins } from "./joins/wants-joins.js";
import type { Meter } from "./meter.js";
import { oneStart } from "./one-start.js";
import { randomStream } from "./random-stream.js";
import { exactLayoutsOf } from "./repeat-layouts.js";
import { SHELF_RULES } from "./shelves.js";

/** First plans made at least before a proven one ends the search: among equals a later one may be handier. */
const LEAST_STARTS = 24;

/** What the first plans count for in {@link Progress.share}. */
export const FIRST_SHARE = 0.1;

/** The streams of random numbers that columns and joins (one each, downwards) draw from; others have those from 0 on. */
const COLUMN_STREAM = 0xffff_ffff;
const JOIN_STREAM = 0xffff_fffe;

/** What is searched, and how far. */
export interface Search {
  readonly problem: CompiledProblem;
  readonly seed: number;
  readonly budget: Budget;
  /** Undefined where none was passed in. */
  readonly solver: LinearSolver | undefined;
  /** A plan to begin with, beside those that are made. */
  readonly known?: Draft | undefined;
  /** Whether a plan is so good that the search may end. */
  readonly isEnough: (draft: Draft) => boolean;
  /** The best bound so far; undefined where none is looked for. */
  readonly bound?: () => Bound;
  /** Whether it is proven that no plan has every piece; then only first plans are made. */
  readonly isImpossible: () => boolean;
  /** Looks for a better bound, by which a plan may be good enough or none possible. */
  readonly sharpen: () => void;
}

/** What a search came to. */
export interface Found {
  readonly best: Draft;
  /** Starts finished. */
  readonly starts: number;
  /** Steps of ruin and recreate. */
  readonly steps: number;
  /** Whether the best plan is good enough. */
  readonly proven: boolean;
  readonly cancelled: boolean;
}

type Steps<Result> = Generator<Progress, Result, boolean | undefined>;

/** Runs a search from beginning to end. */
export function* searchPlan(search: Search, meter: Meter): Steps<Found> {
  const first = yield* firstPlans(search, meter);
  if (first.isLast) return first.found;
  let { best } = first.found;
  const { starts: firstStarts } = first.found;
  const later = laterStarts(search);
  const starts = firstStarts + later;
  const each = improvementWork(best, search.budget.each);
  let steps = 0;
  for (let start = 0; start < later; start++) {
    const improving = improveFrom(search, first.found, start, meter);
    const began = meter.work;
    let step = improving.next();
    while (!step.done) {
      const done = start + Math.min(1, (meter.work - began) / each);
      const progress: Progress = {
        share: FIRST_SHARE + (1 - FIRST_SHARE) * (done / later),
        startsDone: firstStarts + start,
        starts,
        work: meter.work,
        best: summaryOf(best),
      };
      if ((yield progress) === true) meter.stopped = true;
      step = improving.next();
    }
    steps += step.value.steps;
    if (isBetterDraft(search.problem, step.value.best, best)) best = step.value.best;
    const done = firstStarts + start + 1;
    if (search.isEnough(best)) return { best, starts: done, steps, proven: true, cancelled: false };
    if (meter.stopped) return { best, starts: done - 1, steps, proven: false, cancelled: true };
  }
  return { best, starts, steps, proven: false, cancelled: false };
}

/** How many starts follow the first plans. */
export function laterStarts({ problem, budget }: Search): number {
  const special = specialStarts(problem, budget);
  return special.length + (special.includes("blocks") ? budget.afterBlocks : budget.starts);
}

type SpecialStart = "columns" | "joins" | "blocks";

/** The starts that come before those of ruin and recreate. */
function specialStarts(problem: CompiledProblem, budget: Budget): readonly SpecialStart[] {
  const columns: SpecialStart[] = wantsColumns(problem, budget) ? ["columns"] : [];
  if (!wantsJoins(problem, budget)) return columns;
  return [...columns, "joins", ...Array.from({ length: budget.blocks }, (): SpecialStart => "blocks")];
}

/**
 * One start after {@link firstPlans}, independent of all others: the first by columns, by joins and with blocks where these
 * are wanted, all others by ruin and recreate.
 */
export function improveFrom(
  search: Search,
  first: Found,
  start: number,
  meter: Meter,
): Generator<void, Improvement, void> {
  const { problem, seed, budget, isEnough, solver } = search;
  const demand = demandOf(problem);
  const { best } = first;
  const work = improvementWork(best, budget.each);
  const special = specialStarts(problem, budget);
  if (special[start] === "columns") {
    const random = randomStream(seed, COLUMN_STREAM);
    const bound = search.bound?.();
    const leastCost = bound?.aim === "all" ? Number(bound.cost) : 0;
    return columnPlan({ problem, demand, first: best, budget, leastCost, random, meter, solver, isEnough });
  }
  if (special[start] === "joins" || special[start] === "blocks") {
    const random = randomStream(seed, JOIN_STREAM - start);
    const { joins, mixes } = budget;
    const exact = exactLayoutsOf(problem);
    const begin = { problem, demand, first: best, joins, work, seed, random, meter, exact, isEnough, mixes };
    return special[start] === "joins" ? joinedPlan(begin) : blockPlan(begin);
  }
  const random = randomStream(seed, first.starts + start - special.length);
  return improvePlan(problem, demand, best, random, meter, work, isEnough, budget.mixes);
}

/** Makes first plans; `isLast` where no start of ruin and recreate is to follow. */
export function* firstPlans(
  search: Search,
  meter: Meter,
): Steps<{ readonly found: Found; readonly isLast: boolean }> {
  const { problem, budget } = search;
  const demand = demandOf(problem);
  const numbers = firstStarts(problem, demand, budget);
  const starts = numbers.length;
  const made = yield* plansFromNothing(search, demand, numbers, meter);
  if (made.cancelled || made.proven || search.isImpossible()) return { found: made, isLast: true };
  search.sharpen();
  const found = { ...made, proven: search.isEnough(made.best) };
  if (found.proven || search.isImpossible()) return { found, isLast: true };
  const exact = exactFill(problem, demand, budget.exact);
  let step = exact.next();
  while (!step.done) {
    const progress: Progress = {
      share: FIRST_SHARE,
      startsDone: starts,
      starts: starts + laterStarts(search),
      work: meter.work,
      best: summaryOf(found.best),
    };
    if ((yield progress) === true) return { found: { ...found, cancelled: true }, isLast: true };
    step = exact.next();
  }
  if (step.value === undefined) return { found, isLast: false };
  meter.work += step.value.steps;
  const best = isBetterDraft(problem, step.value.draft, found.best) ? step.value.draft : found.best;
  const proven = search.isEnough(best);
  return { found: { ...found, best, proven }, isLast: proven || step.value.exact };
}

/** Plans made from nothing: shelves, best fit by many rules, repeated layouts. */
function* plansFromNothing(
  search: Search,
  demand: Demand,
  numbers: readonly number[],
  meter: Meter,
): Steps<Found> {
  const { problem, seed, isEnough } = search;
  const exact = exactLayoutsOf(problem);
  // A first plan is always finished; shelves leave groups out, so groups need one start more.
  const needed = problem.groups > 0 ? numbers.indexOf(SHELF_RULES.length) + 1 : 1;
  const starts = numbers.length;
  let best: Draft | undefined = search.known;
  let asked = false;
  meter.stopped = false;
  for (const [done, start] of numbers.entries()) {
    const making = oneStart(problem, demand, start, seed, meter, exact);
    let step = making.next();
    while (!step.done) {
      const progress: Progress = {
        share: (FIRST_SHARE * done) / starts,
        startsDone: done,
        starts: starts + laterStarts(search),
        work: meter.work,
        best: best && summaryOf(best),
      };
      asked = (yield progress) === true || asked;
      meter.stopped = asked && done >= needed;
      step = making.next();
    }
    const draft = step.value;
    if (draft && (best === undefined || isBetterDraft(problem, draft, best))) best = draft;
    if (best && asked && done + 1 >= needed) {
      return { best, starts: done, steps: 0, proven: false, cancelled: true };
    }
    if (best && done + 1 >= LEAST_STARTS && isEnough(best)) {
      return { best, starts: done + 1, steps: 0, proven: true, cancelled: false };
    }
  }
  const found = best as Draft;
  return { best: found, starts, steps: 0, proven: isEnough(found), cancelled: false };
}

/** A plan in the words of {@link Progress}. */
export function summaryOf(draft: Draft): NonNullable<Progress["best"]> {
  const sheets = draft.layouts.reduce((sum, layout) => sum + layout.run, 0);
  return { sheets, cost: draft.cost, everything: draft.lacking === 0 };
}
