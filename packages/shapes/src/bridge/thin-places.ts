/**
 * Finds where an outline is narrow: bridges of paper that tear and curl, and gaps that a knife or a die hardly leaves.
 *
 * Definition: a bridge is a line between two points of the outline that runs through paper only and is locally shortest:
 * moving either end along the outline makes it longer, or leaves it as long where two edges run beside each other. The
 * disc over it is free of other parts of the outline, and paper goes on to both sides of it at least as wide, for an
 * eighth of its width at least. So tips and corners are no bridges, nor are a disc, a square or the middle of a star, which
 * are widest there. These lines are the saddles and level ridges of the distance from the outline (the medial axis of Blum,
 * A transformation for extracting new descriptors of shape, 1967): an inward offset by half a bridge is the one that splits
 * the outline there or opens its ring, or that makes the strip vanish. A gap is the same of the air outside and in windows.
 * Where an outline touches itself both are 0 wide.
 *
 * Method: pairs of edges whose boxes lie no further apart than the width, by a sweep; each pair gives the places where it
 * may face itself nearest. Cost: n log n and the pairs that are so near in x. Error: a tick; along edges that are not quite
 * parallel a place may be up to 1/300 of the strip's length from its narrowest.
 */

import type { Ticks } from "@sheetwright/measure";
import { exactBoxOf } from "../measure/box.js";
import { windingOf } from "../measure/inside.js";
import { leastBetween } from "../measure/least-distance.js";
import { boxGap, distanceFromAll, type Stretch, stretchesOfRing } from "../measure/stretch.js";
import { type Outline, type Ring, reversedRing, ringsOf } from "../outline/outline.js";
import { distance, type Point } from "../outline/point.js";
import { CLEAR, type Facing, facingPlaces, type Side, sidesOf } from "./facing.js";

/** A narrow place of an outline. */
export interface ThinPlace {
  /** Of paper, or of air. */
  readonly kind: "bridge" | "gap";
  /** In ticks with fractions: the distance between the two points. */
  readonly width: number;
  /** The points of the outline that lie nearest to each other there. */
  readonly from: Point;
  readonly to: Point;
}

/**
 * The narrowest bridge of paper of an outline, or `null` where it has none: a disc, a square.
 *
 * @example
 * const ring = { shape: "frame", outer: { shape: "circle", diameter: 81280 }, window: { shape: "circle", diameter: 71120 } };
 * Math.round(smallestBridge(outlineOf(ring)).width) // => 5080
 * smallestBridge(outlineOf({ shape: "circle", diameter: 81280 })) // => null
 */
export function smallestBridge(outline: Outline): ThinPlace | null {
  return smallest(outline, "bridge");
}

/**
 * The narrowest gap of air between two parts of an outline, outside it or in a window, or `null` where it has none.
 *
 * @example
 * const slot = { shape: "frame", outer: { shape: "square", side: 81280 }, window: { shape: "rectangle", width: 40640, height: 2540 } };
 * smallestGap(outlineOf(slot)).width // => 2540
 */
export function smallestGap(outline: Outline): ThinPlace | null {
  return smallest(outline, "gap");
}

/**
 * The bridges and gaps of an outline that are narrower than a width, the narrowest first. A strip is told once for each
 * pair of edges that run beside each other, and not again within half its width.
 *
 * Throws a RangeError for a width that is no number above 0.
 *
 * @example
 * const [outer, window] = [81280, 77216].map((side) => ({ shape: "square", side }));
 * const frame = outlineOf({ shape: "frame", outer, window, leastBridge: 1600 });
 * thinPlaces(frame, 2540).map(({ kind, width }) => `${kind} ${width}`)
 * // => ["bridge 2032", "bridge 2032", "bridge 2032", "bridge 2032"]
 */
export function thinPlaces(outline: Outline, width: Ticks): readonly ThinPlace[] {
  if (!(width > 0)) throw new RangeError(`Expected a width above 0, found ${String(width)}.`);
  const places = [...clearPlaces(outline, "bridge", width), ...clearPlaces(outline, "gap", width)];
  return places.filter((place) => place.width < width).sort((a, b) => a.width - b.width);
}

