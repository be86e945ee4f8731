import { polygonCentroid, polygonHull } from "d3-polygon";
import fc from "fast-check";
import polylabel from "polylabel";
import { describe, expect, test } from "vitest";
import { flatten, type Polygon } from "../../src/flatten/flatten.js";
import { centroidOf } from "../../src/measure/centroid.js";
import { enclosingCircle } from "../../src/measure/enclosing-circle.js";
import { inscribedCircle } from "../../src/measure/inscribed-circle.js";
import { isInside } from "../../src/measure/inside.js";
import { distanceFrom } from "../../src/measure/least-distance.js";
import { moved, quarterTurned } from "../../src/outline/move.js";
import { type Outline, reversedRing } from "../../src/outline/outline.js";
import { distance, type Point } from "../../src/outline/point.js";
import {
  anyConvexPolygon,
  anyDisc,
  anyOutline,
  discAt,
  lobedDisc,
  rectangleOf,
  roundedRectangle,
} from "../random-outline.js";

/** A part of the usual number of cases, for what takes longer. */
const some = (share: number) => ({ numRuns: Math.ceil((fc.readConfigureGlobal()?.numRuns ?? 100) * share) });

const asPairs = (polygon: Polygon): [number, number][] => polygon.map(({ x, y }) => [x, y]);

/** An outline with a window that another one cuts. */
function framed({ outer }: Outline, ...windows: readonly Outline[]): Outline {
  return { outer, windows: windows.map((window) => reversedRing(window.outer)) };
}

const triangle: Outline = {
  outer: [{ to: { x: 40_000, y: 0 } }, { to: { x: 0, y: 30_000 } }, { to: { x: 0, y: 0 } }],
  windows: [],
};

describe("the centroid", () => {
  test("of a half disc lies 4 r / (3 pi) from its straight side", () => {
    const half: Outline = {
      outer: [{ to: { x: 40_640, y: 0 }, through: { x: 0, y: -40_640 } }, { to: { x: -40_640, y: 0 } }],
      windows: [],
    };
    const { x, y } = centroidOf(half);
    expect(x).toBeCloseTo(0, 6);
    expect(y).toBeCloseTo((-4 * 40_640) / (3 * Math.PI), 6);
  });

  test("of a flat segment lies two fifths of its rise above the chord, as of a parabola", () => {
    const flat: Outline = {
      outer: [{ to: { x: 1_000_000, y: 0 }, through: { x: 500_000, y: -100 } }, { to: { x: 0, y: 0 } }],
      windows: [],
    };
    expect(centroidOf(flat).x).toBeCloseTo(500_000, 3);
    expect(centroidOf(flat).y).toBeCloseTo(-40, 3);
  });

  test("of a frame is drawn away from its window", () => {
    const frame = framed(rectangleOf(100, 100), moved(rectangleOf(20, 20), { x: 10, y: 40 }));
    expect(centroidOf(frame).x).toBeCloseTo((10_000 * 50 - 400 * 20) / 9600, 9);
    expect(centroidOf(frame).y).toBeCloseTo(50, 9);
  });

  test("agrees with d3-polygon on fine chords, and moves and turns with its outline", () => {
    fc.assert(
      fc.property(fc.oneof(anyConvexPolygon, anyDisc, anyOutline), (outline) => {
        const outer: Outline = { outer: outline.outer, windows: [] };
        const [x, y] = polygonCentroid(asPairs(flatten(outer, { tolerance: 1 }).outer));
        const found = centroidOf(outer);
        expect(Math.abs(found.x - x)).toBeLessThan(3);
        expect(Math.abs(found.y - y)).toBeLessThan(3);
        const whole = centroidOf(outline);
        const turned = centroidOf(quarterTurned(moved(outline, { x: 1000, y: 77 }), 1));
        expect(turned.x).toBeCloseTo(-77 - whole.y, 3);
        expect(turned.y).toBeCloseTo(1000 + whole.x, 3);
      }),
    );
  });
});

describe("the enclosing circle", () => {
  test("of a disc is the disc, of a rectangle goes through its corners", () => {
    const disc = enclosingCircle(discAt({ x: 500, y: -70 }, 40_640));
    expect(disc.radius).toBeCloseTo(40_640, 6);
    expect(disc.centre.x).toBeCloseTo(500, 6);
    expect(disc.centre.y).toBeCloseTo(-70, 6);
    expect(enclosingCircle(rectangleOf(30_000, 40_000))).toEqual({
      centre: { x: 15_000, y: 20_000 },
      radius: 25_000,
    });
  });

  test("goes round the bulges of arcs, not round corners only", () => {
    // Twelve half round lobes on a polygon of radius 40 000: r cos(pi / 12) to a side's middle and half a side beyond.
    const half = 40_000 * Math.sin(Math.PI / 12);
    const lobed = lobedDisc(12, 40_000, half);
    expect(enclosingCircle(lobed).radius).toBeCloseTo(40_000 * Math.cos(Math.PI / 12) + half, -0.5);
    // Two discs side by side.
    const { radius, centre } = enclosingCircle({
      outer: [
        { to: { x: 0, y: 0 }, through: { x: -20_000, y: 20_000 } },
        { to: { x: 90_000, y: 0 } },
        { to: { x: 90_000, y: 40_000 }, through: { x: 110_000, y: 20_000 } },
        { to: { x: 0, y: 40_000 } },
      ],
      windows: [],
    });
    expect(radius).toBeCloseTo(65_000, 2);
    expect(centre.x).toBeCloseTo(45_000, 2);
  });

  test("holds the whole line and is held by three of its points or two opposite ones", () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        const { centre, radius } = enclosingCircle(outline);
        const { outer } = flatten(outline, { tolerance: 1 });
        const reach = outer.map((point) => distance(centre, point));
        expect(Math.max(...reach)).toBeLessThanOrEqual(radius + 0.75);
        // No smaller circle does: the points on it do not lie within half of it (else it could be moved off them).
        const on = outer.filter((_, index) => (reach[index] as number) > radius - 2);
        for (let step = 0; step < 16; step += 1) {
          const angle = (Math.PI * step) / 8;
          const furthest = Math.max(
            ...on.map(({ x, y }) => (x - centre.x) * Math.cos(angle) + (y - centre.y) * Math.sin(angle)),
          );
          expect(furthest).toBeGreaterThan(-0.03 * radius);
        }
      }),
    );
  });

  test("is that of the convex hull by d3-polygon", () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        const { outer } = flatten(outline, { tolerance: 1 });
        const hull = polygonHull(asPairs(outer)) as [number, number][];
        const ring = hull.map(([x, y]) => ({ to: { x, y } })).reverse();
        const { radius } = enclosingCircle({ outer: ring, windows: [] });
        expect(Math.abs(radius - enclosingCircle(outline).radius)).toBeLessThan(2);
      }),
    );
  });
});

