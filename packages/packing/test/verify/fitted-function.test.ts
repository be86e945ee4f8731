import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FittedValue, Problem } from "../../src/model.js";
import { startFindings } from "../../src/verify/finding.js";
import { readFitted } from "../../src/verify/fitted-function.js";
import { type ProblemFacts, readProblem } from "../../src/verify/read-problem.js";
import { paperMeasure } from "./paper-measure.js";

const problemOf = (quantities: readonly number[], kerf: number): Problem => ({
  mode: "guillotine",
  aim: "all",
  kerf,
  sheets: [{ id: "s", width: 40, height: 40 }],
  kinds: quantities.map((quantity, i) => ({ id: `${i}`, quantity, forms: [{ width: 5, height: 5 }] })),
});

function capacityOf(problem: Problem, values: readonly FittedValue[], extent: number): number | undefined {
  const { report } = startFindings();
  const facts = readProblem(problem, report) as ProblemFacts;
  const weighing = readFitted(facts, report, values, "f.values", BigInt(extent));
  return weighing && Number(weighing.capacity);
}

/** The most of a row, by trying every extent of every single copy. */
function mostOfCopies(problem: Problem, values: readonly FittedValue[], extent: number): number {
  const copies = problem.kinds.flatMap(({ id, quantity }) => Array.from({ length: quantity ?? 0 }, () => id));
  const best = (index: number, rest: number): number => {
    if (index === copies.length) return 0;
    let most = best(index + 1, rest);
    for (const { kind, extent, value } of values) {
      const left = rest - extent - (problem.kerf ?? 0);
      if (kind === copies[index] && left >= 0) most = Math.max(most, value + best(index + 1, left));
    }
    return most;
  };
  return best(0, extent);
}

describe("a fitted function", () => {
  it("reads well in an example: what stands alone in a row counts all of it", () => {
    // In a row of 10, 6 leaves room for one 4 but not for two; there is one of each.
    const problem = problemOf([1, 1, 1], 0);
    const values = [
      { kind: "0", extent: 6, value: 2 },
      { kind: "1", extent: 5, value: 1 },
      { kind: "2", extent: 4, value: 1 },
    ];
    expect(capacityOf(problem, values, 10)).toBe(3);
    expect(capacityOf(problem, values.slice(0, 2), 10)).toBe(2);
  });

  it("counts no more copies than are wanted", () => {
    const values = [{ kind: "0", extent: 3, value: 1 }];
    expect(capacityOf(problemOf([2], 0), values, 40)).toBe(2);
    expect(capacityOf(problemOf([50], 0), values, 40)).toBe(13);
    expect(capacityOf(problemOf([50], 1), values, 40)).toBe(10);
  });

  it("has the capacity that trying every copy in every extent gives", () => {
    const value = fc.record({
      kind: fc.nat(2).map(String),
      extent: fc.integer({ min: 1, max: 25 }),
      value: fc.integer({ min: 1, max: 9 }),
    });
    const distinct = fc.uniqueArray(value, {
      minLength: 1,
      maxLength: 5,
      selector: ({ kind, extent }) => `${kind} ${extent}`,
    });
    const quantities = fc.array(fc.nat(3), { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(
        distinct,
        quantities,
        fc.nat(2),
        fc.integer({ min: 1, max: 40 }),
        (values, counts, kerf, extent) => {
          const problem = problemOf(counts, kerf);
          const most = mostOfCopies(problem, values, extent);
          expect(capacityOf(problem, values, extent)).toBe(most === 0 ? undefined : most);
          expect(paperMeasure({ family: "fitted", values }, BigInt(extent), problem).capacity).toBe(
            BigInt(most),
          );
        },
      ),
    );
  });
});
