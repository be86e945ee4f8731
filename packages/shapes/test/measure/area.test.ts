import { polygonArea } from "d3-polygon";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flattenRing, type Polygon } from "../../src/flatten/flatten.js";
import { areaOf, perimeterOf } from "../../src/measure/area.js";
import { mirrored, moved, quarterTurned } from "../../src/outline/move.js";
import { type Outline, ringsOf, spansOf } from "../../src/outline/outline.js";
import { anyConvexPolygon, anyOutline, discAt, lobedDisc, rectangleOf } from "../random-outline.js";

const asPairs = (polygon: Polygon): [number, number][] => polygon.map(({ x, y }) => [x, y]);

function expectClose(found: number, expected: number, relative: number): void {
  expect(Math.abs(found - expected) / Math.abs(expected)).toBeLessThan(relative);
}

describe("area and perimeter", () => {
  test("of a circle are pi r^2 and 2 pi r", () => {
    for (const radius of [16, 1600, 40640, 812_800, 8_000_000]) {
      // Two half circles by whole points on the axes: exactly the circle.
      const disc = discAt({ x: 0, y: 0 }, radius);
      expectClose(areaOf(disc), Math.PI * radius * radius, 1e-14);
      expectClose(perimeterOf(disc), 2 * Math.PI * radius, 1e-14);
    }
  });

  test("of a rectangle and of a frame are exact", () => {
    const frame: Outline = {
      outer: rectangleOf(16_000_000, 16_000_000).outer,
      windows: [
        [
          { to: { x: 10, y: 20 } },
          { to: { x: 20, y: 20 } },
          { to: { x: 20, y: 10 } },
          { to: { x: 10, y: 10 } },
        ],
      ],
    };
    expect(areaOf(rectangleOf(300, 100))).toBe(30_000);
    expect(areaOf(frame)).toBe(16_000_000 * 16_000_000 - 100);
    expect(perimeterOf(frame)).toBe(64_000_040);
  });

  test("of a circular segment are r^2 (t - sin t) / 2 and r t, for flat and for full ones", () => {
    // A chord of 6 and a rise of 1 belong to a circle of radius 5, with sin(t / 2) = 3 / 5.
    const bow: Outline = {
      outer: [{ to: { x: 6, y: 0 }, through: { x: 3, y: -1 } }, { to: { x: 0, y: 0 } }],
      windows: [],
    };
    const turn = 2 * Math.asin(0.6);
    expectClose(areaOf(bow), (25 * (turn - Math.sin(turn))) / 2, 1e-14);
    expectClose(perimeterOf(bow), 5 * turn + 6, 1e-14);
    // The rest of that circle, more than a half turn.
    const rest: Outline = {
      outer: [{ to: { x: 0, y: 0 }, through: { x: 3, y: 9 } }, { to: { x: 6, y: 0 } }],
      windows: [],
    };
    expectClose(areaOf(bow) + areaOf(rest), 25 * Math.PI, 1e-14);
    // A rise of a hundred ticks on 10 m: two thirds of chord times rise, as for a parabola (Archimedes).
    const flat: Outline = {
      outer: [{ to: { x: 16_000_000, y: 0 }, through: { x: 8_000_000, y: -100 } }, { to: { x: 0, y: 0 } }],
      windows: [],
    };
    expectClose(areaOf(flat), (2 / 3) * 100 * 16_000_000, 1e-9);
    expectClose(perimeterOf(flat), 32_000_000, 1e-9);
  });

  test("of a lobed circle are the polygon and a segment a lobe", () => {
    const [count, radius, depth] = [12, 81_280, 9_000];
    const chord = 2 * radius * Math.sin(Math.PI / count);
    const lobe = (chord * chord) / (8 * depth) + depth / 2;
    const turn = 2 * Math.asin(chord / 2 / lobe);
    const area =
      (count * radius * radius * Math.sin((2 * Math.PI) / count)) / 2 +
      (count * lobe * lobe * (turn - Math.sin(turn))) / 2;
    // Corners in whole ticks.
    expectClose(areaOf(lobedDisc(count, radius, depth)), area, 3e-5);
    expectClose(perimeterOf(lobedDisc(count, radius, depth)), count * lobe * turn, 3e-5);
  });

  test("agree with d3-polygon, but for the slivers between the arcs and fine chords", () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        // d3-polygon counts positive where y points down and the line runs to the left of up, the other way round.
        const flat = ringsOf(outline).reduce(
          (sum, ring) => sum - polygonArea(asPairs(flattenRing(ring, 1))),
          0,
        );
        expect(Math.abs(areaOf(outline) - flat)).toBeLessThan(2.5 * perimeterOf(outline));
        const straight = spansOf(outline.outer).every(({ through }) => through === null);
        if (straight && outline.windows.length === 0) expect(areaOf(outline)).toBe(flat);
      }),
    );
  });

  test("no outline of a length encloses more than a circle: 4 pi A <= P^2", () => {
    fc.assert(
      fc.property(fc.oneof(anyOutline, anyConvexPolygon), (outline) => {
        const perimeter = perimeterOf(outline);
        expect(4 * Math.PI * areaOf(outline)).toBeLessThanOrEqual(perimeter * perimeter * (1 + 1e-12));
      }),
    );
  });

  test("stay the same when an outline is moved, turned or mirrored", () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        for (const other of [
          moved(outline, { x: 12_345, y: -67 }),
          quarterTurned(outline, 1),
          mirrored(outline),
        ]) {
          expectClose(areaOf(other), areaOf(outline), 1e-10);
          expectClose(perimeterOf(other), perimeterOf(outline), 1e-10);
        }
      }),
    );
  });
});
