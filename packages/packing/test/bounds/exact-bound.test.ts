import fc from "fast-check";
import highsModule from "highs";
import { describe, expect, test } from "vitest";
import { exactBound } from "../../src/bounds/exact-bound.js";
import type { Problem, SheetWeights } from "../../src/index.js";
import { compileProblem } from "../../src/search/compiled-problem.js";

const identity = { family: "identity" } as const;

const sheet = fc.record({
  width: fc.integer({ min: 10, max: 40 }),
  height: fc.integer({ min: 10, max: 40 }),
  stock: fc.option(fc.nat(6)),
  cost: fc.integer({ min: 1, max: 60 }),
});
const kind = fc.record({
  width: fc.integer({ min: 1, max: 10 }),
  height: fc.integer({ min: 1, max: 10 }),
  quantity: fc.nat(40),
  value: fc.nat(90),
});

function problemOf(
  aim: Problem["aim"],
  sheets: readonly { width: number; height: number; stock: number | null; cost: number }[],
  kinds: readonly { width: number; height: number; quantity: number; value: number }[],
): { problem: Problem; weights: readonly SheetWeights[] } {
  const named = sheets.map((entry, i) => ({ id: `s${i}`, ...entry }));
  return {
    problem: {
      mode: "guillotine",
      aim,
      sheets: named,
      kinds: kinds.map(({ width, height, quantity, value }, i) => ({
        id: `k${i}`,
        quantity,
        value,
        forms: [{ width, height }],
      })),
    },
    weights: named.map(({ id, width, height }) => ({
      sheet: id,
      x: identity,
      y: identity,
      capacity: width * height,
    })),
  };
}

// HiGHS (Huangfu & Hall, Mathematical Programming Computation 10 (2018)) solves the same linear programs in floating
// point; with weights equal to areas the exact answer must lie within its tolerance.
// Its types are written for CommonJS, so that a module sees the loader one step too deep.
const loadHighs = highsModule as unknown as typeof highsModule.default;
const highs = await loadHighs();

describe("exactBound", () => {
  test("costs what HiGHS finds for the same cover by whole sheets, or by parts of them where the choices are many", () => {
    let whole = 0;
    let cases = 0;
    fc.assert(
      fc.property(
        fc.array(sheet, { minLength: 1, maxLength: 4 }),
        fc.array(kind, { minLength: 1, maxLength: 5 }),
        (sheets, kinds) => {
          const { problem, weights } = problemOf("all", sheets, kinds);
          const bound = exactBound(compileProblem(problem), weights);
          const demand = kinds.reduce((sum, entry) => sum + entry.width * entry.height * entry.quantity, 0);
          const terms = (of: (entry: (typeof sheets)[number]) => number): string =>
            sheets.map((entry, i) => `${of(entry)} n${i}`).join(" + ");
          const limits = sheets.map(
            (entry, i) => `0 <= n${i}${entry.stock === null ? "" : ` <= ${entry.stock}`}`,
          );
          const program = `Minimize\n obj: ${terms((entry) => entry.cost)}\nSubject To\n c: ${terms((entry) => entry.width * entry.height)} >= ${demand}\nBounds\n ${limits.join("\n ")}`;
          const found = highs.solve(`${program}\nEnd`);
          const cost = bound?.aim === "all" ? bound.cost : "none";
          if (found.Status === "Infeasible") {
            expect(cost).toBeNull();
            return;
          }
          expect(found.Status).toBe("Optimal");
          const step = sheets.reduce((all, entry) => divisor(all, entry.cost), 0);
          const names = sheets.map((_, i) => `n${i}`).join(" ");
          const exact = highs.solve(`${program}\nGeneral\n ${names}\nEnd`, {
            mip_rel_gap: 0,
            mip_abs_gap: 0.5,
          });
          expect(exact.Status).toBe("Optimal");
          expect(Number(cost)).toBeGreaterThan(found.ObjectiveValue - 1e-6);
          expect(Number(cost)).toBeLessThan(exact.ObjectiveValue + 1e-6);
          expect(Number(cost) % step).toBe(0);
          cases++;
          if (Math.abs(Number(cost) - exact.ObjectiveValue) < 1e-6) whole++;
          else expect(Number(cost) - found.ObjectiveValue).toBeLessThan(step);
        },
      ),
    );
    expect(whole / cases).toBeGreaterThan(0.9);
  });

  test("is worth what HiGHS finds for the same load, rounded down", () => {
    const limited = sheet.map((entry) => ({ ...entry, stock: entry.stock ?? 1 }));
    fc.assert(
      fc.property(
        fc.array(limited, { minLength: 1, maxLength: 3 }),
        fc.array(kind, { minLength: 1, maxLength: 5 }),
        (sheets, kinds) => {
          const { problem, weights } = problemOf("fill", sheets, kinds);
          const bound = exactBound(compileProblem(problem), weights);
          const room = sheets.reduce((sum, entry) => sum + entry.width * entry.height * entry.stock, 0);
          const terms = (of: (entry: (typeof kinds)[number]) => number): string =>
            kinds.map((entry, i) => `${of(entry)} x${i}`).join(" + ");
          const found = highs.solve(
            `Maximize\n obj: ${terms((entry) => entry.value)}\nSubject To\n c: ${terms((entry) => entry.width * entry.height)} <= ${room}\nBounds\n ${kinds.map((entry, i) => `0 <= x${i} <= ${entry.quantity}`).join("\n ")}\nEnd`,
          );
          expect(found.Status).toBe("Optimal");
          const gap = found.ObjectiveValue - Number(bound?.aim === "fill" ? bound.value : Number.NaN);
          expect(gap).toBeGreaterThan(-1e-6);
          expect(gap).toBeLessThan(1);
        },
      ),
    );
  });
});

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}
