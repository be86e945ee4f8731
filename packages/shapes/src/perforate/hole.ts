import type { Ticks } from "@sheetwright/measure";
import type { Outline } from "../outline/outline.js";
import type { Point } from "../outline/point.js";

/** A round hole. */
export interface Hole {
  readonly centre: Point;
  readonly diameter: Ticks;
}

/**
 * A hole as an outline of two half circles, for drawing and for cutting it out of another outline. An odd diameter is
 * rounded to the next even one.
 *
 * @example
 * discOf({ centre: { x: 8, y: 4 }, diameter: 6 }).outer[0] // => { to: { x: 11, y: 4 }, through: { x: 8, y: 1 } }
 */
export function discOf({ centre, diameter }: Hole): Outline {
  const { x, y } = centre;
  const radius = Math.ceil(diameter / 2);
  return {
    outer: [
      { to: { x: x + radius, y }, through: { x, y: y - radius } },
      { to: { x: x - radius, y }, through: { x, y: y + radius } },
    ],
    windows: [],
  };
}
