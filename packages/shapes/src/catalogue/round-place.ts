import type { Ticks } from "@sheetwright/measure";
import { type Point, rounded } from "../outline/point.js";
import { cosineAndSine } from "../outline/sines.js";
import { axisOf, nearestOn } from "./path.js";

/** Where a shape of n equal parts round a centre lies, its box's top left corner at the origin. */
export interface RoundPlace {
  readonly radius: number;
  readonly count: number;
  readonly width: Ticks;
  readonly height: Ticks;
  /** With half ticks. */
  readonly centre: Point;
  /** Angles of the parts from the top, clockwise, in n-ths of half a turn: 0 at the top, n at the bottom. */
  readonly numbers: readonly number[];
}

/** Sums of sines are off by less. */
const EXACT = 1e-6;

/** How far arcs between whole ticks reach beyond the ideal ones. */
const ROUNDING: Ticks = 0.6;

/** The box is rounded by half a tick at most. */
const NEXT_TO: Ticks = 0.75;

/**
 * Places n points equally round a circle, the first at the top or the first two beside it. `reach` is how far a part reaches
 * beyond its point to all sides, as the lobe of a scalloped circle does.
 *
 * @internal
 */
export function placeOnCircle(diameter: Ticks, count: number, up: "point" | "flat", reach = 0): RoundPlace {
  const first = up === "point" ? 0 : 1;
  const numbers = Array.from({ length: count }, (_, index) => (2 * index + first) % (2 * count));
  const radius = diameter / 2;
  const directions = numbers.map((number) => cosineAndSine((Math.PI * number) / count));
  const extent = (values: readonly number[]) => (radius - reach) * Math.max(...values) + reach;
  const side = extent(directions.map(([, right]) => right));
  const top = extent(directions.map(([above]) => above));
  const bottom = extent(directions.map(([above]) => -above));
  // Where a point lies on the upright axis and none straight beside it, the nearest even width puts it on a whole tick.
  const isOnAxis = numbers.some((number) => number === 0 || number === count);
  const isBeside = numbers.some((number) => 2 * number === count);
  const round = (length: number) => {
    const nearest = Math.round(length);
    // What reaches between whole ticks gets the whole one and room for the rounding of its arcs; points are rounded anyhow.
    return reach === 0 || Math.abs(length - nearest) < EXACT ? nearest : Math.ceil(length + ROUNDING);
  };
  const width = isOnAxis && !isBeside ? 2 * round(side) : round(2 * side);
  const height = round(top + bottom);
  // The end that lies on the circle stands exactly.
  const y = count % 2 === 0 ? height / 2 : up === "point" ? radius : height - radius;
  return { radius, count, width, height, centre: { x: width / 2, y }, numbers };
}

/**
 * The point of a placed shape in the direction of a number, at a part of the radius, in whole ticks. Those on an axis lie on
 * it, and those in the left half or, where both halves are alike, in the lower one are mirror images.
 *
 * @internal
 */
export function roundPoint(place: RoundPlace, number: number, part: number): Point {
  const { radius, count, width, height, centre } = place;
  if (number > count) {
    const image = roundPoint(place, 2 * count - number, part);
    return { x: width - image.x, y: image.y };
  }
  if (count % 2 === 0 && 2 * number > count) {
    const image = roundPoint(place, count - number, part);
    return { x: image.x, y: height - image.y };
  }
  const [up, right] = cosineAndSine((Math.PI * number) / count);
  const x = centre.x + radius * part * right;
  const y = centre.y - radius * part * up;
  if (number === 0 || number === count) return { x: axisOf(width), y: Math.round(y) };
  if (2 * number === count) return { x: Math.round(x), y: axisOf(height) };
  // Inner corners are ends of equal distances: as near as can be, not only to the circle.
  if (part < 1) return rounded(x, y);
  // The outermost points stand on the box.
  const normal = { x: right, y: -up };
  if (x > width - NEXT_TO) return nearestOn(x, y, normal, { x: width });
  if (y < NEXT_TO) return nearestOn(x, y, normal, { y: 0 });
  if (y > height - NEXT_TO) return nearestOn(x, y, normal, { y: height });
  return nearestOn(x, y, normal);
}
