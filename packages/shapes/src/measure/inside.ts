import { arcOf } from "../outline/arc.js";
import { type Outline, ringsOf, spansOf } from "../outline/outline.js";
import { cross, distance, type Point } from "../outline/point.js";
import type { Stretch } from "./stretch.js";

/**
 * Whether a point lies in the material of an outline, and not in a window. On the line itself either answer may come.
 *
 * Method: how often the chords wind round the point (Sunday, Inclusion of a point in a polygon, 2001), corrected by one
 * for each circular segment between a chord and its arc that holds the point.
 *
 * @example
 * const half = [{ to: { x: 8, y: 0 }, through: { x: 4, y: -4 } }, { to: { x: 0, y: 0 } }];
 * isInside({ outer: half, windows: [] }, { x: 4, y: -3 }) // => true
 * isInside({ outer: half, windows: [] }, { x: 0, y: -3 }) // => false
 */
export function isInside(outline: Outline, point: Point): boolean {
  const edges = ringsOf(outline).flatMap(spansOf);
  return (
    windingOf(
      edges.map((span) => ({ from: span.from, to: span.to, arc: arcOf(span) })),
      point,
    ) > 0
  );
}

/**
 * How often closed lines wind round a point.
 *
 * @internal
 */
export function windingOf(stretches: readonly Pick<Stretch, "from" | "to" | "arc">[], point: Point): number {
  let winding = 0;
  for (const { from, to, arc } of stretches) {
    const side = cross(from, to, point);
    if (from.y <= point.y !== to.y <= point.y) {
      if (to.y > from.y && side > 0) winding += 1;
      if (to.y < from.y && side < 0) winding -= 1;
    }
    if (arc === null || distance(arc.centre, point) >= arc.radius) continue;
    // On the chord: as if the point were a little to the right and, less, further down, which is what the count above does.
    const decided = side !== 0 ? side : to.y !== from.y ? from.y - to.y : to.x - from.x;
    if (decided * arc.turn < 0) winding += Math.sign(arc.turn);
  }
  return winding;
}
