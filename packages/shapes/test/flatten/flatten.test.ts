import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { coverOf, flatten, type Outline, type Polygon, reversedRing } from "../../src/index.js";
import { areaBySegments, distanceTo, samplesOf } from "../dense-samples.js";
import { box, disc, lobed, pierced } from "../plain-outlines.js";

const someOutline: fc.Arbitrary<Outline> = fc.oneof(
  fc.integer({ min: 400, max: 400_000 }).map((radius) => disc(7, -3, radius)),
  fc
    .tuple(fc.integer({ min: 3, max: 24 }), fc.integer({ min: 4000, max: 200_000 }))
    .map(([n, r]) => lobed(n, r)),
  fc
    .integer({ min: 2000, max: 100_000 })
    .map((r) => pierced(box(-2 * r, -2 * r, 3 * r, 2 * r), disc(0, 0, r))),
);

const straight = (polygon: Polygon): Outline => ({
  outer: polygon.map((_, index) => ({ to: polygon[(index + 1) % polygon.length] as (typeof polygon)[0] })),
  windows: [],
});

describe("flattening", () => {
  test("takes the segments of the formula: ceil(pi / acos(1 - t / r)) to a circle, an even number to each arc", () => {
    for (const [radius, tolerance] of [
      [40640, 32],
      [40640, 80],
      [16000, 32],
      [160_000, 48],
    ] as const) {
      const formula = Math.ceil(Math.PI / Math.acos(1 - tolerance / radius));
      const count = flatten(disc(0, 0, radius), { tolerance }).outer.length;
      expect(count).toBe(8 * Math.ceil(formula / 8 - 1e-9));
    }
  });

  test("keeps corners on the outline and chords within the tolerance of it", () => {
    fc.assert(
      fc.property(someOutline, fc.integer({ min: 2, max: 200 }), (outline, tolerance) => {
        const { outer, windows } = flatten(outline, { tolerance });
        const flat = {
          outer: straight(outer).outer,
          windows: windows.map((window) => straight(window).outer),
        };
        for (const polygon of [outer, ...windows]) {
          for (const corner of polygon) {
            expect(Number.isInteger(corner.x) && Number.isInteger(corner.y)).toBe(true);
            expect(distanceTo(outline, corner)).toBeLessThan(1);
          }
        }
        for (const point of samplesOf(outline, 20_000)) {
          expect(distanceTo(flat, point)).toBeLessThan(tolerance + 1);
        }
      }),
    );
  });

  test("gives a shared edge the same corners from both sides", () => {
    const { outer } = lobed(9, 50_000);
    const there = flatten({ outer, windows: [] }).outer;
    const back = flatten({ outer: reversedRing(outer), windows: [] }).outer;
    const text = (polygon: Polygon) => polygon.map(({ x, y }) => `${x},${y}`).sort();
    expect(text(back)).toEqual(text(there));
  });

  test("refuses a tolerance that whole ticks cannot keep", () => {
    expect(() => flatten(disc(0, 0, 500), { tolerance: 0.5 })).toThrow("at least 1 ticks, found 0.5");
    expect(() => coverOf(disc(0, 0, 500), { tolerance: 4 })).toThrow("at least 8 ticks, found 4");
  });
});

describe("a cover", () => {
  test("holds all of the outline, and no more than the tolerance besides", () => {
    fc.assert(
      fc.property(someOutline, fc.integer({ min: 8, max: 200 }), (outline, tolerance) => {
        const covers = coverOf(outline, { tolerance });
        expect(covers).toHaveLength(1);
        const rings = covers.flatMap(({ outer, windows }) => [outer, ...windows]);
        for (const point of samplesOf(outline, 15_000)) {
          for (const ring of rings) expect(signedDistance(ring, point)).toBeGreaterThan(-1e-3);
        }
        for (const ring of rings) {
          for (const corner of ring) expect(distanceTo(outline, corner)).toBeLessThan(tolerance + 0.01);
        }
        const area = rings.reduce((sum, ring) => sum + areaBySegments(straight(ring)), 0);
        expect(area).toBeGreaterThanOrEqual(areaBySegments(outline) - 1);
      }),
    );
  });

  test("keeps straight edges as they are", () => {
    const [cover] = coverOf(box(0, 0, 300, 200));
    expect(areaBySegments(straight(cover?.outer ?? []))).toBe(60_000);
  });

  test("holds both halves of what hangs together by a point", () => {
    const bow = {
      outer: [
        { to: { x: 500, y: 0 } },
        { to: { x: 0, y: 500 } },
        { to: { x: -500, y: 500 }, through: { x: -250, y: 600 } },
        { to: { x: 0, y: 0 } },
        { to: { x: -500, y: -500 } },
        { to: { x: 500, y: -500 }, through: { x: 0, y: -700 } },
        { to: { x: 0, y: 0 } },
      ],
      windows: [],
    };
    const area = coverOf(bow)
      .flatMap(({ outer, windows }) => [outer, ...windows])
      .reduce((sum, ring) => sum + areaBySegments(straight(ring)), 0);
    expect(area).toBeGreaterThanOrEqual(areaBySegments(bow));
  });
});

/** How far a point lies on the material's side of a ring: negative outside. */
function signedDistance(ring: Polygon, point: { readonly x: number; readonly y: number }): number {
  let winding = 0;
  for (const [index, a] of ring.entries()) {
    const b = ring[(index + 1) % ring.length] as (typeof ring)[0];
    const side = (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x);
    if (a.y <= point.y && b.y > point.y && side > 0) winding += 1;
    if (a.y > point.y && b.y <= point.y && side < 0) winding -= 1;
  }
  const off = distanceTo(straight(ring), point);
  const isPositive = areaBySegments(straight(ring)) > 0;
  return winding === (isPositive ? 1 : 0) ? off : -off;
}
