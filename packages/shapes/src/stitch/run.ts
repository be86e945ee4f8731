import { exactBoxOf } from "../measure/box.js";
import { type Arc, arcOf, directionAt, pointOn } from "../outline/arc.js";
import { type Ring, type Span, spansOf } from "../outline/outline.js";
import { distance, isSame, type Point, rounded } from "../outline/point.js";
import { angleOf, TURN } from "../outline/sines.js";

/** A smooth stretch of a line, from corner to corner or all round. */
export interface Run {
  readonly edges: readonly RunEdge[];
  /** In ticks, with fractions. */
  readonly length: number;
  /** Whether it is a closed line without a corner. */
  readonly isClosed: boolean;
  /** How far along its edges its place 0 lies: where a closed line crosses the axis that it is symmetric about. */
  readonly origin: number;
}

interface RunEdge {
  readonly span: Span;
  readonly arc: Arc | null;
  readonly length: number;
  /** How far along the run it starts. */
  readonly at: number;
}

/** A line that turns by less than this is not seen as having a corner: 10 degrees. */
const CORNER = Math.PI / 18;

/** Edges shorter than this, 0.01 mm, are left over from rounding, and so are their directions. */
const TINY = 16;

/** How far chords lie from the line: with what rounding and the line itself are off, less than 0.01 mm. */
const CHORD_TOLERANCE = 4;

/** How far a point of the line may lie from a straight stretch, in ticks: what rounding does. */
const STRAIGHT = 0.75;

/**
 * The smooth stretches of a ring in their order: lines and arcs that join with a turn of less than 10 degrees are one. One
 * ends where the next one starts, to 0.01 mm.
 *
 * @internal
 */
export function runsOf(ring: Ring): readonly Run[] {
  const edges = spansOf(ring).map((span) => {
    const arc = arcOf(span);
    return {
      span,
      arc,
      length: arc === null ? distance(span.from, span.to) : arc.radius * Math.abs(arc.turn),
    };
  });
  const long = edges.flatMap(({ length }, index) => (length < TINY ? [] : [index]));
  // Where a run starts: at an edge that turns away from the edge before it.
  const starts = long.filter((index, place) => {
    const before = edges[long.at(place - 1) as number] as Measured;
    return isCorner(before, edges[index] as Measured);
  });
  if (starts.length === 0) return edges.length === 0 ? [] : [closedRun(edges, ring)];
  return starts.map((start, place) => {
    const next = starts[(place + 1) % starts.length] as number;
    let count = next > start ? next - start : next - start + edges.length;
    // What rounding left at the corner belongs to neither side, so that both are as long as each other.
    while ((edges[(start + count - 1) % edges.length] as Measured).length < TINY) count -= 1;
    const own = Array.from({ length: count }, (_, step) => edges[(start + step) % edges.length] as Measured);
    return { ...joined(own), isClosed: false, origin: 0 };
  });
}

type Measured = Omit<RunEdge, "at">;

function isCorner(before: Measured, after: Measured): boolean {
  const end = directionAt(before.span, before.arc, "end");
  const start = directionAt(after.span, after.arc, "start");
  const turn = angleOf(end.x * start.x + end.y * start.y, end.x * start.y - end.y * start.x);
  return Math.abs(turn) >= CORNER;
}

function joined(measured: readonly Measured[]): Pick<Run, "edges" | "length"> {
  let length = 0;
  const edges = measured.map((edge) => {
    const at = length;
    length += edge.length;
    return { ...edge, at };
  });
  return { edges, length };
}

/**
 * Starts a closed line on an axis that it is symmetric about: the upright one of its box, or else the level one; the
 * upright one too where it is not symmetric.
 */
function closedRun(measured: readonly Measured[], ring: Ring): Run {
  const run = { ...joined(measured), isClosed: true, origin: 0 };
  const box = exactBoxOf({ outer: ring, windows: [] });
  const [upright, level] = (["x", "y"] as const).map((across) => {
    const middle = across === "x" ? box.x + box.width / 2 : box.y + box.height / 2;
    return { across, middle, origin: firstCrossing(run, across, middle) };
  }) as [Axis, Axis];
  const start = !isSymmetric(run, upright) && isSymmetric(run, level) ? level : upright;
  return { ...run, origin: start.origin };
}

interface Axis {
  readonly across: "x" | "y";
  readonly middle: number;
  readonly origin: number;
}

/** How far a point may lie from the mirror image of another one. */
const MIRRORED = 8;

function isSymmetric(run: Run, { across, middle, origin }: Axis): boolean {
  const along = across === "x" ? "y" : "x";
  for (let step = 1; step <= 16; step += 1) {
    const ahead = pointAlong({ ...run, origin }, (run.length * step) / 33);
    const behind = pointAlong({ ...run, origin }, (-run.length * step) / 33);
    const isOff =
      Math.abs(ahead[across] + behind[across] - 2 * middle) > MIRRORED ||
      Math.abs(ahead[along] - behind[along]) > MIRRORED;
    if (isOff) return false;
  }
  return true;
}

