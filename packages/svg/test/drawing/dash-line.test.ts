import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dashLine } from "../../src/drawing/dash-line.js";

describe("dashLine", () => {
  test("fits whole dashes and gaps, a little stretched, and begins and ends with a dash", () => {
    expect(dashLine(8, 2, 1)).toEqual([
      [0, 2],
      [3, 5],
      [6, 8],
    ]);
    // 10 and a gap are 11, three and two thirds of a dash with its gap: four dashes and three gaps of 11 take 10.
    const dashes = dashLine(10, 2, 1);
    expect(dashes).toHaveLength(4);
    expect(dashes[1]?.[0]).toBeCloseTo(30 / 11, 9);
    expect(dashes.at(-1)?.[1]).toBe(10);
  });

  test("draws a line that is too short for two dashes whole", () => {
    expect(dashLine(1, 2, 1)).toEqual([[0, 1]]);
  });

  test("keeps dashes and gaps alike and near what was asked, for lines of any length", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500_000 }),
        fc.integer({ min: 500, max: 5000 }),
        fc.integer({ min: 300, max: 3000 }),
        (length, dash, gap) => {
          const dashes = dashLine(length / 1000, dash / 1000, gap / 1000);
          expect(dashes[0]?.[0]).toBe(0);
          expect(dashes.at(-1)?.[1]).toBe(length / 1000);
          if (dashes.length === 1) {
            expect(length).toBeLessThanOrEqual(1.5 * (dash + gap) - gap + 1e-6);
            return;
          }
          const scale = (dashes[0]?.[1] ?? 0) / (dash / 1000);
          expect(scale).toBeGreaterThan(0.7);
          expect(scale).toBeLessThan(1.6);
          dashes.slice(1).forEach(([from, to], i) => {
            expect(to - from).toBeCloseTo((scale * dash) / 1000, 6);
            expect(from - (dashes[i]?.[1] ?? 0)).toBeCloseTo((scale * gap) / 1000, 6);
          });
        },
      ),
    );
  });
});
