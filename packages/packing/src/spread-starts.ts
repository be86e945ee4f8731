/**
 * One search spread over workers: its starts are independent of each other, so they may run anywhere and in any order.
 * Whoever has workers runs {@link packStart} in them; {@link joinStarts} makes the packing that {@link pack} would make.
 */
import type { Bound, CutNode, Packing, Problem } from "./model.js";
import type { PackOptions } from "./pack.js";
import type { Progress } from "./progress.js";
import { reaches } from "./search/answer.js";
import type { CompiledProblem } from "./search/compiled-problem.js";
import { type Draft, draftFromTrees, draftOf, isBetterDraft } from "./search/draft.js";
import { improvementWork } from "./search/improve-plan.js";
import { finishJob, type Job, readJob } from "./search/job.js";
import { newMeter } from "./search/meter.js";
import { type Found, firstPlans, improveFrom, laterStarts, summaryOf } from "./search/search.js";

/** What one start came to: plain data that may be sent between threads. */
export interface StartResult {
  /** Number of the start, from 0. */
  readonly start: number;
  /** The sheets of its plan with their cut trees; `null` where the first plans are as good. */
  readonly sheets: readonly { readonly sheet: string; readonly run: number; readonly tree: CutNode }[] | null;
  /** True where its plan, or a first plan, is proven to be the best: starts with a higher number need not be made. */
  readonly proven: boolean;
  /** True where it was asked to end early. */
  readonly cancelled: boolean;
  /** What `sheets` come to, for {@link Progress}. */
  readonly best: NonNullable<Progress["best"]> | null;
  /** Ruin-and-recreate steps, and work done. */
  readonly steps: number;
  readonly work: number;
}

/** A start that found nothing. */
const NOTHING = { sheets: null, proven: false, cancelled: false, best: null, steps: 0, work: 0 } as const;

/** What the starts of a search begin with: plain data that may be sent between threads. */
export interface FirstPlans {
  /** The best first plan, as the search keeps it. */
  readonly layouts: readonly {
    readonly sheet: string;
    readonly run: number;
    readonly tree: CutNode;
    readonly counts: readonly (readonly [kind: number, count: number])[];
    readonly spread: number;
  }[];
  readonly best: NonNullable<Progress["best"]>;
  /** The best bound found by then. */
  readonly bound: Bound;
  /** Plans made, and the work they took. */
  readonly made: number;
  readonly work: number;
  readonly proven: boolean;
  readonly cancelled: boolean;
  /** Starts that may follow; none where the first plans are the last word. */
  readonly starts: number;
  /** Work of each of them, about. */
  readonly each: number;
}

/** One start to be made: plain data that may be sent between threads. */
export interface StartTask {
  readonly problem: Problem;
  /** Without a solver, which no thread can be sent. */
  readonly options: PackOptions;
  /** The name of the solver that the search has: where it is not `null`, whoever makes the start adds one to the options. */
  readonly solver: string | null;
  readonly start: number;
  readonly first: FirstPlans;
}

/**
 * How many starts a search has. Throws as {@link pack} does.
 *
 * @example
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 10, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "cream", width: 12, height: 12 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * startCount(problem, { effort: "quick" }) // => 1
 */
export function startCount(problem: Problem, options: PackOptions): number {
  return laterStarts(readJob(problem, options));
}

/** Makes the first plans of a search, with its progress; send `true` to end it early. Throws as {@link pack} does. */
export function* firstPlanSteps(
  problem: Problem,
  options: PackOptions,
): Generator<Progress, FirstPlans, boolean | undefined> {
  const job = readJob(problem, options);
  const meter = newMeter();
  const { found, isLast } = yield* firstPlans(job, meter);
  const { best, starts, proven, cancelled } = found;
  return {
    layouts: best.layouts.map(({ sheet, run, tree, counts, spread }) => ({
      sheet: sheet.id,
      run,
      tree: tree(),
      counts: [...counts],
      spread,
    })),
    best: summaryOf(best),
    bound: job.bound(),
    made: starts,
    work: meter.work,
    proven,
    cancelled,
    starts: isLast ? 0 : laterStarts(job),
    each: improvementWork(best, job.budget.each),
  };
}

/**
 * Runs one start of a search. It makes the first plans too, which takes some tens of milliseconds. Throws as
 * {@link pack} does, and RangeError for a start that the search does not have.
 *
 * @param start from 0 up to, not including, {@link startCount}.
 *
 * @example
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 10, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "cream", width: 12, height: 12 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * const { start, sheets, proven } = packStart(problem, { effort: "quick" }, 0);
 * [start, sheets, proven] // => [0, null, false]
 */
export function packStart(problem: Problem, options: PackOptions, start: number): StartResult {
  checkStart(start, startCount(problem, options));
  const first = lastOf(firstPlanSteps(problem, options));
  if (first.starts === 0) return { ...NOTHING, start, proven: first.proven };
  return lastOf(startSteps({ problem, options, start, first }));
}

