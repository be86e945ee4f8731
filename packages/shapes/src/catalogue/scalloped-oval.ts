/**
 * An oval with an edge of equal scallops.
 *
 * Method: the valleys lie on an ellipse, each as far from the next in a straight line; a scallop stands on each of these chords,
 * all alike. One scallop stands across each end of the two axes, so that their number is a multiple of four and the box is
 * exactly what was asked: the axes of the valleys' ellipse follow from that. Found by repeated halving of the chord within a
 * repeated correction of the ellipse; each round takes the error down by about the ratio of a scallop to the oval.
 */

import type { Ticks } from "@sheetwright/measure";
import type { Edge, Outline } from "../outline/outline.js";
import { distance, type Point, rounded } from "../outline/point.js";
import { angleOf, cosineAndSine } from "../outline/sines.js";
import { checkLength, checkSides } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { arcTo, axisOf, mirroredBoth } from "./path.js";
import {
  deepestTangent,
  depthParameter,
  depthWithin,
  LEAST_PITCH,
  leastPitch,
  MOST_SCALLOPS,
  pitchParameter,
  type Scallops,
  scallopArc,
  usualPitch,
} from "./scallop.js";
import { ShapeError } from "./shape-error.js";

/** An oval with an edge of scallops. */
export interface ScallopedOvalShape {
  readonly shape: "scalloped-oval";
  readonly width: Ticks;
  readonly height: Ticks;
  /** How many scallops, a multiple of four. Default: as many as come nearest to the pitch. */
  readonly count?: number | undefined;
  /** How wide a scallop is meant to be from valley to valley. Default: 3/8 in, at most a fifth of the shorter side. */
  readonly pitch?: Ticks | undefined;
  /** How far a scallop rises over the line between its valleys. Default: half of the pitch, which makes half circles. */
  readonly depth?: Ticks | undefined;
}

/** The catalogue's entry. */
export const scallopedOvalEntry = {
  id: "scalloped-oval",
  title: "Scalloped oval",
  about: "An oval with an edge of equal scallops, one across each end of its axes.",
  parameters: [
    {
      ...sizeParameter("width", "How wide it is, over its scallops.", "6.4 mm"),
      range: "6.4 mm to 10 m, at most three times the height",
    },
    {
      ...sizeParameter("height", "How high it is, over its scallops.", "6.4 mm"),
      range: "6.4 mm to 10 m, at most three times the width",
    },
    {
      key: "count",
      kind: "count",
      meaning: "How many scallops it has, a multiple of four.",
      default: "what comes nearest to the pitch",
      range:
        "8 to 1000 in steps of four, each at least 1 mm and at most a quarter of the shorter side wide; in place of a pitch",
    },
    pitchParameter("1 mm to a quarter of the shorter side, at most 1000 scallops"),
    {
      ...depthParameter,
      default:
        "half of the pitch (half circles), a hair less where the oval is so flat that these would touch",
      range:
        "0.1 mm more than the oval bulges from valley to valley at its roundest, to where neighbours touch at its flattest",
    },
  ],
  symmetry: "upright and level",
} as const satisfies CatalogueEntry;

/** Narrower ones would have scallops that stand on each other at their tips. */
const MOST_STRETCHED = 3;

/**
 * The outline of a scalloped oval.
 *
 * @internal
 */
export function scallopedOvalOutline(shape: ScallopedOvalShape): Outline {
  const { width, height } = shape;
  const { depth, valleys } = solve(shape);
  const middle = { x: width / 2, y: height / 2 };
  const half = distance(valleys[0] as Point, valleys[1] as Point) / 2;
  const arc = scallopArc(half, depth);
  const place = (point: Point) => rounded(middle.x + point.x, middle.y + point.y);
  const edges: Edge[] = [];
  const last = valleys.length - 2;
  for (const [index, from] of valleys.slice(0, -1).entries()) {
    const to = valleys[index + 1] as Point;
    const [x, y] = [(to.x - from.x) / (2 * half), (to.y - from.y) / (2 * half)];
    // Outside is where a turn from y towards x leads to from the direction of the chord.
    const rise = depth - arc.radius;
    const centre = {
      x: middle.x + (from.x + to.x) / 2 + y * rise,
      y: middle.y + (from.y + to.y) / 2 - x * rise,
    };
    const circle = { centre, radius: arc.radius };
    const top = angleOf(y, -x);
    if (index === 0) edges.push(...arcTo(circle, top, top + arc.half, place(to)));
    else if (index < last) edges.push(...arcTo(circle, top - arc.half, top + arc.half, place(to)));
    else edges.push(...arcTo(circle, top - arc.half, top, { x: width, y: axisOf(height) }));
  }
  return { outer: mirroredBoth({ start: { x: axisOf(width), y: 0 }, edges }, width, height), windows: [] };
}

