import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  joinStarts,
  type Packing,
  type PackOptions,
  type Problem,
  pack,
  packStart,
  packSteps,
  startCount,
  verify,
  wantsSolver,
} from "../../src/index.js";
import { FAULTY_SOLVERS } from "./faulty-solvers.js";

/** Few kinds of many copies, on sheets of one or two sizes. */
const manyCopies: fc.Arbitrary<Problem> = fc
  .record({
    sizes: fc.array(fc.tuple(fc.integer({ min: 8, max: 60 }), fc.integer({ min: 8, max: 60 })), {
      minLength: 2,
      maxLength: 6,
    }),
    quantities: fc.array(fc.integer({ min: 4, max: 90 }), { minLength: 6, maxLength: 6 }),
    turns: fc.constantFrom("both" as const, "upright" as const),
    sheets: fc.array(
      fc.record({
        width: fc.integer({ min: 60, max: 130 }),
        height: fc.integer({ min: 60, max: 130 }),
        stock: fc.constantFrom(null, null, 3, 20),
        cost: fc.integer({ min: 0, max: 40 }),
        longestCut: fc.constantFrom(null, null, 100),
      }),
      { minLength: 1, maxLength: 2 },
    ),
    mode: fc.constantFrom("guillotine" as const, "shelf" as const),
    kerf: fc.constantFrom(0, 2),
    stages: fc.constantFrom(null, 2, 3, 4),
  })
  .map(({ sizes, quantities, turns, sheets, mode, kerf, stages }) => ({
    kinds: sizes.map(([width, height], i) => ({
      id: `k${i}`,
      quantity: quantities[i] ?? 4,
      forms: [{ width, height, turns }],
    })),
    sheets: sheets.map((sheet, i) => ({ id: `s${i}`, ...sheet })),
    mode,
    aim: "all" as const,
    kerf,
    stages,
  }));

/** A little more than first plans can solve, and nothing that is proven at once. */
const workshop: Problem = {
  kinds: [
    [37, 29, 90],
    [41, 17, 60],
    [23, 19, 120],
    [53, 31, 45],
    [29, 13, 77],
    [47, 43, 30],
  ].map(([width = 1, height = 1, quantity = 1], i) => ({
    id: `k${i}`,
    quantity,
    forms: [{ width, height }],
  })),
  sheets: [{ id: "sheet", width: 120, height: 97 }],
  mode: "guillotine",
  aim: "all",
  kerf: 1,
};

/** What a solver may change: nothing but what is told of the search. */
const withoutRecord = ({ search: _, ...rest }: Packing) => rest;

const runs = (share: number): { readonly numRuns: number } => ({
  numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) * share),
});

describe("a plan by columns", () => {
  test("is right for any problem with many copies", () => {
    let wanted = 0;
    fc.assert(
      fc.property(manyCopies, (problem) => {
        if (wantsSolver(problem, "quick")) wanted++;
        expect(verify(problem, pack(problem, { effort: "quick" }))).toEqual([]);
      }),
      runs(0.4),
    );
    expect(wanted).toBeGreaterThan(0);
  });

  test("takes fewer sheets than the same search without it", () => {
    const starts = startCount(workshop, { effort: "quick" });
    expect(starts).toBe(2);
    const columns = packStart(workshop, { effort: "quick" }, 0);
    const others = packStart(workshop, { effort: "quick" }, 1);
    expect(columns.best?.sheets).toBeLessThan(others.best?.sheets ?? Number.POSITIVE_INFINITY);
  });

  test("is the same however its starts are spread", () => {
    const options: PackOptions = { effort: "quick", seed: 5 };
    const results = [1, 0].map((start) => packStart(workshop, options, start));
    expect(JSON.stringify(joinStarts(workshop, options, results))).toBe(
      JSON.stringify(pack(workshop, options)),
    );
  });

  test("is right wherever it is ended early, and never worse than what came before", () => {
    for (const stop of [1, 3, 10, 30, 60, 100, 150, 200]) {
      const steps = packSteps(workshop, { effort: "quick" });
      let step = steps.next();
      let before = Number.POSITIVE_INFINITY;
      for (let count = 1; !step.done; count++) {
        before = step.value.best?.cost ?? before;
        step = steps.next(count >= stop);
      }
      expect(verify(workshop, step.value)).toEqual([]);
      expect(Number(step.value.cost)).toBeLessThanOrEqual(before);
    }
  });

  test("takes no longer for a hundred times the copies", () => {
    const times = (factor: number): Problem => ({
      ...workshop,
      kinds: workshop.kinds.map((kind) => ({ ...kind, quantity: (kind.quantity ?? 0) * factor })),
    });
    const [few, many] = [1, 100].map((factor) => packStart(times(factor), { effort: "quick" }, 0));
    expect(many?.work).toBeLessThan(3 * (few?.work ?? 0));
    // A few sheets come from rounding; all others are as good as the program in fractions says.
    expect(many?.best?.sheets).toBeLessThanOrEqual(100 * (few?.best?.sheets ?? 0));
  });
});

describe("a solver that is passed in", () => {
  test("is wanted where copies outnumber kinds, and not where each piece is another one", () => {
    expect(wantsSolver(workshop, "standard")).toBe(true);
    const single = { ...workshop, kinds: workshop.kinds.map((kind) => ({ ...kind, quantity: 1 })) };
    expect(wantsSolver(single, "standard")).toBe(false);
    expect(wantsSolver({ ...workshop, aim: "fill" }, "standard")).toBe(false);
    expect(wantsSolver({ ...workshop, kinds: [{ ...workshop.kinds[0], id: "" }] } as Problem, "quick")).toBe(
      false,
    );
  });

  test("is named in the record", () => {
    expect(pack(workshop, { effort: "quick" }).search.lp).toBe("none");
    for (const solver of FAULTY_SOLVERS) {
      const packing = pack(workshop, { effort: "quick", solver });
      expect(packing.search.lp).toBe(solver.name);
      expect(verify(workshop, packing)).toEqual([]);
    }
  });

  for (const solver of FAULTY_SOLVERS) {
    test(`changes neither plan nor bound where it ${solver.name}`, () => {
      fc.assert(
        fc.property(manyCopies, (problem) => {
          const packing = pack(problem, { effort: "quick", solver });
          expect(verify(problem, packing)).toEqual([]);
          expect(withoutRecord(packing)).toEqual(withoutRecord(pack(problem, { effort: "quick" })));
        }),
        runs(0.03),
      );
    });
  }

  test("gives a better plan only where its whole numbers cover all that is wanted", () => {
    let asked = 0;
    // Rounds up what a solution of halves would be: right, and dear.
    const solver = {
      name: "rounds up",
      solve: (program: Parameters<(typeof FAULTY_SOLVERS)[number]["solve"]>[0]) => {
        asked++;
        const values = program.columns.map(({ entries }) =>
          Math.max(
            0,
            ...entries.map(({ row, factor }) => Math.ceil((program.rows[row]?.lower ?? 0) / factor)),
          ),
        );
        return { status: "feasible" as const, values, duals: program.rows.map(() => 0), objective: 0 };
      },
    };
    const packing = pack(workshop, { effort: "quick", solver });
    expect(asked).toBeGreaterThan(0);
    expect(verify(workshop, packing)).toEqual([]);
    expect(Number(packing.cost)).toBeLessThanOrEqual(Number(pack(workshop, { effort: "quick" }).cost));
  });
});
