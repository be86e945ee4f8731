import { TICKS_PER_MM } from "@sheetwright/measure";
import type { Span } from "./outline.js";
import { cross, distance, type Point } from "./point.js";
import { angleOf, cosineAndSine, sine } from "./sines.js";

/** The circle and the part of it that an arc is. */
export interface Arc {
  /** In ticks, with fractions. */
  readonly centre: Point;
  /** In ticks, with fractions. */
  readonly radius: number;
  /** How far it turns, in radians: positive from x towards y, and then the centre lies on the material's side. */
  readonly turn: number;
}

/** Radii beyond this are taken as straight: over the longest length such an arc rises by less than a thousandth of a tick. */
const STRAIGHT = 2e13 * TICKS_PER_MM;

/**
 * The circle that an edge lies on and how far it turns, or `null` where it is straight.
 *
 * @example
 * const half = { from: { x: 0, y: 0 }, through: { x: 4, y: -4 }, to: { x: 8, y: 0 } };
 * arcOf(half)?.centre // => { x: 4, y: 0 }
 * Math.round(arcOf(half)?.radius) // => 4
 */
export function arcOf({ from, through, to }: Span): Arc | null {
  if (through === null) return null;
  const area = cross(from, through, to);
  if (area === 0) return null;
  const ax = through.x - from.x;
  const ay = through.y - from.y;
  const bx = to.x - from.x;
  const by = to.y - from.y;
  const a = ax * ax + ay * ay;
  const b = bx * bx + by * by;
  const radius =
    (distance(from, through) * distance(through, to) * distance(from, to)) / (2 * Math.abs(area));
  if (!(radius < STRAIGHT)) return null;
  const centre = {
    x: from.x + (by * a - ay * b) / (2 * area),
    y: from.y + (ax * b - bx * a) / (2 * area),
  };
  // An angle at the rim is half of the one at the centre over the arc that it does not stand on (Euclid III.20).
  const dot = ax * (to.x - through.x) + ay * (to.y - through.y);
  const turn = 2 * angleOf(dot, Math.abs(area)) * Math.sign(area);
  return { centre, radius, turn };
}

/**
 * The point that lies the given part of the way along an edge, in ticks with fractions.
 *
 * Computed from the nearer end as a chord of it, which keeps its digits where the circle is large, and gives the same
 * bits for an edge and its reverse.
 *
 * @internal
 */
export function pointOn(span: Span, arc: Arc | null, part: number): Point {
  if (part === 0) return span.from;
  if (part === 1) return span.to;
  if (arc === null) {
    const { from, to } = span;
    return { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part };
  }
  return part > 0.5
    ? chordFrom(span.to, span.from, arc.radius, -arc.turn, 1 - part)
    : chordFrom(span.from, span.to, arc.radius, arc.turn, part);
}

function chordFrom(from: Point, to: Point, radius: number, turn: number, part: number): Point {
  const x = to.x - from.x;
  const y = to.y - from.y;
  const whole = Math.sqrt(x * x + y * y);
  const along = 2 * radius * sine((Math.abs(turn) * part) / 2);
  // The chord of the part leaves the whole chord by half of what is left of the turn.
  const [c, s] = cosineAndSine((turn * (part - 1)) / 2);
  return { x: from.x + (along * (x * c - y * s)) / whole, y: from.y + (along * (x * s + y * c)) / whole };
}

/**
 * The direction in which an edge leaves its start or reaches its end, of length 1.
 *
 * @internal
 */
export function directionAt(span: Span, arc: Arc | null, end: "start" | "end"): Point {
  const x = span.to.x - span.from.x;
  const y = span.to.y - span.from.y;
  const length = Math.sqrt(x * x + y * y);
  if (arc === null) return { x: x / length, y: y / length };
  const [c, s] = cosineAndSine((end === "start" ? -arc.turn : arc.turn) / 2);
  return { x: (x * c - y * s) / length, y: (x * s + y * c) / length };
}

/**
 * How long an edge is, in ticks with fractions.
 *
 * @internal
 */
export function lengthOf(span: Span): number {
  const arc = arcOf(span);
  return arc === null ? distance(span.from, span.to) : arc.radius * Math.abs(arc.turn);
}
