import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { type LinearProgram, type LinearSolver, type Problem, pack, verify } from "@sheetwright/packing";
import { beforeAll, describe, expect, test } from "vitest";
import { loadSolver } from "../../src/solver/load-solver.js";

const limits = { iterations: 10_000, nodes: 1_000 };
const unlimited = Number.POSITIVE_INFINITY;

/** Least cost of two foods a, b for 8 of one need and 12 of another, worked out by hand: 2 of each for 10. */
const foods = (whole: boolean, most = unlimited): LinearProgram => ({
  rows: [
    { lower: 8, upper: unlimited },
    { lower: 12, upper: unlimited },
  ],
  columns: [
    {
      cost: 3,
      lower: 0,
      upper: most,
      whole,
      entries: [
        { row: 0, factor: 1 },
        { row: 1, factor: 4 },
      ],
    },
    {
      cost: 2,
      lower: 0,
      upper: most,
      whole,
      entries: [
        { row: 0, factor: 3 },
        { row: 1, factor: 2 },
      ],
    },
  ],
});

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

describe("the solver of the command", () => {
  test("says which HiGHS it is, the one that the package brings", () => {
    const require = createRequire(import.meta.url);
    const file = require.resolve("highs").replace(/build[\\/].*$/, "package.json");
    const { version } = JSON.parse(readFileSync(file, "utf8")) as { readonly version: string };
    // The package counts its own releases in the last place.
    expect(solver.name).toMatch(/^highs \d+\.\d+\.\d+$/);
    expect(solver.name.split(".").slice(0, 2).join(".")).toBe(
      `highs ${version.split(".").slice(0, 2).join(".")}`,
    );
  });

  test("solves a program in fractions, with what one more of each need would cost", () => {
    const { status, values, duals, objective } = solver.solve(foods(false), limits);
    expect(status).toBe("optimal");
    expect(objective).toBeCloseTo(10, 9);
    expect(values[0]).toBeCloseTo(2, 9);
    expect(values[1]).toBeCloseTo(2, 9);
    // 3 = y + 4 z and 2 = 3 y + 2 z.
    expect(duals[0]).toBeCloseTo(0.2, 9);
    expect(duals[1]).toBeCloseTo(0.7, 9);
  });

  test("solves a program in whole numbers, without prices", () => {
    const program = foods(true);
    const rows = [{ lower: 9, upper: unlimited }, ...program.rows.slice(1)];
    const { status, values, duals, objective } = solver.solve({ ...program, rows }, limits);
    expect(status).toBe("optimal");
    // By hand: with a = 0, 1, 2, 3 it takes b = 6, 4, 3, 2 and costs 12, 11, 12, 13.
    expect(objective).toBeCloseTo(11, 6);
    expect(values.map(Math.round)).toEqual([1, 4]);
    expect(duals).toEqual([]);
  });

  test("says where nothing will do", () => {
    expect(solver.solve(foods(false, 1), limits)).toEqual({
      status: "infeasible",
      values: [],
      duals: [],
      objective: 0,
    });
  });

  test("tells a fault in one short line, not with the text of the module", () => {
    const wrong = {
      rows: [],
      columns: [{ cost: Number.NaN, lower: 0, upper: 1, whole: false, entries: [] }],
    };
    let told: unknown;
    try {
      solver.solve(wrong, limits);
    } catch (error) {
      told = error;
    }
    expect(told).toBeInstanceOf(Error);
    const { message, stack = "" } = told as Error;
    expect(message).toMatch(/^HiGHS failed: /);
    expect(message.length).toBeLessThan(250);
    expect(stack.length).toBeLessThan(5_000);
    // And goes on to work.
    expect(solver.solve(foods(false), limits).status).toBe("optimal");
  });

  test("gives the same answer once another module has taken the place of the first", async () => {
    const own = await loadSolver(3);
    const answers = new Set<string>();
    for (let round = 0; round < 12; round++) {
      answers.add(JSON.stringify(own.solve(foods(false), limits)));
      // Time for another module to be loaded.
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    expect(answers.size).toBe(1);
  });

  test("plans many copies, and the plan says so and verifies, as it does without", () => {
    const problem: Problem = {
      kinds: [
        [37, 29, 90],
        [41, 17, 60],
        [23, 19, 120],
        [53, 31, 45],
      ].map(([width = 1, height = 1, quantity = 1], i) => ({
        id: `k${i}`,
        quantity,
        forms: [{ width, height }],
      })),
      sheets: [{ id: "sheet", width: 120, height: 97, stock: 60 }],
      mode: "guillotine",
      aim: "all",
    };
    const [with_, without] = [solver, undefined].map((own) =>
      pack(problem, { effort: "quick", solver: own }),
    );
    expect([with_?.search.lp, without?.search.lp]).toEqual([solver.name, "none"]);
    for (const packing of [with_, without]) expect(packing && verify(problem, packing)).toEqual([]);
    expect(with_?.sheets).toBeLessThanOrEqual(without?.sheets ?? 0);
    expect(JSON.stringify(pack(problem, { effort: "quick", solver }))).toBe(JSON.stringify(with_));
  });
});
