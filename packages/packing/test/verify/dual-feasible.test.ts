import { describe, expect, it } from "vitest";
import type { DualFeasible } from "../../src/model.js";
import { readDualFeasible } from "../../src/verify/dual-feasible.js";
import { type Finding, startFindings } from "../../src/verify/finding.js";
import { paperMeasure } from "./paper-measure.js";

function readFunction(f: unknown, extent: number) {
  const { list, report } = startFindings();
  return { weighing: readDualFeasible(report, f, "f", BigInt(extent)), findings: list as readonly Finding[] };
}

/** The values of a function on 0..extent, with its capacity. */
function tableOf(f: DualFeasible, extent: number) {
  const { weighing } = readFunction(f, extent);
  if (weighing === undefined) throw new RangeError("Not dual-feasible.");
  const values = Array.from({ length: extent + 1 }, (_, x) => Number(weighing.weigh(BigInt(x), "")));
  return { values, capacity: Number(weighing.capacity) };
}

/** Every function with parameters in its range; `k` beyond the extent repeats what smaller ones give. */
function functionsOn(extent: number): readonly DualFeasible[] {
  const list: DualFeasible[] = [{ family: "identity" }];
  for (let at = 1; 2 * at <= extent; at += 1) list.push({ family: "threshold", at }, { family: "step", at });
  for (let k = 1; k <= extent + 1; k += 1) list.push({ family: "rounding", k });
  return list;
}

/** The most that the values of any multiset of extents, summing to at most `extent`, sum to: tries every multiset. */
function mostOfAnyRow(values: readonly number[], extent: number): number {
  let most = 0;
  const extend = (rest: number, largest: number, sum: number): void => {
    if (sum > most) most = sum;
    for (let x = Math.min(rest, largest); x >= 1; x -= 1) extend(rest - x, x, sum + (values[x] ?? 0));
  };
  extend(extent, extent, 0);
  return most;
}

// Definition of a dual-feasible function: S. P. Fekete and J. Schepers, Mathematical Programming 91 (2001), section 2;
// the step family: J. Carlier, F. Clautiaux and A. Moukrim, Computers & Operations Research 34 (2007).
describe("the dual-feasible functions", () => {
  it("give values that sum to at most the capacity, for every multiset of extents on up to 30", () => {
    for (let extent = 1; extent <= 30; extent += 1) {
      for (const f of functionsOn(extent)) {
        const { values, capacity } = tableOf(f, extent);
        const most = mostOfAnyRow(values, extent);
        expect(most, `${JSON.stringify(f)} on ${extent}`).toBeLessThanOrEqual(capacity);
      }
    }
  });

  it("give the whole extent the whole capacity, so that a sheet's own size weighs what it carries", () => {
    for (let extent = 1; extent <= 60; extent += 1) {
      for (const f of functionsOn(extent)) {
        const { values, capacity } = tableOf(f, extent);
        expect(values[extent], `${JSON.stringify(f)} on ${extent}`).toBe(capacity);
      }
    }
  });

  it("are superadditive, so that pieces in a window weigh at most what the window would", () => {
    for (let extent = 1; extent <= 60; extent += 1) {
      for (const f of functionsOn(extent)) {
        const { values } = tableOf(f, extent);
        for (let x = 0; x <= extent; x += 1) {
          for (let y = x; x + y <= extent; y += 1) {
            const sum = (values[x] ?? 0) + (values[y] ?? 0);
            if (sum > (values[x + y] ?? 0)) expect.fail(`${JSON.stringify(f)} on ${extent}: ${x} + ${y}`);
          }
        }
      }
    }
  });

  it("are the functions of the papers, which stand there for extents from 0 to 1", () => {
    for (let extent = 1; extent <= 24; extent += 1) {
      for (const f of functionsOn(extent)) {
        const { values, capacity } = tableOf(f, extent);
        const paper = paperMeasure(f, BigInt(extent));
        for (let x = 0; x <= extent; x += 1) {
          // Both are shares of a whole: value / capacity.
          const share = BigInt(values[x] ?? 0) * paper.capacity;
          expect(share, `${JSON.stringify(f)} on ${extent}: ${x}`).toBe(
            paper.u(BigInt(x), "") * BigInt(capacity),
          );
        }
      }
    }
  });

  it("read well in an example: three pieces of 4 and more never share an extent of 10", () => {
    // Of 10, rounding by k = 2 counts 4, 5 and 6 as half: floor(3 x 4 / 10) = 1 of 2.
    const { values, capacity } = tableOf({ family: "rounding", k: 2 }, 10);
    expect(capacity).toBe(20);
    expect(values).toEqual([0, 0, 0, 0, 10, 10, 10, 20, 20, 20, 20]);
  });
});

describe("parameters out of range", () => {
  it("are refused by name and place", () => {
    const found = (f: unknown) => readFunction(f, 10).findings.map(({ code, path }) => `${code} at ${path}`);
    expect(found({ family: "threshold", at: 6 })).toEqual(["not-dual-feasible at f.at"]);
    expect(found({ family: "threshold", at: 0 })).toEqual(["not-dual-feasible at f.at"]);
    expect(found({ family: "threshold" })).toEqual(["missing-value at f.at"]);
    expect(found({ family: "step", at: 6 })).toEqual(["not-dual-feasible at f.at"]);
    expect(found({ family: "step", at: -3 })).toEqual(["not-dual-feasible at f.at"]);
    expect(found({ family: "rounding", k: 0 })).toEqual(["not-dual-feasible at f.k"]);
    expect(found({ family: "rounding", k: 1.5 })).toEqual(["not-dual-feasible at f.k"]);
    expect(found({ family: "square", at: 1 })).toEqual(["not-dual-feasible at f.family"]);
    expect(found({ family: "threshold", at: 5 })).toEqual([]);
    expect(found({ family: "step", at: 5 })).toEqual([]);
    expect(found({ family: "rounding", k: 1_000_000 })).toEqual([]);
  });

  it("would prove too much: every threshold of more than half an extent by one", () => {
    for (let extent = 2; extent <= 30; extent += 1) {
      for (let at = Math.floor(extent / 2) + 1; at <= extent; at += 1) {
        if (2 * at < extent + 2) continue;
        const values = Array.from({ length: extent + 1 }, (_, x) =>
          x > extent - at ? extent : x < at ? 0 : x,
        );
        expect(mostOfAnyRow(values, extent), `at ${at} on ${extent}`).toBeGreaterThan(extent);
      }
    }
  });

  it("would prove too much: rounding by a k that is not whole", () => {
    // With k = 3/2 and pieces of 5 on 10: floor(5/2 x 1/2) / k = 2/3 each, and two of them fit.
    const double = paperMeasure({ family: "rounding", k: 1 }, 10n);
    expect(2n * double.u(5n, "")).toBeLessThanOrEqual(double.capacity);
    const k = { n: 3, d: 2 };
    const whole = Math.floor(((k.n + k.d) * 5) / (k.d * 10));
    expect(whole).toBe(1);
    expect(2 * whole * k.d).toBeGreaterThan(k.n);
  });

  it("would weigh nothing or divide by nothing: no rounding, and steps beyond the extent", () => {
    expect(paperMeasure({ family: "rounding", k: 0 }, 10n).capacity).toBe(0n);
    expect(paperMeasure({ family: "step", at: 11 }, 10n).capacity).toBe(0n);
    // A negative step turns every value below half negative, and the capacity with it.
    expect(paperMeasure({ family: "step", at: -3 }, 10n).capacity).toBeLessThan(0n);
  });
});
