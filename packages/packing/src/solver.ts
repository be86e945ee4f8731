/**
 * What the search asks of a solver for linear programs. Whoever has one passes it in; packing brings none, and works without.
 *
 * A solver is never trusted: its values are checked against the program before they are used, its prices only say which
 * layouts to look for, and every plan and bound is counted in whole numbers afterwards. So one that fails, gives up or is
 * wrong costs quality at most.
 */

/** A row of a program: what the sum of its entries times the values may be. */
export interface LinearRow {
  /** `-Infinity` where there is no limit. */
  readonly lower: number;
  /** `Infinity` where there is no limit. */
  readonly upper: number;
}

/** A number in a column: its row, by index, and its factor. */
export interface LinearEntry {
  readonly row: number;
  readonly factor: number;
}

/** A column of a program: one unknown. */
export interface LinearColumn {
  /** What one unit adds to the objective. */
  readonly cost: number;
  readonly lower: number;
  /** `Infinity` where there is no limit. */
  readonly upper: number;
  /** True where only whole values will do. */
  readonly whole: boolean;
  /** Factors other than 0, each row at most once. */
  readonly entries: readonly LinearEntry[];
}

/** A linear program: the least objective is wanted. */
export interface LinearProgram {
  readonly rows: readonly LinearRow[];
  readonly columns: readonly LinearColumn[];
}

/** How much a solver may do; counted in its own steps and never in time, so that the same answer comes out everywhere. */
export interface SolverLimits {
  /** Simplex iterations, all together. */
  readonly iterations: number;
  /** Nodes of branch and bound, for programs with whole values. */
  readonly nodes: number;
}

/** The answer of a solver. */
export interface LinearSolution {
  /**
   * - `optimal`: no better values exist.
   * - `feasible`: the values keep all limits, and better ones may exist.
   * - `infeasible`: no values keep all limits.
   * - `none`: nothing was found.
   */
  readonly status: "optimal" | "feasible" | "infeasible" | "none";
  /** By column; empty where there are none. */
  readonly values: readonly number[];
  /** By row, what one unit more of its limit would cost; empty where there are none, as with whole values. */
  readonly duals: readonly number[];
  readonly objective: number;
}

/** A solver for linear programs, with or without whole values. */
export interface LinearSolver {
  /** Name and version, such as `highs 1.15.3`; it stands in the record of the search. */
  readonly name: string;
  /** Solves a program at once. The same program and limits give the same answer everywhere. It may throw. */
  readonly solve: (program: LinearProgram, limits: SolverLimits) => LinearSolution;
}
