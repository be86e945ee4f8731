/**
 * Finds what is wrong with outlines that come from elsewhere.
 *
 * Method: straight edges are compared exactly in whole ticks. Whatever else crosses, through a corner or with an arc, is
 * found by how often the line winds round the places beside it: 0 or 1 times everywhere if it is simple, whatever it
 * touches, while round a crossing the counts take three values in a row. Two sweeps give what is wound round more often
 * than once and less often than not at all.
 *
 * Guarantee: a crossing of straight outlines is found however small it is. Arcs are taken as chords within a tick, so that
 * with them overlaps are let pass that are no wider than three ticks (0.002 mm) on average: touching arcs between whole
 * ticks have such.
 */

import { formatLength, LONGEST_LENGTH } from "@sheetwright/measure";
import { type ClipOperation, clip } from "../clip/clip.js";
import { flattenRing, innerPoints, type Polygon } from "../flatten/flatten.js";
import { signedAreaOf } from "../measure/area.js";
import { boundsOf } from "../measure/box.js";
import { arcOf } from "./arc.js";
import { type Outline, type Ring, reversedRing, ringsOf, type Span, spansOf } from "./outline.js";
import { cross, distance, isSame, type Point, rounded } from "./point.js";

/** What can be wrong with an outline. */
export type OutlineFaultCode =
  | "not-whole"
  | "too-large"
  | "too-few-edges"
  | "no-length"
  | "no-area"
  | "wrong-direction"
  | "crossing"
  | "overlapping-edges"
  | "window-outside"
  | "windows-overlap";

/** Something that is wrong with an outline. */
export interface OutlineFault {
  readonly code: OutlineFaultCode;
  /** Which ring, and which of its edges where it is one: `outer`, `windows[0]`, `outer[3]`. */
  readonly path: string;
  /** A point at the place, in ticks, where there is one. */
  readonly at: Point | null;
  /** What is wrong and what would help. */
  readonly message: string;
}

/**
 * What is wrong with an outline: nothing, for all that this package makes. Points in whole ticks up to 10 m from the
 * origin; three edges a ring, or two with an arc; none without length; the outer ring with a positive area and windows
 * with a negative one; no ring that crosses another or itself; windows inside the outer ring and apart. Touching at points
 * is allowed.
 *
 * Faults of points and edges come alone: what crosses can be said only where there are lines.
 *
 * @example
 * const bow = [{ to: { x: 0, y: 0 } }, { to: { x: 80, y: 80 } }, { to: { x: 80, y: 0 } }, { to: { x: 0, y: 60 } }];
 * checkOutline({ outer: bow, windows: [] }).map(({ code }) => code) // => ["wrong-direction", "crossing"]
 */
export function checkOutline(outline: Outline): readonly OutlineFault[] {
  const named = ringsOf(outline).map((ring, index): NamedRing => ({ ring, path: pathOf(index) }));
  const ofEdges = named.flatMap(checkEdges);
  if (ofEdges.length > 0) return ofEdges;
  const faults: OutlineFault[] = [...checkDirection(named)];
  // From here on as if all ran the right way round, and positive.
  const rings = named.map(({ ring, path }) => turnedRing(ring, path));
  const crossing = crossingOfStraight(rings);
  faults.push(...crossing);
  const isStraight = rings.every(({ chords }) => chords.every(({ isChord }) => !isChord));
  const wide = (polygons: readonly Polygon[]) =>
    polygons.find((polygon) => isStraight || isWide(polygon)) ?? null;
  const selves = crossing.length > 0 ? [] : rings.flatMap((ring) => crossingOfRing(ring, wide));
  faults.push(...selves);
  if (crossing.length + selves.length > 0) return faults;
  return [...faults, ...checkWindows(rings, wide)];
}

function pathOf(ring: number): string {
  return ring === 0 ? "outer" : `windows[${ring - 1}]`;
}

interface NamedRing {
  readonly ring: Ring;
  readonly path: string;
}

