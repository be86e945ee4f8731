/**
 * A plan by column generation: which layouts to repeat how often, where copies outnumber kinds.
 *
 * The program of patterns is solved in fractions, its prices ask for better patterns (generate-patterns.ts), and so on; then
 * its times are rounded down, and what is left over is planned by first plans and by ruin and recreate. Of what is left a
 * program of its own may be solved again, with patterns of no more copies than there are. Whatever layouts are found on the
 * way go into the pool, from which a solver may choose whole numbers of each.
 *
 * Source: P. Gilmore, R. Gomory, Multistage cutting stock problems of two and more dimensions, Operations Research 13 (1965);
 * residual problems as in G. Waescher, T. Gau, Heuristics for the integer one-dimensional cutting stock problem, OR Spektrum
 * 18 (1996). Work: by kinds, not by copies. Never worse than the plan it begins with; nothing is proven here.
 */
import { bestFit, type Demand } from "../search/best-fit.js";
import type { Budget } from "../search/budget.js";
import type { CompiledProblem } from "../search/compiled-problem.js";
import { type Draft, type DraftLayout, draftOf, isBetterDraft, layoutsOf } from "../search/draft.js";
import { type Improvement, improvementWork, improvePlan } from "../search/improve-plan.js";
import type { Meter } from "../search/meter.js";
import type { RandomStream } from "../search/random-stream.js";
import { PLAIN_STARTS, rulesOf } from "../search/rules.js";
import type { LinearSolver } from "../solver.js";
import { dropSurplus } from "./drop-surplus.js";
import { generatePatterns, patternMakers } from "./generate-patterns.js";
import { layoutOf, type Pattern, type PatternRows, patternOfLayout, patternRows } from "./pattern.js";
import { newPool, type PatternUse, poolProgram } from "./pattern-pool.js";

/** What a plan by columns is made of. */
export interface ColumnTask {
  readonly problem: CompiledProblem;
  readonly demand: Demand;
  /** A plan for all pieces, or the best there is. */
  readonly first: Draft;
  readonly budget: Budget;
  /** A cost that no plan is proven to be below. */
  readonly leastCost: number;
  readonly random: RandomStream;
  readonly meter: Meter;
  readonly solver: LinearSolver | undefined;
  readonly isEnough: (draft: Draft) => boolean;
}

/** Patterns cut so many times. */
interface Fixed {
  readonly pattern: Pattern;
  readonly run: number;
}

/** What rounding errors may add to a whole number. */
const ALMOST = 1e-6;
/** Shares of the work of ruin and recreate: for one rounding, and for the whole plan in the end. */
const ROUNDING_SHARE = 0.3;

/** Makes the plan; where it is stopped on the way, the best so far. */
export function* columnPlan(task: ColumnTask): Generator<void, Improvement, void> {
  const { problem, demand, first, budget, meter, isEnough } = task;
  const rows = patternRows(problem, demand.wanted);
  const pool = newPool();
  for (const layout of first.layouts) pool.add(patternOfLayout(rows, layout));
  const makers = patternMakers(problem, rows, budget.columns);
  const wanted = Float64Array.from(rows.kinds, (kind) => demand.wanted[kind.index] as number);
  const stock = Float64Array.from(rows.limited, (sheet) => sheet.stock);
  const work = { left: budget.columns };
  const program = poolProgram(rows, pool, wanted, stock, work);
  const enough = { cost: task.leastCost, levels: makers.levels.length };
  const use = yield* generatePatterns(problem, rows, makers, pool, program, enough, work, meter);
  let best = first;
  let steps = 0;
  const all = improvementWork(first, budget.each);
  const roundings = meter.stopped ? [] : roundingsOf(use);
  for (const fixed of roundings) {
    const improving = planRest(task, rows, fixed, Math.floor(all * ROUNDING_SHARE));
    const found = yield* improving;
    steps += found.steps;
    for (const layout of found.best.layouts) pool.add(patternOfLayout(rows, layout));
    if (isBetterDraft(problem, found.best, best)) best = found.best;
    if (isEnough(best) || meter.stopped) return { best, steps };
  }
  const work2 = Math.floor(all * (1 - ROUNDING_SHARE * roundings.length));
  const last = yield* improvePlan(problem, demand, best, task.random, meter, work2, isEnough);
  return { best: last.best, steps: steps + last.steps };
}

/** Whole numbers from fractions. */
function roundingsOf({ uses }: PatternUse): readonly (readonly Fixed[])[] {
  const down = uses
    .map(({ pattern, times }) => ({ pattern, run: Math.floor(times + ALMOST) }))
    .filter(({ run }) => run > 0);
  return [down];
}

/** Plans what some patterns leave over. */
function* planRest(
  { problem, demand, random, meter }: ColumnTask,
  rows: PatternRows,
  fixed: readonly Fixed[],
  work: number,
): Generator<void, Improvement, void> {
  const layouts = dropSurplus(
    problem,
    fixed.map(({ pattern, run }) => layoutOf(problem, rows, pattern, run)),
    demand.wanted,
  );
  const rest = restOf(demand, layouts);
  const first = yield* firstRest(problem, rest, random, meter);
  if (first === undefined) return { best: draftOf(problem, layouts), steps: 0 };
  const copies = first.placed.reduce((sum, count) => sum + count, 0);
  const share = Math.floor(work * Math.min(1, Math.max(0.1, copies / 100)));
  const improved = yield* improvePlan(problem, rest, first, random, meter, share, () => false);
  return { best: draftOf(problem, [...layouts, ...improved.best.layouts]), steps: improved.steps };
}

function restOf(demand: Demand, layouts: readonly DraftLayout[]): Demand {
  const wanted = [...demand.wanted];
  const stock = [...demand.stock];
  for (const { sheet, run, counts } of layouts) {
    stock[sheet.index] = (stock[sheet.index] ?? 0) - run;
    for (const [kind, count] of counts) wanted[kind] = (wanted[kind] ?? 0) - count * run;
  }
  return { wanted, stock };
}

/** The best of some plans by best fit; undefined where nothing is left or it was stopped. */
function* firstRest(
  problem: CompiledProblem,
  rest: Demand,
  random: RandomStream,
  meter: Meter,
): Generator<void, Draft | undefined, void> {
  let best: Draft | undefined;
  if (rest.wanted.every((count) => count <= 0)) return undefined;
  for (let start = 0; start < PLAIN_STARTS; start++) {
    const forest = yield* bestFit(problem, rest, rulesOf(start, random), random, meter);
    if (forest === undefined) break;
    const draft = draftOf(problem, layoutsOf(problem, forest));
    if (best === undefined || isBetterDraft(problem, draft, best)) best = draft;
  }
  return best;
}
