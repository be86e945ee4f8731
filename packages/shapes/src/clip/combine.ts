import type { FlatOutline, Polygon } from "../flatten/flatten.js";
import { flattenRing } from "../flatten/flatten.js";
import { findCrossing, withCrossingsAsCorners } from "../outline/find-crossing.js";
import { type Edge, type Outline, type Ring, ringsOf, spansOf } from "../outline/outline.js";
import { cross, distance, isSame, type Point } from "../outline/point.js";
import { ArcBook, WORKING_TOLERANCE } from "./arc-book.js";
import { type ClipOperation, clip } from "./clip.js";

/** What is thinner than this on average is left over from rounding, not paper: two ticks, about a micrometre. */
const SLIVER = 2;

/**
 * Everything that lies in at least one of the outlines, as one outline for each part. Outlines that overlap or share an
 * edge grow together. Parts are told from the top down, each line from its topmost corner on.
 *
 * Here and in the other combinations curves are taken as chords within two ticks of them, and arcs come out as arcs; a
 * result is off by at most three ticks (0.002 mm), and parts or windows thinner than two ticks on average are dropped.
 *
 * @example
 * const bar = outlineOf({ shape: "rectangle", width: 300, height: 100 });
 * const [plus, ...others] = union([bar, moved(quarterTurned(bar, 1), { x: 200, y: -100 })]);
 * plus.outer.length // => 12
 * others // => []
 */
export function union(outlines: readonly Outline[]): readonly Outline[] {
  return combine("union", outlines, []);
}

/**
 * What lies in both: in any of the one outlines and any of the others.
 *
 * @example
 * const square = outlineOf({ shape: "rectangle", width: 300, height: 300 });
 * intersection([square], [moved(square, { x: 200, y: 0 })])[0].outer.length // => 4
 * intersection([square], [moved(square, { x: 900, y: 0 })]) // => []
 */
export function intersection(outlines: readonly Outline[], others: readonly Outline[]): readonly Outline[] {
  return combine("intersection", outlines, others);
}

/**
 * What is left of the outlines where the others are cut away.
 *
 * @example
 * const sheet = outlineOf({ shape: "rectangle", width: 300, height: 300 });
 * const hole = moved(outlineOf({ shape: "rectangle", width: 100, height: 100 }), { x: 100, y: 100 });
 * difference([sheet], [hole])[0].windows.length // => 1
 */
export function difference(outlines: readonly Outline[], others: readonly Outline[]): readonly Outline[] {
  return combine("difference", outlines, others);
}

/**
 * What lies in the one outlines or the others, but not in both.
 *
 * @example
 * const square = outlineOf({ shape: "rectangle", width: 300, height: 300 });
 * exclusion([square], [moved(square, { x: 200, y: 0 })]).length // => 2
 */
export function exclusion(outlines: readonly Outline[], others: readonly Outline[]): readonly Outline[] {
  return combine("exclusion", outlines, others);
}

function combine(
  operation: ClipOperation,
  outlines: readonly Outline[],
  others: readonly Outline[],
): readonly Outline[] {
  const book = new ArcBook();
  const flat = (list: readonly Outline[]) =>
    list.flatMap(ringsOf).map((ring) => book.flattenRing(spansOf(ring)));
  return outlinesOf(clip(operation, flat(outlines), flat(others)), book);
}

/**
 * Makes outlines of combined polygons: arcs found again and slivers dropped. Rings start at their topmost corner (the
 * leftmost of several), outlines and windows are told in the order of those.
 *
 * @internal
 */
export function outlinesOf(flats: readonly FlatOutline[], book: ArcBook): readonly Outline[] {
  const clean = settled(flats);
  const whole = clean.map((flat) => {
    const outline = book.recover(flat);
    return isSimple([outline]) ? outline : straightened(flat);
  });
  // Chords that just touch may be chords of arcs that cross: then the chords are kept.
  return (isSimple(whole) ? whole : clean.map(straightened))
    .map(({ outer, windows }) => ({
      outer: fromTop(outer),
      windows: windows.map(fromTop).sort((a, b) => byPlace(startOf(a), startOf(b))),
    }))
    .sort((a, b) => byPlace(startOf(a.outer), startOf(b.outer)));
}

