/**
 * The smallest circle round an outline, arcs included.
 *
 * Method: the smallest circle round some points of the line (Welzl, Smallest enclosing disks, 1991, in the order given
 * rather than a random one); then the point of the line that lies furthest outside joins them, until none lies outside.
 * Each such point is exact, on arcs too. What is returned always encloses: its radius is that of the furthest point.
 */

import type { Outline } from "../outline/outline.js";
import { cross, distance, type Point } from "../outline/point.js";
import { furthestOn, type Stretch, stretchesOfRing } from "./stretch.js";

/** A circle in ticks with fractions. */
export interface Circle {
  readonly centre: Point;
  readonly radius: number;
}

/** How much larger than the smallest the circle may be: a hundredth of a tick. */
const CLOSE_ENOUGH = 0.01;

/** Far more than ever needed: each round leaves out what the ones before found. */
const MOST_ROUNDS = 1000;

/**
 * The smallest circle that holds an outline: its diameter is the size of a round shape, a polygon or a star. It is at most
 * a hundredth of a tick too large, and never too small.
 *
 * @example
 * const half = [{ to: { x: 8, y: 0 }, through: { x: 4, y: -4 } }, { to: { x: 0, y: 0 } }];
 * enclosingCircle({ outer: half, windows: [] }) // => { centre: { x: 4, y: 0 }, radius: 4 }
 */
export function enclosingCircle({ outer }: Outline): Circle {
  const stretches = stretchesOfRing(outer);
  const first = (stretches[0] as Stretch).from;
  const opposite = furthestOf(stretches, first);
  const points = [opposite, furthestOf(stretches, opposite)];
  let best: Circle | null = null;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const circle = circleRound(points);
    const furthest = furthestOf(stretches, circle.centre);
    const radius = distance(circle.centre, furthest);
    if (best === null || radius < best.radius) best = { centre: circle.centre, radius };
    if (best.radius <= circle.radius + CLOSE_ENOUGH) break;
    points.push(furthest);
  }
  return best as Circle;
}

function furthestOf(stretches: readonly Stretch[], point: Point): Point {
  let furthest = (stretches[0] as Stretch).from;
  for (const stretch of stretches) {
    const other = furthestOn(stretch, point);
    if (distance(point, other) > distance(point, furthest)) furthest = other;
  }
  return furthest;
}

/** What of a circle's radius rounding may add or take. */
const ROUNDING = 1e-7;

/** The smallest circle round some points. */
function circleRound(points: readonly Point[]): Circle {
  const holds = ({ centre, radius }: Circle, point: Point) => distance(centre, point) <= radius + ROUNDING;
  let circle: Circle = { centre: points[0] as Point, radius: 0 };
  for (const [i, a] of points.entries()) {
    if (holds(circle, a)) continue;
    circle = { centre: a, radius: 0 };
    for (const [j, b] of points.slice(0, i).entries()) {
      if (holds(circle, b)) continue;
      circle = circleOver(a, b);
      for (const c of points.slice(0, j)) {
        if (!holds(circle, c)) circle = circleThrough(a, b, c);
      }
    }
  }
  return circle;
}

function circleOver(a: Point, b: Point): Circle {
  return { centre: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, radius: distance(a, b) / 2 };
}

function circleThrough(a: Point, b: Point, c: Point): Circle {
  const area = 2 * cross(a, b, c);
  if (area === 0) {
    const sides = [circleOver(a, b), circleOver(b, c), circleOver(a, c)];
    return sides.reduce((longest, side) => (side.radius > longest.radius ? side : longest));
  }
  const bx = b.x - a.x;
  const by = b.y - a.y;
  const cx = c.x - a.x;
  const cy = c.y - a.y;
  const bb = bx * bx + by * by;
  const cc = cx * cx + cy * cy;
  const centre = { x: a.x + (cy * bb - by * cc) / area, y: a.y + (bx * cc - cx * bb) / area };
  return { centre, radius: Math.max(distance(centre, a), distance(centre, b), distance(centre, c)) };
}
