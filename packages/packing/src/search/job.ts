import { lowerBounds } from "../bounds/lower-bound.js";
import type { Bound, Effort, Packing, Problem } from "../model.js";
import type { PackOptions } from "../pack.js";
import { checkProblem } from "../problem/check-problem.js";
import { ProblemError } from "../problem/problem-error.js";
import type { Progress } from "../progress.js";
import { answer, reaches } from "./answer.js";
import { BUDGETS, type Budget } from "./budget.js";
import { type CompiledProblem, compileProblem } from "./compiled-problem.js";
import { completeSets } from "./complete-sets.js";
import { type Draft, mergeRuns } from "./draft.js";
import type { Meter } from "./meter.js";
import { polishLayouts } from "./polish-layouts.js";
import { sameForLess } from "./same-for-less.js";
import { type Found, type Search, searchPlan, summaryOf } from "./search.js";

/** A problem and its options, checked, with its bound. */
export interface Job extends Search {
  readonly source: Problem;
  readonly effort: Effort;
  readonly narrowestHold: number;
  /** The best bound so far. */
  readonly bound: () => Bound;
}

/** The short search for one number of complete sets, and for the same pieces from cheaper sheets. */
const SETS_BUDGET: Budget = {
  work: 1_500_000,
  most: 24,
  exact: 0,
  starts: 1,
  afterBlocks: 1,
  each: 500_000,
  columns: 0,
  joins: 0,
  blocks: 0,
  mixes: false,
  tries: 0,
};

/** Checks a problem and its options. Throws ProblemError or RangeError. */
export function readJob(source: Problem, options: PackOptions): Job {
  const effort = options.effort ?? "standard";
  const seed = options.seed ?? 1;
  const narrowestHold = options.narrowestHold ?? 0;
  const budget = BUDGETS[effort];
  if (budget === undefined)
    throw new RangeError(`effort must be quick, standard or thorough, and is '${effort}'.`);
  if (!Number.isSafeInteger(seed) || seed < 0)
    throw new RangeError(`seed must be a whole number from 0, and is ${seed}.`);
  if (!Number.isSafeInteger(narrowestHold) || narrowestHold < 0) {
    throw new RangeError(`narrowestHold must be a whole number from 0, and is ${narrowestHold}.`);
  }
  const findings = checkProblem(source);
  if (findings.length > 0) throw new ProblemError(findings);
  const problem = compileProblem(source);
  const { solver } = options;
  return { source, problem, effort, seed, narrowestHold, budget, solver, ...limitsOf(problem, effort) };
}

/** What the bounds say of a search, the better ones on demand. */
function limitsOf(
  problem: CompiledProblem,
  effort: Effort,
): Pick<Job, "bound" | "sharpen" | "isEnough" | "isImpossible"> {
  const bounds = lowerBounds(problem, effort);
  // The first one is always there.
  let bound = bounds.next().value as Bound;
  return {
    bound: () => bound,
    sharpen: () => {
      bound = bounds.next().value ?? bound;
    },
    // A plan may be worth what the bound says and still lack copies that must be there.
    isEnough: (draft) => draft.lacking === 0 && reaches(problem, draft, bound),
    isImpossible: () => bound.aim === "all" && bound.cost === null,
  };
}

/** A search on the way to complete sets: for all pieces of a problem, or for more value than a known plan has. */
function searchSets(
  job: Job,
  source: Problem,
  known: Draft | undefined,
  meter: Meter,
): ReturnType<typeof searchPlan> {
  const { seed, effort, solver } = job;
  const problem = compileProblem(source);
  if (known === undefined) {
    const isEnough: Search["isEnough"] = (draft) => draft.lacking === 0;
    const unbounded = { isImpossible: () => false, sharpen: () => {}, isEnough };
    return searchPlan({ problem, seed, solver, budget: SETS_BUDGET, ...unbounded }, meter);
  }
  const { bound: _, ...limits } = limitsOf(problem, effort);
  return searchPlan({ problem, seed, solver, budget: job.budget, known, ...limits }, meter);
}

/** Makes an answer of what a search has found: complete sets where pieces are missing, every layout laid once more. */
export function* finishJob(
  job: Job,
  found: Found,
  meter: Meter,
): Generator<Progress, Packing, boolean | undefined> {
  const { source, problem, effort, seed, narrowestHold, budget } = job;
  let { best, cancelled } = found;
  if (source.aim === "all" && best.lacking > 0 && !cancelled) {
    const searching = completeSets(source, best, (sets, known) => searchSets(job, sets, known, meter));
    // What these searches begin and find is no progress of the whole one until they end.
    let step = searching.next();
    while (!step.done) step = searching.next(yield progressAfter(found.starts, best, meter));
    const sets = step.value;
    best = sets.best;
    cancelled = sets.cancelled;
  }
  if ((source.aim === "fill" || best.lacking > 0) && !cancelled) {
    const searching = sameForLess(problem, best, (same) => {
      const compiled = compileProblem(same);
      const { bound: _, ...limits } = limitsOf(compiled, "quick");
      return searchPlan(
        { problem: compiled, seed, solver: job.solver, budget: SETS_BUDGET, ...limits },
        meter,
      );
    });
    let step = searching.next();
    while (!step.done) step = searching.next(yield progressAfter(found.starts, best, meter));
    ({ best, cancelled } = step.value);
  }
  const polishing = polishLayouts(problem, best.layouts, narrowestHold, budget.tries, seed, meter);
  meter.stopped = cancelled;
  let step = polishing.next();
  while (!step.done) {
    if ((yield progressAfter(found.starts, best, meter)) === true) {
      meter.stopped = true;
      cancelled = true;
    }
    step = polishing.next();
  }
  const layouts = mergeRuns(problem, step.value);
  return answer(problem, layouts, best, job.bound(), {
    effort,
    seed,
    lp: job.solver?.name ?? "none",
    starts: found.starts,
    steps: found.steps,
    work: meter.work,
    ended: cancelled ? "cancelled" : found.proven ? "proven" : "finished",
  });
}

/** Progress once all starts are done. */
function progressAfter(starts: number, best: Found["best"], { work }: Meter): Progress {
  return { share: 1, startsDone: starts, starts, work, best: summaryOf(best) };
}
