import { TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import { type Arc, arcOf, pointOn } from "../outline/arc.js";
import { type Outline, type Ring, type Span, spansOf } from "../outline/outline.js";
import { isSame, type Point, rounded } from "../outline/point.js";
import { angleOf } from "../outline/sines.js";

/** A closed line of straight edges as its corners in whole ticks, the first not repeated. */
export type Polygon = readonly Point[];

/** An outline of straight edges: what a knife, a drawing or a comparison of polygons takes. */
export interface FlatOutline {
  readonly outer: Polygon;
  readonly windows: readonly Polygon[];
}

/** How far a chord may lie from its arc where nothing else is said: 0.02 mm, a fifth of a printed line's width. */
export const FLATTEN_TOLERANCE: Ticks = TICKS_PER_MM / 50;

/** No finer: corners are rounded to whole ticks anyhow. */
const FINEST_TOLERANCE: Ticks = 1;

/**
 * Turns an outline into straight edges whose corners lie on it, each within a tick. Arcs are cut into the fewest equal
 * parts, an even number, whose chords keep within `tolerance` of them: ceil(pi / acos(1 - t / r)) to a full circle.
 *
 * Throws a RangeError for a tolerance below a tick.
 *
 * @example
 * const disc = outlineOf({ shape: "circle", diameter: 81280 });
 * flatten(disc, { tolerance: 32 }).outer.length // => 80
 * flatten(disc, { tolerance: 0 }) // throws RangeError
 */
export function flatten(
  { outer, windows }: Outline,
  { tolerance = FLATTEN_TOLERANCE }: { readonly tolerance?: Ticks | undefined } = {},
): FlatOutline {
  return {
    outer: flattenRing(outer, tolerance),
    windows: windows.map((window) => flattenRing(window, tolerance)),
  };
}

/**
 * A ring as the corners of its chords.
 *
 * @internal
 */
export function flattenRing(ring: Ring, tolerance: Ticks): Polygon {
  checkTolerance(tolerance, FINEST_TOLERANCE);
  const corners: Point[] = [];
  for (const span of spansOf(ring)) {
    corners.push(span.from, ...innerPoints(span, tolerance).filter((point) => !isSame(point, span.from)));
  }
  return withoutRepeats(corners);
}

/**
 * Where an edge is divided, without its ends; nothing for a straight one.
 *
 * @internal
 */
export function innerPoints(span: Span, tolerance: Ticks): readonly Point[] {
  const arc = arcOf(span);
  if (arc === null) return [];
  const parts = partsOf(arc, tolerance);
  return Array.from({ length: parts - 1 }, (_, index) => {
    const { x, y } = pointOn(span, arc, (index + 1) / parts);
    return rounded(x, y);
  });
}

/** Fewest equal parts of an arc, an even number, whose chords keep within the tolerance of it. */
function partsOf({ radius, turn }: Arc, tolerance: Ticks): number {
  // A chord over the angle 2h lies r (1 - cos h) below its arc; at most an eighth of a turn each, that small arcs stay round.
  const cosine = Math.max(Math.sqrt(0.5), 1 - tolerance / radius);
  const half = angleOf(cosine, Math.sqrt(1 - cosine * cosine));
  return 2 * Math.max(1, Math.ceil(Math.abs(turn) / (4 * half) - 1e-9));
}

/**
 * Throws a RangeError unless a tolerance is a number that the grid can hold.
 *
 * @internal
 */
export function checkTolerance(tolerance: Ticks, finest: Ticks): void {
  if (!(tolerance >= finest && tolerance < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`Expected a tolerance of at least ${finest} ticks, found ${String(tolerance)}.`);
  }
}

/**
 * Without points that repeat the one before.
 *
 * @internal
 */
export function withoutRepeats(polygon: Polygon): Polygon {
  return polygon.filter((point, index) => {
    const before = polygon[index === 0 ? polygon.length - 1 : index - 1] as Point;
    return polygon.length === 1 || !isSame(point, before);
  });
}
