import type { Effort, Packing, Problem } from "./model.js";
import type { Progress } from "./progress.js";
import { finishJob, readJob } from "./search/job.js";
import { newMeter } from "./search/meter.js";
import { searchPlan } from "./search/search.js";
import type { LinearSolver } from "./solver.js";
import { stepAsync } from "./step-async.js";

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
  /** Solves linear programs where {@link wantsSolver} says that one is of use; without, the search does so itself. */
  readonly solver?: LinearSolver | undefined;
}

/** What {@link packAsync} takes besides. */
export interface PackAsyncOptions extends PackOptions {
  /** Ends the search early once `aborted` is true; the best plan so far is returned. */
  readonly signal?: { readonly aborted: boolean } | undefined;
  /** Gives way to other work between steps, such as `() => new Promise((done) => setTimeout(done))`. */
  readonly pause?: (() => Promise<void>) | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
}

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
 * packing.bound.sheets // => 4
 * packing.proven // => true
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
export function packAsync(problem: Problem, options: PackAsyncOptions = {}): Promise<Packing> {
  return stepAsync(packSteps(problem, options), options, options.onProgress);
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
  const job = readJob(problem, options);
  const meter = newMeter();
  const found = yield* searchPlan(job, meter);
  return yield* finishJob(job, found, meter);
}
