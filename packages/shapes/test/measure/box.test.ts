import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flatten } from "../../src/flatten/flatten.js";
import { boxOf, exactBoxOf } from "../../src/measure/box.js";
import { mirrored, moved, quarterTurned } from "../../src/outline/move.js";
import type { Outline } from "../../src/outline/outline.js";
import { anyOutline, discAt, rectangleOf, roundedRectangle } from "../random-outline.js";

describe("the box of an outline", () => {
  test("of straight edges is that of the corners", () => {
    expect(boxOf(moved(rectangleOf(300, 100), { x: -7, y: 9 }))).toEqual({
      x: -7,
      y: 9,
      width: 300,
      height: 100,
    });
  });

  test("of a circle is its diameter wherever its arcs end", () => {
    for (const radius of [1601, 40_640, 133_335]) {
      const box = { x: -radius, y: -radius, width: 2 * radius, height: 2 * radius };
      expect(boxOf(discAt({ x: 0, y: 0 }, radius))).toEqual(box);
      expect(boxOf(quarterTurned(discAt({ x: 0, y: 0 }, radius), 1))).toEqual(box);
    }
    // A circle of radius 25 by points none of which is outermost: (7, 24), (-24, -7), (24, -7), (-7, 24) and so on.
    const slanted: Outline = {
      outer: [
        { to: { x: -24, y: 7 }, through: { x: -7, y: 24 } },
        { to: { x: 24, y: 7 }, through: { x: 7, y: -24 } },
        { to: { x: 7, y: 24 }, through: { x: 20, y: 15 } },
      ],
      windows: [],
    };
    const exact = exactBoxOf(slanted);
    expect(exact.x).toBeCloseTo(-25, 9);
    expect(exact.y).toBeCloseTo(-25, 9);
    expect(exact.width).toBeCloseTo(50, 9);
    expect(exact.height).toBeCloseTo(50, 9);
    expect(boxOf(slanted)).toEqual({ x: -25, y: -25, width: 50, height: 50 });
  });

  test("of a rounded rectangle of any size is its sides, for quarter circles through rounded points", () => {
    for (let width = 10_001; width < 200_000; width += 7_919) {
      const height = width + 1_234;
      const outline = roundedRectangle(width, height, Math.floor(width / 5));
      expect(boxOf(outline)).toEqual({ x: 0, y: 0, width, height });
    }
  });

  test("of an arc that bulges past its ends holds the bulge, rounded outwards", () => {
    // Chord 8, rise 3: radius (16 + 9) / 6, from the middle at (4, 25 / 6 - 3). Less than a half circle.
    const bow: Outline = {
      outer: [{ to: { x: 8, y: 0 }, through: { x: 4, y: -3 } }, { to: { x: 0, y: 0 } }],
      windows: [],
    };
    expect(exactBoxOf(bow)).toEqual({ x: 0, y: -3, width: 8, height: 3 });
    // Rise 5: more than a half circle, so wider than its ends by (16 + 25) / 10 - 4 a side.
    const ball: Outline = {
      outer: [{ to: { x: 8, y: 0 }, through: { x: 4, y: -5 } }, { to: { x: 0, y: 0 } }],
      windows: [],
    };
    expect(exactBoxOf(ball).x).toBeCloseTo(-0.1, 12);
    expect(exactBoxOf(ball).width).toBeCloseTo(8.2, 12);
    expect(boxOf(ball)).toEqual({ x: -1, y: -5, width: 10, height: 5 });
  });

  test("holds every point of the line, and is touched on all sides", () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        const exact = exactBoxOf(outline);
        const { x, y, width, height } = boxOf(outline);
        expect([x, y, width, height].every(Number.isInteger)).toBe(true);
        const { outer } = flatten(outline, { tolerance: 1 });
        const lefts = outer.map((point) => point.x - exact.x);
        const rights = outer.map((point) => exact.x + exact.width - point.x);
        const tops = outer.map((point) => point.y - exact.y);
        const bottoms = outer.map((point) => exact.y + exact.height - point.y);
        for (const gaps of [lefts, rights, tops, bottoms]) {
          // Chords within a tick, corners rounded by half a tick.
          expect(Math.min(...gaps)).toBeGreaterThan(-0.51);
          expect(Math.min(...gaps)).toBeLessThan(1.51);
        }
        expect(x).toBeLessThanOrEqual(exact.x + 0.01);
        expect(x + width).toBeGreaterThanOrEqual(exact.x + exact.width - 0.01);
        expect(exact.x - x).toBeLessThan(1);
        expect(y + height - exact.y - exact.height).toBeLessThan(1);
      }),
    );
  });

  test("moves, turns and mirrors with its outline", () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        const box = boxOf(outline);
        expect(boxOf(moved(outline, { x: 5, y: -8 }))).toEqual({ ...box, x: box.x + 5, y: box.y - 8 });
        expect(boxOf(mirrored(outline))).toEqual({ ...box, x: 0 - box.x - box.width });
        expect(boxOf(quarterTurned(outline, 1))).toEqual({
          x: 0 - box.y - box.height,
          y: box.x,
          width: box.height,
          height: box.width,
        });
      }),
    );
  });
});
