import type { Ticks } from "@sheetwright/measure";
import type { Edge, Ring } from "../outline/outline.js";
import { cross, isSame, type Point, rounded } from "../outline/point.js";
import { cosineAndSine } from "../outline/sines.js";

/** Edges that follow each other from a point, not closed. */
export interface Path {
  readonly start: Point;
  readonly edges: readonly Edge[];
}

/** A circle with fractions of ticks. */
interface Circle {
  readonly centre: Point;
  readonly radius: number;
}

/** How much more it counts, as a square, to lie off a curve than to lie further along it. */
const ACROSS = 36;

/**
 * A point in whole ticks for one on a curve: of those around it the one that lies least off the curve, whose normal is
 * given, or the best one with a given x or y. Further along a curve does no harm to its shape; this takes the error of plain
 * rounding to about a third.
 *
 * @internal
 */
export function nearestOn(
  x: number,
  y: number,
  normal: Point,
  fixed: { readonly x?: Ticks; readonly y?: Ticks } = {},
): Point {
  const square = normal.x * normal.x + normal.y * normal.y;
  const nearest = rounded(x, y);
  let best = nearest;
  let least = Number.POSITIVE_INFINITY;
  for (const right of NEXT) {
    for (const down of NEXT) {
      const candidate = { x: fixed.x ?? nearest.x + right, y: fixed.y ?? nearest.y + down };
      const [dx, dy] = [candidate.x - x, candidate.y - y];
      const across = dx * normal.x + dy * normal.y;
      const off = dx * dx + dy * dy + ((ACROSS - 1) * across * across) / square;
      // Of points that are as good as each other, up to rounding, the first.
      if (off < least - 1e-6) {
        least = off;
        best = candidate;
      }
    }
  }
  return best;
}

const NEXT = [0, -1, 1] as const;

/**
 * The point of a circle at an angle (radians from x towards y), in whole ticks.
 *
 * @internal
 */
export function pointOf({ centre, radius }: Circle, angle: number): Point {
  const [x, y] = cosineAndSine(angle);
  return nearestOn(centre.x + radius * x, centre.y + radius * y, { x, y });
}

/**
 * The arc of a circle between two angles, to a point in whole ticks: one edge, or two and more where it turns by more than
 * half a circle.
 *
 * @internal
 */
export function arcTo(circle: Circle, from: number, to: number, end: Point): readonly Edge[] {
  const parts = Math.max(1, Math.ceil(Math.abs(to - from) / Math.PI - 1e-3));
  return Array.from({ length: parts }, (_, index) => ({
    through: pointOf(circle, from + ((to - from) * (index + 0.5)) / parts),
    to: index === parts - 1 ? end : pointOf(circle, from + ((to - from) * (index + 1)) / parts),
  }));
}

/**
 * The ring whose right half is given, clockwise to the eye from the upright axis x = width / 2 or from beside it, down to
 * the axis or to beside it; the left half is its mirror image. A point on the axis of an odd width has no half tick: it
 * stands at `axisOf(width)`.
 *
 * @internal
 */
export function mirroredUpright(right: Path, width: Ticks): Ring {
  const axis = axisOf(width);
  const image = ({ x, y }: Point) => ({ x: x === axis ? axis : width - x, y });
  const imageThrough = ({ x, y }: Point) => ({ x: width - x, y });
  return ringOfPath(continued(right, image, imageThrough));
}

/**
 * The ring whose top right quarter is given, from the upright axis to the level one or from and to beside them.
 *
 * @internal
 */
export function mirroredBoth(quarter: Path, width: Ticks, height: Ticks): Ring {
  const axis = axisOf(height);
  const image = ({ x, y }: Point) => ({ x, y: y === axis ? axis : height - y });
  const imageThrough = ({ x, y }: Point) => ({ x, y: height - y });
  return mirroredUpright(continued(quarter, image, imageThrough), width);
}

/**
 * Where a point on the axis of a length stands.
 *
 * @internal
 */
export function axisOf(length: Ticks): Ticks {
  return Math.floor(length / 2);
}

/** A path and, after it, its mirror image backwards. */
function continued(path: Path, image: (point: Point) => Point, imageThrough: (point: Point) => Point): Path {
  const { start, edges } = reversedPath(path);
  const back = edges.map((edge): Edge => {
    const to = image(edge.to);
    return "through" in edge ? { through: imageThrough(edge.through), to } : { to };
  });
  return { start: path.start, edges: [...path.edges, { to: image(start) }, ...back] };
}

/**
 * Closes a path by a straight edge where its end is not its start. Edges of no length are left out, and arcs whose three
 * points lie on a line become lines.
 *
 * @internal
 */
export function ringOfPath({ start, edges }: Path): Ring {
  const ring: Edge[] = [];
  let from = start;
  for (const edge of [...edges, { to: start }]) {
    if (isSame(from, edge.to)) continue;
    const isBent = "through" in edge && cross(from, edge.through, edge.to) !== 0;
    ring.push(isBent ? edge : { to: edge.to });
    from = edge.to;
  }
  return ring;
}

/**
 * A path with all its points moved in the same way.
 *
 * @internal
 */
export function mapped({ start, edges }: Path, move: (point: Point) => Point): Path {
  return {
    start: move(start),
    edges: edges.map((edge) =>
      "through" in edge ? { through: move(edge.through), to: move(edge.to) } : { to: move(edge.to) },
    ),
  };
}

/**
 * The same path from its end to its start.
 *
 * @internal
 */
export function reversedPath({ start, edges }: Path): Path {
  const points = [start, ...edges.map(({ to }) => to)];
  const back = edges.map((edge, index): Edge => {
    const to = points[index] as Point;
    return "through" in edge ? { through: edge.through, to } : { to };
  });
  return { start: points[points.length - 1] as Point, edges: back.reverse() };
}
