import type { Polygon } from "../flatten/flatten.js";
import { cross, distance, isSame, type Point, rounded } from "./point.js";

interface Segment {
  /** Which polygon it is of, and at which corner of it it starts. */
  readonly polygon: number;
  readonly corner: number;
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
 * A line that passes through another one's corner is not found here: `checkOutline` finds it.
 *
 * Edges sorted by their left ends are compared with those that reach as far: n log n and the pairs that overlap in x.
 *
 * @internal
 */
export function findCrossing(polygons: readonly Polygon[]): Point | null {
  for (const [segment] of crossingsOf(polygons)) return segment.from;
  return null;
}

/**
 * The polygons with a corner in every edge where it crosses another one or lies on it: the crossing, rounded to the nearest
 * tick (Hobby 1999, snap rounding), so that edges cross at corners only. Corners within a tick of a crossing go onto it.
 *
 * @internal
 */
export function withCrossingsAsCorners(polygons: readonly Polygon[]): readonly Polygon[] {
  const added = polygons.map((polygon) => polygon.map((): Point[] => []));
  const add = ({ polygon, corner, from, to }: Segment, point: Point): void => {
    if (!isSame(point, from) && !isSame(point, to)) added[polygon]?.[corner]?.push(point);
  };
  for (const [a, b] of crossingsOf(polygons)) {
    const places = isOnOneLine(a, b)
      ? [a.from, a.to, b.from, b.to].filter((point) => isInBox(a, point) && isInBox(b, point))
      : [crossingPoint(a, b)];
    for (const place of places) {
      add(a, place);
      add(b, place);
    }
  }
  return polygons.map((polygon, number) => {
    const corners = polygon.flatMap((from, corner) => {
      const more = [...(added[number]?.[corner] ?? [])].sort((p, q) => distance(from, p) - distance(from, q));
      return [{ point: from, isAdded: false }, ...more.map((point) => ({ point, isAdded: true }))];
    });
    // Else a corner beside a crossing could lie a hair beyond the new edge.
    const isBeside = (index: number, other: number) => {
      const neighbour = corners.at(other % corners.length);
      return (
        neighbour?.isAdded && distance(neighbour.point, (corners[index] as { point: Point }).point) < ONE_TICK
      );
    };
    return corners
      .filter(({ isAdded }, index) => isAdded || !(isBeside(index, index - 1) || isBeside(index, index + 1)))
      .map(({ point }) => point);
  });
}

/** Corners so near are one: a tick to the side and one down, and room for rounding. */
const ONE_TICK = 1.5;

function crossingPoint(a: Segment, b: Segment): Point {
  const before = cross(b.from, b.to, a.from);
  const after = cross(b.from, b.to, a.to);
  const part = before / (before - after);
  return rounded(a.from.x + (a.to.x - a.from.x) * part, a.from.y + (a.to.y - a.from.y) * part);
}

function isOnOneLine(a: Segment, b: Segment): boolean {
  return cross(a.from, a.to, b.from) === 0 && cross(a.from, a.to, b.to) === 0;
}

function isInBox({ left, right, top, bottom }: Segment, { x, y }: Point): boolean {
  return x >= left && x <= right && y >= top && y <= bottom;
}

/** All pairs of edges that cross or lie on each other. */
function* crossingsOf(polygons: readonly Polygon[]): Generator<readonly [Segment, Segment]> {
  const segments = polygons.flatMap((points, polygon) =>
    points.map((from, corner): Segment => {
      const to = points[(corner + 1) % points.length] as Point;
      return {
        polygon,
        corner,
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
      if (crosses(segment, other)) yield [segment, other];
    }
    open.length = kept;
    open.push(segment);
  }
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