function smallest(outline: Outline, kind: ThinPlace["kind"]): ThinPlace | null {
  const { width, height } = exactBoxOf(outline);
  const most = Math.sqrt(width * width + height * height);
  // Narrow ones are found quickly, so that wide ones are looked for only where there are no others.
  for (const reach of [most / 64, most / 8, most]) {
    const [place] = clearPlaces(outline, kind, reach, 1);
    if (place !== undefined) return place;
  }
  return null;
}

/** Up to this many ticks two parts of a line touch, and neither is narrower than rounding makes it. */
const TOUCHING = 1;

/** The places up to a width that are bridges or gaps, the narrowest first, so many at the most. */
function clearPlaces(
  outline: Outline,
  kind: ThinPlace["kind"],
  width: number,
  most = Number.POSITIVE_INFINITY,
): readonly ThinPlace[] {
  const rings: readonly Ring[] = ringsOf(outline).map((ring) =>
    kind === "bridge" ? ring : reversedRing(ring),
  );
  const sides = sidesOf(rings.map((ring) => stretchesOfRing(ring)));
  const stretches = sides.map(({ stretch }) => stretch);
  const winding = kind === "bridge" ? 1 : 0;
  const isClear = (place: Facing, sidesNear: readonly Side[]) =>
    place.width <= TOUCHING ||
    (!isCutByNeighbours(place, sidesNear, stretches) &&
      isNeck(place, stretches) &&
      Math.abs(windingOf(stretches, middleOf(place))) === winding);
  const found: KnownPlace[] = [];
  for (const { places, between } of placesUpTo(sides, width)) {
    if (isKnown(found, places[0] as Facing, stretches)) continue;
    const clear = places.find((place) => isClear(place, between));
    if (clear === undefined) continue;
    const { from, to } = clear;
    found.push({
      place: { kind, width: clear.width, from, to },
      isBeside: clear.isBeside,
      fromEdges: edgesAt(stretches, from),
      toEdges: edgesAt(stretches, to),
    });
    if (found.length >= most) break;
  }
  return found.map(({ place }) => place);
}

/** A place and the edges that its ends lie on, two of them at a corner. */
interface KnownPlace {
  readonly place: ThinPlace;
  readonly isBeside: boolean;
  readonly fromEdges: readonly Stretch[];
  readonly toEdges: readonly Stretch[];
}

/** Places of which the first that is clear is meant, and the two edges that they lie on or at the start of. */
interface Candidate {
  readonly places: readonly Facing[];
  readonly between: readonly [Side, Side];
}

/** All places that may be narrow, the narrowest first. */
function placesUpTo(sides: readonly Side[], width: number): readonly Candidate[] {
  const sorted = [...sides].sort((a, b) => a.stretch.left - b.stretch.left);
  const found: Candidate[] = [];
  let open: Side[] = [];
  for (const side of sorted) {
    const { left, top, right, bottom } = side.stretch;
    open = open.filter(({ stretch }) => stretch.right + width >= left);
    for (const other of open) {
      if (boxGap(other.stretch, left, top, right, bottom) > width) continue;
      const touch = touchOf(side, other);
      if (touch !== null) found.push({ places: [touch], between: [side, other] });
      for (const places of facingPlaces(side, other)) {
        const narrow = places.filter((place) => place.width <= width && place.width > TOUCHING);
        if (narrow.length > 0) found.push({ places: narrow, between: [side, other] });
      }
    }
    open.push(side);
  }
  return found.sort((a, b) => orderOf(a) - orderOf(b));
}

/** By width; the middle of a strip before its ends, which may be narrower by rounding. */
function orderOf({ places }: Candidate): number {
  const { width, isBeside } = places[0] as Facing;
  return isBeside ? width - 1 : width;
}

/** How far apart along its ring two points must lie to be no neighbours, in ticks. */
const NEIGHBOURS = 32;

/** Where two edges touch that do not follow each other there. */
function touchOf(one: Side, other: Side): Facing | null {
  const { left, top, right, bottom } = one.stretch;
  if (boxGap(other.stretch, left, top, right, bottom) > TOUCHING) return null;
  const least = leastBetween([one.stretch], [other.stretch]);
  if (least.distance > TOUCHING) return null;
  const along = Math.abs(placeOn(one, least.from) - placeOn(other, least.to));
  const isNeighbour = one.ring === other.ring && Math.min(along, Math.abs(one.round - along)) < NEIGHBOURS;
  return isNeighbour ? null : { from: least.from, to: least.to, width: 0, isBeside: false };
}

