/**
 * Writes lines and outlines as path data: M, L, C and Z alone, absolute, three decimals.
 *
 * An arc becomes the fewest cubic curves, halved until each keeps within `CURVE_ERROR` of it. With t the tangent of a
 * quarter of its turn, half its chord c and the standard handles of (2/3) c (1 + t^2), a cubic curve bulges past its arc by at
 * most (2/27) r sin^6(turn/4) / cos^2(turn/4) (Goldapp, Approximation of circular arcs by cubic polynomials, 1991). All of
 * it follows from three points by square roots alone.
 */

import type { Outline, Point, Ring } from "@sheetwright/shapes";
import { formatNumber } from "./format-number.js";

/** A point of a drawing: x to the right and y down, in its user units. */
type Place = readonly [x: number, y: number];

/** Where a point of an outline lies on the drawing. Keeps shapes: a scale, turns and moves alone. */
export type PlaceOf = (point: Point) => Place;

/** Edges along a line, from where the one before ends; an arc by way of a point where it has one. */
export interface LineOfEdges {
  readonly start: Point;
  readonly edges: readonly { readonly to: Point; readonly through?: Point | null | undefined }[];
  /** True where it returns to its start. */
  readonly closed: boolean;
}

/** How far a curve may lie from its arc, in ticks: 0.0003 mm, so that with what three decimals lose it keeps within 0.001 mm. */
const CURVE_ERROR = 0.48;

/** Beyond, an arc is as good as straight; halving ends long before. */
const MOST_HALVINGS = 12;

interface Cubic {
  readonly first: Point;
  readonly second: Point;
  readonly to: Point;
}

/**
 * The cubic curves of an arc between points in ticks; none where its three points lie on a line.
 *
 * @example
 * arcCurves({ x: 0, y: 0 }, { x: 8000, y: -8000 }, { x: 16000, y: 0 }).length // => 4
 */
export function arcCurves(from: Point, through: Point, to: Point): readonly Cubic[] {
  const area = (through.x - from.x) * (to.y - from.y) - (through.y - from.y) * (to.x - from.x);
  if (area === 0) return [];
  const dot = (through.x - from.x) * (to.x - through.x) + (through.y - from.y) * (to.y - through.y);
  // Between them, half the turn: cos and sin of it stand as dot to |area|.
  const tangent = Math.abs(area) / (Math.sqrt(dot * dot + area * area) + dot);
  return halved(from, to, tangent, Math.sign(area), MOST_HALVINGS);
}

function halved(from: Point, to: Point, t: number, sign: number, left: number): readonly Cubic[] {
  const x = to.x - from.x;
  const y = to.y - from.y;
  const square = 1 + t * t;
  const half = Math.sqrt(x * x + y * y) / 2;
  const radius = (half * square) / (2 * t);
  const sine = (t * t) / square;
  const error = (2 / 27) * radius * sine * sine * sine * square;
  if (left > 0 && (t > 1 || error > CURVE_ERROR)) {
    // The middle of the arc stands off the chord by half of it times t, to the side that the arc bulges to.
    const middle = {
      x: (from.x + to.x + sign * y * t) / 2,
      y: (from.y + to.y - sign * x * t) / 2,
    };
    const quarter = t / (1 + Math.sqrt(square));
    return [...halved(from, middle, quarter, sign, left - 1), ...halved(middle, to, quarter, sign, left - 1)];
  }
  // The chord turned back by half the turn, times a third of its square: the handle (2/3) c (1 + t^2) long.
  const along = (1 - t * t) / 3;
  const across = (sign * 2 * t) / 3;
  return [
    {
      first: { x: from.x + x * along + y * across, y: from.y + y * along - x * across },
      second: { x: to.x - x * along + y * across, y: to.y - y * along - x * across },
      to,
    },
  ];
}

/** Path data of a line of edges; steps too short to be written are left out, and what is left of a point is nothing. */
export function edgesData({ start, edges, closed }: LineOfEdges, placeOf: PlaceOf): string {
  const written = (point: Point) => {
    const [x, y] = placeOf(point);
    return `${formatNumber(x)} ${formatNumber(y)}`;
  };
  const first = written(start);
  const steps: string[] = [];
  let from = start;
  let at = first;
  edges.forEach(({ to, through }, index) => {
    const curves = through === null || through === undefined ? [] : arcCurves(from, through, to);
    const end = written(to);
    if (curves.length > 0) {
      for (const curve of curves) {
        const corner = written(curve.to);
        const handles = [written(curve.first), written(curve.second)];
        if (corner === at && handles.every((handle) => handle === at)) continue;
        steps.push(`C${[...handles, corner].join(" ")}`);
        at = corner;
      }
    } else if (end !== at && !(closed && index === edges.length - 1 && end === first)) {
      steps.push(`L${end}`);
      at = end;
    }
    from = to;
  });
  return steps.length === 0 ? "" : `M${first}${steps.join("")}${closed ? "Z" : ""}`;
}

/** Path data of a closed line. */
function ringData(ring: Ring, placeOf: PlaceOf): string {
  const last = ring.at(-1);
  return last === undefined ? "" : edgesData({ start: last.to, edges: ring, closed: true }, placeOf);
}

/** Path data of outlines with their windows, to be filled by either fill rule. */
export function outlinesData(outlines: readonly Outline[], placeOf: PlaceOf): string {
  return outlines
    .flatMap(({ outer, windows }) => [outer, ...windows])
    .map((ring) => ringData(ring, placeOf))
    .join("");
}

/** Path data of straight steps along points, not closed. */
export function stepsData(points: readonly Point[], placeOf: PlaceOf): string {
  const [start, ...others] = points;
  if (start === undefined) return "";
  return edgesData({ start, edges: others.map((to) => ({ to })), closed: false }, placeOf);
}