function checkEdges({ ring, path }: NamedRing): readonly OutlineFault[] {
  const spans = spansOf(ring);
  const faults: OutlineFault[] = [];
  for (const [index, { from, to, through }] of spans.entries()) {
    const points = through === null ? [to] : [to, through];
    const odd = points.find(({ x, y }) => !Number.isSafeInteger(x) || !Number.isSafeInteger(y));
    const where = `${path}[${index}]`;
    if (odd !== undefined) {
      const message = `The edge has the point (${odd.x}, ${odd.y}); points lie at whole ticks. Round it.`;
      faults.push({ code: "not-whole", path: where, at: null, message });
      continue;
    }
    if (isSame(from, to)) {
      const message =
        through === null
          ? `The edge ends where it starts, at (${to.x}, ${to.y}). Leave it out.`
          : `The arc ends where it starts, at (${to.x}, ${to.y}). A full circle is two arcs.`;
      faults.push({ code: "no-length", path: where, at: to, message });
    }
  }
  if (faults.some(({ code }) => code === "not-whole")) return faults;
  const { left, top, right, bottom } = boundsOf(spans);
  if (!(Math.max(-left, -top, right, bottom) <= LONGEST_LENGTH)) {
    const longest = formatLength(LONGEST_LENGTH, { unit: "mm" });
    const message = `The ring reaches further than ${longest} from the origin. Move it there or make it smaller.`;
    faults.push({ code: "too-large", path, at: null, message });
  }
  const isRound = spans.some((span) => arcOf(span) !== null);
  if (spans.length < (isRound ? 2 : 3)) {
    const message = `The ring has ${countOf(spans.length)}; a closed line has three or more, or two where one is an arc.`;
    faults.push({ code: "too-few-edges", path, at: null, message });
  }
  return faults;
}

function countOf(edges: number): string {
  return edges === 1 ? "1 edge" : `${edges} edges`;
}

function checkDirection(rings: readonly NamedRing[]): readonly OutlineFault[] {
  return rings.flatMap(({ ring, path }): readonly OutlineFault[] => {
    const area = signedAreaOf(ring) * (path === "outer" ? 1 : -1);
    if (area > 0) return [];
    if (area === 0) {
      const message =
        "The ring encloses as much on the one side as on the other: nothing. Give it another line.";
      return [{ code: "no-area", path, at: null, message }];
    }
    const wanted =
      path === "outer"
        ? "clockwise as drawn, with y downwards"
        : "against the outer ring, anticlockwise as drawn";
    const message = `The ring runs the wrong way round; it has to run ${wanted}. Reverse it.`;
    return [{ code: "wrong-direction", path, at: null, message }];
  });
}

/** A straight edge, or a chord of an arc. */
interface Chord {
  readonly from: Point;
  readonly to: Point;
  readonly path: string;
  readonly isChord: boolean;
}

interface PositiveRing {
  readonly path: string;
  readonly polygon: Polygon;
  readonly chords: readonly Chord[];
}

/** How far chords may lie from arcs here. */
const TOLERANCE = 1;

function turnedRing(ring: Ring, path: string): PositiveRing {
  const positive = signedAreaOf(ring) < 0 ? reversedRing(ring) : ring;
  const isReversed = positive !== ring;
  const chords = spansOf(positive).flatMap((span, index) =>
    chordsOf(span, `${path}[${isReversed ? ring.length - 1 - index : index}]`),
  );
  return { path, polygon: flattenRing(positive, TOLERANCE), chords };
}

function chordsOf(span: Span, path: string): readonly Chord[] {
  const corners = [span.from, ...innerPoints(span, TOLERANCE), span.to];
  return corners
    .slice(1)
    .map((to, index): Chord => ({ from: corners[index] as Point, to, path, isChord: corners.length > 2 }))
    .filter(({ from, to }) => !isSame(from, to));
}

/** The first two edges that cross between their ends, where both are straight, or that lie on each other. Exact. */
function crossingOfStraight(rings: readonly PositiveRing[]): readonly OutlineFault[] {
  const left = ({ from, to }: Chord) => Math.min(from.x, to.x);
  const right = ({ from, to }: Chord) => Math.max(from.x, to.x);
  const chords = rings.flatMap((ring) => ring.chords).sort((a, b) => left(a) - left(b));
  let open: Chord[] = [];
  for (const chord of chords) {
    open = open.filter((other) => right(other) >= left(chord));
    for (const other of open) {
      if (Math.min(other.from.y, other.to.y) > Math.max(chord.from.y, chord.to.y)) continue;
      if (Math.max(other.from.y, other.to.y) < Math.min(chord.from.y, chord.to.y)) continue;
      const straight = !chord.isChord && !other.isChord;
      if (straight && doCross(chord, other)) {
        return [crossingAt(meetingOf(chord, other), chord.path, other.path)];
      }
      if (straight ? doOverlap(chord, other) : haveSameEnds(chord, other)) {
        const message = `The edge lies on ${other.path} for a length; edges meet at points only. Leave out what they enclose twice or not at all.`;
        return [{ code: "overlapping-edges", path: chord.path, at: chord.from, message }];
      }
    }
    open.push(chord);
  }
  return [];
}

function crossingAt(place: Point, path: string, other: string): OutlineFault {
  const at = rounded(place.x, place.y);
  const message = `The line crosses ${other === path ? "itself" : other} near (${at.x}, ${at.y}). Make each closed line a ring of its own, or combine the parts by a union.`;
  return { code: "crossing", path, at, message };
}

function doCross(a: Chord, b: Chord): boolean {
  const b1 = Math.sign(cross(a.from, a.to, b.from)) * Math.sign(cross(a.from, a.to, b.to));
  return b1 < 0 && Math.sign(cross(b.from, b.to, a.from)) * Math.sign(cross(b.from, b.to, a.to)) < 0;
}

