import { WORKING_TOLERANCE } from "../clip/arc-book.js";
import { clip } from "../clip/clip.js";
import type { FlatOutline, Polygon } from "../flatten/flatten.js";
import { distance, type Point } from "../outline/point.js";

/**
 * What it is that two lines have in common: they touch (and lie in each other, beside each other or along each other), they
 * cross, or they are the same line.
 *
 * @internal
 */
export type ContactKind = "touch" | "cross" | "same";

/**
 * Judges a line that meets itself. Two curves that touch in the drawing may overlap by what they were moved when they were
 * followed by arcs, so that thin overlaps are none.
 *
 * @internal
 */
export function judgeSelf(line: Polygon, tolerance: number): ContactKind {
  const isThick = thickerThan(tolerance);
  const right = clip("union", [line]);
  const left = clip("union", [[...line].reverse()]);
  if (right.some(isThick) && left.some(isThick)) return "cross";
  const all = polygonsOf(clip("union", [line], [], "nonzero"));
  const odd = polygonsOf(clip("union", [line], [], "evenodd"));
  return clip("difference", all, odd).some(isThick) ? "cross" : "touch";
}

/** Judges two lines, neither of which crosses itself. @internal */
export function judgePair(one: Polygon, other: Polygon, tolerance: number): ContactKind {
  const isThick = thickerThan(tolerance);
  const a = polygonsOf(clip("union", [one], [], "nonzero"));
  const b = polygonsOf(clip("union", [other], [], "nonzero"));
  const isOneBeyond = clip("difference", a, b).some(isThick);
  const isOtherBeyond = clip("difference", b, a).some(isThick);
  if (!isOneBeyond && !isOtherBeyond) return "same";
  return isOneBeyond && isOtherBeyond && clip("intersection", a, b).some(isThick) ? "cross" : "touch";
}

/** @internal */
export function polygonsOf(flats: readonly FlatOutline[]): readonly Polygon[] {
  return flats.flatMap(({ outer, windows }) => [outer, ...windows]);
}

/** Twice as wide as both lines may be off together, where it is a strip. */
function thickerThan(tolerance: number): (flat: FlatOutline) => boolean {
  const limit = 4 * (tolerance + WORKING_TOLERANCE);
  return (flat) => breadthOf(polygonsOf([flat])) > limit;
}

/**
 * Four times the area by the perimeter, in ticks: the diameter of a disc, the side of a square, twice the width of a strip.
 */
function breadthOf(polygons: readonly Polygon[]): number {
  const perimeter = polygons.reduce(
    (sum, polygon) =>
      polygon.reduce((length, from, index) => length + distance(from, next(polygon, index)), sum),
    0,
  );
  return perimeter === 0 ? 0 : (4 * Math.abs(signedAreaOfPolygons(polygons))) / perimeter;
}

/** The area of polygons whose windows run the other way, in square ticks. @internal */
export function signedAreaOfPolygons(polygons: readonly Polygon[]): number {
  let twice = 0;
  for (const polygon of polygons) {
    const origin = polygon[0] as Point;
    for (const [index, from] of polygon.entries()) {
      const to = next(polygon, index);
      twice += (from.x - origin.x) * (to.y - origin.y) - (from.y - origin.y) * (to.x - origin.x);
    }
  }
  return twice / 2;
}

function next(polygon: Polygon, index: number): Point {
  return polygon[(index + 1) % polygon.length] as Point;
}
