import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lowerBound } from "../../src/bounds/lower-bound.js";
import { type Problem, pack, verify } from "../../src/index.js";
import { compileProblem } from "../../src/search/compiled-problem.js";
import { bestUnlimitedLayout } from "../../src/search/unlimited-copies.js";
import { smallStock } from "../small-stock.js";

/** Bounds at `standard` take a while, so there are a quarter of the cases. */
const slow = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 4) };

describe("the bound of a fill from limited copies", () => {
  test("is the published optimum of cgcut1, which is four less than what copies without limit are worth", () => {
    // N. Christofides, C. Whitlock, An algorithm for two-dimensional cutting problems, Operations Research 25 (1977):
    // width, height, copies, value of each kind; optimum 244.
    const kinds = [
      [8, 4, 2, 66],
      [3, 7, 1, 35],
      [8, 2, 3, 24],
      [3, 4, 5, 17],
      [3, 3, 2, 11],
      [3, 2, 2, 8],
      [2, 1, 1, 2],
    ].map(([width = 0, height = 0, quantity = 0, value = 0], i) => {
      return { id: `${i + 1}`, quantity, value, forms: [{ width, height, turns: "upright" as const }] };
    });
    const problem: Problem = {
      kinds,
      sheets: [{ id: "sheet", width: 15, height: 10, stock: 1 }],
      mode: "guillotine",
      aim: "fill",
    };
    const packing = pack(problem, { effort: "standard" });
    expect(packing).toMatchObject({ value: "244", bound: { value: "244" }, proven: true });
    expect(verify(problem, packing)).toEqual([]);
    const pieces = kinds.flatMap(({ forms, value }) =>
      forms.map(({ width, height }) => ({ width, height, value, leaf: { type: "waste" as const } })),
    );
    expect(bestUnlimitedLayout(15, 10, 0, pieces, 1_000_000).value).toBeGreaterThanOrEqual(248);
  });

  test("is never below what looking at everything finds, on one sheet and on several", () => {
    const kind = fc.record({
      width: fc.integer({ min: 4, max: 12 }),
      height: fc.integer({ min: 4, max: 12 }),
      quantity: fc.integer({ min: 1, max: 3 }),
      value: fc.integer({ min: 1, max: 200 }),
      turns: fc.constantFrom("upright" as const, "both" as const),
    });
    const sheet = fc.record({
      width: fc.integer({ min: 12, max: 24 }),
      height: fc.integer({ min: 12, max: 24 }),
      stock: fc.integer({ min: 1, max: 2 }),
    });
    let reached = 0;
    let cases = 0;
    fc.assert(
      fc.property(
        fc.array(kind, { minLength: 1, maxLength: 3 }),
        fc.array(sheet, { minLength: 1, maxLength: 2 }),
        fc.nat(2),
        (kinds, sheets, kerf) => {
          const problem: Problem = {
            kinds: kinds.map(({ width, height, turns, ...entry }, i) => {
              return { id: `k${i}`, ...entry, forms: [{ width, height, turns }] };
            }),
            sheets: sheets.map((entry, i) => ({ id: `s${i}`, ...entry })),
            mode: "guillotine",
            aim: "fill",
            kerf,
          };
          const { value } = smallStock(problem).mostValue(kinds.map(() => 0));
          const bound = lowerBound(compileProblem(problem), "standard");
          expect(Number(bound.aim === "fill" && bound.value)).toBeGreaterThanOrEqual(value);
          if (bound.aim === "fill" && Number(bound.value) === value) reached++;
          cases++;
        },
      ),
      slow,
    );
    expect(reached / cases).toBeGreaterThan(0.5);
  });
});
