/**
 * Grows and shrinks outlines by a distance.
 *
 * Method: each edge is set off by itself, a line to a parallel one and an arc to one round the same centre (an arc whose
 * radius would turn negative sweeps to its centre and no further). Where the edges part a corner is put between them;
 * where they overlap the line goes back to the old corner. The number of times the line that results winds round a point
 * is then exactly 1 for the old material plus 1 for each edge or corner that sweeps over the point (minus 1 where an
 * outline shrinks), so that what it winds round at least once is the offset (Chen & McMains, Polygon offsetting by
 * computing winding numbers, 2005, who do it for straight edges). Circles, rectangles and all that keeps its edges come
 * out with exact arcs; the rest is found by the sweep of {@link clip}.
 *
 * Cost: n log n for n corners of the chords and what crosses. Error: at most three ticks (0.002 mm) but at the tips of
 * sharp corners, which lie further out.
 */

import { LONGEST_LENGTH, type Ticks } from "@sheetwright/measure";
import { ArcBook } from "../clip/arc-book.js";
import { clip } from "../clip/clip.js";
import { outlinesOf, union } from "../clip/combine.js";
import type { Polygon } from "../flatten/flatten.js";
import { withoutRepeats } from "../flatten/flatten.js";
import { type Arc, arcOf, directionAt, pointOn } from "../outline/arc.js";
import { type Outline, type Ring, reversedRing, ringsOf, type Span, spansOf } from "../outline/outline.js";
import { distance, isSame, type Point, rounded } from "../outline/point.js";
import { angleOf, cosineAndSine, TURN } from "../outline/sines.js";

/** How an offset treats corners. */
export interface OffsetOptions {
  /**
   * `round`: every point of the new line is as far from the old outline as was asked. `sharp`: corners stay corners; their
   * tips lie further out. Default: `round`.
   */
  readonly corners?: "round" | "sharp" | undefined;
  /**
   * How far the tip of a sharp corner may lie from the old corner, in offset distances; beyond it the tip is cut off
   * square, at the offset distance. At least 1; default: 4, as for the line joins of SVG.
   */
  readonly miterLimit?: number | undefined;
}

/** What became of outlines that were grown or shrunk. */
export interface Offset {
  /** One for each part that is left, or that grew together. */
  readonly outlines: readonly Outline[];
  /** Outlines of which nothing is left. */
  readonly vanished: number;
  /** Outlines that fell into several parts. */
  readonly split: number;
  /** How many outlines fewer there are because some grew together. */
  readonly joined: number;
  /** Windows that closed. */
  readonly closedWindows: number;
  /** Windows that came about: bays that closed at their mouths, and windows that fell into several. */
  readonly newWindows: number;
}

/**
 * Grows outlines by a distance on all sides, or shrinks them where it is negative. Windows of an outline that grows
 * become smaller.
 *
 * Throws a RangeError for a distance that is not a whole number of ticks up to 10 m, and for a `miterLimit` below 1.
 *
 * @example
 * const square = outlineOf({ shape: "rectangle", width: 300, height: 300 });
 * boxOf(offset([square], 50).outlines[0]) // => { x: -50, y: -50, width: 400, height: 400 }
 * offset([square], -150).vanished // => 1
 */
export function offset(outlines: readonly Outline[], by: Ticks, options: OffsetOptions = {}): Offset {
  const { corners = "round", miterLimit = 4 } = options;
  if (!Number.isInteger(by) || Math.abs(by) > LONGEST_LENGTH) {
    throw new RangeError(`Expected a whole number of ticks up to 10 m, found ${String(by)}.`);
  }
  if (!(miterLimit >= 1))
    throw new RangeError(`Expected a miterLimit of at least 1, found ${String(miterLimit)}.`);
  const corner: Corners = corners === "round" ? null : miterLimit;
  // Material that lies in two outlines would be counted twice.
  const parts = outlines.length > 1 ? union(outlines) : outlines;
  const before = {
    vanished: 0,
    split: 0,
    joined: outlines.length - parts.length,
    closedWindows: 0,
    newWindows: 0,
  };
  if (by === 0) return { outlines: parts, ...before };
  return by > 0 ? grow(parts, by, corner, before) : shrink(parts, by, corner, before);
}

