/**
 * The places where two parts of a line may face each other nearest: at two corners, at a corner and the foot of the
 * upright on an edge, at hollow arcs on the line through their centres, and along edges that run beside each other.
 */

import { alongStretch, isOnArc, nearestOn, type Stretch, towards } from "../measure/stretch.js";
import { directionAt } from "../outline/arc.js";
import { distance, type Point } from "../outline/point.js";

/** An edge of a ring with its neighbours. Space lies to the side that x turns to on its way to y: paper, or air. */
export interface Side {
  readonly stretch: Stretch;
  /** The direction in which the edge before ends at its start, and in which it starts itself. */
  readonly arrives: Point;
  readonly leaves: Point;
  /** Whether its corner reaches into the space. */
  readonly isPointed: boolean;
  /** Where the edge before starts. */
  readonly before: Point;
  /** Straight from its start to its end. */
  readonly along: Point;
  /** Where it comes among all edges. */
  readonly number: number;
  /** Which ring it is of, where it starts along the ring, how long it is, and how long the ring is. */
  readonly ring: number;
  readonly place: number;
  readonly length: number;
  readonly round: number;
}

/** Two points of the line that face each other across the space. */
export interface Facing {
  readonly from: Point;
  readonly to: Point;
  readonly width: number;
  /** Whether two edges run beside each other there, rather than that a point is nearest. */
  readonly isBeside: boolean;
}

/** How far from upright, as a sine, a line between two edges may stand that run beside each other. */
const SLOPE = 0.003;

/** Upright but for rounding. */
const UPRIGHT = 1e-6;

/** Where along an edge it is tried whether another runs beside it: the first that holds is taken. */
const TRIED = [0.5, 0.125, 0.875];

/**
 * The places where two edges, or the corners at which they start, may face each other nearest. Each is a list of which the
 * first that turns out clear is meant.
 */
export function facingPlaces(one: Side, other: Side): readonly (readonly Facing[])[] {
  const places: (readonly Facing[])[] = [];
  const offer = (from: Point, to: Point) => {
    if (isInto(from, to, one.stretch) && isInto(to, from, other.stretch)) places.push([facing(from, to)]);
  };
  const a = one.stretch;
  const b = other.stretch;
  if (
    one.isPointed &&
    other.isPointed &&
    !isBetween(a.from, b.from, [a.to, one.before, b.to, other.before]) &&
    isCornerTowards(one, b.from) &&
    isCornerTowards(other, a.from)
  ) {
    places.push([facing(a.from, b.from)]);
  }
  for (const [corner, edge] of [
    [one, b],
    [other, a],
  ] as const) {
    if (!corner.isPointed) continue;
    const { from } = edge;
    // The corner has to lie before the edge.
    if (edge.arc === null && !isInto(from, corner.stretch.from, edge)) continue;
    const foot = footOn(edge, corner.stretch.from);
    if (foot === null || !isCornerTowards(corner, foot) || !isInto(foot, corner.stretch.from, edge)) continue;
    places.push([facing(corner.stretch.from, foot)]);
  }
  for (const [hollow, edge] of [
    [a, b],
    [b, a],
  ] as const) {
    if (!isHollow(hollow) || hollow.arc === null) continue;
    if (edge.arc === null) {
      const foot = footOn(edge, hollow.arc.centre);
      const tip = foot === null ? null : tipTowards(hollow, foot);
      if (foot !== null && tip !== null) offerPair(offer, a, hollow, tip, foot);
    } else if (distance(edge.arc.centre, hollow.arc.centre) > 0) {
      // From a hollow arc towards the centre of the other one; to a bulging one from its centre through that of the hollow.
      const { centre } = edge.arc;
      const away = edge.arc.turn > 0;
      const tip = tipTowards(hollow, centre, away ? -1 : 1);
      const foot = tipTowards(edge, hollow.arc.centre, 1);
      if (tip !== null && foot !== null) offerPair(offer, a, hollow, tip, foot);
    }
  }
  const beside = mayRunBeside(one, other) ? placesBeside(a, b) : [];
  if (beside.length > 0) places.push(beside);
  return places;
}

/** How much rounding may bring other parts of the line into the disc over a bridge, in ticks. */
export const CLEAR = 2;

/** Whether one of some points lies in the disc over two others, which is seen from there at more than a right angle. */
function isBetween(from: Point, to: Point, points: readonly Point[]): boolean {
  const least = -CLEAR * distance(from, to);
  return points.some(({ x, y }) => (from.x - x) * (to.x - x) + (from.y - y) * (to.y - y) < least);
}

function offerPair(
  offer: (from: Point, to: Point) => void,
  first: Stretch,
  hollow: Stretch,
  tip: Point,
  foot: Point,
): void {
  if (hollow === first) offer(tip, foot);
  else offer(foot, tip);
}

