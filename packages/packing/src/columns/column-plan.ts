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
import type { WorkLeft } from "../bounds/pattern-program.js";
import { bestFit, type Demand } from "../search/best-fit.js";
import type { Budget } from "../search/budget.js";
import type { CompiledProblem, CompiledSheet } from "../search/compiled-problem.js";
import { type Draft, type DraftLayout, draftOf, isBetterDraft, layoutsOf } from "../search/draft.js";
import { greatestCommonDivisor } from "../search/greatest-common-divisor.js";
import { type Improvement, improvementWork, improvePlan } from "../search/improve-plan.js";
import type { Meter } from "../search/meter.js";
import type { RandomStream } from "../search/random-stream.js";
import { PLAIN_STARTS, rulesOf } from "../search/rules.js";
import type { LinearSolver, SolverLimits } from "../solver.js";
import { dropSurplus } from "./drop-surplus.js";
import { generatePatterns, type PatternMakers, patternMakers, type Reach } from "./generate-patterns.js";
import { layoutOf, type Pattern, type PatternRows, patternOfLayout, patternRows } from "./pattern.js";
import { gainOf, newPool, type PatternPool, type PatternUse, poolProgram } from "./pattern-pool.js";
import { solverProgram, wholeUse } from "./solver-program.js";

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

/** The program with all that it is made of. */
interface Columns {
  readonly rows: PatternRows;
  readonly makers: PatternMakers;
  readonly pool: PatternPool;
  readonly work: WorkLeft;
}

/** What rounding errors may add to a whole number. */
const ALMOST = 1e-6;
/** Work of ruin and recreate for what one rounding leaves over, and its share of all at most. */
const ROUNDING_WORK = 5_000_000;
const MOST_ROUNDING = 0.25;
/** Share that is kept for the whole plan in the end. */
const LAST_SHARE = 0.4;
/** By how much costs differ by chance. */
const JITTER = 0.001;
/** What is left over is planned apart where it takes at most so many sheets, about. */
const MOST_REST = 12;
/** Sizes of sheets that layouts are made for. */
const MOST_SHEETS = 8;
/** Share of the work for the first program; the others are those of what is left over. */
const FIRST_SHARE = 0.6;

/** What a solver may do: work on patterns, iterations for whole numbers by steps of the budget, nodes, patterns by row. */
const SOLVER_SHARE = 0.2;
const ITERATIONS_PER_STEP = 1e-5;
const NODES = 200;
const PATTERNS_PER_ROW = 2;

/** Makes the plan; where it is stopped on the way, the best so far. */
export function* columnPlan(task: ColumnTask): Generator<void, Improvement, void> {
  const { problem, demand, first, budget, meter, isEnough } = task;
  const rows = patternRows(problem, demand.wanted);
  const pool = newPool();
  for (const layout of first.layouts) pool.add(patternOfLayout(rows, layout));
  const makers = yield* patternMakers(problem, rows, sheetsOfUse(problem, first), budget.columns);
  const columns: Columns = { rows, makers, pool, work: { left: budget.columns * FIRST_SHARE } };
  const wanted = Float64Array.from(rows.kinds, (kind) => demand.wanted[kind.index] as number);
  const stock = Float64Array.from(rows.limited, (sheet) => sheet.stock);
  const use = yield* cheapestUse(task, columns, wanted, stock, {
    levels: makers.levels.length,
  });
  columns.work.left += budget.columns * (1 - FIRST_SHARE);
  let best = first;
  let steps = 0;
  const wholes = wholeNumbers(task, columns, wanted, stock);
  if (wholes && !meter.stopped) {
    best = yield* wholes.fromScratch(best);
    if (isEnough(best)) return { best, steps };
  }
  const all = improvementWork(first, budget.each);
  const step = stepOf(problem);
  // By patterns as good as these nothing cheaper is to be had.
  const reached = Math.max(task.leastCost, wholeCost(use, step));
  const each = Math.min(ROUNDING_WORK, Math.floor(all * MOST_ROUNDING));
  let left = all;
  const isReached = (): boolean => best.lacking === 0 && best.cost <= reached;
  for (let round = 0; left - each >= all * LAST_SHARE && !isReached() && !meter.stopped; round++) {
    const start = round < 2 ? use : otherUse(task, columns, wanted, stock);
    const fixed = round % 2 === 0 ? roundedDown(start) : yield* dive(task, columns, start);
    if (meter.stopped) break;
    const found = yield* planRest(task, rows, fixed, each);
    left -= each;
    steps += found.steps;
    for (const layout of found.best.layouts) pool.add(patternOfLayout(rows, layout));
    if (isBetterDraft(problem, found.best, best)) best = found.best;
    if (isEnough(best)) return { best, steps };
  }
  if (meter.stopped) return { best, steps };
  if (wholes && !isReached()) best = yield* wholes.again(best, use);
  if (isReached()) return { best, steps };
  const last = yield* improvePlan(problem, demand, best, task.random, meter, left, isEnough);
  return { best: last.best, steps: steps + last.steps };
}