/** Where a closed line first crosses an axis: at the top of an upright one, at the left of a level one. */
function firstCrossing(run: Run, across: "x" | "y", middle: number): number {
  const along = across === "x" ? "y" : "x";
  let first = { at: 0, place: Number.POSITIVE_INFINITY };
  for (const edge of run.edges) {
    for (const part of crossingsOf(edge, across, middle)) {
      const place = pointOn(edge.span, edge.arc, part)[along];
      if (place < first.place) first = { at: edge.at + part * edge.length, place };
    }
  }
  return first.at;
}

/** The parts of the way along an edge at which it crosses a line. */
function crossingsOf({ span, arc }: RunEdge, across: "x" | "y", middle: number): readonly number[] {
  const from = span.from[across];
  const to = span.to[across];
  if (arc === null) return from === to ? [] : [(middle - from) / (to - from)].filter(isPart);
  const off = middle - arc.centre[across];
  const square = arc.radius * arc.radius - off * off;
  if (square < 0) return [];
  return [-1, 1]
    .map((side) => {
      const reach = side * Math.sqrt(square);
      const x = across === "x" ? off : reach;
      const y = across === "x" ? reach : off;
      const startX = span.from.x - arc.centre.x;
      const startY = span.from.y - arc.centre.y;
      const turn = angleOf(startX * x + startY * y, (startX * y - startY * x) * Math.sign(arc.turn));
      return (turn < -1e-9 ? turn + TURN : Math.max(0, turn)) / Math.abs(arc.turn);
    })
    .filter(isPart);
}

function isPart(part: number): boolean {
  return part >= 0 && part <= 1;
}

/**
 * The point so many ticks along a run, with fractions; along a closed one any number of ticks, also backwards.
 *
 * @internal
 */
export function pointAlong(run: Run, at: number): Point {
  const { edge, part } = placeAlong(run, at);
  return pointOn(edge.span, edge.arc, part);
}

function placeAlong(
  run: Run,
  at: number,
): { readonly edge: RunEdge; readonly index: number; readonly part: number } {
  const place = withinRun(run, at);
  // The last edge that starts before the place.
  let index = 0;
  while (index + 1 < run.edges.length && (run.edges[index + 1] as RunEdge).at <= place) index += 1;
  const edge = run.edges[index] as RunEdge;
  return { edge, index, part: Math.min(1, Math.max(0, (place - edge.at) / edge.length)) };
}

function withinRun({ length, isClosed, origin }: Run, at: number): number {
  if (!isClosed) return at;
  const place = at + origin;
  return place - Math.floor(place / length) * length;
}

/**
 * The stretch of a run between two places as whole points on it, near enough that nothing of the line lies more than
 * four ticks off them; two points where it is straight.
 *
 * @internal
 */
export function stretchOf(run: Run, from: number, to: number): readonly Point[] {
  const first = placeAlong(run, from);
  const last = placeAlong(run, to);
  const points = [pointOn(first.edge.span, first.edge.arc, first.part)];
  let { edge, index, part } = first;
  // A closed line may be run through from its last edge to its first; never more than once.
  for (let steps = 0; steps <= run.edges.length; steps += 1) {
    const isLast = index === last.index && part <= last.part;
    const end = isLast ? last.part : 1;
    points.push(...innerPoints(edge, part, end), pointOn(edge.span, edge.arc, end));
    if (isLast) break;
    index = (index + 1) % run.edges.length;
    edge = run.edges[index] as RunEdge;
    part = 0;
  }
  const start = points[0] as Point;
  const end = points[points.length - 1] as Point;
  const inner = points.slice(1, -1);
  const whole = isStraight(start, end, inner) ? [start, end] : points;
  const corners = whole.map(({ x, y }) => rounded(x, y));
  return corners.filter((point, place) => place === 0 || !isSame(point, corners[place - 1] as Point));
}

function isStraight(start: Point, end: Point, inner: readonly Point[]): boolean {
  const length = distance(start, end);
  if (length === 0) return false;
  return inner.every(({ x, y }) => {
    const area = (end.x - start.x) * (y - start.y) - (end.y - start.y) * (x - start.x);
    return Math.abs(area) <= STRAIGHT * length;
  });
}

/** Where the part of an edge between two places is divided, without these. */
function innerPoints({ span, arc }: RunEdge, from: number, to: number): readonly Point[] {
  if (arc === null) return [];
  // A chord over the angle 2h lies r (1 - cos h) below its arc, less than r h^2 / 2; at most an eighth of a turn each.
  const half = Math.min(TURN / 16, Math.sqrt((2 * CHORD_TOLERANCE) / arc.radius));
  const parts = Math.ceil((Math.abs(arc.turn) * (to - from)) / (2 * half) - 1e-9);
  return Array.from({ length: Math.max(0, parts - 1) }, (_, index) =>
    pointOn(span, arc, from + ((to - from) * (index + 1)) / parts),
  );
}
