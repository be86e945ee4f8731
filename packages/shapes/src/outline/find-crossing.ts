import type { Polygon } from "../flatten/flatten.js";
import { cross, type Point } from "./point.js";

interface Segment {
  readonly from: Point;
  readonly to: Point;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * A place where two edges of closed polygons cross, each going on at both sides of the other, or where they lie on each
 * other over a length; `null` where they meet at points at most. Exact for whole ticks up to 10 m.
 *
 * A line that passes through another one's corner is not found here: its area tells (see `checkOutline`).
 *
 * Edges sorted by their left ends are compared with those that reach as far: n log n and the pairs that overlap in x.
 *
 * @internal
 */
export function findCrossing(polygons: readonly Polygon[]): Point | null {
  const segments = polygons.flatMap((polygon) =>
    polygon.map((from, index): Segment => {
      const to = polygon[(index + 1) % polygon.length] as Point;
      return {
        from,
        to,
        left: Math.min(from.x, to.x),
        right: Math.max(from.x, to.x),
        top: Math.min(from.y, to.y),
        bottom: Math.max(from.y, to.y),
      };
    }),
  );
  segments.sort((a, b) => a.left - b.left);
  const open: Segment[] = [];
  for (const segment of segments) {
    // Those that end before this one starts make room for those after them.
    let kept = 0;
    for (const other of open) {
      if (other.right < segment.left) continue;
      open[kept] = other;
      kept += 1;
      if (other.top > segment.bottom || other.bottom < segment.top) continue;
      if (crosses(segment, other)) return segment.from;
    }
    open.length = kept;
    open.push(segment);
  }
  return null;
}

function crosses(a: Segment, b: Segment): boolean {
  const b1 = cross(a.from, a.to, b.from);
  const b2 = cross(a.from, a.to, b.to);
  if (b1 === 0 && b2 === 0) return overlaps(a, b);
  const a1 = cross(b.from, b.to, a.from);
  const a2 = cross(b.from, b.to, a.to);
  return Math.sign(b1) * Math.sign(b2) < 0 && Math.sign(a1) * Math.sign(a2) < 0;
}

/** Of two segments on one line: whether they share more than a point. */
function overlaps(a: Segment, b: Segment): boolean {
  const isUpright = a.left === a.right;
  return isUpright
    ? Math.min(a.bottom, b.bottom) > Math.max(a.top, b.top)
    : Math.min(a.right, b.right) > Math.max(a.left, b.left);
}
