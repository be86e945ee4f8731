import fc from "fast-check";
import highsModule from "highs";
import { describe, expect, test } from "vitest";
import { patternOf, patternRows } from "../../src/columns/pattern.js";
import { newPool, poolProgram } from "../../src/columns/pattern-pool.js";
import type { CutNode } from "../../src/index.js";
import { compileProblem } from "../../src/search/compiled-problem.js";

// Its types are written for CommonJS, so that a module sees the loader one step too deep.
const loadHighs = highsModule as unknown as typeof highsModule.default;
const highs = await loadHighs();

const waste: CutNode = { type: "waste" };

const cases = fc.record({
  demand: fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 2, maxLength: 5 }),
  sheets: fc.array(fc.record({ cost: fc.integer({ min: 1, max: 20 }), stock: fc.constantFrom(null, 2, 9) }), {
    minLength: 1,
    maxLength: 3,
  }),
  patterns: fc.array(
    fc.record({ sheet: fc.nat(2), counts: fc.array(fc.nat(4), { minLength: 5, maxLength: 5 }) }),
    { minLength: 1, maxLength: 14 },
  ),
});

describe("the program of patterns", () => {
  test("buys pieces again, after patterns took their place, where sheets run out", () => {
    const demand = [1, 1, 1, 17];
    const problem = compileProblem({
      kinds: demand.map((quantity, i) => ({ id: `k${i}`, quantity, forms: [{ width: 5, height: 4 + i }] })),
      sheets: [{ id: "s", width: 20, height: 20, cost: 1, stock: 9 }],
      mode: "guillotine",
      aim: "all",
    });
    const rows = patternRows(problem, demand);
    const pool = newPool();
    const sheet = problem.sheets[0]!;
    for (const counts of [
      [0, 0, 3, 0],
      [0, 4, 0, 2],
      [3, 0, 0, 0],
    ])
      pool.add(patternOf(rows, sheet, Float64Array.from(counts), waste));
    const use = poolProgram(rows, pool, Float64Array.from(demand), Float64Array.of(9), { left: 1e9 }).solve();
    // Nine sheets of which 2/3 give the first and the third kind; a third of a piece of the last is bought, at 4.
    expect(use.cost).toBeCloseTo(9 + 4 / 3, 9);
  });

  // HiGHS (Huangfu & Hall, Mathematical Programming Computation 10 (2018)) solves the same programs in floating point.
  test("costs what HiGHS finds, keeps every limit, and leaves no pattern that would make it cheaper", () => {
    let limited = 0;
    fc.assert(
      fc.property(cases, ({ demand, sheets, patterns }) => {
        const problem = compileProblem({
          kinds: demand.map((quantity, i) => ({
            id: `k${i}`,
            quantity,
            forms: [{ width: 5, height: 4 + i }],
          })),
          sheets: sheets.map((sheet, i) => ({ id: `s${i}`, width: 20, height: 20, ...sheet })),
          mode: "guillotine",
          aim: "all",
        });
        const rows = patternRows(problem, demand);
        const pool = newPool();
        for (const { sheet, counts } of patterns) {
          const own = problem.sheets[sheet % sheets.length];
          const some = Float64Array.from(rows.kinds, (_, row) => counts[row] ?? 0);
          if (own && some.some((count) => count > 0)) pool.add(patternOf(rows, own, some, waste));
        }
        if (pool.patterns.length === 0) return;
        const stock = Float64Array.from(rows.limited, (sheet) => sheet.stock);
        const work = { left: 1e9 };
        const use = poolProgram(rows, pool, Float64Array.from(demand), stock, work).solve();

        // What no pattern covers is bought piece by piece, at four times the dearest sheet of the pool.
        const dearest = Math.max(1, ...pool.patterns.map(({ sheet }) => sheet.cost));
        const columns = pool.patterns.map(({ sheet, column }) => ({ cost: sheet.cost, column }));
        const terms = (of: (entry: (typeof columns)[number]) => number, last: string): string =>
          [...columns.map((entry, i) => `${of(entry)} x${i}`), last].join(" + ").replaceAll("+ -", "- ");
        const bought = demand.map((_, i) => `${4 * dearest} b${i}`).join(" + ");
        const covers = demand.map(
          (count, i) => `c${i}: ${terms(({ column }) => column[i] ?? 0, `b${i}`)} >= ${count}`,
        );
        const limits = rows.limited.map((sheet, i) => {
          const row = rows.kinds.length + i;
          return `l${i}: ${terms(({ column }) => -(column[row] ?? 0), "0 b0")} <= ${sheet.stock}`;
        });
        const text = `Minimize\n obj: ${terms(({ cost }) => cost, bought)}\nSubject To\n ${[...covers, ...limits].join("\n ")}\nEnd`;
        const found = highs.solve(text);
        expect(found.Status).toBe("Optimal");
        expect(use.cost).toBeCloseTo(found.ObjectiveValue, 5);

        for (const [i, sheet] of rows.limited.entries()) {
          const used = use.uses.filter(({ pattern }) => pattern.sheet === sheet);
          const times = used.reduce((sum, entry) => sum + entry.times, 0);
          expect(times).toBeLessThanOrEqual(sheet.stock + 1e-6);
          if ((use.prices[rows.kinds.length + i] ?? 0) > 1e-6) limited++;
        }
        for (const { sheet, column } of pool.patterns) {
          const worth = column.reduce((sum, count, row) => sum + count * (use.prices[row] ?? 0), 0);
          expect(worth).toBeLessThanOrEqual(sheet.cost + 1e-4);
        }
      }),
    );
    expect(limited).toBeGreaterThan(0);
  });
});