/** Where two edges cross, in whole ticks. */
function meetingOf(a: Chord, b: Chord): Point {
  const start = cross(b.from, b.to, a.from);
  const part = start / (start - cross(b.from, b.to, a.to));
  return rounded(a.from.x + (a.to.x - a.from.x) * part, a.from.y + (a.to.y - a.from.y) * part);
}

function doOverlap(a: Chord, b: Chord): boolean {
  if (cross(a.from, a.to, b.from) !== 0 || cross(a.from, a.to, b.to) !== 0) return false;
  const axis = a.from.x === a.to.x ? "y" : "x";
  const end = Math.min(Math.max(a.from[axis], a.to[axis]), Math.max(b.from[axis], b.to[axis]));
  return end > Math.max(Math.min(a.from[axis], a.to[axis]), Math.min(b.from[axis], b.to[axis]));
}

function haveSameEnds(a: Chord, b: Chord): boolean {
  return (isSame(a.from, b.from) && isSame(a.to, b.to)) || (isSame(a.from, b.to) && isSame(a.to, b.from));
}

type FindWide = (polygons: readonly Polygon[]) => Polygon | null;

function crossingOfRing({ path, polygon }: PositiveRing, wide: FindWide): readonly OutlineFault[] {
  const place = wide(woundTwice([polygon])) ?? wide(woundTwice([], [polygon]));
  return place === null ? [] : [crossingAt(place[0] as Point, path, path)];
}

/** What is wound round more often than once by some polygons; or, by those to reverse, less often than not at all. */
function woundTwice(polygons: readonly Polygon[], toReverse: readonly Polygon[] = []): readonly Polygon[] {
  if (polygons.length === 0) {
    return regions(
      "union",
      toReverse.map((polygon) => [...polygon].reverse()),
    );
  }
  const reach = polygons.flat().reduce((most, { x, y }) => Math.max(most, Math.abs(x), Math.abs(y)), 0) + 1;
  const once = [
    { x: -reach, y: -reach },
    { x: -reach, y: reach },
    { x: reach, y: reach },
    { x: reach, y: -reach },
  ];
  return regions("union", [...polygons, once]);
}

/** The sweep drops triangles of a tick or two, which here are what is looked for. */
const MAGNIFIED = 4;

function regions(
  operation: ClipOperation,
  polygons: readonly Polygon[],
  others: readonly Polygon[] = [],
): readonly Polygon[] {
  const scaled = (list: readonly Polygon[], by: number) =>
    list.map((polygon) => polygon.map(({ x, y }) => ({ x: x * by, y: y * by })));
  const found = clip(operation, scaled(polygons, MAGNIFIED), scaled(others, MAGNIFIED));
  return scaled(
    found.map(({ outer }) => outer),
    1 / MAGNIFIED,
  );
}

/** Windows that leave the outer ring, and those that overlap. */
function checkWindows(rings: readonly PositiveRing[], wide: FindWide): readonly OutlineFault[] {
  const [outer, ...windows] = rings as [PositiveRing, ...PositiveRing[]];
  const outside = windows.flatMap(({ path, polygon }): readonly OutlineFault[] => {
    const place = wide(regions("difference", [polygon], [outer.polygon]));
    if (place === null) return [];
    const message = "The window reaches out of the outer ring. Move it inside, or cut it off there.";
    return [
      { code: "window-outside", path, at: rounded((place[0] as Point).x, (place[0] as Point).y), message },
    ];
  });
  if (wide(woundTwice(windows.map(({ polygon }) => polygon))) === null) return outside;
  const overlaps = windows.flatMap(({ path, polygon }, index) =>
    windows.slice(0, index).flatMap((other): readonly OutlineFault[] => {
      const place = wide(regions("intersection", [polygon], [other.polygon]));
      if (place === null) return [];
      const message = `The window overlaps ${other.path}. Make one window of both, or move them apart.`;
      return [
        { code: "windows-overlap", path, at: rounded((place[0] as Point).x, (place[0] as Point).y), message },
      ];
    }),
  );
  return [...outside, ...overlaps];
}

/** How wide an overlap may be on average where there are arcs, in ticks: both their chords and the rounding of corners. */
const OVERLAP = 3;

function isWide(polygon: Polygon): boolean {
  const perimeter = polygon.reduce(
    (sum, point, index) => sum + distance(point, polygon[(index + 1) % polygon.length] as Point),
    0,
  );
  const origin = polygon[0] as Point;
  const twice = polygon.reduce(
    (sum, point, index) => sum + cross(origin, point, polygon[(index + 1) % polygon.length] as Point),
    0,
  );
  return Math.abs(twice) > OVERLAP * perimeter;
}