describe("the inscribed circle", () => {
  test("of a square, a disc and a ring are known", () => {
    expect(inscribedCircle(rectangleOf(300, 300))).toEqual({ centre: { x: 150, y: 150 }, radius: 150 });
    expect(inscribedCircle(discAt({ x: 5, y: 6 }, 40_640)).radius).toBeCloseTo(40_640, 6);
    const ring = framed(discAt({ x: 0, y: 0 }, 40_000), discAt({ x: 6000, y: 0 }, 20_000));
    const { radius, centre } = inscribedCircle(ring);
    // From -40 000 to -14 000.
    expect(radius).toBeGreaterThan(13_000 - 16);
    expect(radius).toBeLessThanOrEqual(13_000.000001);
    expect(centre.x).toBeLessThan(-26_000);
  });

  test("of a triangle has the radius 2 A / P and the precision that is asked for", () => {
    for (const precision of [160, 16, 1, 0.01]) {
      const { radius } = inscribedCircle(triangle, { precision });
      expect(radius).toBeLessThanOrEqual(10_000.000001);
      expect(radius).toBeGreaterThanOrEqual(10_000 - precision);
    }
    expect(() => inscribedCircle(triangle, { precision: 0 })).toThrow(RangeError);
    expect(() => inscribedCircle(triangle, { precision: Number.NaN })).toThrow(RangeError);
  });

  test("of a long rectangle lies in its middle", () => {
    expect(inscribedCircle(rectangleOf(200_000, 60_000))).toEqual({
      centre: { x: 100_000, y: 30_000 },
      radius: 30_000,
    });
  });

  test("lies in the material, and agrees with polylabel on fine chords", () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        const { centre, radius } = inscribedCircle(outline, { precision: 160 });
        expect(isInside(outline, centre)).toBe(true);
        expect(distanceFrom(outline, centre).distance).toBeCloseTo(radius, 6);
        const { outer, windows } = flatten(outline, { tolerance: 4 });
        const label = polylabel([outer, ...windows].map(asPairs), 160);
        expect(Math.abs(label.distance - radius)).toBeLessThan(160 + 6);
      }),
      some(0.4),
    );
  });
});

describe("inside", () => {
  test("is decided by arcs, not by chords, also at the height of corners", () => {
    const half: Outline = {
      outer: [{ to: { x: 8, y: 0 }, through: { x: 4, y: -4 } }, { to: { x: 0, y: 0 } }],
      windows: [],
    };
    expect(isInside(half, { x: 4, y: -3.9 })).toBe(true);
    expect(isInside(half, { x: 1, y: -3 })).toBe(false);
    expect(isInside(half, { x: -1, y: 0 })).toBe(false);
    expect(isInside(half, { x: 9, y: 0 })).toBe(false);
    const disc = discAt({ x: 0, y: 0 }, 100);
    // On the chord of both halves.
    for (const x of [-99, -50, 0, 50, 99]) expect(isInside(disc, { x, y: 0 })).toBe(true);
    for (const x of [-101, 101]) expect(isInside(disc, { x, y: 0 })).toBe(false);
    const upright = quarterTurned(disc, 1);
    for (const y of [-99, 0, 99]) expect(isInside(upright, { x: 0, y })).toBe(true);
    expect(isInside(upright, { x: 0, y: 101 })).toBe(false);
    const hollow = roundedRectangle(1000, 1000, 400, true);
    expect(isInside(hollow, { x: 280, y: 280 })).toBe(false);
    expect(isInside(hollow, { x: 284, y: 284 })).toBe(true);
    const frame = framed(rectangleOf(100, 100), moved(rectangleOf(20, 20), { x: 10, y: 40 }));
    expect(isInside(frame, { x: 20, y: 50 })).toBe(false);
    expect(isInside(frame, { x: 5, y: 50 })).toBe(true);
  });

  test("agrees with the chords of a fine flattening away from the line", () => {
    const anyPoint: fc.Arbitrary<Point> = fc.record({
      x: fc.integer({ min: -130_000, max: 130_000 }),
      y: fc.integer({ min: -130_000, max: 130_000 }),
    });
    fc.assert(
      fc.property(anyOutline, fc.array(anyPoint, { minLength: 4, maxLength: 8 }), (outline, points) => {
        const { outer, windows } = flatten(outline, { tolerance: 1 });
        const straight: Outline = {
          outer: outer.map((to) => ({ to })),
          windows: windows.map((window) => window.map((to) => ({ to }))),
        };
        for (const point of points) {
          if (distanceFrom(outline, point).distance < 2) continue;
          expect(isInside(outline, point)).toBe(isInside(straight, point));
        }
      }),
    );
  });
});