/** The sheets that layouts are made for: of many those that a plan uses, then those that cost least by area. */
function sheetsOfUse({ sheets }: CompiledProblem, { layouts }: Draft): readonly CompiledSheet[] {
  const used = new Set(layouts.map(({ sheet }) => sheet.index));
  const price = ({ cost, width, height }: CompiledSheet): number => cost / (width * height);
  return sheets
    .filter(({ stock }) => stock > 0)
    .sort(
      (a, b) =>
        Number(used.has(b.index)) - Number(used.has(a.index)) || price(a) - price(b) || a.index - b.index,
    )
    .slice(0, MOST_SHEETS)
    .sort((a, b) => a.index - b.index);
}

/** The patterns of a program in which each costs a little more, by chance: as good, and others. */
function otherUse(
  { random }: ColumnTask,
  { rows, pool, work }: Columns,
  wanted: Float64Array,
  stock: Float64Array,
): PatternUse {
  const costOf = ({ sheet }: Pattern): number => sheet.cost * (1 + JITTER * random.unit());
  return poolProgram(rows, pool, wanted, stock, work, costOf).solve();
}

/**
 * Whole numbers of patterns by the solver that was passed in, if one was. It works on a pool of its own and draws no random
 * numbers, so all else goes on as it would without a solver; only a cheaper plan is taken over.
 */
function wholeNumbers(task: ColumnTask, columns: Columns, wanted: Float64Array, stock: Float64Array) {
  const { problem, solver, budget, meter } = task;
  const { rows, makers } = columns;
  if (solver === undefined) return undefined;
  const pool = newPool();
  const limits: SolverLimits = { iterations: Math.floor(budget.columns * ITERATIONS_PER_STEP), nodes: NODES };
  const step = stepOf(problem);
  const cheaper = (best: Draft, use: PatternUse): Draft => {
    // Only the best that can be hoped for: all else is found sooner by rounding.
    const most = Math.max(task.leastCost, wholeCost(use, step));
    if (best.lacking === 0 && best.cost <= most) return best;
    const patterns = leastLoss(pool.patterns, use.prices, PATTERNS_PER_ROW * rows.size);
    meter.work += patterns.length * rows.size;
    const fixed = wholeUse(solver, { patterns, demand: wanted, stock, most, step, limits });
    const draft = fixed && draftOf(problem, layoutsOfFixed(task, rows, fixed));
    return draft && isBetterDraft(problem, draft, best) ? draft : best;
  };
  const fill = (): void => {
    for (const pattern of columns.pool.patterns) pool.add(pattern);
  };
  return {
    *fromScratch(best: Draft): Generator<void, Draft, void> {
      fill();
      const work = { left: budget.columns * SOLVER_SHARE };
      const own = poolProgram(rows, pool, wanted, stock, work);
      const program = solverProgram(solver, rows, pool, wanted, stock, own, work);
      const reach = { levels: makers.levels.length };
      const use = yield* generatePatterns(problem, rows, makers, pool, program, reach, work, meter);
      return meter.stopped ? best : cheaper(best, use);
    },
    *again(best: Draft, use: PatternUse): Generator<void, Draft, void> {
      fill();
      yield;
      return cheaper(best, use);
    },
  };
}

