import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lowerBound } from "../../src/bounds/lower-bound.js";
import {
  type Bound,
  type Effort,
  type Finding,
  type Packing,
  type Problem,
  verify,
} from "../../src/index.js";
import { compileProblem } from "../../src/search/compiled-problem.js";
import { fewestSheets, type OraclePiece } from "../brute-force.js";
import { cutWithoutWaste } from "../problems.js";

function boundOf(problem: Problem, effort?: Effort): Extract<Bound, { aim: "all" }> {
  const bound = lowerBound(compileProblem(problem), effort);
  if (bound.aim !== "all") throw new Error("The aim was all.");
  return bound;
}

/** What verify says of a bound alone: a packing that places nothing has it. */
function findingsOfBound(problem: Problem, bound: Bound): readonly Finding[] {
  return verify(problem, packingWithout(problem, bound));
}

/** A packing that places nothing. */
function packingWithout(problem: Problem, bound: Bound): Packing {
  return {
    version: 1,
    mode: problem.mode,
    aim: problem.aim,
    outcome: "not-found",
    layouts: [],
    placed: problem.kinds.map(({ id }) => ({ kind: id, count: 0 })),
    missing: problem.kinds.map(({ id, quantity }) => ({ kind: id, count: quantity ?? 0 })),
    sheets: 0,
    cost: "0",
    value: "0",
    bound,
    proven: false,
    search: { effort: "quick", seed: 1, lp: "none", starts: 1, work: 0, steps: 0, ended: "finished" },
  };
}

function problemOf(sheet: { width: number; height: number }, kinds: Problem["kinds"], kerf = 0): Problem {
  return { mode: "guillotine", aim: "all", kinds, sheets: [{ id: "s", ...sheet, cost: 1 }], kerf };
}

