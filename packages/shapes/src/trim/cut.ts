import { LONGEST_LENGTH, type Ticks } from "@sheetwright/measure";
import type { Box } from "../measure/box.js";
import type { Point } from "../outline/point.js";
import { cosineAndSine, TURN } from "../outline/sines.js";

/** Where a straight cut lies, as a maker would measure it. */
export interface Cut {
  /** What it is measured from: a side of the outline's box, or its centre. */
  readonly from: "top" | "bottom" | "left" | "right" | "centre";
  /**
   * How far from it. From a side: inwards, from the side's middle. From the centre: across the cut, downwards, or to the
   * right for an upright cut; negative for the other way. Default: 0.
   */
  readonly distance?: Ticks | undefined;
  /**
   * The direction of the cut: degrees from level, clockwise to the eye, or a direction in whole ticks, which is exact.
   * Default: along the side; level through the centre.
   */
  readonly direction?: number | Point | undefined;
}

/** A straight line without ends: a whole point on it, and its direction. */
export interface CutLine {
  readonly through: Point;
  /** In whole ticks. To the right, or downwards where it is upright. */
  readonly along: Point;
}

/** Directions given in degrees are told by a step of so many ticks: off by less than a millionth. */
const FINE = 2_000_000;

/**
 * The line of a cut across a box. Half ticks are rounded to the left and upwards.
 *
 * Throws a RangeError for a distance that is not a whole number of ticks up to 10 m, and for a direction of no length.
 *
 * @example
 * cutLineOf({ from: "bottom", distance: 10 }, { x: 0, y: 0, width: 80, height: 60 })
 * // => { through: { x: 40, y: 50 }, along: { x: 1, y: 0 } }
 */
export function cutLineOf({ from, distance = 0, direction }: Cut, { x, y, width, height }: Box): CutLine {
  if (!Number.isInteger(distance) || Math.abs(distance) > LONGEST_LENGTH) {
    throw new RangeError(
      `Expected the distance of a cut in whole ticks up to 10 m, found ${String(distance)}.`,
    );
  }
  const middle = { x: Math.floor(x + width / 2), y: Math.floor(y + height / 2) };
  const along = directionOf(
    direction ?? (from === "left" || from === "right" ? { x: 0, y: 1 } : { x: 1, y: 0 }),
  );
  return { through: pivotOf(), along };

  function pivotOf(): Point {
    switch (from) {
      case "top":
        return { x: middle.x, y: y + distance };
      case "bottom":
        return { x: middle.x, y: y + height - distance };
      case "left":
        return { x: x + distance, y: middle.y };
      case "right":
        return { x: x + width - distance, y: middle.y };
      default: {
        // Across a cut to the right is down; across a cut downwards, to the right.
        const side = along.x > 0 ? 1 : -1;
        const length = Math.sqrt(along.x * along.x + along.y * along.y);
        return {
          x: middle.x - Math.round((side * along.y * distance) / length),
          y: middle.y + Math.round((side * along.x * distance) / length),
        };
      }
    }
  }
}

function directionOf(direction: number | Point): Point {
  if (typeof direction === "number") {
    if (!Number.isFinite(direction)) {
      throw new RangeError(`Expected the direction of a cut in degrees, found ${String(direction)}.`);
    }
    // Whole turns first, so that quarter turns come out exact.
    const degrees = direction - 180 * Math.floor(direction / 180);
    const [c, s] = cosineAndSine((TURN * degrees) / 360);
    return turnedRight({ x: Math.round(c * FINE), y: Math.round(s * FINE) });
  }
  const { x, y } = direction;
  const isWhole = Number.isInteger(x) && Number.isInteger(y) && Math.abs(x) + Math.abs(y) <= LONGEST_LENGTH;
  if (!isWhole || (x === 0 && y === 0)) {
    throw new RangeError(
      `Expected the direction of a cut as whole ticks to the right and down, not both 0, found ${String(x)}, ${String(y)}.`,
    );
  }
  return turnedRight(direction);
}

/** The same line, told to the right, or downwards where it is upright; level and upright ones by a step of 1. */
function turnedRight({ x, y }: Point): Point {
  if (x === 0) return { x: 0, y: 1 };
  if (y === 0) return { x: 1, y: 0 };
  return x > 0 ? { x, y } : { x: -x, y: -y };
}