/**
 * The start of a task as a generator that yields the work done so far after fixed amounts of it; send `true` to end it
 * early. Throws RangeError for a start that is none.
 *
 * @example
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 10, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "cream", width: 12, height: 12 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * const runStart = async (task) => {
 *   const steps = startSteps(task);
 *   for (;;) {
 *     const step = steps.next();
 *     if (step.done) return step.value;
 *   }
 * };
 * (await packSpread(problem, { lanes: 2, runStart })).sheets // => 4
 */
export function* startSteps({
  problem,
  options,
  start,
  first,
}: Omit<StartTask, "solver">): Generator<number, StartResult, boolean | undefined> {
  checkStart(start, first.starts);
  const job = jobAfter(readJob(problem, options), first);
  const found = foundFrom(job.problem, first);
  const meter = newMeter();
  const improving = improveFrom(job, found, start, meter);
  let step = improving.next();
  while (!step.done) {
    if ((yield meter.work) === true) meter.stopped = true;
    step = improving.next();
  }
  const { best, steps } = step.value;
  const { work, stopped } = meter;
  if (!isBetterDraft(job.problem, best, found.best))
    return { ...NOTHING, start, cancelled: stopped, steps, work };
  const sheets = best.layouts.map(({ sheet, run, tree }) => ({ sheet: sheet.id, run, tree: tree() }));
  const proven = job.isEnough(best);
  return { start, sheets, proven, cancelled: stopped && !proven, best: summaryOf(best), steps, work };
}

/**
 * Makes the packing of a search whose starts have been run: byte for byte what {@link pack} gives for the same problem and
 * options. Results may come in any order; those after the first proven one are not needed. Throws as {@link pack} does,
 * and RangeError where a result is missing or is none of this problem.
 *
 * @example
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 10, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "cream", width: 12, height: 12 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * const options = { effort: "standard", seed: 1 };
 * const results = [1, 0].map((start) => packStart(problem, options, start));
 * JSON.stringify(joinStarts(problem, options, results)) === JSON.stringify(pack(problem, options)) // => true
 */
export function joinStarts(problem: Problem, options: PackOptions, results: readonly StartResult[]): Packing {
  const first = lastOf(firstPlanSteps(problem, options));
  return lastOf(joinSteps({ problem, options, first }, results));
}

/**
 * {@link joinStarts} with the first plans at hand, as a generator that yields its progress; send `true` to end it early.
 *
 * @param isCut whether the search was ended early: then results may be missing, and the best of those there are counts.
 */
export function* joinSteps(
  { problem, options, first }: Omit<StartTask, "start" | "solver">,
  results: readonly StartResult[],
  isCut = false,
): Generator<Progress, Packing, boolean | undefined> {
  const job = jobAfter(readJob(problem, options), first);
  const meter = newMeter();
  meter.work = first.work;
  let found = foundFrom(job.problem, first);
  let cancelled = first.cancelled || results.some((result) => result.cancelled);
  for (let start = 0; start < first.starts && !found.proven; start++) {
    const result = results.find((entry) => entry.start === start);
    if (result === undefined) {
      cancelled = true;
      if (isCut) continue;
      throw new RangeError(
        `The result of start ${start} of ${first.starts} is missing. Run packStart for it.`,
      );
    }
    const draft = result.sheets && draftFromTrees(job.problem, result.sheets);
    const best = draft && isBetterDraft(job.problem, draft, found.best) ? draft : found.best;
    meter.work += result.work;
    found = {
      ...found,
      best,
      starts: found.starts + (result.cancelled ? 0 : 1),
      steps: found.steps + result.steps,
      proven: job.isEnough(best),
    };
  }
  // What ends early beyond a proven start takes nothing from its plan.
  if (found.proven) cancelled = first.cancelled;
  return yield* finishJob(job, { ...found, cancelled }, meter);
}

/** The job of a search as its first plans leave it. */
function jobAfter(job: Job, { bound }: FirstPlans): Job {
  return {
    ...job,
    bound: () => bound,
    isEnough: (draft) => draft.lacking === 0 && reaches(job.problem, draft, bound),
    isImpossible: () => bound.aim === "all" && bound.cost === null,
    sharpen: () => {},
  };
}

function foundFrom(problem: CompiledProblem, first: FirstPlans): Found {
  const { made: starts, proven, cancelled } = first;
  return { best: draftFrom(problem, first), starts, steps: 0, proven, cancelled };
}

function draftFrom(problem: CompiledProblem, { layouts }: FirstPlans): Draft {
  const sheets = new Map(problem.sheets.map((sheet) => [sheet.id, sheet]));
  return draftOf(
    problem,
    layouts.map(({ sheet: id, run, tree, counts, spread }) => {
      const sheet = sheets.get(id);
      if (sheet === undefined) throw new RangeError(`There is no sheet '${id}'.`);
      return { sheet, run, tree: () => tree, counts: new Map(counts), spread };
    }),
  );
}

function checkStart(start: number, starts: number): void {
  if (Number.isSafeInteger(start) && start >= 0 && start < starts) return;
  throw new RangeError(`start must be a whole number from 0 to ${starts - 1}, and is ${start}.`);
}

/** Runs steps to their end. */
function lastOf<Result>(steps: Iterator<unknown, Result, undefined>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