/** `null` for round ones, else the limit of sharp ones. */
type Corners = number | null;

type Changes = Omit<Offset, "outlines">;

function grow(parts: readonly Outline[], by: Ticks, corners: Corners, before: Changes): Offset {
  const grown = offsetRings(parts.flatMap(ringsOf), by, corners);
  const windows = parts.flatMap((part) => part.windows);
  const closed = windows.filter(
    (window) => offsetRings([reversedRing(window)], -by, corners).length === 0,
  ).length;
  const after = grown.reduce((sum, outline) => sum + outline.windows.length, 0);
  return {
    ...before,
    outlines: grown,
    joined: before.joined + Math.max(0, parts.length - grown.length),
    closedWindows: closed,
    newWindows: Math.max(0, after - (windows.length - closed)),
  };
}

/** Parts that shrink keep apart. */
function shrink(parts: readonly Outline[], by: Ticks, corners: Corners, before: Changes): Offset {
  const left = parts.map((part) => offsetRings(ringsOf(part), by, corners));
  return {
    ...before,
    outlines: left.flat(),
    vanished: left.filter((of) => of.length === 0).length,
    split: left.filter((of) => of.length > 1).length,
  };
}

function offsetRings(rings: readonly Ring[], by: Ticks, corners: Corners): readonly Outline[] {
  const book = new ArcBook();
  const swept = rings.map((ring) => sweepRing(ring, by, corners, book));
  return outlinesOf(clip("union", swept), book);
}

/** An edge and where it lies after it is set off. */
interface SetOff {
  readonly span: Span;
  readonly arc: Arc | null;
  readonly radius: number;
  readonly start: Point;
  readonly end: Point;
  /** With fractions. */
  readonly newStart: Point;
  readonly newEnd: Point;
}

function sweepRing(ring: Ring, by: Ticks, corners: Corners, book: ArcBook): Polygon {
  const edges = spansOf(ring).map((span) => setOff(span, by));
  const line: Point[] = [];
  // The joint before each edge, as where the one ends, what lies between, and where the other begins.
  const joints = edges.map((edge, index) =>
    jointBetween(edges[index === 0 ? edges.length - 1 : index - 1] as SetOff, edge, by, corners, book),
  );
  for (const [index, edge] of edges.entries()) {
    const { start, between } = joints[index] as Joint;
    const { end } = joints[(index + 1) % joints.length] as Joint;
    line.push(...between, start);
    if (edge.arc === null || isSame(start, end)) continue;
    if (edge.radius <= 0) {
      line.push(rounded(edge.arc.centre.x, edge.arc.centre.y));
      continue;
    }
    const middle = pointOn(edge.span, edge.arc, 0.5);
    // From the old middle on, not from the centre, which may lie too far away to keep its digits.
    const out = (by * Math.sign(edge.arc.turn)) / edge.arc.radius;
    const { centre } = edge.arc;
    const through = rounded(middle.x + (middle.x - centre.x) * out, middle.y + (middle.y - centre.y) * out);
    line.push(...book.flatten({ from: start, through, to: end }).slice(1), end);
  }
  return withoutRepeats(line);
}

function setOff(span: Span, by: Ticks): SetOff {
  const arc = arcOf(span);
  const start = directionAt(span, arc, "start");
  const end = directionAt(span, arc, "end");
  const radius = arc === null ? 0 : arc.radius + by * Math.sign(arc.turn);
  return {
    span,
    arc,
    radius,
    start,
    end,
    newStart: beside(span.from, start, by),
    newEnd: beside(span.to, end, by),
  };
}

/** Outside is to the side that a turn from y towards x leads to. */
function beside(point: Point, direction: Point, by: number): Point {
  return { x: point.x + direction.y * by, y: point.y - direction.x * by };
}

interface Joint {
  /** Where the edge before it ends, what lies between, and where the edge after it starts. */
  readonly end: Point;
  readonly between: readonly Point[];
  readonly start: Point;
}

