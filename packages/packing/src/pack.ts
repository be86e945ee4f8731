import { lowerBound } from "./bounds/lower-bound.js";
import type { Bound, Effort, KindCount, Layout, Packing, Problem } from "./model.js";
import { checkProblem } from "./problem/check-problem.js";
import { ProblemError } from "./problem/problem-error.js";
import type { Demand } from "./search/best-fit.js";
import { type CompiledProblem, compileProblem } from "./search/compiled-problem.js";
import { completeSets } from "./search/complete-sets.js";
import { type Draft, isBetterDraft, mergeRuns } from "./search/draft.js";
import { improvementWork, improvePlan } from "./search/improve-plan.js";
import { type Meter, newMeter } from "./search/meter.js";
import { MOST_SINGLE_COPIES, oneStart } from "./search/one-start.js";
import { polishLayouts } from "./search/polish-layouts.js";
import { randomStream } from "./search/random-stream.js";
import { exactLayoutsOf } from "./search/repeat-layouts.js";
import { SHELF_RULES } from "./search/shelves.js";

/** How to search. */
export interface PackOptions {
  /** Work to do (default `standard`). */
  readonly effort?: Effort | undefined;
  /** A whole number from 0; the same seed gives the same packing everywhere (default 1). */
  readonly seed?: number | undefined;
  /**
   * The narrowest part the tool can hold (default 0): pieces are laid so that narrow strips come off wide parts where the
   * same pieces allow it. A wish: it never costs a sheet, and {@link verify} does not ask for it.
   */
  readonly narrowestHold?: number | undefined;
}

/** How far a search is. */
export interface Progress {
  /** Starts finished, and starts to be made unless the best plan is proven before. */
  readonly startsDone: number;
  readonly starts: number;
  /** Places looked at so far. */
  readonly work: number;
  /** The best plan so far. */
  readonly best: { readonly sheets: number; readonly cost: number; readonly everything: boolean } | undefined;
}

/** What {@link packAsync} takes besides. */
export interface PackAsyncOptions extends PackOptions {
  /** Ends the search early once `aborted` is true; the best plan so far is returned. */
  readonly signal?: { readonly aborted: boolean } | undefined;
  /** Gives way to other work between steps, such as `() => new Promise((done) => setTimeout(done))`. */
  readonly pause?: (() => Promise<void>) | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
}

/** Steps (about a millisecond each) between two pauses of {@link packAsync}. */
const STEPS_PER_PAUSE = 8;

/** Starts made at least before a proven plan ends the search: among equals it may still find a handier one. */
const LEAST_STARTS = 24;

interface Budget {
  /** Places to look at for first plans, all together. */
  readonly work: number;
  /** First plans at most. */
  readonly most: number;
  /** Starts of ruin and recreate, each from the best first plan. */
  readonly starts: number;
  /** Work of one such start for 100 pieces or more; for fewer it is less in proportion. */
  readonly each: number;
  /** Tries to lay the layouts found once more, all together. */
  readonly tries: number;
}

const BUDGET: Readonly<Record<Effort, Budget>> = {
  quick: { work: 1_000_000, most: 60, starts: 1, each: 1_500_000, tries: 240 },
  standard: { work: 3_000_000, most: 240, starts: 2, each: 20_000_000, tries: 800 },
  thorough: { work: 12_000_000, most: 1_000, starts: 8, each: 50_000_000, tries: 4_000 },
};

/**
 * Packs the pieces of a problem on its sheets. What does not fit is a result (`outcome`, `missing`), not an error.
 *
 * Throws {@link ProblemError} where the problem cannot be understood, RangeError for a bad seed or effort.
 *
 * @example
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 10, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "cream", width: 12, height: 12 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * const packing = pack(problem);
 * packing.layouts.map(({ run }) => run) // => [3, 1]
 * packing.bound.sheets // => 3
 * packing.proven // => false
 * pack({ ...problem, sheets: [{ ...problem.sheets[0], stock: 2 }] }).missing // => [{ kind: "mat", count: 4 }]
 * pack({ ...problem, mode: "stopped" }) // throws ProblemError: cannot be planned yet
 */
