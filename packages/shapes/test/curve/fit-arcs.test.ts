import { inches, millimetres } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CURVE_TOLERANCE, fitArcs } from "../../src/curve/fit-arcs.js";
import { flattenRing } from "../../src/flatten/flatten.js";
import type { Edge } from "../../src/outline/outline.js";
import type { Point } from "../../src/outline/point.js";

// Independent of the fit: the distance of a point from the polyline of the edges, flattened to a tick.
function distanceFromLine(line: readonly Point[], point: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [index, from] of line.slice(0, -1).entries()) {
    const to = line[index + 1] as Point;
    const length = (to.x - from.x) ** 2 + (to.y - from.y) ** 2;
    const along =
      length === 0
        ? 0
        : Math.min(
            1,
            Math.max(
              0,
              ((point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)) / length,
            ),
          );
    least = Math.min(
      least,
      Math.hypot(from.x + along * (to.x - from.x) - point.x, from.y + along * (to.y - from.y) - point.y),
    );
  }
  return least;
}

function lineOf(start: Point, edges: readonly Edge[]): readonly Point[] {
  // Closed by a straight edge for the flattening, and opened again.
  const ring = flattenRing([...edges, { to: start }], 1);
  return [...ring.slice(ring.findIndex(({ x, y }) => x === start.x && y === start.y)), ...ring].slice(
    0,
    ring.length,
  );
}

const bezier =
  ([a, b, c, d]: readonly [Point, Point, Point, Point]) =>
  (t: number): Point => {
    const s = 1 - t;
    const of = (axis: "x" | "y") =>
      s * s * s * a[axis] + 3 * s * s * t * b[axis] + 3 * s * t * t * c[axis] + t * t * t * d[axis];
    return { x: of("x"), y: of("y") };
  };

const ellipse = (a: number, b: number) => (angle: number) => ({
  x: a * Math.cos(angle),
  y: b * Math.sin(angle),
});

describe("a curve as arcs", () => {
  test("a circle is one arc from break to break", () => {
    const { edges, deviation } = fitArcs(ellipse(inches(1), inches(1)), {
      breaks: [0, Math.PI, 2 * Math.PI],
    });
    expect(edges).toEqual([
      { to: { x: -40640, y: 0 }, through: { x: 0, y: 40640 } },
      { to: { x: 40640, y: 0 }, through: { x: 0, y: -40640 } },
    ]);
    expect(deviation).toBeLessThan(1);
  });

  test("a straight curve is one line", () => {
    const { edges } = fitArcs((t) => ({ x: 5000 * t * t, y: 7000 * t * t }));
    expect(edges).toEqual([{ to: { x: 5000, y: 7000 } }]);
  });

  test("corners are kept at the breaks", () => {
    const corner = (t: number) => ({ x: t < 1 ? 3000 * t : 3000, y: t < 1 ? 0 : 3000 * (t - 1) });
    expect(fitArcs(corner, { breaks: [0, 1, 2] }).edges).toEqual([
      { to: { x: 3000, y: 0 } },
      { to: { x: 3000, y: 3000 } },
    ]);
  });

  test("a symmetric S is not taken for the line between its ends", () => {
    const s = bezier([
      { x: 0, y: 0 },
      { x: 0, y: 20000 },
      { x: 40000, y: -20000 },
      { x: 40000, y: 0 },
    ]);
    const { start, edges } = fitArcs(s);
    const line = lineOf(start, edges);
    for (let t = 0; t <= 1; t += 1 / 512) expect(distanceFromLine(line, s(t))).toBeLessThan(17.5);
  });

  test("a point is no edge", () => {
    expect(fitArcs(() => ({ x: 7.2, y: 3 }))).toEqual({
      start: { x: 7, y: 3 },
      edges: [],
      deviation: expect.any(Number) as number,
    });
  });

  test.each([
    [millimetres(60), millimetres(40)],
    [millimetres(80), millimetres(10)],
    [millimetres(5), millimetres(4)],
  ])("an ellipse of the half axes %d and %d keeps its area", (a, b) => {
    const { start, edges } = fitArcs(ellipse(a, b), {
      breaks: [0, 1, 2, 3, 4].map((n) => (n * Math.PI) / 2),
    });
    const ring = flattenRing(edges, 1);
    let twice = 0;
    for (const [index, from] of ring.entries()) {
      const to = ring[(index + 1) % ring.length] as Point;
      twice += from.x * to.y - from.y * to.x;
    }
    expect(start).toEqual({ x: a, y: 0 });
    // pi a b; the arcs swing to both sides, so that the area is far better than tolerance times perimeter.
    expect(Math.abs(twice / 2 / (Math.PI * a * b) - 1)).toBeLessThan(3e-4);
    expect(edges.length).toBeLessThanOrEqual(64);
  });

  test("a tolerance below two ticks and breaks that fall are refused", () => {
    expect(() => fitArcs(() => ({ x: 0, y: 0 }), { tolerance: 1 })).toThrow(RangeError);
    expect(() => fitArcs(() => ({ x: 0, y: 0 }), { breaks: [0, 2, 1] })).toThrow("ascending breaks");
    expect(() => fitArcs(() => ({ x: Number.NaN, y: 0 }))).toThrow("within 10 m");
  });

  test("any Bezier curve is followed within the tolerance, cusps and loops too", () => {
    const point = fc.record({
      x: fc.integer({ min: -80000, max: 80000 }),
      y: fc.integer({ min: -80000, max: 80000 }),
    });
    fc.assert(
      fc.property(
        fc.tuple(point, point, point, point),
        fc.constantFrom(4, CURVE_TOLERANCE, 64),
        (corners, tolerance) => {
          const curve = bezier(corners);
          const { start, edges, deviation } = fitArcs(curve, { tolerance });
          const line = lineOf(start, edges);
          // The polyline itself is off the arcs by a tick and by rounding.
          for (let step = 0; step <= 200; step += 1) {
            expect(distanceFromLine(line, curve(step / 200))).toBeLessThanOrEqual(tolerance + 2);
          }
          expect(deviation).toBeLessThanOrEqual(tolerance);
        },
      ),
      { numRuns: 40 },
    );
  });
});
