import type { Ticks } from "@sheetwright/measure";
import { exactBoxOf } from "../measure/box.js";
import { windingOf } from "../measure/inside.js";
import { leastBetween } from "../measure/least-distance.js";
import { mostFrom } from "../measure/most-distance.js";
import { type Stretch, stretchesOfRing } from "../measure/stretch.js";
import type { Outline } from "../outline/outline.js";
import type { Point } from "../outline/point.js";

/** The border that a layer shows round the one that lies on it, in whole ticks. */
export interface Border {
  /**
   * The smallest distance between the two lines; less than 0 where the upper one sticks out, then by how much at its
   * furthest point.
   */
  readonly least: Ticks;
  /** The largest distance of a point of the lower layer's line from the upper one's. */
  readonly most: Ticks;
}

/**
 * The border that one outline shows all round another one that lies on it, their boxes middle on middle, by their real outer
 * lines. Exact to the tick for the outlines; these are within two ticks of their ideal shapes.
 *
 * @example
 * const disc = outlineOf({ shape: "circle", diameter: 80000 });
 * borderOf(disc, outlineOf({ shape: "circle", diameter: 90000 })) // => { least: 5000, most: 5000 }
 * borderOf(disc, outlineOf({ shape: "square", side: 100000 })) // => { least: 10000, most: 30711 }
 */
export function borderOf(upper: Outline, lower: Outline): Border {
  return { least: leastBorder(upper, lower), most: mostBorder(upper, lower) };
}

/**
 * The least of a border alone, which is quicker.
 *
 * @internal
 */
export function leastBorder(upper: Outline, lower: Outline): Ticks {
  const top = onMiddle(upper, lower);
  const bottom = stretchesOfRing(lower.outer);
  const isOutside = (point: Point) => windingOf(bottom, point) <= 0;
  const apart = leastBetween(top, bottom).distance;
  const isWithin = Math.round(apart) > 0 && !isOutside((top[0] as Stretch).from);
  return isWithin ? Math.round(apart) : 0 - Math.round(mostFrom(top, bottom, isOutside).distance);
}

/**
 * The most of a border alone.
 *
 * @internal
 */
export function mostBorder(upper: Outline, lower: Outline): Ticks {
  return Math.round(mostFrom(stretchesOfRing(lower.outer), onMiddle(upper, lower), () => true).distance);
}

/** The outer line of an outline with its box's middle on that of another one, to a quarter of a tick. */
function onMiddle(upper: Outline, lower: Outline): readonly Stretch[] {
  const from = middleOfBox(upper);
  const to = middleOfBox(lower);
  return stretchesOfRing(upper.outer, { x: to.x - from.x, y: to.y - from.y });
}

/** Boxes of arcs have fractions that mean nothing; their middles are whole and half ticks. */
function middleOfBox(outline: Outline): Point {
  const { x, y, width, height } = exactBoxOf(outline);
  return { x: Math.round(2 * x + width) / 2, y: Math.round(2 * y + height) / 2 };
}
