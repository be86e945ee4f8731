import { outlineOf } from "@sheetwright/shapes";
import { describe, expect, test } from "vitest";
import { insideShape, meetsShape } from "../../src/drawing/inside-shape.js";
import type { LyingShape } from "../../src/layout/lying-shape.js";

const MM = 1600;
const circle = outlineOf({ shape: "circle", diameter: 100 * MM });
const none = { dashes: [], holes: [] };
const shape = (change: Partial<LyingShape> = {}): LyingShape => ({
  die: null,
  count: 1,
  box: { x: 5 * MM, y: 5 * MM, width: 100 * MM, height: 100 * MM },
  outlines: [circle],
  stitches: none,
  trims: [],
  ...change,
});
const piece = { x: 10 * MM, y: 20 * MM };
const free = { x: 10, y: 20, width: 110, height: 110 };

describe("where words may stand on a shape", () => {
  test("is the middle of it, about the square in a circle, and then less", () => {
    const [large, small, ...others] = insideShape(shape(), piece, free);
    expect(others).toEqual([]);
    for (const [side, value] of Object.entries({ x: 31, y: 41, width: 68, height: 68 }))
      expect(large?.[side as "x"]).toBeCloseTo(value, 9);
    expect(small).toEqual({ x: 40, y: 50, width: 50, height: 50 });
  });

  test("is nowhere without its outline, or where something else takes the middle", () => {
    expect(insideShape(shape({ outlines: [] }), piece, free)).toEqual([]);
    expect(insideShape(shape(), piece, { ...free, width: 60 })).toEqual([]);
  });

  test("is not where a stitch lies", () => {
    const [large, small] = insideShape(shape(), piece, free);
    // 30 mm left of the middle of the circle: in the large part, and not in the small one.
    const holes = [{ centre: { x: 25 * MM, y: 55 * MM }, diameter: MM }];
    const pricked = shape({ stitches: { ...none, holes } });
    expect([large, small].map((part) => meetsShape(pricked, piece, part!))).toEqual([true, false]);
    expect(meetsShape(shape(), piece, large!)).toBe(false);
  });
});