/** The least whole number of steps that is not below what patterns cost in fractions. */
function wholeCost({ cost }: PatternUse, step: number): number {
  return step * Math.ceil(cost / step - ALMOST);
}

/** What costs of plans are multiples of; at least 1. */
function stepOf({ sheets }: CompiledProblem): number {
  return Math.max(
    1,
    sheets.reduce((all, sheet) => greatestCommonDivisor(all, sheet.cost), 0),
  );
}

/** The patterns that lose least by some prices, in the order of the pool among equals. */
function leastLoss(patterns: readonly Pattern[], prices: Float64Array, most: number): readonly Pattern[] {
  return patterns
    .map((pattern, i) => ({ pattern, gain: gainOf(pattern, prices), i }))
    .sort((a, b) => b.gain - a.gain || a.i - b.i)
    .slice(0, most)
    .map(({ pattern }) => pattern);
}

/** Solves the program of a demand, and lets the pool grow as long as that makes it cheaper. */
function cheapestUse(
  { problem, meter }: ColumnTask,
  { rows, makers, pool, work }: Columns,
  wanted: Float64Array,
  stock: Float64Array,
  reach: Reach,
): Generator<void, PatternUse, void> {
  const program = poolProgram(rows, pool, wanted, stock, work);
  return generatePatterns(problem, rows, makers, pool, program, reach, work, meter);
}

/** Whole numbers from fractions, none larger. */
function roundedDown({ uses }: PatternUse): readonly Fixed[] {
  return uses
    .map(({ pattern, times }) => ({ pattern, run: Math.floor(times + ALMOST) }))
    .filter(({ run }) => run > 0);
}

/**
 * Rounds down, solves the program of what is left over with patterns of no more copies than there are, and so on; where
 * nothing is whole, the pattern that is used most is cut once. Ends when few sheets are left to plan.
 */
function* dive(
  task: ColumnTask,
  columns: Columns,
  first: PatternUse,
): Generator<void, readonly Fixed[], void> {
  const { rows, work } = columns;
  const fixed: Fixed[] = [];
  let use = first;
  let rest: Demand = task.demand;
  for (;;) {
    const down = roundedDown(use);
    const more = down.length > 0 ? down : mostUsed(use);
    if (more.length === 0) return fixed;
    fixed.push(...more);
    rest = restOf(task.demand, layoutsOfFixed(task, rows, fixed));
    const wanted = Float64Array.from(rows.kinds, (kind) => Math.max(0, rest.wanted[kind.index] as number));
    if (task.meter.stopped || work.left <= 0 || wanted.every((count) => count === 0)) return fixed;
    const stock = Float64Array.from(rows.limited, (sheet) => Math.max(0, rest.stock[sheet.index] as number));
    use = yield* cheapestUse(task, columns, wanted, stock, { left: wanted, levels: 1 });
    if (use.uses.reduce((sum, { times }) => sum + times, 0) <= MOST_REST) return fixed;
  }
}

function mostUsed({ uses }: PatternUse): readonly Fixed[] {
  let most: PatternUse["uses"][number] | undefined;
  for (const entry of uses) if (most === undefined || entry.times > most.times) most = entry;
  return most ? [{ pattern: most.pattern, run: 1 }] : [];
}

function layoutsOfFixed({ problem, demand }: ColumnTask, rows: PatternRows, fixed: readonly Fixed[]) {
  const layouts = fixed.map(({ pattern, run }) => layoutOf(problem, rows, pattern, run));
  return dropSurplus(problem, layouts, demand.wanted);
}

/** Plans what some patterns leave over. */
function* planRest(
  task: ColumnTask,
  rows: PatternRows,
  fixed: readonly Fixed[],
  work: number,
): Generator<void, Improvement, void> {
  const { problem, demand, random, meter } = task;
  const layouts = layoutsOfFixed(task, rows, fixed);
  const rest = restOf(demand, layouts);
  const first = yield* firstRest(problem, rest, random, meter);
  if (first === undefined) return { best: draftOf(problem, layouts), steps: 0 };
  const isEnough = (draft: Draft): boolean => task.isEnough(draftOf(problem, [...layouts, ...draft.layouts]));
  const improved = yield* improvePlan(problem, rest, first, random, meter, work, isEnough);
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