/** Two have been enough so far. */
const MOST_SWEEPS = 4;

/**
 * The polygons without needles and slivers, and so that none cross: where the sweep rounds a crossing, an edge may come to
 * lie a tick beyond one that it passes closely. It gets a corner there, and another sweep joins the two.
 */
function settled(flats: readonly FlatOutline[]): readonly FlatOutline[] {
  let clean = withoutRemains(flats);
  for (let sweep = 1; sweep < MOST_SWEEPS; sweep += 1) {
    const rings = clean.flatMap(({ outer, windows }) => [outer, ...windows]);
    if (findCrossing(rings) === null) break;
    clean = withoutRemains(clip("union", withCrossingsAsCorners(rings)));
  }
  return clean;
}

function withoutRemains(flats: readonly FlatOutline[]): readonly FlatOutline[] {
  return flats
    .map(({ outer, windows }) => ({
      outer: withoutNeedles(outer),
      windows: windows.map(withoutNeedles).filter((window) => !isSliver(window)),
    }))
    .filter(({ outer }) => !isSliver(outer));
}

function isSimple(outlines: readonly Outline[]): boolean {
  const rings = outlines.flatMap(ringsOf);
  return findCrossing(rings.map((ring) => flattenRing(ring, WORKING_TOLERANCE))) === null;
}

function straightened({ outer, windows }: FlatOutline): Outline {
  return { outer: straight(outer), windows: windows.map(straight) };
}

function fromTop(ring: Ring): Ring {
  let first = 0;
  for (const [index, { to }] of ring.entries()) {
    if (byPlace(to, (ring[first] as Edge).to) < 0) first = index;
  }
  return [...ring.slice(first + 1), ...ring.slice(0, first + 1)];
}

function startOf(ring: Ring): Point {
  return (ring[ring.length - 1] as Edge).to;
}

function byPlace(a: Point, b: Point): number {
  return a.y - b.y || a.x - b.x;
}

function straight(polygon: Polygon) {
  return polygon.map((_, index) => ({ to: polygon[(index + 1) % polygon.length] as Point }));
}

/**
 * Takes off needles: tips where the line runs out and back within two ticks of itself. They remain where crossings of edges
 * that run side by side are rounded.
 */
function withoutNeedles(polygon: Polygon): Polygon {
  const kept: Point[] = [];
  for (const point of polygon) {
    kept.push(point);
    while (kept.length > 2 && isNeedle(kept.at(-3) as Point, kept.at(-2) as Point, kept.at(-1) as Point)) {
      kept.splice(-2, 1);
    }
  }
  // The same where the end meets the start.
  for (let isDone = false; !isDone && kept.length > 2; ) {
    const [first, second] = kept as [Point, Point];
    if (isNeedle(kept.at(-2) as Point, kept.at(-1) as Point, first)) kept.pop();
    else if (isNeedle(kept.at(-1) as Point, first, second)) kept.shift();
    else isDone = true;
  }
  return kept;
}

function isNeedle(before: Point, tip: Point, after: Point): boolean {
  const dot = (before.x - tip.x) * (after.x - tip.x) + (before.y - tip.y) * (after.y - tip.y);
  if (dot <= 0) return isSame(before, tip) || isSame(tip, after);
  // The nearer end lies beside the longer edge.
  return Math.abs(cross(tip, before, after)) < SLIVER * Math.max(distance(tip, before), distance(tip, after));
}

function isSliver(polygon: Polygon): boolean {
  if (polygon.length < 3) return true;
  const origin = polygon[0] as Point;
  let area = 0;
  let perimeter = 0;
  for (const [index, from] of polygon.entries()) {
    const to = polygon[(index + 1) % polygon.length] as Point;
    area += (from.x - origin.x) * (to.y - origin.y) - (from.y - origin.y) * (to.x - origin.x);
    perimeter += distance(from, to);
  }
  // The area of a strip is half its perimeter times its width; the sum above is twice the area.
  return Math.abs(area) < SLIVER * perimeter;
}
