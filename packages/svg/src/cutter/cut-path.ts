import type { Rectangle } from "@sheetwright/packing";
import { type Ring, spansOf } from "@sheetwright/shapes";

export type Point = readonly [x: number, y: number];

/** A path of the blade: its points in order; a closed one returns to its first point, which is not repeated. */
export interface CutPath {
  readonly points: readonly Point[];
  readonly closed: boolean;
  /** Of a closed path with arcs: for each point the one that the way to the next runs by, `null` where it is straight. */
  readonly through?: readonly (Point | null)[] | undefined;
}

/** A ring as a path of the blade, moved by (x, y). */
export function ringPath(ring: Ring, x: number, y: number): CutPath {
  const spans = spansOf(ring);
  return {
    points: spans.map(({ from }): Point => [x + from.x, y + from.y]),
    closed: true,
    through: spans.map(({ through }) => (through === null ? null : [x + through.x, y + through.y])),
  };
}

/** The outline of a rectangle: outlines of pieces run clockwise, those of windows the other way. */
export function rectangleOutline({ x, y, width, height }: Rectangle, clockwise: boolean): CutPath {
  const right = x + width;
  const bottom = y + height;
  const around: readonly [Point, Point, Point, Point] = [
    [x, y],
    [right, y],
    [right, bottom],
    [x, bottom],
  ];
  const [a, b, c, d] = around;
  return { points: clockwise ? around : [a, d, c, b], closed: true };
}

/**
 * Orders paths so that each starts as near as can be to where the one before it ends, beginning from `start`: open paths
 * may be reversed, closed ones begin at any of their points. Greedy, O(n^2); ties go to the path given first.
 */
export function nearestFirst(paths: readonly CutPath[], start: Point): readonly CutPath[] {
  const rest = [...paths];
  const ordered: CutPath[] = [];
  let at = start;
  while (rest.length > 0) {
    let best = { index: 0, from: 0, distance: Number.POSITIVE_INFINITY };
    rest.forEach(({ points, closed }, index) => {
      const starts = closed ? points.map((_, i) => i) : [0, points.length - 1];
      for (const from of starts) {
        const [x, y] = points[from] as Point;
        const distance = (x - at[0]) * (x - at[0]) + (y - at[1]) * (y - at[1]);
        if (distance < best.distance) best = { index, from, distance };
      }
    });
    const [path] = rest.splice(best.index, 1) as [CutPath];
    const started = startAt(path, best.from);
    ordered.push(started);
    at = endOf(started);
  }
  return ordered;
}

/** Where the blade is after a path. */
export function endOf({ points, closed }: CutPath): Point {
  return (closed ? points[0] : points.at(-1)) as Point;
}

function startAt(path: CutPath, from: number): CutPath {
  if (from === 0) return path;
  const { points, closed, through } = path;
  if (!closed) return { closed, points: [...points].reverse() };
  const turned = <T>(all: readonly T[]): readonly T[] => [...all.slice(from), ...all.slice(0, from)];
  return { closed, points: turned(points), ...(through === undefined ? {} : { through: turned(through) }) };
}