/**
 * How its scallops came out.
 *
 * @internal
 */
export function scallopedOvalScallops(shape: ScallopedOvalShape): Scallops {
  const { count, depth, valleys } = solve(shape);
  const pitch = distance(valleys[0] as Point, valleys[1] as Point);
  return { count, depth, rows: [{ along: "round", count, pitch }] };
}

interface Solution {
  readonly count: number;
  readonly depth: number;
  /** At which neighbours touch, less a hair of room. */
  readonly deepest: number;
  readonly pitch: number;
  /** By which the line from valley to valley turns in the valley where the oval is roundest, in radians. */
  readonly mostTurn: number;
  /** From the one left of the top to the one below the right end, about the middle. */
  readonly valleys: readonly Point[];
}

function solve(oval: ScallopedOvalShape): Solution {
  const { shape, width, height } = oval;
  checkSides(shape, { width, height }, 4 * LEAST_PITCH);
  if (width > MOST_STRETCHED * height || height > MOST_STRETCHED * width) {
    throw new ShapeError({
      shape,
      key: width > height ? "width" : "height",
      found: Math.max(width, height),
      expected: "at most three times the other side",
      help: "Make it rounder, or take a scalloped rectangle.",
    });
  }
  const solution = oval.count === undefined ? nearest(oval) : counted(oval, oval.count);
  if (oval.depth === undefined) return solution;
  const half = solution.pitch / 2;
  const [c, s] = cosineAndSine(solution.mostTurn / 4);
  const depth = depthWithin(shape, oval.depth, {
    smooth: (half * s) / c,
    deepest: solution.deepest,
    hair: Math.sqrt(solution.pitch),
  });
  return { ...solution, depth };
}

function counted(oval: ScallopedOvalShape, count: number): Solution {
  const isPossible = Number.isSafeInteger(count) && count >= 8 && count <= MOST_SCALLOPS && count % 4 === 0;
  const solution = isPossible ? solved(oval, count) : null;
  const widest = Math.min(oval.width, oval.height) / 4;
  if (solution !== null && solution.pitch >= LEAST_PITCH && solution.pitch <= widest) return solution;
  throw new ShapeError({
    shape: oval.shape,
    key: "count",
    found: count,
    expected: `a multiple of four from 8 to ${MOST_SCALLOPS}, each scallop 1 mm wide or more and at most a quarter of the shorter side`,
    help: "Use another count, or give a pitch.",
  });
}

/** The pitch falls with the count: the first count whose pitch falls short of the wish, or the one before. */
function nearest(oval: ScallopedOvalShape): Solution {
  const { shape, width, height } = oval;
  const shorter = Math.min(width, height);
  const pitch = oval.pitch ?? usualPitch(shorter, 1.6 * (width + height));
  checkLength(pitch, {
    shape,
    key: "pitch",
    least: leastPitch(1.6 * (width + height)),
    most: Math.floor(shorter / 4),
    because: "a quarter of the shorter side, and at most a thousand scallops",
    help: "Use another pitch or another size.",
  });
  // About what goes round an oval of the valleys.
  const round = (width + height - 2 * Math.min(pitch / 2, oval.depth ?? pitch)) * (Math.PI / 2);
  let count = Math.max(8, 4 * Math.floor(round / pitch / 4));
  let fewer = solved(oval, count);
  while (fewer.pitch <= pitch && count > 8) {
    count -= 4;
    fewer = solved(oval, count);
  }
  for (;;) {
    count += 4;
    const more = solved(oval, count);
    if (more.pitch <= pitch)
      return isAllowed(fewer) && fewer.pitch - pitch < pitch - more.pitch ? fewer : more;
    fewer = more;
  }

  function isAllowed(solution: Solution): boolean {
    return solution.pitch <= shorter / 4;
  }
}

/** Rounds of correction; each takes the error down about by the ratio of a scallop to the oval. */
const MOST_ROUNDS = 40;

/** Closer than this the ellipse is found, in ticks. */
const FOUND = 1e-4;

