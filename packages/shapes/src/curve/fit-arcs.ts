/**
 * Follows a curve by arcs of circles and straight lines with ends in whole ticks.
 *
 * Method: an arc through the ends and the middle of a stretch is measured against points of the curve; where one lies too
 * far off, the stretch is halved. Between its ends an arc follows a smooth curve to the third order, so that halving takes
 * the deviation down about eightfold, and a chord only fourfold.
 *
 * Guarantees: every point of the curve that is looked at (16 to an arc) keeps within the tolerance of the edges as they are
 * after rounding; as the curve is continuous and no arc turns by more than half a circle, the edges keep within it of the
 * curve as well. Not the fewest arcs possible: at most about twice as many.
 */

import { LONGEST_LENGTH, TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import { type Arc, arcOf } from "../outline/arc.js";
import type { Edge, Span } from "../outline/outline.js";
import { cross, distance, isSame, type Point, rounded } from "../outline/point.js";

/** How far edges may lie from the curve that they follow where nothing else is said: 0.01 mm. */
export const CURVE_TOLERANCE: Ticks = TICKS_PER_MM / 100;

/** Ends and middles are rounded to whole ticks; nothing finer can be promised. */
const FINEST_CURVE: Ticks = 2;

/** Points of the curve that are compared with an arc, its ends included. */
const SAMPLES = 16;

/** The deviation between two samples is larger than at either by so much at most, for curves without kinks. */
const BETWEEN_SAMPLES = 0.95;

/** Straight within a tick is straight. */
const STRAIGHT: Ticks = 1;

/** A stretch halved so often is shorter than a tick for any curve that a page can hold. */
const MOST_HALVINGS = 40;

/** A curve as edges. */
export interface CurveFit {
  /** Where the curve begins, in whole ticks; the edges follow each other from here. None where all of it rounds to one point. */
  readonly start: Point;
  readonly edges: readonly Edge[];
  /** The largest distance found between the curve and the edges, in ticks. */
  readonly deviation: number;
}

/** How a curve is followed. */
export interface CurveOptions {
  /**
   * The parameters from the curve's start to its end, ascending, at which an edge has to end: corners, and places such as
   * the ends of the axes of an ellipse, that symmetry is kept. Between two of them the curve is smooth. Default: 0 and 1.
   */
  readonly breaks?: readonly number[] | undefined;
  /** How far an edge may lie from the curve, in ticks: 2 or more. Default: 16 (0.01 mm). */
  readonly tolerance?: Ticks | undefined;
}

/**
 * Follows a curve, given by its point at each parameter (in ticks, with fractions), by arcs and lines.
 *
 * Throws a RangeError for a tolerance below 2 ticks, for breaks that do not ascend, and where the curve leaves the numbers up
 * to 10 m.
 *
 * @example
 * const quarter = fitArcs((part) => ({ x: 1600 * part, y: 800 * part * part }), { tolerance: 16 });
 * quarter.start // => { x: 0, y: 0 }
 * quarter.edges.length // => 2
 * quarter.deviation < 16 // => true
 */
export function fitArcs(
  curve: (parameter: number) => Point,
  { breaks = [0, 1], tolerance = CURVE_TOLERANCE }: CurveOptions = {},
): CurveFit {
  if (!(tolerance >= FINEST_CURVE && tolerance <= LONGEST_LENGTH)) {
    throw new RangeError(
      `Expected a tolerance of at least ${FINEST_CURVE} ticks, found ${String(tolerance)}.`,
    );
  }
  if (breaks.length < 2 || !breaks.every((at, index) => index === 0 || at > (breaks[index - 1] as number))) {
    throw new RangeError(`Expected two or more ascending breaks, found ${breaks.join(", ")}.`);
  }
  const edges: Edge[] = [];
  let deviation = 0;
  const pointAt = (parameter: number): Point => {
    const point = curve(parameter);
    if (!(Math.abs(point.x) <= LONGEST_LENGTH && Math.abs(point.y) <= LONGEST_LENGTH)) {
      throw new RangeError(`Expected a curve within 10 m, found the point ${point.x}, ${point.y}.`);
    }
    return point;
  };

  function follow(first: number, last: number, from: Point, to: Point, halvings: number): void {
    const samples = Array.from({ length: SAMPLES - 1 }, (_, index) =>
      pointAt(first + ((last - first) * (index + 1)) / SAMPLES),
    );
    const fit = fitEdge(from, to, samples, BETWEEN_SAMPLES * tolerance);
    if (fit.deviation <= BETWEEN_SAMPLES * tolerance || halvings === MOST_HALVINGS) {
      if (fit.edge !== null) edges.push(fit.edge);
      deviation = Math.max(deviation, fit.deviation);
      return;
    }
    const middle = first + (last - first) / 2;
    const { x, y } = samples[SAMPLES / 2 - 1] as Point;
    const between = rounded(x, y);
    follow(first, middle, from, between, halvings + 1);
    follow(middle, last, between, to, halvings + 1);
  }

  const corners = breaks.map((at) => {
    const { x, y } = pointAt(at);
    return rounded(x, y);
  });
  for (const [index, at] of breaks.slice(1).entries()) {
    follow(breaks[index] as number, at, corners[index] as Point, corners[index + 1] as Point, 0);
  }
  return { start: corners[0] as Point, edges, deviation };
}

/** The edge between two points that follows the points between them best, and how far the farthest of them lies from it. */
function fitEdge(
  from: Point,
  to: Point,
  samples: readonly Point[],
  limit: number,
): { readonly edge: Edge | null; readonly deviation: number } {
  const straight = farthest({ from, to, through: null }, samples);
  // Ends that round to one point are no edge; what lies between may still be a loop, which halving finds.
  if (isSame(from, to)) return { edge: null, deviation: straight };
  if (straight <= Math.min(STRAIGHT, limit)) return { edge: { to }, deviation: straight };
  const { x, y } = samples[SAMPLES / 2 - 1] as Point;
  const through = rounded(x, y);
  if (cross(from, through, to) !== 0) {
    const bent = farthest({ from, to, through }, samples);
    if (bent <= straight) return { edge: { to, through }, deviation: bent };
  }
  return { edge: { to }, deviation: straight };
}

function farthest(span: Span, points: readonly Point[]): number {
  const arc = arcOf(span);
  // More than half a circle, less the rounding of its middle, is never the best of a smooth stretch.
  if (arc !== null && Math.abs(arc.turn) > MOST_TURN) return Number.POSITIVE_INFINITY;
  return points.reduce((most, point) => Math.max(most, distanceFrom(span, arc, point)), 0);
}

const MOST_TURN = 1.02 * Math.PI;

/** How far a point lies from an edge, in ticks. */
function distanceFrom({ from, to }: Span, arc: Arc | null, point: Point): number {
  if (arc === null) {
    const x = to.x - from.x;
    const y = to.y - from.y;
    const square = x * x + y * y;
    if (square === 0) return distance(from, point);
    const along = Math.min(1, Math.max(0, ((point.x - from.x) * x + (point.y - from.y) * y) / square));
    return distance({ x: from.x + along * x, y: from.y + along * y }, point);
  }
  // Of an arc of up to about half a circle the point lies beside it, or beyond one of its ends.
  const { centre, radius, turn } = arc;
  const hand = Math.sign(turn);
  const afterStart = hand * cross(centre, from, point) >= 0;
  const beforeEnd = hand * cross(centre, point, to) >= 0;
  const isBeside = Math.abs(turn) <= Math.PI ? afterStart && beforeEnd : afterStart || beforeEnd;
  if (isBeside) return Math.abs(distance(centre, point) - radius);
  return Math.min(distance(from, point), distance(to, point));
}
