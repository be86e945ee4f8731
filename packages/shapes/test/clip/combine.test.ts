import fc from "fast-check";
import polygonClipping from "polygon-clipping";
import { describe, expect, test } from "vitest";
import {
  difference,
  exclusion,
  flatten,
  intersection,
  moved,
  type Outline,
  quarterTurned,
  ringsOf,
  union,
} from "../../src/index.js";
import { findCrossing } from "../../src/outline/find-crossing.js";
import { areaBySegments, lengthByArcs } from "../dense-samples.js";
import { box, disc, lobed, pierced } from "../plain-outlines.js";

const areaOfAll = (outlines: readonly Outline[]) =>
  outlines.reduce((sum, outline) => sum + areaBySegments(outline), 0);

describe("combining outlines", () => {
  test("joins what overlaps and keeps the arcs that are left", () => {
    const [lens, ...others] = intersection([disc(0, 0, 40640)], [disc(40640, 0, 40640)]);
    expect(others).toEqual([]);
    // Two discs with their centres on each other's rim: the vesica piscis, (2 pi / 3 - sqrt(3) / 2) r^2 (Euclid I.1).
    const vesica = ((2 * Math.PI) / 3 - Math.sqrt(3) / 2) * 40640 ** 2;
    expect(areaBySegments(lens as Outline) / vesica).toBeCloseTo(1, 4);
    expect((lens as Outline).outer.every((edge) => "through" in edge)).toBe(true);
    expect((lens as Outline).outer.length).toBeLessThanOrEqual(4);
  });

  test("makes windows, and outlines in windows", () => {
    const [ring] = difference([disc(0, 0, 40_000)], [disc(0, 0, 20_000)]);
    expect((ring as Outline).windows).toHaveLength(1);
    const both = union([ring as Outline, disc(0, 0, 10_000)]);
    expect(both).toHaveLength(2);
    expect(areaOfAll(both) / (Math.PI * (4e4 ** 2 - 2e4 ** 2 + 1e4 ** 2))).toBeCloseTo(1, 4);
  });

  test("lets outlines that share an edge grow together, and those that share a corner not", () => {
    expect(union([box(0, 0, 100, 100), box(100, 0, 200, 100)])).toEqual([box(0, 0, 200, 100)].map(anyStart));
    expect(union([box(0, 0, 100, 100), box(100, 100, 200, 200)])).toHaveLength(2);
  });

  test("cuts a whole away from itself", () => {
    const flower = lobed(11, 60_000);
    expect(difference([flower], [flower])).toEqual([]);
    expect(exclusion([flower], [flower])).toEqual([]);
    expect(areaOfAll(intersection([flower], [flower]))).toBeCloseTo(areaBySegments(flower), -4);
  });
});

/** The ring as the sweep starts it. */
function anyStart(outline: Outline): Outline {
  return union([outline])[0] as Outline;
}

const place = fc.record({
  x: fc.integer({ min: -15_000, max: 15_000 }),
  y: fc.integer({ min: -15_000, max: 15_000 }),
});

const size = fc.oneof(fc.constantFrom(635, 5080, 10_160), fc.integer({ min: 500, max: 20_000 }));

const plain: fc.Arbitrary<Outline> = fc.oneof(
  size.map((radius) => disc(0, 0, radius)),
  fc.tuple(size, size).map(([w, h]) => box(0, 0, w, h)),
  fc
    .tuple(
      fc.integer({ min: 3, max: 12 }),
      size.filter((r) => r > 3000),
    )
    .map(([n, r]) => lobed(n, r)),
  fc
    .tuple(size, fc.double({ min: 0.2, max: 0.9, noNaN: true }))
    .map(([r, part]) => pierced(disc(0, 0, r), disc(0, 0, Math.round(r * part)))),
);

const anyOutline = fc
  .tuple(plain, place, fc.constantFrom(0, 1, 2, 3))
  .map(([outline, by, turns]) => moved(quarterTurned(outline, turns as 0 | 1 | 2 | 3), by));

const several = fc.array(anyOutline, { minLength: 1, maxLength: 2 });

/** What rounding may do to an area: three ticks along all lines, and the slivers that are dropped. */
function allowance(...outlines: readonly Outline[]): number {
  return 4 * outlines.reduce((sum, outline) => sum + lengthByArcs(outline), 0) + 100;
}

