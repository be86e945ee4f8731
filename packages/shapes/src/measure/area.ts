import { arcOf, lengthOf } from "../outline/arc.js";
import { type Outline, type Ring, ringsOf, type Span, spansOf } from "../outline/outline.js";
import type { Point } from "../outline/point.js";
import { sine } from "../outline/sines.js";

/**
 * The area of an outline's material in square ticks: its corners by the shoelace formula and a circular segment for each
 * arc, windows taken off. Exact up to the rounding of the sum, some 1e-14 of it.
 *
 * @example
 * const square = [{ to: { x: 9, y: 0 } }, { to: { x: 9, y: 9 } }, { to: { x: 0, y: 9 } }, { to: { x: 0, y: 0 } }];
 * areaOf({ outer: square, windows: [] }) // => 81
 */
export function areaOf(outline: Outline): number {
  return ringsOf(outline).reduce((sum, ring) => sum + signedAreaOf(ring), 0);
}

/**
 * How long the cut is in ticks: all lines and arcs of the outer ring and of the windows.
 *
 * @example
 * const square = [{ to: { x: 9, y: 0 } }, { to: { x: 9, y: 9 } }, { to: { x: 0, y: 9 } }, { to: { x: 0, y: 0 } }];
 * perimeterOf({ outer: square, windows: [] }) // => 36
 */
export function perimeterOf(outline: Outline): number {
  return ringsOf(outline).reduce(
    (sum, ring) => spansOf(ring).reduce((length, span) => length + lengthOf(span), sum),
    0,
  );
}

/**
 * The area inside a ring in square ticks: positive for one that runs as outer rings do, negative for windows.
 *
 * @internal
 */
export function signedAreaOf(ring: Ring): number {
  const spans = spansOf(ring);
  const origin = spans[0]?.from as Point;
  let twice = 0;
  let segments = 0;
  for (const span of spans) {
    const { from, to } = span;
    twice += (from.x - origin.x) * (to.y - origin.y) - (from.y - origin.y) * (to.x - origin.x);
    segments += segmentOf(span);
  }
  return twice / 2 + segments;
}

/**
 * The area between an edge and its chord in square ticks: positive where the arc bulges, 0 for a straight edge.
 *
 * @internal
 */
export function segmentOf(span: Span): number {
  const arc = arcOf(span);
  return arc === null ? 0 : (arc.radius * arc.radius * turnLessSine(arc.turn)) / 2;
}

/** An angle less its sine. For small ones by Taylor's series, since the difference would lose its digits. */
function turnLessSine(angle: number): number {
  if (Math.abs(angle) > 1) return angle - sine(angle);
  const square = angle * angle;
  let sum = 1;
  for (let n = 18; n >= 4; n -= 2) sum = 1 - (square / (n * (n + 1))) * sum;
  return (angle * square * sum) / 6;
}
