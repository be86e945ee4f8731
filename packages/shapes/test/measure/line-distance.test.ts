import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flattenRing } from "../../src/flatten/flatten.js";
import { distanceFrom, leastDistance } from "../../src/measure/least-distance.js";
import { mostDistance } from "../../src/measure/most-distance.js";
import { moved } from "../../src/outline/move.js";
import type { Outline } from "../../src/outline/outline.js";
import { distance, type Point } from "../../src/outline/point.js";
import { anyOutline, discAt, lobedDisc, rectangleOf } from "../random-outline.js";

describe("the distance from a point", () => {
  test("is exact to arcs, lines and corners, from either side", () => {
    const disc = discAt({ x: 0, y: 0 }, 5000);
    expect(distanceFrom(disc, { x: 6000, y: 8000 }).distance).toBeCloseTo(5000, 9);
    expect(distanceFrom(disc, { x: 600, y: 800 }).distance).toBeCloseTo(4000, 9);
    expect(distanceFrom(disc, { x: 0, y: 0 }).distance).toBeCloseTo(5000, 9);
    const sheet = rectangleOf(100, 100);
    expect(distanceFrom(sheet, { x: 103, y: 104 })).toEqual({
      distance: 5,
      from: { x: 103, y: 104 },
      to: { x: 100, y: 100 },
    });
    expect(distanceFrom(sheet, { x: 30, y: 40 }).distance).toBe(30);
  });
});

describe("an arc that is as good as straight", () => {
  test("is measured as its chord, whose middle it passes within a thousandth of a tick", () => {
    // Cross products of 1: rises of three millionths of a tick on 200 mm, and a circle of many light years.
    const flat: Outline = {
      outer: [
        { to: { x: 320_001, y: 240_001 }, through: { x: 160_000, y: 120_000 } },
        { to: { x: 0, y: 240_001 } },
        { to: { x: 0, y: 0 } },
      ],
      windows: [],
    };
    const { distance: away, to } = distanceFrom(flat, { x: 160_300, y: 119_600 });
    expect(away).toBeCloseTo(500, 0);
    expect((to.x * 3) / 4 - to.y).toBeLessThan(1);
    expect(leastDistance(flat, discAt({ x: 163_000, y: 116_000 }, 4000)).distance).toBeCloseTo(1000, 0);
  });
});

describe("the least distance of two lines", () => {
  test("between discs is that of their centres less their radii", () => {
    const disc = discAt({ x: 0, y: 0 }, 5000);
    expect(leastDistance(disc, discAt({ x: 12_000, y: 16_000 }, 7000)).distance).toBeCloseTo(8000, 3);
    expect(leastDistance(disc, discAt({ x: 300, y: 400 }, 2000)).distance).toBeCloseTo(2500, 3);
    expect(leastDistance(disc, discAt({ x: 3000, y: 0 }, 5000)).distance).toBeCloseTo(0, 3);
    expect(leastDistance(disc, rectangleOf(20_000, 20_000)).distance).toBe(0);
    expect(leastDistance(disc, moved(rectangleOf(9000, 9000), { x: -4500, y: 6000 })).distance).toBeCloseTo(
      1000,
      9,
    );
  });

  test("is never more than that of any two points, and fine points come as near", () => {
    fc.assert(
      fc.property(anyOutline, anyOutline, fc.integer({ min: -3, max: 3 }), (one, other, step) => {
        const moving = moved(other, { x: step * 60_000, y: 0 });
        const found = leastDistance(one, moving);
        expect(distanceFrom(one, found.from).distance).toBeLessThan(0.01);
        expect(distanceFrom(moving, found.to).distance).toBeLessThan(0.01);
        expect(distance(found.from, found.to)).toBe(found.distance);
        const points = flattenRing(one.outer, 40);
        const sampled = Math.min(...points.map((point) => distanceFrom(moving, point).distance));
        expect(found.distance).toBeLessThan(sampled + 0.71);
      }),
    );
  });
});

describe("the most distance of a line", () => {
  test("from a circle to another one about the same middle is the difference of their radii", () => {
    const inner = discAt({ x: 0, y: 0 }, 5000);
    expect(mostDistance(discAt({ x: 0, y: 0 }, 9000), inner).distance).toBeCloseTo(4000, 6);
    expect(mostDistance(discAt({ x: 300, y: 400 }, 9000), inner).distance).toBeCloseTo(4500, 1);
  });

  test("from a square round a disc is at its corners, from a disc round a square at the middles of its sides", () => {
    const square = moved(rectangleOf(8000, 8000), { x: -4000, y: -4000 });
    expect(mostDistance(square, discAt({ x: 0, y: 0 }, 3000)).distance).toBeCloseTo(
      4000 * Math.SQRT2 - 3000,
      6,
    );
    expect(mostDistance(discAt({ x: 0, y: 0 }, 6000), square).distance).toBeCloseTo(2000, 1);
  });

  test("from a circle round lobes is in the valleys", () => {
    // Valleys at 40 000; a circle of 50 000 is nearest to the tips of the lobes and furthest from the valleys.
    const lobed = lobedDisc(8, 40_000, 6000);
    const circle = discAt({ x: 0, y: 0 }, 50_000);
    const found = mostDistance(circle, lobed).distance;
    const sampled = Math.max(
      ...Array.from({ length: 4_000 }, (_, step): Point => {
        const angle = (2 * Math.PI * step) / 4_000;
        return { x: 50_000 * Math.cos(angle), y: 50_000 * Math.sin(angle) };
      }).map((point) => distanceFrom(lobed, point).distance),
    );
    expect(found).toBeGreaterThanOrEqual(sampled - 0.011);
    expect(found).toBeLessThan(sampled + 10);
  });

  test("is reached, and no point of the line lies further", () => {
    fc.assert(
      fc.property(anyOutline, anyOutline, (one, other) => {
        const bare: Outline = { outer: other.outer, windows: [] };
        const found = mostDistance(one, other);
        expect(distanceFrom({ outer: one.outer, windows: [] }, found.from).distance).toBeLessThan(0.01);
        expect(distanceFrom(bare, found.from).distance).toBeCloseTo(found.distance, 6);
        const sampled = Math.max(
          ...flattenRing(one.outer, 20).map((point) => distanceFrom(bare, point).distance),
        );
        // Corners of the chords are rounded.
        expect(sampled).toBeLessThanOrEqual(found.distance + 0.72);
      }),
    );
  });
});
