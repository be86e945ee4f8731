import { Clipper, EndType, JoinType } from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flatten, moved, type Outline, offset, union } from "../../src/index.js";
import { findCrossing } from "../../src/outline/find-crossing.js";
import { areaBySegments, distanceTo, holds, lengthByArcs, samplesOf } from "../dense-samples.js";
import { box, disc, lobed, pierced, polygonOutline } from "../plain-outlines.js";

const areaOfAll = (outlines: readonly Outline[]) =>
  outlines.reduce((sum, outline) => sum + areaBySegments(outline), 0);

/** 0.01 mm. */
const HUNDREDTH = 16;

describe("an offset", () => {
  test("of a disc is the disc with exact arcs, one for each of its own", () => {
    expect(offset([disc(0, 0, 40640)], 5080).outlines).toEqual([disc(0, 0, 45720)].map(anyStart));
    expect(offset([disc(0, 0, 40640)], -5080).outlines).toEqual([disc(0, 0, 35560)].map(anyStart));
  });

  test("of a rectangle has round or sharp corners", () => {
    const card = box(0, 0, 4000, 3000);
    expect(offset([card], 500, { corners: "sharp" }).outlines).toEqual(
      [box(-500, -500, 4500, 3500)].map(anyStart),
    );
    expect(offset([card], -500).outlines).toEqual([box(500, 500, 3500, 2500)].map(anyStart));
    const [round] = offset([card], 500).outlines;
    expect(round?.outer).toHaveLength(8);
    expect(round?.outer.filter((edge) => "through" in edge)).toHaveLength(4);
  });

  test("of a lobed circle keeps two arcs a lobe", () => {
    const [grown] = offset([lobed(12, 40640)], 5080).outlines;
    expect(grown?.outer).toHaveLength(24);
    expect(grown?.outer.every((edge) => "through" in edge)).toBe(true);
  });

  test("says what vanishes, falls apart, grows together and closes", () => {
    const hourglass = polygonOutline([
      { x: 0, y: 0 },
      { x: 10_000, y: 0 },
      { x: 6000, y: 5000 },
      { x: 10_000, y: 10_000 },
      { x: 0, y: 10_000 },
      { x: 4000, y: 5000 },
    ]);
    expect(offset([hourglass], -1200)).toMatchObject({ split: 1, vanished: 0 });
    expect(offset([hourglass], -1200).outlines).toHaveLength(2);
    expect(offset([hourglass, disc(40_000, 0, 1000)], -4000)).toMatchObject({ outlines: [], vanished: 2 });
    const pair = [disc(0, 0, 1000), disc(3000, 0, 1000)];
    expect(offset(pair, 400)).toMatchObject({ joined: 0 });
    expect(offset(pair, 600)).toMatchObject({ joined: 1 });
    const ring = pierced(disc(0, 0, 9000), disc(0, 0, 2000));
    expect(offset([ring], 1500)).toMatchObject({ closedWindows: 0, newWindows: 0 });
    expect(offset([ring], 2000)).toMatchObject({ closedWindows: 1, newWindows: 0 });
    expect(offset([ring], 2000).outlines[0]?.windows).toEqual([]);
    const horseshoe = polygonOutline([
      { x: 0, y: 0 },
      { x: 10_000, y: 0 },
      { x: 10_000, y: 4000 },
      { x: 8000, y: 4000 },
      { x: 8000, y: 2000 },
      { x: 2000, y: 2000 },
      { x: 2000, y: 8000 },
      { x: 8000, y: 8000 },
      { x: 8000, y: 4900 },
      { x: 10_000, y: 4900 },
      { x: 10_000, y: 10_000 },
      { x: 0, y: 10_000 },
    ]);
    expect(offset([horseshoe], 500)).toMatchObject({ newWindows: 1, closedWindows: 0 });
    expect(offset([pierced(disc(0, 0, 900), disc(0, 0, 300))], 0).outlines).toHaveLength(1);
  });

  test("never turns a shape that is too small inside out", () => {
    for (const by of [-1000, -1001, -1500, -2000, -2500, -50_000]) {
      expect(offset([disc(0, 0, 1000)], by).outlines).toEqual([]);
      expect(offset([box(0, 0, 2000, 2000)], by).outlines).toEqual([]);
      expect(offset([lobed(5, 600)], by - 1000).outlines).toEqual([]);
    }
  });

  test("cuts the tips of sharp corners square beyond the limit, still at the distance", () => {
    const spike = polygonOutline([
      { x: 0, y: 0 },
      { x: 100_000, y: -2000 },
      { x: 100_000, y: 2000 },
    ]);
    const [grown] = offset([spike], 3000, { corners: "sharp" }).outlines as [Outline];
    expect(Math.min(...grown.outer.map(({ to }) => to.x))).toBe(-3000);
    const [tip] = offset([spike], 3000, { corners: "sharp", miterLimit: 100 }).outlines as [Outline];
    // The tip lies d / sin(half angle) from the corner: tan of it is 2000 / 100,000.
    expect(Math.min(...tip.outer.map(({ to }) => to.x))).toBeCloseTo(-3000 / Math.sin(Math.atan(0.02)), -1);
  });

  test("refuses distances and limits that are none", () => {
    expect(() => offset([disc(0, 0, 900)], 0.5)).toThrow("whole number of ticks up to 10 m, found 0.5");
    expect(() => offset([disc(0, 0, 900)], Number.NaN)).toThrow(RangeError);
    expect(() => offset([disc(0, 0, 900)], 5, { corners: "sharp", miterLimit: 0 })).toThrow(
      "at least 1, found 0",
    );
  });
});

