import { type Arc, arcOf, pointOn } from "../outline/arc.js";
import { type Outline, type Ring, ringsOf, type Span, spansOf } from "../outline/outline.js";
import { cross, distance, type Point } from "../outline/point.js";
import { cosine } from "../outline/sines.js";
import { type Bounds, boundsOf } from "./box.js";

/** An edge, or a part of one, as distances are measured from it: with its circle and its box, in ticks with fractions. */
export interface Stretch extends Bounds {
  readonly from: Point;
  readonly to: Point;
  /** `null` for a straight one. */
  readonly arc: Arc | null;
}

/** What rises by less than this, in ticks, is measured as straight: its centre is so far off that its digits are lost. */
const FLAT = 0.001;

function bentArc(span: Span): Arc | null {
  const arc = arcOf(span);
  if (arc === null) return null;
  const chord = distance(span.from, span.to);
  return Math.abs(arc.turn) < 1 && chord * chord < 8 * FLAT * arc.radius ? null : arc;
}

/** The edges of a ring as stretches, moved by so much, which may be half a tick. */
export function stretchesOfRing(ring: Ring, by: Point = { x: 0, y: 0 }): readonly Stretch[] {
  return spansOf(ring).map((span) => {
    const { left, top, right, bottom } = boundsOf([span]);
    const arc = bentArc(span);
    const shift = ({ x, y }: Point) => ({ x: x + by.x, y: y + by.y });
    return {
      from: shift(span.from),
      to: shift(span.to),
      arc: arc === null ? null : { ...arc, centre: shift(arc.centre) },
      left: left + by.x,
      top: top + by.y,
      right: right + by.x,
      bottom: bottom + by.y,
    };
  });
}

/** All edges of an outline. */
export function stretchesOf(outline: Outline): readonly Stretch[] {
  return ringsOf(outline).flatMap((ring) => stretchesOfRing(ring));
}

/** Whether a point of an arc's circle lies on the arc: on the side of the chord that the arc bulges to. */
export function isOnArc({ from, to }: Stretch, { turn }: Arc, point: Point): boolean {
  return cross(from, to, point) * turn <= 0;
}

/** The point of the given part of a stretch. */
export function alongStretch({ from, to, arc }: Stretch, part: number): Point {
  return pointOn({ from, to, through: null }, arc, part);
}

/** The point of a stretch that is nearest to the given one: exact, also on arcs. The middle, of an arc seen from its centre. */
export function nearestOn(stretch: Stretch, point: Point): Point {
  const { from, to, arc } = stretch;
  if (arc === null) {
    const x = to.x - from.x;
    const y = to.y - from.y;
    const part = ((point.x - from.x) * x + (point.y - from.y) * y) / (x * x + y * y);
    if (!(part > 0)) return from;
    return part < 1 ? { x: from.x + x * part, y: from.y + y * part } : to;
  }
  const away = distance(arc.centre, point);
  if (away === 0) return alongStretch(stretch, 0.5);
  const on = towards(arc, point, arc.radius / away);
  if (isOnArc(stretch, arc, on)) return on;
  return distance(point, from) <= distance(point, to) ? from : to;
}

/** The point of a stretch that is furthest from the given one. */
export function furthestOn(stretch: Stretch, point: Point): Point {
  const { from, to, arc } = stretch;
  const end = distance(point, from) >= distance(point, to) ? from : to;
  if (arc === null) return end;
  const away = distance(arc.centre, point);
  if (away === 0) return end;
  const on = towards(arc, point, -arc.radius / away);
  return isOnArc(stretch, arc, on) ? on : end;
}

/** From an arc's centre towards a point, so much of the way. */
export function towards({ centre }: Arc, point: Point, part: number): Point {
  return { x: centre.x + (point.x - centre.x) * part, y: centre.y + (point.y - centre.y) * part };
}

/** How far a point lies from the nearest of some stretches. */
export function distanceFromAll(stretches: readonly Stretch[], point: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const stretch of stretches) {
    if (boxGap(stretch, point.x, point.y, point.x, point.y) >= least) continue;
    least = Math.min(least, distance(point, nearestOn(stretch, point)));
  }
  return least;
}

/** How far two boxes lie apart: no points of theirs are nearer. */
export function boxGap(box: Bounds, left: number, top: number, right: number, bottom: number): number {
  const x = Math.max(0, left - box.right, box.left - right);
  const y = Math.max(0, top - box.bottom, box.top - bottom);
  return x === 0 ? y : y === 0 ? x : Math.sqrt(x * x + y * y);
}

/** A stretch as its two halves. */
export function halvesOf(stretch: Stretch): readonly [Stretch, Stretch] {
  const { from, to, arc } = stretch;
  const middle = alongStretch(stretch, 0.5);
  const half = arc === null ? null : { ...arc, turn: arc.turn / 2 };
  return [withBox(from, middle, half), withBox(middle, to, half)];
}

/** With a box that holds it, if not always the smallest. */
function withBox(from: Point, to: Point, arc: Arc | null): Stretch {
  const apex = apexOf({ from, to, arc });
  const xs = [from.x, to.x, apex.x];
  const ys = [from.y, to.y, apex.y];
  return {
    from,
    to,
    arc,
    left: Math.min(...xs),
    top: Math.min(...ys),
    right: Math.max(...xs),
    bottom: Math.max(...ys),
  };
}

/** Where the tangents at the ends of an arc of up to about half a circle meet: the arc lies inside that triangle. */
export function apexOf(stretch: Pick<Stretch, "from" | "to" | "arc">): Point {
  const { from, to, arc } = stretch;
  if (arc === null) return from;
  const middle = pointOn({ from, to, through: null }, arc, 0.5);
  const c = cosine(arc.turn / 2);
  // Beyond half a circle the tangents meet on the other side; a point far out then spans what holds nothing.
  return towards(arc, middle, 1 / Math.max(c, 1e-9));
}
