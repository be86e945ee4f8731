/**
 * The least distance between lines, exact to arcs: two edges are nearest where they cross, at an end of one of them, or
 * where one straight line meets both at right angles.
 */

import type { Outline } from "../outline/outline.js";
import { cross, distance, type Point } from "../outline/point.js";
import { boxGap, isOnArc, nearestOn, type Stretch, stretchesOf, towards } from "./stretch.js";

/** Two points and how far they lie apart, in ticks with fractions. */
export interface Distance {
  readonly distance: number;
  readonly from: Point;
  readonly to: Point;
}

/**
 * How far a point lies from the line of an outline, whether outside, inside or in a window, and the point of the line that
 * is nearest.
 *
 * @example
 * const half = [{ to: { x: 8, y: 0 }, through: { x: 4, y: -4 } }, { to: { x: 0, y: 0 } }];
 * Math.round(distanceFrom({ outer: half, windows: [] }, { x: 4, y: -9 }).distance) // => 5
 */
export function distanceFrom(outline: Outline, point: Point): Distance {
  let best: Distance = { distance: Number.POSITIVE_INFINITY, from: point, to: point };
  for (const stretch of stretchesOf(outline)) {
    const to = nearestOn(stretch, point);
    const away = distance(point, to);
    if (away < best.distance) best = { distance: away, from: point, to };
  }
  return best;
}

/**
 * The least distance between the lines of two outlines, windows included: 0 where they cross or touch.
 *
 * @example
 * const square = outlineOf({ shape: "rectangle", width: 300, height: 300 });
 * leastDistance(square, moved(square, { x: 500, y: 0 })).distance // => 200
 */
export function leastDistance(one: Outline, other: Outline): Distance {
  return leastBetween(stretchesOf(one), stretchesOf(other));
}

/**
 * The least distance between two sets of edges.
 *
 * @internal
 */
export function leastBetween(some: readonly Stretch[], others: readonly Stretch[]): Distance {
  let best: Distance = {
    distance: Number.POSITIVE_INFINITY,
    from: (some[0] as Stretch).from,
    to: (others[0] as Stretch).from,
  };
  for (const one of some) {
    for (const other of others) {
      if (boxGap(one, other.left, other.top, other.right, other.bottom) >= best.distance) continue;
      const found = leastOf(one, other);
      if (found.distance < best.distance) best = found;
    }
  }
  return best;
}

function leastOf(one: Stretch, other: Stretch): Distance {
  const candidates: (readonly [Point, Point])[] = [
    [one.from, nearestOn(other, one.from)],
    [one.to, nearestOn(other, one.to)],
    [nearestOn(one, other.from), other.from],
    [nearestOn(one, other.to), other.to],
    ...squarePairs(one, other),
    ...crossings(one, other).map((point) => [point, point] as const),
  ];
  let best: Distance | null = null;
  for (const [from, to] of candidates) {
    const away = distance(from, to);
    if (best === null || away < best.distance) best = { distance: away, from, to };
  }
  return best as Distance;
}

/** Between their ends: where a line at right angles to both meets them. */
function squarePairs(one: Stretch, other: Stretch): (readonly [Point, Point])[] {
  if (one.arc === null && other.arc === null) return [];
  if (one.arc === null) return squarePairs(other, one).map(([a, b]) => [b, a] as const);
  const { arc } = one;
  // The nearest point to a circle's centre lies on that line; so does the one on the other side of the centre.
  const feet: readonly Point[] =
    other.arc === null ? [nearestOn(other, arc.centre)] : bothWays(other, arc.centre);
  return feet.flatMap((foot) => bothWays(one, foot).map((point) => [point, foot] as const));
}

/** The points of an arc that lie in the direction of a point from its centre, or in the opposite one. */
function bothWays(stretch: Stretch, point: Point): readonly Point[] {
  const { arc } = stretch;
  if (arc === null) return [];
  const away = distance(arc.centre, point);
  if (away === 0) return [];
  const ways = [towards(arc, point, arc.radius / away), towards(arc, point, -arc.radius / away)];
  return ways.filter((way) => isOnArc(stretch, arc, way));
}

/** Where two stretches cross, by floating point: to a thousandth of a tick. */
function crossings(one: Stretch, other: Stretch): readonly Point[] {
  if (one.arc === null && other.arc === null) return crossingOfLines(one, other);
  if (one.arc === null) return crossings(other, one);
  const { centre, radius } = one.arc;
  const { arc } = one;
  const points =
    other.arc === null
      ? circleAndLine(centre, radius, other.from, other.to)
      : twoCircles(centre, radius, other.arc.centre, other.arc.radius);
  return points.filter(
    (point) =>
      isOnArc(one, arc, point) &&
      (other.arc === null ? isBetween(other, point) : isOnArc(other, other.arc, point)),
  );
}

function isBetween({ from, to }: Stretch, point: Point): boolean {
  const x = to.x - from.x;
  const y = to.y - from.y;
  const along = (point.x - from.x) * x + (point.y - from.y) * y;
  return along >= 0 && along <= x * x + y * y;
}

function crossingOfLines(a: Stretch, b: Stretch): readonly Point[] {
  const a1 = cross(b.from, b.to, a.from);
  const a2 = cross(b.from, b.to, a.to);
  const b1 = cross(a.from, a.to, b.from);
  const b2 = cross(a.from, a.to, b.to);
  if (Math.sign(a1) * Math.sign(a2) >= 0 || Math.sign(b1) * Math.sign(b2) >= 0) return [];
  const part = a1 / (a1 - a2);
  return [{ x: a.from.x + (a.to.x - a.from.x) * part, y: a.from.y + (a.to.y - a.from.y) * part }];
}

function circleAndLine(centre: Point, radius: number, from: Point, to: Point): readonly Point[] {
  const length = distance(from, to);
  const x = (to.x - from.x) / length;
  const y = (to.y - from.y) / length;
  const along = (centre.x - from.x) * x + (centre.y - from.y) * y;
  const off = cross(from, to, centre) / length;
  const square = (radius - off) * (radius + off);
  if (square < 0) return [];
  const half = Math.sqrt(square);
  return [along - half, along + half].map((part) => ({ x: from.x + x * part, y: from.y + y * part }));
}

function twoCircles(a: Point, aRadius: number, b: Point, bRadius: number): readonly Point[] {
  const apart = distance(a, b);
  if (apart === 0) return [];
  const x = (b.x - a.x) / apart;
  const y = (b.y - a.y) / apart;
  const along = (apart + ((aRadius - bRadius) * (aRadius + bRadius)) / apart) / 2;
  const square = (aRadius - along) * (aRadius + along);
  if (square < 0) return [];
  const half = Math.sqrt(square);
  return [half, -half].map((off) => ({ x: a.x + x * along - y * off, y: a.y + y * along + x * off }));
}