/** The ring as the sweep starts it. */
function anyStart(outline: Outline): Outline {
  return union([outline])[0] as Outline;
}

/** Convex polygons: corners on a circle, in order. */
const convex: fc.Arbitrary<Outline> = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: 0, max: 719 }), { minLength: 3, maxLength: 9 }),
    fc.integer({ min: 8000, max: 200_000 }),
  )
  .map(([halfDegrees, radius]) =>
    polygonOutline(
      halfDegrees
        .sort((a, b) => a - b)
        .map((half) => ({
          x: Math.round(radius * Math.cos((half * Math.PI) / 360)),
          y: Math.round(radius * Math.sin((half * Math.PI) / 360)),
        })),
    ),
  );

const reach = fc.integer({ min: 100, max: 10_000 });

describe("the offset of convex outlines", () => {
  test("has the area of Steiner's formula where it is round: A + P d + pi d^2", () => {
    fc.assert(
      fc.property(convex, reach, (outline, by) => {
        const formula = areaBySegments(outline) + lengthByArcs(outline) * by + Math.PI * by * by;
        const { outlines } = offset([outline], by);
        expect(outlines).toHaveLength(1);
        expect(Math.abs(areaOfAll(outlines) - formula)).toBeLessThan(
          3 * lengthByArcs(outlines[0] as Outline),
        );
      }),
    );
  });

  test("has d^2 times the tangents of the half exterior angles instead of pi d^2 where it is sharp", () => {
    fc.assert(
      fc.property(convex, reach, (outline, by) => {
        const corners = outline.outer.map(({ to }) => to);
        let tangents = 0;
        for (const [index, corner] of corners.entries()) {
          const before = corners[(index + corners.length - 1) % corners.length] as typeof corner;
          const after = corners[(index + 1) % corners.length] as typeof corner;
          const turn = Math.atan2(
            (corner.x - before.x) * (after.y - corner.y) - (corner.y - before.y) * (after.x - corner.x),
            (corner.x - before.x) * (after.x - corner.x) + (corner.y - before.y) * (after.y - corner.y),
          );
          tangents += Math.tan(turn / 2);
        }
        fc.pre(tangents < 100);
        const formula = areaBySegments(outline) + lengthByArcs(outline) * by + tangents * by * by;
        const { outlines } = offset([outline], by, { corners: "sharp", miterLimit: 1000 });
        expect(Math.abs(areaOfAll(outlines) - formula)).toBeLessThan(
          6 * lengthByArcs(outlines[0] as Outline),
        );
      }),
    );
  });
});

