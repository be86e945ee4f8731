/**
 * Programs of patterns for a solver that is passed in, in fractions and in whole numbers. Its answers are not believed:
 * values must keep all limits before they are used, and where they do not the program of our own goes on alone.
 */
import type { WorkLeft } from "../bounds/pattern-program.js";
import type {
  LinearColumn,
  LinearProgram,
  LinearRow,
  LinearSolution,
  LinearSolver,
  SolverLimits,
} from "../solver.js";
import type { Pattern, PatternRows } from "./pattern.js";
import type { PatternPool, PatternUse, PoolProgram } from "./pattern-pool.js";

/** What fractions may miss of a limit, as a share of it, before they are wrong. */
const TOLERANCE = 1e-6;
/** Iterations that a program in fractions may take. */
const ITERATIONS = 20_000;
/** Elementary steps that one program counts for, and each factor that it may have: about what HiGHS takes. */
const STEPS_PER_PROGRAM = 2_000_000;
const STEPS_PER_FACTOR = 50;

/** A program that a solver solves as the pool grows; where it fails, `own` answers. */
export function solverProgram(
  solver: LinearSolver,
  rows: PatternRows,
  pool: PatternPool,
  demand: Float64Array,
  stock: Float64Array,
  own: PoolProgram,
  work: WorkLeft,
): PoolProgram {
  return {
    solve: () => {
      const { patterns } = pool;
      work.left -= STEPS_PER_PROGRAM + STEPS_PER_FACTOR * patterns.length * rows.size;
      const program = programOf(patterns, demand, stock, false);
      const solution = asked(solver, program, { iterations: ITERATIONS, nodes: 0 });
      const use = solution && useOf(rows, patterns, program, solution);
      return use ?? own.solve();
    },
  };
}

/** What is asked of whole numbers. */
export interface WholeQuestion {
  readonly patterns: readonly Pattern[];
  readonly demand: Float64Array;
  readonly stock: Float64Array;
  /** What the patterns may cost together. */
  readonly most: number;
  /** What all costs are multiples of; at least 1. */
  readonly step: number;
  readonly limits: SolverLimits;
}

/** Whole numbers of patterns that cover a demand; undefined where the solver finds none, or none that do. */
export function wholeUse(
  solver: LinearSolver,
  { patterns, demand, stock, most, step, limits }: WholeQuestion,
): readonly { readonly pattern: Pattern; readonly run: number }[] | undefined {
  const program = withCutoff(programOf(patterns, demand, stock, true), most, step);
  const solution = asked(solver, program, limits);
  if (solution === undefined) return undefined;
  const runs = solution.values.map((value) => Math.round(value));
  if (!runs.every(Number.isSafeInteger) || !keepsLimits(program, runs)) return undefined;
  return patterns.flatMap((pattern, i) => {
    const run = runs[i] as number;
    return run > 0 ? [{ pattern, run }] : [];
  });
}

/** An answer with values, each a number; undefined for all else. */
function asked(
  solver: LinearSolver,
  program: LinearProgram,
  limits: SolverLimits,
): LinearSolution | undefined {
  try {
    const solution = solver.solve(program, limits);
    const { status, values } = solution;
    if (status !== "optimal" && status !== "feasible") return undefined;
    return areNumbers(values, program.columns.length) ? solution : undefined;
  } catch {
    return undefined;
  }
}

function areNumbers(values: unknown, count: number): boolean {
  return Array.isArray(values) && values.length === count && values.every((value) => Number.isFinite(value));
}

function programOf(
  patterns: readonly Pattern[],
  demand: Float64Array,
  stock: Float64Array,
  whole: boolean,
): LinearProgram {
  const unlimited = Number.POSITIVE_INFINITY;
  const covers = [...demand].map((lower): LinearRow => ({ lower, upper: unlimited }));
  const limits = [...stock].map((count): LinearRow => ({ lower: -count, upper: unlimited }));
  const columns = patterns.map(({ sheet, column }): LinearColumn => {
    const entries = [...column].flatMap((factor, row) => (factor === 0 ? [] : [{ row, factor }]));
    return { cost: sheet.cost, lower: 0, upper: unlimited, whole, entries };
  });
  return { rows: [...covers, ...limits], columns };
}

/**
 * The program with one row more: the cost is at most `most`. Costs are counted in steps, so that a solver sees that they are
 * whole.
 */
function withCutoff(program: LinearProgram, most: number, step: number): LinearProgram {
  const row = program.rows.length;
  return {
    rows: [...program.rows, { lower: Number.NEGATIVE_INFINITY, upper: most / step }],
    columns: program.columns.map((column) => {
      const cost = column.cost / step;
      return {
        ...column,
        cost,
        entries: cost === 0 ? column.entries : [...column.entries, { row, factor: cost }],
      };
    }),
  };
}

function keepsLimits({ rows, columns }: LinearProgram, values: readonly number[], share = 0): boolean {
  const sums = rows.map(() => 0);
  for (const [i, { entries, lower, upper }] of columns.entries()) {
    const value = values[i] as number;
    if (value < lower - share || value > upper + share) return false;
    for (const { row, factor } of entries) sums[row] = (sums[row] as number) + factor * value;
  }
  return rows.every(({ lower, upper }, row) => {
    const slack = share * Math.max(1, Math.abs(Number.isFinite(lower) ? lower : upper));
    return (sums[row] as number) >= lower - slack && (sums[row] as number) <= upper + slack;
  });
}

/** What a solution in fractions says of patterns; undefined where it breaks a limit or has no prices. */
function useOf(
  rows: PatternRows,
  patterns: readonly Pattern[],
  program: LinearProgram,
  { values, duals }: LinearSolution,
): PatternUse | undefined {
  if (!keepsLimits(program, values, TOLERANCE) || !areNumbers(duals, rows.size)) return undefined;
  const uses = patterns.flatMap((pattern, i) => {
    const times = values[i] as number;
    return times > TOLERANCE ? [{ pattern, times }] : [];
  });
  const cost = uses.reduce((sum, { pattern, times }) => sum + pattern.sheet.cost * times, 0);
  return { uses, prices: Float64Array.from(duals, (dual) => Math.max(0, dual)), cost };
}
