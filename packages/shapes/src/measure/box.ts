import type { Ticks } from "@sheetwright/measure";
import { arcOf, directionAt, pointOn } from "../outline/arc.js";
import { type Outline, type Span, spansOf } from "../outline/outline.js";
import type { Point } from "../outline/point.js";
import { angleOf } from "../outline/sines.js";

/** An upright rectangle, in ticks, by its top left corner. */
export interface Box {
  readonly x: Ticks;
  readonly y: Ticks;
  readonly width: Ticks;
  readonly height: Ticks;
}

/**
 * What a box in whole ticks may leave out. An arc through whole ticks whose end is meant to be its outermost point bulges
 * past it by some hundred thousandths of a tick; a box that took that for a whole tick would make a circle too wide.
 */
const NOTHING = 0.01;

/**
 * The box of an outline in whole ticks, rounded outwards: the smallest one that the outline, arcs included, leaves by a
 * hundredth of a tick at most.
 *
 * @example
 * const half = [{ to: { x: 8, y: 0 }, through: { x: 4, y: -4 } }, { to: { x: 0, y: 0 } }];
 * boxOf({ outer: half, windows: [] }) // => { x: 0, y: -4, width: 8, height: 4 }
 */
export function boxOf(outline: Outline): Box {
  const exact = exactBoxOf(outline);
  // Adding zero turns -0 into 0.
  const x = Math.floor(exact.x + NOTHING) + 0;
  const y = Math.floor(exact.y + NOTHING) + 0;
  const right = Math.ceil(exact.x + exact.width - NOTHING);
  const bottom = Math.ceil(exact.y + exact.height - NOTHING);
  return { x, y, width: right - x, height: bottom - y };
}

/**
 * The box round several outlines, one at least, in whole ticks as of {@link boxOf}.
 *
 * @example
 * const square = outlineOf({ shape: "square", side: 1600 });
 * boxOfAll([square, moved(square, { x: 3200, y: 800 })]) // => { x: 0, y: 0, width: 4800, height: 2400 }
 */
export function boxOfAll(outlines: readonly Outline[]): Box {
  const boxes = outlines.map(boxOf);
  const x = boxes.reduce((least, box) => Math.min(least, box.x), Number.POSITIVE_INFINITY);
  const y = boxes.reduce((least, box) => Math.min(least, box.y), Number.POSITIVE_INFINITY);
  const right = boxes.reduce((most, box) => Math.max(most, box.x + box.width), Number.NEGATIVE_INFINITY);
  const bottom = boxes.reduce((most, box) => Math.max(most, box.y + box.height), Number.NEGATIVE_INFINITY);
  return { x, y, width: right - x, height: bottom - y };
}

/**
 * The box of an outline with the fractions that arcs between whole ticks have.
 *
 * @example
 * const bow = [{ to: { x: 6, y: 0 }, through: { x: 3, y: -1 } }, { to: { x: 0, y: 0 } }];
 * exactBoxOf({ outer: bow, windows: [] }) // => { x: 0, y: -1, width: 6, height: 1 }
 */
export function exactBoxOf({ outer }: Outline): Box {
  const { left, top, right, bottom } = boundsOf(spansOf(outer));
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** The sides of a box, in ticks with fractions. */
export interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * The sides of the box of some edges.
 *
 * @internal
 */
export function boundsOf(spans: readonly Span[]): Bounds {
  let left = Number.POSITIVE_INFINITY;
  let top = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  for (const span of spans) {
    for (const { x, y } of [span.from, span.to, ...turningPoints(span)]) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  }
  return { left, top, right, bottom };
}

/** Where an arc runs exactly upright or level between its ends: there it can reach furthest. */
function turningPoints(span: Span): readonly Point[] {
  const arc = arcOf(span);
  if (arc === null) return [];
  const { x, y } = directionAt(span, arc, "start");
  const start = angleOf(x, y);
  const end = start + arc.turn;
  const quarter = Math.PI / 2;
  const points: Point[] = [];
  for (let n = Math.ceil(Math.min(start, end) / quarter); n * quarter < Math.max(start, end); n += 1) {
    const part = (n * quarter - start) / arc.turn;
    if (part > 0 && part < 1) points.push(pointOn(span, arc, part));
  }
  return points;
}
