import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { exactBoxOf, outlineOf, scallopsOf, sizeOf } from "../../src/index.js";
import { faultsOf } from "./faults-of.js";
import { randomFrame, randomShape } from "./random-shape.js";

describe("shapes with random numbers from the stated ranges", () => {
  test("are made without a fault, in whole ticks and without a crossing", () => {
    fc.assert(
      fc.property(fc.oneof(randomShape, randomShape, randomShape, randomFrame), (shape) => {
        expect(faultsOf(outlineOf(shape))).toEqual([]);
      }),
    );
  });

  test("have the box that their width and height say, at the origin", () => {
    fc.assert(
      fc.property(randomShape, (shape) => {
        const box = exactBoxOf(outlineOf(shape));
        const size = sizeOf(shape);
        expect(box.x).toBeGreaterThan(-0.3);
        expect(box.y).toBeGreaterThan(-0.3);
        if (!("width" in size)) return;
        expect(Math.abs(box.width - size.width)).toBeLessThan(0.3);
        expect(Math.abs(box.height - size.height)).toBeLessThan(0.3);
      }),
    );
  });

  test("give the same outline from the same numbers, as plain data", () => {
    fc.assert(
      fc.property(randomShape, (shape) => {
        const again = JSON.parse(JSON.stringify(shape));
        expect(JSON.parse(JSON.stringify(outlineOf(again)))).toEqual(outlineOf(shape));
        expect(scallopsOf(again)).toEqual(scallopsOf(shape));
      }),
      { numRuns: 30 },
    );
  });
});