export function pack(problem: Problem, options: PackOptions = {}): Packing {
  const steps = packSteps(problem, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * Like {@link pack}, pausing between steps. Pausing never changes the result; a search that is cut short returns its best
 * plan so far with `search.ended` "cancelled". Rejects as {@link pack} throws.
 *
 * @example
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 10, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "cream", width: 12, height: 12 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * const signal = { aborted: false };
 * const onProgress = () => {
 *   signal.aborted = true;
 * };
 * const packing = await packAsync(problem, { signal, onProgress });
 * packing.search.ended // => "cancelled"
 * packing.outcome // => "complete"
 */
export async function packAsync(problem: Problem, options: PackAsyncOptions = {}): Promise<Packing> {
  const steps = packSteps(problem, options);
  let stop = options.signal?.aborted ?? false;
  for (let count = 1; ; count++) {
    const step = count === 1 ? steps.next() : steps.next(stop);
    if (step.done) return step.value;
    options.onProgress?.(step.value);
    if (count % STEPS_PER_PAUSE === 0) await options.pause?.();
    stop = options.signal?.aborted ?? false;
  }
}

/**
 * The search as a generator that yields after fixed amounts of work, for callers with a scheduler of their own. Send
 * `true` to end it early. Throws as {@link pack} does.
 *
 * @example
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 10, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "cream", width: 12, height: 12 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * const steps = packSteps(problem);
 * let step = steps.next();
 * step.value.startsDone // => 0
 * while (!step.done) step = steps.next();
 * JSON.stringify(step.value) === JSON.stringify(pack(problem)) // => true
 */
export function* packSteps(
  problem: Problem,
  options: PackOptions = {},
): Generator<Progress, Packing, boolean | undefined> {
  const effort = options.effort ?? "standard";
  const seed = options.seed ?? 1;
  const narrowestHold = options.narrowestHold ?? 0;
  const budget = BUDGET[effort];
  if (budget === undefined)
    throw new RangeError(`effort must be quick, standard or thorough, and is '${effort}'.`);
  if (!Number.isSafeInteger(seed) || seed < 0)
    throw new RangeError(`seed must be a whole number from 0, and is ${seed}.`);
  if (!Number.isSafeInteger(narrowestHold) || narrowestHold < 0) {
    throw new RangeError(`narrowestHold must be a whole number from 0, and is ${narrowestHold}.`);
  }
  const findings = checkProblem(problem);
  if (findings.length > 0) throw new ProblemError(findings);

  const compiled = compileProblem(problem);
  const bound = lowerBound(compiled);
  const meter = newMeter();
  const run = yield* search(compiled, bound, seed, budget, meter, (draft) => reaches(compiled, draft, bound));
  let best = run.best;
  let cancelled = run.cancelled;
  if (problem.aim === "all" && best.lacking > 0 && !cancelled) {
    const sets = yield* completeSets(problem, best, (fill) => searchSets(fill, seed, meter));
    best = sets.best;
    cancelled = sets.cancelled;
  }
  const polishing = polishLayouts(compiled, best.layouts, narrowestHold, budget.tries, seed, meter);
  meter.stopped = cancelled;
  let step = polishing.next();
  while (!step.done) {
    if (
      (yield { startsDone: run.starts, starts: run.starts, work: meter.work, best: summary(best) }) === true
    ) {
      meter.stopped = true;
      cancelled = true;
    }
    step = polishing.next();
  }
  const layouts = mergeRuns(compiled, step.value);
  return answer(compiled, layouts, best, bound, {
    effort,
    seed,
    lp: "none",
    starts: run.starts,
    steps: run.steps,
    work: meter.work,
    ended: cancelled ? "cancelled" : run.proven ? "proven" : "finished",
  });
}

interface SearchResult {
  readonly best: Draft;
  readonly starts: number;
  /** Ruin-and-recreate steps. */
  readonly steps: number;
  readonly proven: boolean;
  readonly cancelled: boolean;
}

/** First plans, then starts of ruin and recreate from the best of them. */
function* search(
  problem: CompiledProblem,
  bound: Bound | undefined,
  seed: number,
  budget: Budget,
  meter: Meter,
  isEnough: (draft: Draft) => boolean,
): Generator<Progress, SearchResult, boolean | undefined> {
  const demand = demandOf(problem);
  const firstStarts = startsFor(problem, demand, budget);
  const starts = firstStarts + budget.starts;
  const first = yield* firstPlans(problem, demand, seed, firstStarts, starts, meter, isEnough);
  if (first.cancelled || first.proven || (bound?.aim === "all" && bound.cost === null)) return first;
  let { best } = first;
  let steps = 0;
  const each = improvementWork(best, budget.each);
  for (let start = 0; start < budget.starts; start++) {
    const random = randomStream(seed, firstStarts + start);
    const improving = improvePlan(problem, demand, first.best, random, meter, each, isEnough);
    let step = improving.next();
    while (!step.done) {
      const startsDone = firstStarts + start;
      const asked = yield { startsDone, starts, work: meter.work, best: summary(best) };
      if (asked === true) meter.stopped = true;
      step = improving.next();
    }
    steps += step.value.steps;
    if (isBetterDraft(problem, step.value.best, best)) best = step.value.best;
    const done = firstStarts + start + 1;
    if (meter.stopped) return { best, starts: done - 1, steps, proven: false, cancelled: true };
    if (isEnough(best)) return { best, starts: done, steps, proven: true, cancelled: false };
  }
  return { best, starts, steps, proven: false, cancelled: false };
}

/** Plans made from nothing: shelves, best fit by many rules, repeated layouts. */
function* firstPlans(
  problem: CompiledProblem,
  demand: Demand,
  seed: number,
  starts: number,
  allStarts: number,
  meter: Meter,
  isEnough: (draft: Draft) => boolean,
): Generator<Progress, SearchResult, boolean | undefined> {
  const exact = exactLayoutsOf(problem);
  // A first plan is always finished; shelves leave groups out, so groups need one start more.
  const needed = problem.groups > 0 ? SHELF_RULES.length + 1 : 1;
  let best: Draft | undefined;
  let asked = false;
  meter.stopped = false;
  for (let start = 0; start < starts; start++) {
    const making = oneStart(problem, demand, start, seed, meter, exact);
    let step = making.next();
    while (!step.done) {
      const progress: Progress = {
        startsDone: start,
        starts: allStarts,
        work: meter.work,
        best: best && summary(best),
      };
      asked = (yield progress) === true || asked;
      meter.stopped = asked && start >= needed;
      step = making.next();
    }
    const draft = step.value;
    if (draft && (best === undefined || isBetterDraft(problem, draft, best))) best = draft;
    if (best && asked && start + 1 >= needed) {
      return { best, starts: start, steps: 0, proven: false, cancelled: true };
    }
    if (best && start + 1 >= LEAST_STARTS && isEnough(best)) {
      return { best, starts: start + 1, steps: 0, proven: true, cancelled: false };
    }
  }
  const found = best as Draft;
  return { best: found, starts, steps: 0, proven: isEnough(found), cancelled: false };
}

/** The short search for one number of complete sets. */
function searchSets(
  problem: Problem,
  seed: number,
  meter: Meter,
): Generator<Progress, SearchResult, boolean | undefined> {
  const budget: Budget = { work: 1_500_000, most: 24, starts: 1, each: 500_000, tries: 0 };
  const compiled = compileProblem(problem);
  return search(compiled, undefined, seed, budget, meter, (draft) => draft.lacking === 0);
}

function summary(draft: Draft): NonNullable<Progress["best"]> {
  const sheets = draft.layouts.reduce((sum, layout) => sum + layout.run, 0);
  return { sheets, cost: draft.cost, everything: draft.lacking === 0 };
}

/** What there is to place: never more copies of a kind than all sheets together could hold by area. */
function demandOf(problem: CompiledProblem): Demand {
  const stock = problem.sheets.map((sheet) => sheet.stock);
  const wanted = problem.kinds.map((kind) => {
    if (Number.isFinite(kind.quantity) && problem.source.aim === "all") return kind.quantity;
    let most = 0;
    for (const sheet of problem.sheets) {
      const smallest = Math.min(...(kind.lays[sheet.index] ?? []).map((lay) => lay.width * lay.height));
      if (Number.isFinite(smallest))
        most += sheet.stock * Math.floor((sheet.width * sheet.height) / smallest);
    }
    return Math.min(kind.quantity, most);
  });
  return { wanted, stock };
}

/** Starts that an effort affords: a function of the problem alone, so that it is the same for any way of running them. */
function startsFor(problem: CompiledProblem, demand: Demand, budget: Budget): number {
  const copies = demand.wanted.reduce((sum, count) => sum + count, 0);
  const kinds = problem.kinds.length;
  const ways = problem.kinds.some((kind) => kind.lays.some((lays) => lays.length > 1)) ? 2 : 1;
  // One by one, every copy looks at about half as many free rectangles as there are copies; repeated layouts look at the
  // few on one sheet.
  const workPerStart =
    copies > MOST_SINGLE_COPIES + 4 * kinds ? 40_000 + 400 * kinds : ways * copies * (copies / 2 + 20) + 1;
  const afforded = Math.floor(budget.work / workPerStart);
  const bestFits = afforded > 0 ? 4 : 1;
  return Math.max(SHELF_RULES.length + bestFits, Math.min(budget.most, afforded));
}

function reaches(problem: CompiledProblem, draft: Draft, bound: Bound | undefined): boolean {
  if (bound === undefined) return false;
  if (bound.aim === "fill") return BigInt(bound.value) === totals(problem, draft.placed).value;
  return draft.lacking === 0 && bound.cost !== null && BigInt(bound.cost) === costOf(draft);
}

function costOf(draft: Draft): bigint {
  return draft.layouts.reduce((sum, layout) => sum + BigInt(layout.run) * BigInt(layout.sheet.cost), 0n);
}

function totals(problem: CompiledProblem, placed: readonly number[]): { readonly value: bigint } {
  return {
    value: problem.kinds.reduce(
      (sum, kind) => sum + BigInt(placed[kind.index] ?? 0) * BigInt(kind.value),
      0n,
    ),
  };
}

function answer(
  problem: CompiledProblem,
  layouts: readonly Layout[],
  draft: Draft,
  bound: Bound,
  record: Packing["search"],
): Packing {
  const { mode, aim } = problem.source;
  const placed: KindCount[] = problem.kinds.map((kind) => ({
    kind: kind.id,
    count: draft.placed[kind.index] ?? 0,
  }));
  const missing: KindCount[] = problem.kinds
    .map((kind) => ({ kind: kind.id, count: kind.least - (draft.placed[kind.index] ?? 0) }))
    .filter((entry) => entry.count > 0);
  const cost = costOf(draft);
  const impossible = bound.aim === "all" && bound.cost === null;
  const outcome = missing.length === 0 ? "complete" : impossible ? "short" : "not-found";
  return {
    version: 1,
    mode,
    aim,
    outcome,
    layouts,
    placed,
    missing,
    sheets: layouts.reduce((sum, layout) => sum + layout.run, 0),
    cost: cost.toString(),
    value: totals(problem, draft.placed).value.toString(),
    bound,
    proven: outcome === "short" || (outcome === "complete" && reaches(problem, draft, bound)),
    search: record,
  };
}