const place = fc.record({
  x: fc.integer({ min: -20_000, max: 20_000 }),
  y: fc.integer({ min: -20_000, max: 20_000 }),
});

const anyPart: fc.Arbitrary<Outline> = fc
  .tuple(
    fc.oneof(
      fc.integer({ min: 2000, max: 25_000 }).map((radius) => disc(0, 0, radius)),
      fc
        .tuple(fc.integer({ min: 3, max: 12 }), fc.integer({ min: 4000, max: 25_000 }))
        .map(([n, r]) => lobed(n, r)),
      fc
        .tuple(fc.integer({ min: 2000, max: 40_000 }), fc.integer({ min: 2000, max: 40_000 }))
        .map(([w, h]) => box(0, 0, w, h)),
      fc
        .integer({ min: 6000, max: 25_000 })
        .map((r) => pierced(disc(0, 0, r), disc(0, 0, Math.round(r / 2)))),
      convex,
    ),
    place,
  )
  .map(([outline, by]) => moved(outline, by));

const anyShape = fc.array(anyPart, { minLength: 1, maxLength: 3 }).map(union);

describe("the offset of any outlines", () => {
  test("is simple, in whole ticks, and lies at the distance everywhere within 0.01 mm", () => {
    fc.assert(
      fc.property(
        anyShape,
        fc.oneof(
          reach,
          reach.map((by) => -by),
        ),
        (outlines, by) => {
          const result = offset(outlines, by);
          for (const outline of result.outlines) {
            const { outer, windows } = flatten(outline, { tolerance: 2 });
            expect(findCrossing([outer, ...windows])).toBeNull();
            for (const { x, y } of [outer, ...windows].flat()) expect(Number.isInteger(x + y)).toBe(true);
            for (const point of samplesOf(outline, 9000)) {
              const least = Math.min(...outlines.map((of) => distanceTo(of, point)));
              expect(Math.abs(least - Math.abs(by))).toBeLessThan(HUNDREDTH);
            }
          }
        },
      ),
    );
  });

  test("holds exactly what lies within the distance", () => {
    fc.assert(
      fc.property(
        anyShape,
        fc.oneof(
          reach,
          reach.map((by) => -by),
        ),
        fc.array(place, { maxLength: 6 }),
        (outlines, by, points) => {
          const result = offset(outlines, by).outlines;
          for (const point of points) {
            const off = Math.min(...outlines.map((of) => distanceTo(of, point)));
            const depth = outlines.some((of) => holds(of, point)) ? off : -off;
            if (Math.abs(depth + by) < HUNDREDTH) continue;
            expect(result.some((of) => holds(of, point))).toBe(depth > -by);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test("has the area of the polygon offset of clipper2, which sets off the chords", () => {
    fc.assert(
      fc.property(
        anyShape,
        fc.oneof(
          reach,
          reach.map((by) => -by),
        ),
        (outlines, by) => {
          const chords = outlines.flatMap((outline) => {
            const { outer, windows } = flatten(outline, { tolerance: 2 });
            return [outer, ...windows].map((ring) => ring.map(({ x, y }) => ({ x, y })));
          });
          const theirs = Clipper.inflatePaths(chords, by, JoinType.Round, EndType.Polygon, 2, 2);
          const area = theirs.reduce((sum, path) => sum + Clipper.area(path), 0);
          const result = offset(outlines, by).outlines;
          const length = [...outlines, ...result].reduce((sum, outline) => sum + lengthByArcs(outline), 0);
          expect(Math.abs(areaOfAll(result) - area)).toBeLessThan(8 * length + 1000);
        },
      ),
    );
  });
});