function solved(oval: ScallopedOvalShape, count: number): Solution {
  const [a, b] = [oval.width / 2, oval.height / 2];
  let [innerA, innerB] = [0.9 * a, 0.9 * b];
  for (let round = 1; ; round += 1) {
    const valleys = equalChords(innerA, innerB, count);
    const pitch = distance(valleys[0] as Point, valleys[1] as Point);
    const [leastTurn, mostTurn] = turnsOf(valleys);
    const deepest = (pitch / 2) * deepestTangent(leastTurn, pitch / 2);
    const depth = Math.min(oval.depth ?? pitch / 2, deepest);
    // One scallop stands level across the top, one upright across the right end: the box is theirs.
    const nextA = (a - depth) / root(pitch / 2 / innerB);
    const nextB = (b - depth) / root(pitch / 2 / innerA);
    const moved = Math.max(Math.abs(nextA - innerA), Math.abs(nextB - innerB));
    if (moved < FOUND || round === MOST_ROUNDS) return { count, depth, deepest, pitch, mostTurn, valleys };
    innerA = nextA;
    innerB = nextB;
  }
}

/** The root of 1 - part^2; a scallop as wide as the oval is no solution, but must not stop the search for one. */
function root(part: number): number {
  return Math.sqrt(Math.max(0.25, 1 - part * part));
}

/** How much the line from valley to valley turns in the valleys where it turns least and most. */
function turnsOf(valleys: readonly Point[]): readonly [least: number, most: number] {
  let [least, most] = [Number.POSITIVE_INFINITY, 0];
  for (let index = 1; index < valleys.length - 1; index += 1) {
    const at = valleys[index] as Point;
    const [x, y] = lessOf(at, valleys[index - 1] as Point);
    const [nextX, nextY] = lessOf(valleys[index + 1] as Point, at);
    const turn = angleOf(x * nextX + y * nextY, x * nextY - y * nextX);
    least = Math.min(least, turn);
    most = Math.max(most, turn);
  }
  return [least, most];
}

function lessOf(one: Point, other: Point): readonly [x: number, y: number] {
  return [one.x - other.x, one.y - other.y];
}

/** Steps of the secant rule; each about doubles the digits. */
const MOST_STEPS = 12;

/** Points of an ellipse at equal distances: a quarter of them, with one chord across the top and one across the right end. */
function equalChords(a: number, b: number, count: number): readonly Point[] {
  // Half a chord lies before the first point of the quarter and half a one after its last.
  const chords = count / 4 - 1;
  const pointAt = (angle: number): Point => {
    const [up, right] = cosineAndSine(angle);
    return { x: a * right, y: -b * up };
  };
  const walk = (chord: number): readonly number[] => {
    const angles = [arcSine(chord / 2 / a)];
    for (let index = 0; index < chords; index += 1)
      angles.push(nextAngle(a, b, angles[angles.length - 1] as number, chord));
    return angles;
  };
  const excess = (chord: number, angles: readonly number[]) =>
    (angles[angles.length - 1] as number) - (Math.PI / 2 - arcSine(chord / 2 / b));
  let before = ((a + b) * Math.PI) / count;
  let angles = walk(before);
  let off = excess(before, angles);
  let chord = before * 0.99;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    angles = walk(chord);
    const now = excess(chord, angles);
    if (now === off || Math.abs(now) < 1e-13) break;
    const next = chord - (now * (chord - before)) / (now - off);
    before = chord;
    off = now;
    chord = Math.min(2 * chord, Math.max(chord / 2, next));
  }
  const quarter = angles.map(pointAt);
  const first = quarter[0] as Point;
  const last = quarter[quarter.length - 1] as Point;
  return [{ x: -first.x, y: first.y }, ...quarter, { x: last.x, y: -last.y }];
}

/** Steps of Newton's rule. */
const NEWTON_STEPS = 6;

/** The angle of the point of the ellipse (a sin t, -b cos t) that lies a chord further on. */
function nextAngle(a: number, b: number, angle: number, chord: number): number {
  const [up, right] = cosineAndSine(angle);
  let next = angle + Math.min(0.7, chord / Math.sqrt(a * a * up * up + b * b * right * right));
  for (let step = 0; step < NEWTON_STEPS; step += 1) {
    const [c, s] = cosineAndSine(next);
    const [x, y] = [a * (s - right), b * (up - c)];
    const change = (x * x + y * y - chord * chord) / (2 * (x * a * c + y * b * s));
    next -= Math.max(-0.5, Math.min(0.5, change));
    if (Math.abs(change) < 1e-14) break;
  }
  return next;
}

function arcSine(value: number): number {
  const held = Math.min(1, value);
  return angleOf(Math.sqrt(1 - held * held), held);
}