/** Whether two edges may run beside each other somewhere: not both bulging nor both hollow, and in opposite directions. */
function mayRunBeside(one: Side, other: Side): boolean {
  const a = one.stretch.arc?.turn ?? 0;
  const b = other.stretch.arc?.turn ?? 0;
  if (a * b > 0) return false;
  const most = (Math.abs(a) + Math.abs(b)) / 2 + SLOPE;
  // The cosine of an angle is at least 1 less half its square.
  return -(one.along.x * other.along.x + one.along.y * other.along.y) >= 1 - (most * most) / 2;
}

/** Along the shorter of two edges. */
function placesBeside(a: Stretch, b: Stretch): readonly Facing[] {
  const [short, long] = sizeOf(a) <= sizeOf(b) ? [a, b] : [b, a];
  const found: Facing[] = [];
  for (const part of TRIED) {
    const from = alongStretch(short, part);
    const to = nearestOn(long, from);
    if (to === long.from || to === long.to) continue;
    const width = distance(from, to);
    if (width === 0) continue;
    const normal = normalAt(short, from);
    const upright = ((to.x - from.x) * normal.x + (to.y - from.y) * normal.y) / width;
    if (upright < 1 - (SLOPE * SLOPE) / 2 || !isInto(to, from, long)) continue;
    found.push(short === a ? facing(from, to, true) : facing(to, from, true));
  }
  return found;
}

function facing(from: Point, to: Point, isBeside = false): Facing {
  return { from, to, width: distance(from, to), isBeside };
}

function sizeOf({ from, to, arc }: Stretch): number {
  return arc === null ? distance(from, to) : arc.radius * Math.abs(arc.turn);
}

function isHollow({ arc }: Stretch): boolean {
  return arc !== null && arc.turn < 0;
}

/** The direction into the space at a point of an edge. */
function normalAt({ from, to, arc }: Stretch, point: Point): Point {
  if (arc === null) {
    const length = distance(from, to);
    return { x: -(to.y - from.y) / length, y: (to.x - from.x) / length };
  }
  const scale = Math.sign(arc.turn) / arc.radius;
  return { x: (arc.centre.x - point.x) * scale, y: (arc.centre.y - point.y) * scale };
}

/** Whether the way from a point of an edge to another point starts into the space. */
function isInto(from: Point, to: Point, edge: Stretch): boolean {
  const { x, y } = normalAt(edge, from);
  return (to.x - from.x) * x + (to.y - from.y) * y > 0;
}

/** The point between the ends of an edge where it is nearest to a point, upright to it. */
function footOn(edge: Stretch, point: Point): Point | null {
  const foot = nearestOn(edge, point);
  return foot === edge.from || foot === edge.to ? null : foot;
}

/** The point of an arc in the direction of another one from its centre, or the opposite one. */
function tipTowards(stretch: Stretch, point: Point, way: 1 | -1 = 1): Point | null {
  const { arc } = stretch;
  if (arc === null) return null;
  const tip = towards(arc, point, (way * arc.radius) / distance(arc.centre, point));
  return isOnArc(stretch, arc, tip) ? tip : null;
}

/** Whether a corner that reaches into the space is where its ring comes nearest to a point. */
function isCornerTowards({ stretch, arrives, leaves, isPointed }: Side, point: Point): boolean {
  if (!isPointed) return false;
  const length = distance(stretch.from, point);
  if (length === 0) return false;
  const x = (point.x - stretch.from.x) / length;
  const y = (point.y - stretch.from.y) / length;
  // Neither way along the ring leads nearer.
  if (x * leaves.x + y * leaves.y > UPRIGHT || x * arrives.x + y * arrives.y < -UPRIGHT) return false;
  // What lies in the space lies before one of its edges.
  return leaves.x * y - leaves.y * x > 0 || arrives.x * y - arrives.y * x > 0;
}

/** The edges of rings with their neighbours. */
export function sidesOf(rings: readonly (readonly Stretch[])[]): readonly Side[] {
  const sides: Side[] = [];
  for (const [ring, stretches] of rings.entries()) {
    const round = stretches.reduce((sum, stretch) => sum + sizeOf(stretch), 0);
    let place = 0;
    let before = (stretches[stretches.length - 1] as Stretch).from;
    let arrives = directionOf(stretches[stretches.length - 1] as Stretch, "end");
    for (const stretch of stretches) {
      const { from, to } = stretch;
      const leaves = directionOf(stretch, "start");
      const chord = distance(from, to);
      const length = sizeOf(stretch);
      sides.push({
        stretch,
        arrives,
        leaves,
        // Only a corner that reaches into the space, or goes on smoothly, comes nearest to anything in it.
        isPointed: arrives.x * leaves.y - arrives.y * leaves.x <= UPRIGHT,
        before,
        along: { x: (to.x - from.x) / chord, y: (to.y - from.y) / chord },
        number: sides.length,
        ring,
        place,
        length,
        round,
      });
      place += length;
      before = from;
      arrives = directionOf(stretch, "end");
    }
  }
  return sides;
}

function directionOf({ from, to, arc }: Stretch, end: "start" | "end"): Point {
  return directionAt({ from, to, through: null }, arc, end);
}