function expectSimple(outlines: readonly Outline[]): void {
  const flat = outlines.map((outline) => flatten(outline, { tolerance: 2 }));
  for (const { outer, windows } of flat) {
    expect(findCrossing([outer, ...windows])).toBeNull();
    for (const { x, y } of [outer, ...windows].flat())
      expect(Number.isInteger(x) && Number.isInteger(y)).toBe(true);
  }
  for (const outline of outlines) {
    const [outer, ...windows] = ringsOf(outline).map((ring) => areaBySegments({ outer: ring, windows: [] }));
    expect(outer).toBeGreaterThan(0);
    for (const window of windows) expect(window).toBeLessThan(0);
  }
}

describe("combining any outlines", () => {
  test("gives simple outlines in whole ticks whose areas add up: A + B = union + intersection", () => {
    fc.assert(
      fc.property(several, several, (these, those) => {
        const [a, b] = [union(these), union(those)];
        const both = [...a, ...b];
        const results = [
          union(both),
          intersection(a, b),
          difference(a, b),
          difference(b, a),
          exclusion(a, b),
        ];
        for (const result of results) expectSimple(result);
        const [joined, common, left, right, either] = results.map(areaOfAll) as [
          number,
          number,
          number,
          number,
          number,
        ];
        const room = allowance(...both);
        expect(Math.abs(areaOfAll(both) - joined - common)).toBeLessThan(room);
        expect(Math.abs(areaOfAll(a) - left - common)).toBeLessThan(room);
        expect(Math.abs(areaOfAll(b) - right - common)).toBeLessThan(room);
        expect(Math.abs(either - left - right)).toBeLessThan(room);
      }),
    );
  });

  test("gives the same bytes again, and does not touch its input", () => {
    fc.assert(
      fc.property(several, several, (these, those) => {
        const before = JSON.stringify([these, those]);
        const first = JSON.stringify(difference(these, those));
        expect(JSON.stringify(difference(these, those))).toBe(first);
        expect(JSON.stringify([these, those])).toBe(before);
      }),
      { numRuns: 30 },
    );
  });

  // polygon-clipping is another algorithm (Martinez, Rueda & Feito 2009) in floating point. It fails on some input by
  // itself: those failures are counted, and where it gives an answer that contradicts A + B = union + intersection it is
  // not asked further.
  test("agrees with polygon-clipping on the chords, but where that fails by itself", () => {
    const failures = { threw: 0, contradictedItself: 0, cases: 0 };
    fc.assert(
      fc.property(several, several, (these, those) => {
        const [a, b] = [union(these), union(those)];
        failures.cases += 1;
        const theirs = opinion(a, b);
        if (theirs === "threw") failures.threw += 1;
        else {
          const parts = areaOfAll(a) + areaOfAll(b);
          const room = allowance(...a, ...b) + 70 * parts ** 0.5;
          if (Math.abs(theirs.union + theirs.intersection - theirs.first - theirs.second) > room) {
            failures.contradictedItself += 1;
          } else {
            expect(Math.abs(areaOfAll(union([...a, ...b])) - theirs.union)).toBeLessThan(room);
            expect(Math.abs(areaOfAll(intersection(a, b)) - theirs.intersection)).toBeLessThan(room);
          }
        }
      }),
    );
    expect(failures.threw + failures.contradictedItself).toBeLessThanOrEqual(failures.cases / 20);
  });
});

type MultiPolygon = ReturnType<typeof polygonClipping.union>;

function opinion(a: readonly Outline[], b: readonly Outline[]) {
  const chords = (outlines: readonly Outline[]): MultiPolygon =>
    outlines.map((outline) => {
      const { outer, windows } = flatten(outline, { tolerance: 4 });
      return [outer, ...windows].map((ring) => ring.map(({ x, y }): [number, number] => [x, y]));
    });
  const [first, second] = [chords(a), chords(b)];
  try {
    return {
      first: areaOfPolygons(first),
      second: areaOfPolygons(second),
      union: areaOfPolygons(polygonClipping.union(first, second)),
      intersection: areaOfPolygons(polygonClipping.intersection(first, second)),
    };
  } catch {
    return "threw";
  }
}

function areaOfPolygons(polygons: MultiPolygon): number {
  let sum = 0;
  for (const [index, ring] of polygons.flatMap((polygon) => polygon.map((r, i) => [i, r] as const))) {
    let area = 0;
    for (const [at, [x, y]] of ring.entries()) {
      const [nextX, nextY] = ring[(at + 1) % ring.length] as [number, number];
      area += x * nextY - y * nextX;
    }
    sum += (Math.abs(area) / 2) * (index === 0 ? 1 : -1);
  }
  return sum;
}
