import { describe, expect, test } from "vitest";
import { type Effort, type Problem, pack, verify } from "../src/index.js";

/** Twelve kinds on a sheet of 192 x 192, with shares of the copies from 1 to 6. */
function copiesOf(copies: number): Problem {
  const shares = Array.from({ length: 12 }, (_, i) => 1 + ((i * 7) % 6));
  const all = shares.reduce((sum, share) => sum + share, 0);
  let before = 0;
  return {
    mode: "guillotine",
    aim: "all",
    kinds: shares.map((share, i) => {
      const from = Math.floor((before * copies) / all);
      before += share;
      return {
        id: `k${i}`,
        quantity: Math.floor((before * copies) / all) - from,
        forms: [{ width: 17 + ((i * 37) % 79), height: 19 + ((i * 53) % 71) }],
      };
    }),
    sheets: [{ id: "sheet", width: 192, height: 192 }],
  };
}

describe.each<Effort>(["quick", "standard"])("many copies at %s", (effort) => {
  // Work is counted alike on every machine; that time and memory follow it is measured by the bench.
  test("take at most twice the work of a hundredth of them, and no poorer a plan", () => {
    const few = pack(copiesOf(1_000), { effort });
    const problem = copiesOf(100_000);
    const many = pack(problem, { effort });
    expect(verify(problem, many)).toEqual([]);
    expect(many.search.work).toBeLessThanOrEqual(2 * few.search.work);
    expect(many.sheets).toBeLessThanOrEqual(100 * few.sheets);
    expect(many.sheets).toBeGreaterThan(90 * few.sheets);
    // Copies are counted and never listed.
    expect(many.layouts.length).toBeLessThan(100);
    expect(JSON.stringify(many.layouts).length).toBeLessThan(200_000);
  });
});
