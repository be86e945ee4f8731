import { type FlatOutline, innerPoints, type Polygon, withoutRepeats } from "../flatten/flatten.js";
import { type Arc, arcOf } from "../outline/arc.js";
import type { Edge, Outline, Ring, Span } from "../outline/outline.js";
import { cross, distance, type Point } from "../outline/point.js";

/** How far chords lie from their arcs while outlines are combined: two ticks, so that nothing of it shows at 0.01 mm. */
export const WORKING_TOLERANCE = 2;

/** Where a chord was cut through, the new corner lies so near its arc: the tolerance, the rounding of the chord's ends and its own. */
const ON_ARC = WORKING_TOLERANCE + 2;

/** More than half a circle is told by two arcs. A little more, since the parts are counted in whole chords. */
const ONE_ARC = 1.02 * Math.PI;

interface KnownArc extends Arc {
  /** How long a chord of it is. */
  readonly chord: number;
}

/** A corner that is the given one of its arc's, in the direction of the arc. */
interface Corner {
  readonly arc: number;
  readonly place: number;
}

/** An edge of a polygon that runs along an arc, forwards or backwards. */
interface Course {
  readonly arc: number;
  readonly forwards: boolean;
}

/**
 * Remembers which corners come from which arc while outlines are combined as polygons, and makes arcs of them again
 * afterwards: a trimmed circle still has one arc.
 *
 * @internal
 */
export class ArcBook {
  readonly #arcs: KnownArc[] = [];
  readonly #corners = new Map<number, readonly Corner[]>();

  /** The corners of an edge without its end; its arc is remembered. */
  flatten(span: Span): readonly Point[] {
    const corners = [span.from, ...innerPoints(span, WORKING_TOLERANCE)];
    const arc = arcOf(span);
    if (arc === null) return corners;
    const number = this.#arcs.length;
    this.#arcs.push({ ...arc, chord: (arc.radius * Math.abs(arc.turn)) / corners.length });
    for (const [place, corner] of corners.entries()) this.#note(corner, { arc: number, place });
    this.#note(span.to, { arc: number, place: corners.length });
    return corners;
  }

  #note(point: Point, corner: Corner): void {
    const key = keyOf(point);
    const known = this.#corners.get(key);
    this.#corners.set(key, known === undefined ? [corner] : [...known, corner]);
  }

  /** The corners of a ring given by its edges. */
  flattenRing(spans: readonly Span[]): Polygon {
    return withoutRepeats(spans.flatMap((span) => this.flatten(span)));
  }

  /** The outline with its arcs as they were, so far as they are left. */
  recover({ outer, windows }: FlatOutline): Outline {
    return { outer: this.#recoverRing(outer), windows: windows.map((window) => this.#recoverRing(window)) };
  }

  #recoverRing(polygon: Polygon): Ring {
    const count = polygon.length;
    const at = (index: number) => polygon[index % count] as Point;
    const courses = polygon.map((from, index) => this.#coursesOf(from, at(index + 1)));
    const coursesAt = (index: number) => courses[index % count] as readonly Course[];
    // Begin where an edge does not go on along the arc of the one before, so that the start cuts no arc in two.
    const starts = courses.findIndex((own, index) => shared(coursesAt(index + count - 1), own).length === 0);
    const start = Math.max(0, starts);
    const edges: Edge[] = [];
    let index = start;
    while (index < start + count) {
      let along = coursesAt(index);
      let reach = 1;
      while (index + reach < start + count) {
        const onwards = shared(along, coursesAt(index + reach));
        if (onwards.length === 0) break;
        along = onwards;
        reach += 1;
      }
      const arc = along[0] === undefined ? undefined : this.#arcs[along[0].arc];
      if (arc === undefined || reach === 1) {
        for (let step = 1; step <= reach; step += 1) edges.push({ to: at(index + step) });
      } else {
        const ends =
          (reach * arc.chord) / arc.radius > ONE_ARC ? [0, Math.floor(reach / 2), reach] : [0, reach];
        for (const [number, to] of ends.slice(1).entries()) {
          const middle = Math.floor(((ends[number] as number) + to) / 2);
          edges.push({ to: at(index + to), through: at(index + middle) });
        }
      }
      index += reach;
    }
    return withoutStraightCorners(edges);
  }

  /** The arcs that an edge of a polygon runs along. */
  #coursesOf(from: Point, to: Point): readonly Course[] {
    const starts = this.#corners.get(keyOf(from)) ?? NONE;
    const ends = this.#corners.get(keyOf(to)) ?? NONE;
    if (starts.length + ends.length === 0) return NO_COURSE;
    const whole: Course[] = [];
    for (const { arc, place } of starts) {
      const end = ends.find((corner) => corner.arc === arc && Math.abs(corner.place - place) === 1);
      if (end !== undefined) whole.push({ arc, forwards: end.place > place });
    }
    if (whole.length > 0) return whole;
    const parts = [
      ...starts.filter(({ arc }) => this.#isPartOfChord(arc, from, to)),
      ...ends.filter(({ arc }) => this.#isPartOfChord(arc, to, from)),
    ];
    return parts.map(({ arc }) => ({ arc, forwards: this.#runsForwards(arc, from, to) }));
  }

  /** Whether a cut-off point lies on a chord that begins at a corner of an arc. */
  #isPartOfChord(arc: number, corner: Point, cut: Point): boolean {
    const { centre, radius, chord } = this.#arcs[arc] as KnownArc;
    return distance(corner, cut) <= chord + ON_ARC && Math.abs(distance(centre, cut) - radius) <= ON_ARC;
  }

  #runsForwards(arc: number, from: Point, to: Point): boolean {
    const { centre, turn } = this.#arcs[arc] as KnownArc;
    return cross(centre, from, to) > 0 === turn > 0;
  }
}

const NONE: readonly Corner[] = [];
const NO_COURSE: readonly Course[] = [];

/** Different for all points up to 10 m either way and twice that, and exact. */
function keyOf({ x, y }: Point): number {
  return x * 0x8000000 + y;
}

function shared(some: readonly Course[], others: readonly Course[]): readonly Course[] {
  const isShared = ({ arc, forwards }: Course) =>
    others.some((other) => other.arc === arc && other.forwards === forwards);
  // Mostly one arc goes on.
  return some.every(isShared) ? some : some.filter(isShared);
}

/** Joins straight edges that go on in the same direction. */
function withoutStraightCorners(edges: readonly Edge[]): Ring {
  const kept: Edge[] = [];
  let from = (edges[edges.length - 1] as Edge).to;
  for (const [index, edge] of edges.entries()) {
    const next = edges[(index + 1) % edges.length] as Edge;
    const goesOn =
      !("through" in edge) &&
      !("through" in next) &&
      edges.length > 3 &&
      cross(from, edge.to, next.to) === 0 &&
      (edge.to.x - from.x) * (next.to.x - edge.to.x) + (edge.to.y - from.y) * (next.to.y - edge.to.y) > 0;
    if (goesOn) continue;
    kept.push(edge);
    from = edge.to;
  }
  return kept;
}
