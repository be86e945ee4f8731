/**
 * One search spread over workers: its starts are independent of each other, so they may run anywhere and in any order.
 * Whoever has workers runs {@link packStart} in them; {@link joinStarts} makes the packing that {@link pack} would make.
 */
import type { CutNode, Effort, Packing, Problem } from "./model.js";
import type { PackOptions } from "./pack.js";
import { BUDGETS } from "./search/budget.js";
import { draftFromTrees, isBetterDraft } from "./search/draft.js";
import { finishJob, type Job, readJob } from "./search/job.js";
import { newMeter } from "./search/meter.js";
import { type Found, firstPlans, improveFrom } from "./search/search.js";

/** What one start came to: plain data that may be sent between threads. */
export interface StartResult {
  /** Number of the start, from 0. */
  readonly start: number;
  /** The sheets of its plan with their cut trees; `null` where the first plans are as good. */
  readonly sheets: readonly { readonly sheet: string; readonly run: number; readonly tree: CutNode }[] | null;
  /** True where its plan, or a first plan, is proven to be the best: starts with a higher number need not be made. */
  readonly proven: boolean;
  /** Ruin-and-recreate steps, and work done. */
  readonly steps: number;
  readonly work: number;
}

/**
 * How many starts an effort has.
 *
 * @throws RangeError for an effort that is none.
 *
 * @example
 * startCount("standard") // => 2
 */
export function startCount(effort: Effort): number {
  const budget = BUDGETS[effort];
  if (budget === undefined)
    throw new RangeError(`effort must be quick, standard or thorough, and is '${effort}'.`);
  return budget.starts;
}

/**
 * Runs one start of a search. It makes the first plans too, which takes some tens of milliseconds. Throws as
 * {@link pack} does, and RangeError for a start that the effort does not have.
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
  const job = readJob(problem, options);
  const { starts } = job.budget;
  if (!Number.isSafeInteger(start) || start < 0 || start >= starts) {
    throw new RangeError(`start must be a whole number from 0 to ${starts - 1}, and is ${start}.`);
  }
  const { first } = runFirstPlans(job);
  const none: StartResult = { start, sheets: null, proven: first.found.proven, steps: 0, work: 0 };
  if (first.isLast) return none;
  const meter = newMeter();
  const { best, steps } = lastOf(improveFrom(job, first.found, start, meter));
  if (!isBetterDraft(job.problem, best, first.found.best)) return { ...none, steps, work: meter.work };
  const sheets = best.layouts.map(({ sheet, run, tree }) => ({ sheet: sheet.id, run, tree: tree() }));
  return { start, sheets, proven: job.isEnough(best), steps, work: meter.work };
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
  const job = readJob(problem, options);
  const { first, meter } = runFirstPlans(job);
  let found = first.found;
  for (let start = 0; !first.isLast && start < job.budget.starts && !found.proven; start++) {
    const result = results.find((entry) => entry.start === start);
    if (result === undefined) {
      throw new RangeError(
        `The result of start ${start} of ${job.budget.starts} is missing. Run packStart for it.`,
      );
    }
    const draft = result.sheets && draftFromTrees(job.problem, result.sheets);
    const best = draft && isBetterDraft(job.problem, draft, found.best) ? draft : found.best;
    meter.work += result.work;
    found = {
      ...found,
      best,
      starts: found.starts + 1,
      steps: found.steps + result.steps,
      proven: job.isEnough(best),
    };
  }
  return lastOf(finishJob(job, found, meter));
}

function runFirstPlans(job: Job): {
  readonly first: { readonly found: Found; readonly isLast: boolean };
  readonly meter: ReturnType<typeof newMeter>;
} {
  const meter = newMeter();
  return { first: lastOf(firstPlans(job, meter)), meter };
}

/** Runs steps to their end. */
function lastOf<Result>(steps: Iterator<unknown, Result, undefined>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
