import { boxOf } from "../measure/box.js";
import type { Outline } from "../outline/outline.js";
import type { Point } from "../outline/point.js";
import { type Cut, cutLineOf } from "./cut.js";
import { cutAlong, flatEdgesOf, type Trimmed } from "./trim.js";

/**
 * Cuts an outline in two through the centre of its box: the upper half and the lower one, or the left and the right one of
 * an upright cut. The cut is level, or runs in the given direction (degrees, or whole ticks to the right and down).
 *
 * Throws a RangeError for a direction of no length.
 *
 * @example
 * const [upper, lower] = halvesOf(outlineOf({ shape: "circle", diameter: 8000 }));
 * boxOf(upper.outlines[0]) // => { x: 0, y: 0, width: 8000, height: 4000 }
 * lower.flatEdges.map(({ length }) => length) // => [8000]
 */
export function halvesOf(
  outline: Outline,
  direction: number | Point = 0,
): readonly [first: Trimmed, second: Trimmed] {
  const cut: Cut = { from: "centre", direction };
  const box = boxOf(outline);
  const line = cutLineOf(cut, box);
  const isUpright = line.along.x === 0;
  return [
    cutAlong([outline], line, isUpright ? "left" : "above", box),
    cutAlong([outline], line, isUpright ? "right" : "below", box),
  ];
}

/** The quarters of an outline, by where they lie. */
export interface Quarters {
  readonly topLeft: Trimmed;
  readonly topRight: Trimmed;
  readonly bottomLeft: Trimmed;
  readonly bottomRight: Trimmed;
}

/**
 * Cuts an outline in four through the centre of its box, level and upright.
 *
 * @example
 * const { topRight } = quartersOf(outlineOf({ shape: "circle", diameter: 8000 }));
 * boxOf(topRight.outlines[0]) // => { x: 4000, y: 0, width: 4000, height: 4000 }
 * topRight.flatEdges.map(({ length }) => length) // => [4000, 4000]
 */
export function quartersOf(outline: Outline): Quarters {
  const box = boxOf(outline);
  const level = cutLineOf({ from: "centre", direction: 0 }, box);
  const upright = cutLineOf({ from: "centre", direction: 90 }, box);
  const quarter = (row: "above" | "below", column: "left" | "right"): Trimmed => {
    const half = cutAlong([outline], level, row, box);
    const { outlines, flatEdges } = cutAlong(half.outlines, upright, column, box);
    return { outlines, flatEdges: [...flatEdgesOf(outlines, level), ...flatEdges] };
  };
  return {
    topLeft: quarter("above", "left"),
    topRight: quarter("above", "right"),
    bottomLeft: quarter("below", "left"),
    bottomRight: quarter("below", "right"),
  };
}