/** Edges that meet at less than this, in radians, were meant to go on smoothly: arcs in whole ticks meet at about a thousandth. */
const SMOOTH = 0.01;

/** Edges that leave a corner at less than this from each other are taken to lie in either order. */
const NARROW = 0.5;

function jointBetween(before: SetOff, after: SetOff, by: Ticks, corners: Corners, book: ArcBook): Joint {
  const corner = after.span.from;
  // An edge that shrank to its centre goes there from the old corner, and back to it.
  const end = isShrunk(before) ? corner : rounded(before.newEnd.x, before.newEnd.y);
  const start = isShrunk(after) ? corner : rounded(after.newStart.x, after.newStart.y);
  const goesBack: Joint = { end, between: [end, corner], start };
  const turn = angleOf(
    before.end.x * after.start.x + before.end.y * after.start.y,
    before.end.x * after.start.y - before.end.y * after.start.x,
  );
  if (Math.abs(turn) < SMOOTH && !isShrunk(before) && !isShrunk(after)) {
    const shared = rounded(
      (before.newEnd.x + after.newStart.x) / 2,
      (before.newEnd.y + after.newStart.y) / 2,
    );
    const moves = distance(before.newEnd, after.newStart);
    if (moves <= Math.min(roomOf(before), roomOf(after))) return { end: shared, between: [], start: shared };
  }
  const filled = (gap: number, of: Corners): Joint => ({
    end,
    between: [end, ...cornerBetween(before, after, gap, by, of, book)],
    start,
  });
  if (turn > 0 === by > 0) return filled(turn, corners);
  // Where an edge turns back on itself its sign is but rounding, and arcs that leave a corner side by side may have crossed
  // there by a tick. A corner too many covers only what the corner's point sweeps anyhow.
  if (Math.abs(turn) > Math.PI - SMOOTH) return filled(Math.abs(turn) * Math.sign(by), corners);
  return Math.abs(turn) > Math.PI - NARROW ? filled((TURN - Math.abs(turn)) * Math.sign(by), null) : goesBack;
}

function isShrunk({ arc, radius }: SetOff): boolean {
  return arc !== null && radius <= 0;
}

/** How far the end of an edge may be moved along it without leaving it by more than half a tick. */
function roomOf({ arc, radius, span }: SetOff): number {
  return arc === null ? distance(span.from, span.to) / 8 : Math.sqrt(radius);
}

/** What fills the gap between two edges that part at a corner: `gap` radians between their normals. */
function cornerBetween(
  before: SetOff,
  after: SetOff,
  gap: number,
  by: Ticks,
  corners: Corners,
  book: ArcBook,
): readonly Point[] {
  const corner = after.span.from;
  const [c, s] = cosineAndSine(gap / 2);
  const nx = before.newEnd.x - corner.x;
  const ny = before.newEnd.y - corner.y;
  // The middle of the gap, at the offset distance.
  const middle = { x: corner.x + nx * c - ny * s, y: corner.y + nx * s + ny * c };
  const from = rounded(before.newEnd.x, before.newEnd.y);
  const to = rounded(after.newStart.x, after.newStart.y);
  if (corners === null) {
    if (isSame(from, to)) return [from];
    const through = rounded(middle.x, middle.y);
    return [...book.flatten({ from, through, to }), to];
  }
  const toMiddle = (reach: number) => ({
    x: corner.x + (middle.x - corner.x) * reach,
    y: corner.y + (middle.y - corner.y) * reach,
  });
  if (1 / c <= corners && c > 0) {
    const tip = toMiddle(1 / c);
    return [from, rounded(tip.x, tip.y), to];
  }
  // Cut off square at the offset distance: both parallels go on until they reach it, (1 - cos) / sin of the half gap on.
  const on = (Math.abs(by) * (1 - c)) / Math.abs(s);
  return [
    from,
    rounded(before.newEnd.x + before.end.x * on, before.newEnd.y + before.end.y * on),
    rounded(after.newStart.x - after.start.x * on, after.newStart.y - after.start.y * on),
    to,
  ];
}
