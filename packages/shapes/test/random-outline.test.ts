import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flattenRing, type Polygon } from "../src/flatten/flatten.js";
import { arcOf } from "../src/outline/arc.js";
import { findCrossing } from "../src/outline/find-crossing.js";
import { mirrored } from "../src/outline/move.js";
import { type Outline, ringsOf, spansOf } from "../src/outline/outline.js";
import { anyConvexPolygon, anyOutline, anyOutlines, anySymmetricOutline } from "./random-outline.js";

function areaOf(polygon: Polygon): number {
  return polygon.reduce((sum, { x, y }, index) => {
    const before = polygon.at(index - 1) as { x: number; y: number };
    return sum + (before.x * y - before.y * x) / 2;
  }, 0);
}

function expectValid(outline: Outline): void {
  for (const ring of ringsOf(outline)) {
    for (const span of spansOf(ring)) {
      const points = span.through === null ? [span.to] : [span.to, span.through];
      for (const { x, y } of points) expect(Number.isSafeInteger(x) && Number.isSafeInteger(y)).toBe(true);
      expect(span.from).not.toEqual(span.to);
      expect(Math.abs(arcOf(span)?.turn ?? 0)).toBeLessThan(1.05 * Math.PI);
    }
  }
  const [outer, ...windows] = ringsOf(outline).map((ring) => flattenRing(ring, 2));
  expect(areaOf(outer as Polygon)).toBeGreaterThan(0);
  for (const window of windows) expect(areaOf(window)).toBeLessThan(0);
  expect(findCrossing(ringsOf(outline).map((ring) => flattenRing(ring, 2)))).toBe(null);
}

describe("random outlines", () => {
  test("are whole, simple and on the right side", () => {
    fc.assert(fc.property(fc.oneof(anyOutline, anyConvexPolygon, anySymmetricOutline), expectValid));
    fc.assert(fc.property(anyOutlines, (outlines) => outlines.forEach(expectValid)));
  });

  test("are of many sorts", () => {
    const seen = fc.sample(anyOutline, 300);
    const share = (is: (outline: Outline) => boolean) => seen.filter(is).length / seen.length;
    expect(share(({ windows }) => windows.length > 0)).toBeGreaterThan(0.1);
    expect(share(({ outer }) => outer.some((edge) => "through" in edge))).toBeGreaterThan(0.4);
    expect(share(({ outer }) => outer.every((edge) => !("through" in edge)))).toBeGreaterThan(0.1);
    const several = fc.sample(anyOutlines, 200).filter(({ length }) => length > 1);
    expect(several.length).toBeGreaterThan(20);
  });

  test("that are symmetric stay as they are in a mirror", () => {
    const corners = ({ outer }: Outline) =>
      outer.map((edge) => JSON.stringify([edge.to, "through" in edge ? edge.through : null])).sort();
    const bare = (outline: Outline) => outline.outer.map(({ to }) => `${to.x},${to.y}`).sort();
    fc.assert(
      fc.property(anySymmetricOutline, (outline) => {
        expect(bare(mirrored(outline))).toEqual(bare(outline));
        expect(corners(outline).length).toBe(outline.outer.length);
      }),
    );
  });
});