/** About where along its ring a point of an edge lies; exact at its ends. */
function placeOn({ stretch, place, length }: Side, point: Point): number {
  return distance(point, stretch.to) < TOUCHING ? place + length : place + distance(stretch.from, point);
}

/** Whether a place lies within half its width of one that is known already, or is as wide between the same edges, which run beside each other. */
function isKnown(found: readonly KnownPlace[], place: Facing, stretches: readonly Stretch[]): boolean {
  const middle = middleOf(place);
  const near = (known: ThinPlace) => distance(middleOf(known), middle) <= Math.max(place.width / 2, TOUCHING);
  if (found.some((known) => near(known.place))) return true;
  const alike = found.filter(
    (known) => (known.isBeside || place.isBeside) && Math.abs(known.place.width - place.width) <= AS_WIDE,
  );
  if (alike.length === 0) return false;
  const from = edgesAt(stretches, place.from);
  const to = edgesAt(stretches, place.to);
  const share = (some: readonly Stretch[], others: readonly Stretch[]) =>
    some.some((edge) => others.includes(edge));
  return alike.some(
    ({ fromEdges, toEdges }) =>
      (share(from, fromEdges) && share(to, toEdges)) || (share(from, toEdges) && share(to, fromEdges)),
  );
}

function edgesAt(stretches: readonly Stretch[], { x, y }: Point): readonly Stretch[] {
  return stretches.filter(
    (stretch) => boxGap(stretch, x, y, x, y) <= TOUCHING && distanceFromAll([stretch], { x, y }) <= TOUCHING,
  );
}

function middleOf({ from, to }: Pick<Facing, "from" | "to">): Point {
  return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
}

/** How far the space beside a bridge is looked at, in parts of half its width, and how much narrower it may be, in ticks. */
const LOOKED_AT = 1 / 4;
const AS_WIDE = 4;

/** Whether the next edges along the line reach into the disc over a place: most that are not clear are told by these. */
function isCutByNeighbours(place: Facing, between: readonly Side[], stretches: readonly Stretch[]): boolean {
  const middle = middleOf(place);
  const near = between.flatMap(({ number }) => stretches.slice(Math.max(0, number - 2), number + 3));
  return distanceFromAll(near, middle) < place.width / 2 - CLEAR;
}

/** Whether the disc over a place is clear, and to both sides of it the space goes on as wide as there. */
function isNeck(place: Facing, stretches: readonly Stretch[]): boolean {
  const middle = middleOf(place);
  const radius = place.width / 2;
  const near: Stretch[] = [];
  for (const stretch of stretches) {
    const gap = boxGap(stretch, middle.x, middle.y, middle.x, middle.y);
    if (gap > 1.5 * radius + AS_WIDE) continue;
    if (gap < radius - CLEAR && distanceFromAll([stretch], middle) < radius - CLEAR) return false;
    near.push(stretch);
  }
  const across = {
    x: (place.to.x - place.from.x) / place.width,
    y: (place.to.y - place.from.y) / place.width,
  };
  return goesOn(middle, radius, across, 1, near) && goesOn(middle, radius, across, -1, near);
}

/**
 * Whether the space goes on to one side: the widest disc about a point there, whose place across is searched for, is as
 * large as the one over the bridge, until it is larger or far enough off.
 */
function goesOn(
  middle: Point,
  radius: number,
  across: Point,
  way: 1 | -1,
  near: readonly Stretch[],
): boolean {
  const furthest = radius * LOOKED_AT;
  for (let step = furthest / 64; ; step *= 2) {
    if (step < 16 && step < furthest) continue;
    const off = Math.min(step, furthest);
    const at = { x: middle.x - way * across.y * off, y: middle.y + way * across.x * off };
    const room = widestAcross(at, across, off, near);
    if (room < radius - AS_WIDE) return false;
    if (room > radius + AS_WIDE || off === furthest) return true;
  }
}

/** The radius of the widest clear disc on a line across, by thirds: it grows towards one place. */
function widestAcross(at: Point, across: Point, reach: number, near: readonly Stretch[]): number {
  const room = (part: number) =>
    distanceFromAll(near, { x: at.x + across.x * part, y: at.y + across.y * part });
  let low = -reach;
  let high = reach;
  while (high - low > 0.1) {
    const third = (high - low) / 3;
    if (room(low + third) < room(high - third)) low += third;
    else high -= third;
  }
  return room((low + high) / 2);
}