describe("lowerBound", () => {
  test("counts area where nothing better is known", () => {
    const kinds = [{ id: "a", quantity: 9, forms: [{ width: 5, height: 10 }] }];
    expect(boundOf(problemOf({ width: 10, height: 10 }, kinds))).toMatchObject({ cost: "5", sheets: 5 });
  });

  test("sees that pieces of more than half both ways need a sheet each", () => {
    const kinds = [{ id: "a", quantity: 7, forms: [{ width: 6, height: 6 }] }];
    expect(boundOf(problemOf({ width: 10, height: 10 }, kinds))).toMatchObject({ cost: "7", sheets: 7 });
  });

  test("adds the kerf to pieces and sheet", () => {
    const kinds = [{ id: "a", quantity: 8, forms: [{ width: 5, height: 10 }] }];
    expect(boundOf(problemOf({ width: 10, height: 10 }, kinds, 1)).sheets).toBe(8);
  });

  test("proves a shortage of stock", () => {
    const kinds = [{ id: "a", quantity: 7, forms: [{ width: 6, height: 6 }] }];
    const sheets = [{ id: "s", width: 10, height: 10, stock: 6 }];
    const bound = boundOf({ mode: "guillotine", aim: "all", kinds, sheets });
    expect(bound).toMatchObject({ cost: null, sheets: null });
  });

  test("names a kind that fits no sheet", () => {
    const kinds = [{ id: "a", quantity: 1, forms: [{ width: 11, height: 6 }] }];
    expect(boundOf(problemOf({ width: 10, height: 10 }, kinds)).certificate).toEqual({
      type: "no-fit",
      kind: "a",
    });
  });

  test("weighs several sheets by their cost", () => {
    const kinds = [{ id: "a", quantity: 10, forms: [{ width: 10, height: 10 }] }];
    const sheets = [
      { id: "small", width: 10, height: 10, cost: 3, stock: 4 },
      { id: "large", width: 20, height: 10, cost: 8 },
    ];
    // Four small ones for 12, then six pieces on three large ones for 24.
    expect(boundOf({ mode: "guillotine", aim: "all", kinds, sheets })).toMatchObject({ cost: "36" });
  });

  // Martello & Vigo, Exact solution of the two-dimensional finite bin packing problem, Management Science 44 (1998),
  // section 2: the continuous bound can be as bad as a quarter of the optimum: pieces just over half both ways.
  test("asks large sheets for what only they hold, however many small ones there are and however cheap", () => {
    const kinds = [{ id: "a", quantity: 3, forms: [{ width: 6, height: 6 }] }];
    const large = { id: "large", width: 10, height: 10, cost: 90 };
    const small = { id: "small", width: 5, height: 5, cost: 1, stock: 500 };
    // Some small kind makes the small sheets worth weighing.
    const problem: Problem = {
      ...problemOf({ width: 10, height: 10 }, [
        ...kinds,
        { id: "b", quantity: 1, forms: [{ width: 2, height: 2 }] },
      ]),
      sheets: [large, small],
    };
    expect(boundOf(problem).cost).toBe("270");
    expect(findingsOfBound(problem, boundOf(problem))).toEqual([]);
    const short: Problem = { ...problem, sheets: [{ ...large, stock: 2 }, small] };
    expect(boundOf(short)).toMatchObject({ cost: null, sheets: null });
    const claim: Packing = packingWithout(short, boundOf(short));
    expect(verify(short, { ...claim, outcome: "short", proven: true })).toEqual([]);
  });

  test("reaches the optimum where the continuous bound gives a quarter of it", () => {
    const kinds = [{ id: "a", quantity: 100, forms: [{ width: 51, height: 51 }] }];
    expect(boundOf(problemOf({ width: 100, height: 100 }, kinds)).sheets).toBe(100);
  });

  // cl_05_020_02 of J. O. Berkey and P. Y. Wang, Two-dimensional finite bin-packing algorithms, Journal of the
  // Operational Research Society 38 (1987), class 5: functions with parameters prove 4. The best sum published for the ten
  // instances of this group leaves 5 for this one (S. Gardeyn and T. Wauters, EJOR 301 (2022), table of class 5, n = 20).
  test("proves the best known plan of a published instance by functions fitted to its pieces", () => {
    const sizes = [
      [18, 16],
      [51, 72],
      [95, 12],
      [7, 24],
      [75, 32],
      [21, 91],
      [1, 89],
      [4, 48],
      [52, 25],
      [1, 9],
      [40, 20],
      [90, 16],
      [7, 85],
      [81, 48],
      [33, 62],
      [19, 16],
      [28, 32],
      [82, 65],
      [37, 4],
      [81, 71],
    ] as const;
    const kinds = sizes.map(([width, height], i) => ({
      id: `${i}`,
      quantity: 1,
      forms: [{ width, height, turns: "upright" as const }],
    }));
    const problem = problemOf({ width: 100, height: 100 }, kinds);
    const bound = boundOf(problem);
    expect(bound.sheets).toBe(5);
    expect(JSON.stringify(bound.certificate)).toContain("fitted");
    expect(findingsOfBound(problem, bound)).toEqual([]);
  });

  // cl_07_020_08 of S. Martello and D. Vigo, Exact solution of the two-dimensional finite bin packing problem, Management
  // Science 44 (1998), class 7, turned: six sheets are the published optimum for edge-to-edge cuts (H. Becker, PhD thesis,
  // UFRGS 2022), and functions with parameters prove five.
  test("proves the optimum of a published instance with turns by prices for edge-to-edge cuts", () => {
    const sizes = [
      [68, 43],
      [72, 39],
      [67, 42],
      [84, 20],
      [67, 19],
      [81, 5],
      [69, 23],
      [97, 43],
      [73, 6],
      [98, 33],
      [80, 17],
      [84, 27],
      [83, 55],
      [34, 81],
      [99, 22],
      [19, 22],
      [76, 17],
      [88, 24],
      [86, 89],
      [23, 29],
    ] as const;
    const kinds = sizes.map(([width, height], i) => ({
      id: `${i}`,
      quantity: 1,
      forms: [{ width, height }],
    }));
    const problem = problemOf({ width: 100, height: 100 }, kinds);
    const bound = boundOf(problem, "thorough");
    expect(bound.sheets).toBe(6);
    expect(bound.certificate.type).toBe("prices");
    expect(findingsOfBound(problem, bound)).toEqual([]);
    // Stopped cuts may do better.
    expect(boundOf({ ...problem, mode: "stopped" }, "thorough").certificate.type).toBe("weights");
  });

  // gcut1 of J. E. Beasley, Algorithms for unconstrained two-dimensional guillotine cutting, J. Oper. Res. Soc. 36 (1985):
  // the published optimum of one sheet is 56,460.
  test("proves the most valuable sheet where there is no limit to the copies", () => {
    const sizes = [
      [167, 184],
      [114, 118],
      [167, 152],
      [83, 140],
      [70, 86],
      [143, 166],
      [120, 160],
      [66, 148],
      [87, 141],
      [69, 165],
    ] as const;
    const problem: Problem = {
      mode: "guillotine",
      aim: "fill",
      kinds: sizes.map(([width, height], i) => ({
        id: `${i}`,
        quantity: null,
        forms: [{ width, height, turns: "upright" as const }],
      })),
      sheets: [{ id: "s", width: 250, height: 250, stock: 1 }],
    };
    const bound = lowerBound(compileProblem(problem));
    expect(bound).toMatchObject({ aim: "fill", value: "56460", certificate: { type: "prices" } });
    expect(findingsOfBound(problem, bound).map(({ path }) => path)).not.toContain("bound.certificate");
  });

  test("weighs pieces alike both ways on a square sheet by a mean of two pairs", () => {
    // Upright or turned, a strip of 9 x 4 takes nearly a whole row; two stand on a sheet of 10 x 10, never three.
    const kinds = [{ id: "a", quantity: 5, forms: [{ width: 9, height: 4 }] }];
    const problem = problemOf({ width: 10, height: 10 }, kinds);
    const bound = boundOf(problem);
    expect(bound.sheets).toBe(3);
    expect(findingsOfBound(problem, bound)).toEqual([]);
  });

  test("leaves room for pieces from hidden middles, which lie on the same paper as the piece round them", () => {
    // Two mats of 8 x 10 give four tags of 3 x 4 from their middles: two sheets of 10 x 8 do, and area alone says three.
    const hidden = { x: 1, y: 2, width: 6, height: 8, tool: "knife" };
    const kinds = [
      { id: "mat", quantity: 2, forms: [{ width: 8, height: 10, hidden }] },
      { id: "tag", quantity: 4, forms: [{ width: 3, height: 4 }] },
    ];
    expect(boundOf(problemOf({ width: 10, height: 8 }, kinds)).sheets).toBeLessThanOrEqual(2);
  });

  test("never passes the fewest sheets of large pieces of few sizes, and verify proves its certificate again", () => {
    const size = fc.constantFrom(3, 5, 6, 7, 8, 9, 10, 11, 12, 14, 17);
    const turns = fc.constantFrom("both" as const, "upright" as const, "turned" as const);
    const kind = fc.record({ width: size, height: size, turns, quantity: fc.integer({ min: 1, max: 3 }) });
    const counts = { weights: 0, prices: 0, "no-fit": 0, reached: 0 };
    fc.assert(
      fc.property(
        fc.array(kind, { minLength: 2, maxLength: 3 }),
        fc.constantFrom(17, 20, 23),
        fc.nat(1),
        (list, side, kerf) => {
          const kinds = list.map(({ quantity, ...form }, i) => ({ id: `${i}`, quantity, forms: [form] }));
          const ways = list.flatMap(({ width, height, turns, quantity }) => {
            const all = [
              ...(turns === "turned" ? [] : [{ width, height }]),
              ...(turns === "upright" ? [] : [{ width: height, height: width }]),
            ];
            return Array.from({ length: quantity }, (): OraclePiece => all);
          });
          fc.pre(ways.length <= 6);
          const sheet = { width: side, height: 20 };
          const problem = problemOf(sheet, kinds, kerf);
          const fewest = fewestSheets(sheet, ways, kerf);
          for (const effort of ["quick", "thorough"] as const) {
            const bound = boundOf(problem, effort);
            expect(bound.sheets).toBeLessThanOrEqual(fewest);
            expect(findingsOfBound(problem, bound)).toEqual([]);
            counts[bound.certificate.type] += 1;
            if (bound.sheets === fewest) counts.reached += 1;
          }
        },
      ),
    );
    // Most small problems are solved by their bounds, and both kinds of certificates occur.
    expect(counts.reached).toBeGreaterThan((counts.weights + counts.prices) / 2);
    expect(counts.prices).toBeGreaterThan(0);
  });

  test("never passes the fewest sheets found by looking at everything", () => {
    const piece = fc.record({
      width: fc.integer({ min: 1, max: 20 }),
      height: fc.integer({ min: 1, max: 20 }),
      turns: fc.constantFrom("both" as const, "upright" as const),
    });
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 5 }), fc.nat(2), (pieces, kerf) => {
        const kinds = pieces.map((form, i) => ({ id: `${i}`, quantity: 1, forms: [form] }));
        const ways = pieces.map(({ width, height, turns }): OraclePiece => {
          const upright = { width, height };
          return turns === "both" ? [upright, { width: height, height: width }] : [upright];
        });
        const sheet = { width: 20, height: 20 };
        const bound = boundOf(problemOf(sheet, kinds, kerf));
        expect(bound.sheets).toBeLessThanOrEqual(fewestSheets(sheet, ways, kerf));
      }),
    );
  });

  test("never passes the number of sheets that were cut into the pieces without waste", () => {
    const sheets = fc.array(cutWithoutWaste(60, 40, 12, 0), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(sheets, (cut) => {
        const kinds = cut.flat().map((form, i) => ({ id: `${i}`, quantity: 1, forms: [form] }));
        // No waste: the area alone proves the number.
        expect(boundOf(problemOf({ width: 60, height: 40 }, kinds)).sheets).toBe(cut.length);
      }),
    );
  });
});
