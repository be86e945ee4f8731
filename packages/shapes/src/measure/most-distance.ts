/**
 * The most that a line lies from another one: the distance of its furthest point (the directed Hausdorff distance).
 *
 * Method: branch and bound. The line is halved where the furthest point may still lie. A piece is bounded by the edge
 * that keeps all of it nearest: exactly where it lies squarely before one edge or nearest to a corner, so that parallel
 * lines and concentric arcs need no halving; only the places where two edges are equally near are searched for. Error: a
 * hundredth of a tick.
 */

import type { Outline } from "../outline/outline.js";
import { cross, distance, type Point } from "../outline/point.js";
import type { Distance } from "./least-distance.js";
import {
  alongStretch,
  apexOf,
  boxGap,
  furthestOn,
  halvesOf,
  isOnArc,
  nearestOn,
  type Stretch,
  stretchesOfRing,
  towards,
} from "./stretch.js";

/** What may be missing from the most: a hundredth of a tick. */
const CLOSE_ENOUGH = 0.01;

/**
 * The most distance of a point of the one outline's outer line from the nearest of the other's outer line, and where it is.
 *
 * @example
 * const square = outlineOf({ shape: "rectangle", width: 300, height: 300 });
 * const sheet = moved(outlineOf({ shape: "rectangle", width: 360, height: 380 }), { x: -30, y: -40 });
 * mostDistance(sheet, square).distance // => 50
 */
export function mostDistance(one: Outline, other: Outline): Distance {
  return mostFrom(stretchesOfRing(one.outer), stretchesOfRing(other.outer), () => true);
}

interface Piece {
  readonly stretch: Stretch;
  readonly near: readonly Stretch[];
}

/**
 * The most distance of a point of some edges from the nearest of others, among the points that count; 0 where none does.
 * Whether points count may change only where the lines meet.
 *
 * @internal
 */
export function mostFrom(
  some: readonly Stretch[],
  others: readonly Stretch[],
  counts: (point: Point) => boolean,
): Distance {
  const start = (some[0] as Stretch).from;
  // The rays through the ends of an arc hold it between them only up to half a circle.
  const edges = others.flatMap((other) => (Math.abs(other.arc?.turn ?? 0) > 3 ? halvesOf(other) : [other]));
  let best: Distance = { distance: 0, from: start, to: start };
  const offer = (from: Point, near: readonly Stretch[]) => {
    const found = nearestOfAll(near, from);
    if (found.distance > best.distance && counts(from)) best = found;
    return found.distance;
  };
  for (const { from } of some) offer(from, edges);
  const open: Piece[] = some.map((stretch) => ({ stretch, near: edges }));
  for (let piece = open.pop(); piece !== undefined; piece = open.pop()) {
    const { stretch } = piece;
    const most = boundOf(stretch, piece.near);
    if (most <= best.distance + CLOSE_ENOUGH) continue;
    const near = piece.near.filter(
      (other) => boxGap(other, stretch.left, stretch.top, stretch.right, stretch.bottom) <= most,
    );
    const middle = alongStretch(stretch, 0.5);
    const away = offer(middle, near);
    const size = stretch.right - stretch.left + stretch.bottom - stretch.top;
    if (most <= best.distance + CLOSE_ENOUGH || size < CLOSE_ENOUGH / 2) continue;
    // No line is met before or after: as the middle, so all of it.
    if (away > size && !counts(middle)) continue;
    const [first, second] = halvesOf(stretch);
    open.push({ stretch: second, near }, { stretch: first, near });
  }
  return best;
}

function nearestOfAll(stretches: readonly Stretch[], point: Point): Distance {
  let best: Distance = { distance: Number.POSITIVE_INFINITY, from: point, to: point };
  for (const stretch of stretches) {
    if (boxGap(stretch, point.x, point.y, point.x, point.y) >= best.distance) continue;
    const to = nearestOn(stretch, point);
    const away = distance(point, to);
    if (away < best.distance) best = { distance: away, from: point, to };
  }
  return best;
}

/** No point of a stretch is further from the nearest of the others. */
function boundOf(stretch: Stretch, others: readonly Stretch[]): number {
  const corners = [stretch.from, stretch.to, apexOf(stretch)];
  let least = Number.POSITIVE_INFINITY;
  for (const other of others) {
    if (boxGap(other, stretch.left, stretch.top, stretch.right, stretch.bottom) >= least) continue;
    least = Math.min(least, mostBefore(stretch, corners, other));
  }
  return least;
}

/** The most distance of a stretch from another: exact where all of it lies squarely before the other, else from an end of it. */
function mostBefore(stretch: Stretch, corners: readonly Point[], other: Stretch): number {
  const fromEnds = Math.min(
    distance(other.from, furthestOn(stretch, other.from)),
    distance(other.to, furthestOn(stretch, other.to)),
  );
  const { arc, from, to } = other;
  if (arc === null) {
    const x = to.x - from.x;
    const y = to.y - from.y;
    const whole = x * x + y * y;
    const isBefore = corners.every((corner) => {
      const along = (corner.x - from.x) * x + (corner.y - from.y) * y;
      return along >= 0 && along <= whole;
    });
    if (!isBefore) return fromEnds;
    const length = Math.sqrt(whole);
    const normal = { x: -y / length, y: x / length };
    const tips = [stretch.from, stretch.to, ...tipsAlong(stretch, normal)];
    return Math.min(fromEnds, Math.max(...tips.map((tip) => Math.abs(cross(from, to, tip)) / length)));
  }
  const { centre, radius, turn } = arc;
  const side = Math.sign(turn);
  // Within the two rays from the centre through the ends: convex for up to half a circle.
  const isBefore =
    Math.abs(turn) <= Math.PI &&
    corners.every(
      (corner) => cross(centre, from, corner) * side >= 0 && cross(centre, to, corner) * side <= 0,
    );
  if (!isBefore) return fromEnds;
  const nearest = distance(centre, nearestOn(stretch, centre));
  const furthest = distance(centre, furthestOn(stretch, centre));
  return Math.min(fromEnds, Math.max(Math.abs(nearest - radius), Math.abs(furthest - radius)));
}

/** The points of an arc that lie from its centre in a direction or in the opposite one. */
function tipsAlong(stretch: Stretch, { x, y }: Point): readonly Point[] {
  const { arc } = stretch;
  if (arc === null) return [];
  const beyond = { x: arc.centre.x + x, y: arc.centre.y + y };
  return [towards(arc, beyond, arc.radius), towards(arc, beyond, -arc.radius)].filter((tip) =>
    isOnArc(stretch, arc, tip),
  );
}
