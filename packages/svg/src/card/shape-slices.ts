/**
 * Where a shape lies, told in level slices, so that what is seen of shapes and rectangles can be reckoned alike. In each
 * slice, what surely is of paper at all its heights, and what may be:
 *
 *          ___-----___
 *        / |         | \      inner: between the bars
 *       /  |         |  \     outer: from end to end
 *
 * A line of the shape's edge crosses a slice somewhere between its ends in it; outside of these stretches the slice is
 * paper, or none, at all heights, as it is in its middle.
 */

import { TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import { flatten, type Outline, type Point } from "@sheetwright/shapes";
import type { Stretch } from "./visible-part.js";

/** A level slice of a shape, in ticks of what the shape lies on. */
export interface ShapeSlice {
  readonly from: Ticks;
  readonly to: Ticks;
  /** Paper at every height of the slice, from left to right. */
  readonly inner: readonly Stretch[];
  /** Paper at some height of the slice at most. */
  readonly outer: readonly Stretch[];
}

/** A slice is about so high, and a shape has no more of them: less of a paper than that is not seen. */
const SLICE: Ticks = TICKS_PER_MM;
const MOST_SLICES = 100;

/** The slices of a layer that is cut to outlines which stand from its top left corner. */
export function shapeSlices(
  outlines: readonly Outline[],
  { x, y, height }: { readonly x: Ticks; readonly y: Ticks; readonly height: Ticks },
): readonly ShapeSlice[] {
  const edges = outlines.flatMap((outline) => {
    const { outer, windows } = flatten(outline);
    return [outer, ...windows].flatMap((ring) =>
      ring.map((from, i): readonly [Point, Point] => [from, ring[(i + 1) % ring.length] as Point]),
    );
  });
  const count = Math.min(MOST_SLICES, Math.max(1, Math.round(height / SLICE)));
  return Array.from({ length: count }, (_, index) => {
    const from = Math.round((index * height) / count);
    const to = Math.round(((index + 1) * height) / count);
    const middle = (from + to) / 2;
    const crossed = edges.filter(([a, b]) => Math.max(a.y, b.y) >= from && Math.min(a.y, b.y) <= to);
    const touched = joined(crossed.map(([a, b]) => reachOf(a, b, from, to)));
    const crossings = crossed
      .filter(([a, b]) => a.y <= middle !== b.y <= middle)
      .map(([a, b]) => a.x + ((b.x - a.x) * (middle - a.y)) / (b.y - a.y))
      .sort((a, b) => a - b);
    const paper = crossings.flatMap((left, i): Stretch[] => {
      const right = crossings[i + 1];
      return i % 2 === 0 && right !== undefined ? [{ from: left, to: right }] : [];
    });
    const placed = ({ from: left, to: right }: Stretch) => ({ from: x + left, to: x + right });
    return {
      from: y + from,
      to: y + to,
      inner: without(paper, touched).map(placed),
      outer: joined([...paper, ...touched]).map(placed),
    };
  });
}

/** From where to where an edge reaches within a slice, in whole ticks outwards. */
function reachOf(a: Point, b: Point, top: Ticks, bottom: Ticks): Stretch {
  const at = (y: number) => (a.y === b.y ? a.x : a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y));
  const upper = Math.max(top, Math.min(a.y, b.y));
  const lower = Math.min(bottom, Math.max(a.y, b.y));
  const ends = a.y === b.y ? [a.x, b.x] : [at(upper), at(lower)];
  return { from: Math.floor(Math.min(...ends)), to: Math.ceil(Math.max(...ends)) };
}

function joined(stretches: readonly Stretch[]): readonly Stretch[] {
  const result: Stretch[] = [];
  for (const next of [...stretches].sort((a, b) => a.from - b.from)) {
    const last = result.at(-1);
    if (last !== undefined && next.from <= last.to)
      result[result.length - 1] = { from: last.from, to: Math.max(last.to, next.to) };
    else result.push(next);
  }
  return result;
}

function without(stretches: readonly Stretch[], taken: readonly Stretch[]): readonly Stretch[] {
  return stretches
    .flatMap(({ from, to }) => {
      const parts: Stretch[] = [];
      let start = from;
      for (const each of taken) {
        if (each.to <= start || each.from >= to) continue;
        if (each.from > start) parts.push({ from: start, to: each.from });
        start = Math.max(start, each.to);
      }
      if (start < to) parts.push({ from: start, to });
      return parts;
    })
    .map(({ from, to }) => ({ from: Math.ceil(from), to: Math.floor(to) }))
    .filter(({ from, to }) => from < to);
}
