import type { LinearProgram, LinearSolution, LinearSolver } from "../../src/index.js";

const answer = (
  program: LinearProgram,
  values: (column: number) => number,
  duals: (row: number) => number,
  status: LinearSolution["status"] = "optimal",
): LinearSolution => ({
  status,
  values: program.columns.map((_, column) => values(column)),
  duals: program.rows.map((_, row) => duals(row)),
  objective: 0,
});

const solver = (name: string, solve: LinearSolver["solve"]): LinearSolver => ({ name, solve });

/** Solvers that fail, each in its own way, whatever they are asked. */
export const FAULTY_SOLVERS: readonly LinearSolver[] = [
  solver("throws", () => {
    throw new Error("out of memory");
  }),
  solver("gives nothing", () => undefined as unknown as LinearSolution),
  solver("is never done", () => ({ status: "none", values: [], duals: [], objective: 0 })),
  solver("calls everything infeasible", () => ({
    status: "infeasible",
    values: [],
    duals: [],
    objective: 0,
  })),
  solver("gives no numbers", (program) =>
    answer(
      program,
      () => Number.NaN,
      () => Number.NaN,
    ),
  ),
  solver("gives text", (program) =>
    answer(
      program,
      () => "1" as unknown as number,
      () => 1,
    ),
  ),
  solver("gives too few values", ({ rows }) => ({
    status: "optimal",
    values: [1],
    duals: rows.map(() => 1),
    objective: 1,
  })),
  solver("covers nothing", (program) =>
    answer(
      program,
      () => 0,
      () => 1,
    ),
  ),
  solver("gives values below 0", (program) =>
    answer(
      program,
      () => -5,
      () => 1,
    ),
  ),
  solver("uses everything a million times", (program) =>
    answer(
      program,
      () => 1_000_000,
      () => 1,
    ),
  ),
  solver("uses everything without end", (program) =>
    answer(
      program,
      () => Number.MAX_VALUE,
      () => 1,
    ),
  ),
  solver("gives halves as whole numbers", (program) =>
    answer(
      program,
      () => 0.5,
      () => 1,
    ),
  ),
  solver("turns prices round", (program) =>
    answer(
      program,
      () => 1_000,
      () => -1_000,
    ),
  ),
  solver("gives prices beyond all measure", (program) =>
    answer(
      program,
      () => 1_000,
      () => 1e300,
    ),
  ),
  solver("gives prices of 0", (program) =>
    answer(
      program,
      () => 1_000,
      () => 0,
      "feasible",
    ),
  ),
  solver("gives no prices", (program) => ({
    ...answer(
      program,
      () => 1_000,
      () => 0,
    ),
    duals: [],
  })),
];
