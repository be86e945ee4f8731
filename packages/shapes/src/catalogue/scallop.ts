/**
 * What scallops are, whatever they go along: equal arcs between valleys, two neighbours meeting in each valley.
 *
 * A scallop's pitch is the straight distance between its two valleys, its depth how far its top rises over the line between
 * them. With half the pitch as q, the depth as s and the arc turning by 2 a:  s = q tan(a / 2),  r = q / sin a.
 *
 * Scallops are deepest where the arcs of two neighbours touch in their valley, which is where an outline of them would cross
 * itself for good with the next tick. Arcs between whole ticks need a hair of room there: each turns by 1 / (2 sqrt r)
 * less at either end, which moves the valley by sqrt(r) / 2 along the arcs and so no part of them by more than an eighth of
 * a tick.
 */

import { inches, TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import { angleOf, cosineAndSine } from "../outline/sines.js";
import type { ParameterEntry } from "./entry.js";
import { ShapeError } from "./shape-error.js";

/** How scallops of a shape came out. Plain data. */
export interface Scallops {
  /** All the way round. */
  readonly count: number;
  /** How far a scallop rises over the line between its valleys, in ticks with fractions. */
  readonly depth: number;
  /** One where all are equal, two where the sides of a rectangle differ. */
  readonly rows: readonly ScallopRow[];
}

/** Equal scallops in a row. */
export interface ScallopRow {
  /** `round` the whole shape, or along each of the two sides that lie along its width or its height. */
  readonly along: "round" | "width" | "height";
  /** Of this row; along a side those at its corners are not counted. */
  readonly count: number;
  /** Straight from valley to valley, in ticks with fractions. */
  readonly pitch: number;
}

/** Common practice, no source: pitches of 1/4 to 1/2 in on shapes of a card's size. */
const USUAL_PITCH: Ticks = inches(3 / 8);

/** Smaller scallops tear, and no die has them. */
export const LEAST_PITCH: Ticks = TICKS_PER_MM;

/** A shallower scallop would not be seen: 0.1 mm. */
export const LEAST_DEPTH: Ticks = TICKS_PER_MM / 10;

/** More would be a fault of the numbers. */
export const MOST_SCALLOPS = 1000;

/**
 * The pitch that scallops have where none is wished: of a shape with so long a shorter side and so much going round it.
 *
 * @internal
 */
export function usualPitch(shorter: Ticks, round: number): Ticks {
  return Math.max(LEAST_PITCH, Math.min(USUAL_PITCH, Math.floor(shorter / 5)), leastPitch(2 * round));
}

/**
 * The least pitch that may be wished: no more than a thousand scallops go round.
 *
 * @internal
 */
export function leastPitch(round: number): Ticks {
  return Math.max(LEAST_PITCH, Math.ceil(round / MOST_SCALLOPS));
}

/**
 * The tangent of half the angle by which a scallop of the given half pitch turns to either side at most, where the line from
 * valley to valley turns by `turn` in its valleys. The angle is a quarter turn and half of that, less the hair of room.
 *
 * @internal
 */
export function deepestTangent(turn: number, halfPitch: number): number {
  const quarterTurn = Math.PI / 2 + turn / 2;
  const radius = halfPitch / cosineAndSine(quarterTurn)[1];
  const [c, s] = cosineAndSine((quarterTurn - 1 / (2 * Math.sqrt(radius))) / 2);
  return s / c;
}

/**
 * The circle of a scallop by half its pitch and its depth: its radius, and half the angle that it turns by.
 *
 * @internal
 */
export function scallopArc(
  halfPitch: number,
  depth: number,
): { readonly radius: number; readonly half: number } {
  return {
    radius: (halfPitch * halfPitch + depth * depth) / (2 * depth),
    half: 2 * angleOf(halfPitch, depth),
  };
}

/** The depths that scallops of a shape can have, in ticks with fractions. */
export interface DepthRange {
  /** Where neighbours would go on in one curve. */
  readonly smooth: number;
  /** Where neighbours touch, less the hair of room. */
  readonly deepest: number;
  /** The hair. */
  readonly hair: number;
}

/**
 * The depth to use for a wished one; throws a ShapeError where the scallops would overlap, or be so flat that the shape bulges
 * more than they do. One that is deeper by the hair of room only becomes the deepest.
 *
 * @internal
 */
export function depthWithin(shape: string, wished: Ticks, { smooth, deepest, hair }: DepthRange): number {
  const least = Math.ceil(smooth) + LEAST_DEPTH;
  const most = Math.ceil(deepest + hair);
  if (Number.isSafeInteger(wished) && wished >= least && wished <= most) return Math.min(wished, deepest);
  throw new ShapeError({
    shape,
    key: "depth",
    found: wished,
    expected: `a whole number of ticks from ${least} (a scallop that shows) to ${most} (where neighbours touch)`,
    help: "Choose another depth, or more and narrower scallops for flatter ones.",
  });
}

/**
 * The catalogue's parameter for the wish.
 *
 * @internal
 */
export function pitchParameter(range: string): ParameterEntry {
  return {
    key: "pitch",
    kind: "length",
    meaning:
      "How wide a scallop is meant to be, from valley to valley; as near as a whole number of them comes.",
    default: "3/8 in, at most a fifth of the shorter side",
    range,
  };
}

/** The catalogue's parameter for the depth. */
export const depthParameter: ParameterEntry = {
  key: "depth",
  kind: "length",
  meaning: "How far a scallop rises over the line between its valleys.",
  default: "so deep that neighbours touch (about half circles)",
  range: "0.1 mm more than the plain shape bulges from valley to valley, to where neighbours touch",
};
