import { TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import { clip } from "../clip/clip.js";
import { arcOf, pointOn } from "../outline/arc.js";
import { findCrossing } from "../outline/find-crossing.js";
import { type Outline, type Ring, ringsOf, type Span, spansOf } from "../outline/outline.js";
import { type Point, rounded } from "../outline/point.js";
import { angleOf, cosineAndSine } from "../outline/sines.js";
import { checkTolerance, type FlatOutline, type Polygon, withoutRepeats } from "./flatten.js";

/** How far the cover may lie outside where nothing else is said: 0.02 mm. */
export const COVER_TOLERANCE: Ticks = TICKS_PER_MM / 50;

/**
 * Rounding moves a corner by at most 0.71 ticks, and the crossing of two edges that touch by as much again; a corner of a
 * chain of tangents set out by so much more than their crossing stays outside its circle after both.
 */
const CLEARANCE = 2.25;

/** Below this the clearance takes up most of the room. */
const FINEST_COVER: Ticks = 8;

/**
 * Turns an outline into straight edges that hold all of its material: at most `tolerance` outside the outer line and
 * inside the windows, and never on the other side. So a gap between two covers proves a gap between the outlines. At a
 * point where the outline touches itself (the valley between two lobes) a corner may be up to a tick short.
 *
 * Round edges that bulge become tangents, hollow ones chords. Mostly that is one flat outline. Where tangents of neighbours
 * cross they are joined; then the cover may have more or fewer windows, and several parts where the outline hung together by
 * a point.
 *
 * Throws a RangeError for a tolerance below 8 ticks (0.005 mm).
 *
 * @example
 * const disc = outlineOf({ shape: "circle", diameter: 81280 });
 * const [{ outer }] = coverOf(disc, { tolerance: 32 });
 * outer.every(({ x, y }) => (x - 40640) ** 2 + (y - 40640) ** 2 >= 40640 ** 2) // => true
 */
export function coverOf(
  outline: Outline,
  { tolerance = COVER_TOLERANCE }: { readonly tolerance?: Ticks | undefined } = {},
): readonly FlatOutline[] {
  checkTolerance(tolerance, FINEST_COVER);
  const [outer, ...windows] = ringsOf(outline).map((ring) => coverRing(ring, tolerance)) as [
    Polygon,
    ...Polygon[],
  ];
  return findCrossing([outer, ...windows]) === null
    ? [{ outer, windows }]
    : clip("union", [outer, ...windows]);
}

function coverRing(ring: Ring, tolerance: Ticks): Polygon {
  return withoutRepeats(spansOf(ring).flatMap((span) => [span.from, ...coverArc(span, tolerance)]));
}

/** The corners between the ends of an edge. */
function coverArc(span: Span, tolerance: Ticks): readonly Point[] {
  const arc = arcOf(span);
  if (arc === null) return [];
  const { centre, radius, turn } = arc;
  const room = tolerance - CLEARANCE - 1;
  // Tangents that meet at an angle of 2h do so r (1 / cos h - 1) outside; chords lie r (1 - cos h) inside, a little less.
  const cosineOfHalf = Math.max(Math.sqrt(0.5), radius / (radius + room));
  const half = angleOf(cosineOfHalf, Math.sqrt(1 - cosineOfHalf * cosineOfHalf));
  const parts = Math.max(1, Math.ceil(Math.abs(turn) / (2 * half) - 1e-9));
  const bulges = turn > 0;
  const [c, s] = cosineAndSine(turn / parts / 4);
  // 1 / cos h - 1 = 2 sin^2(h / 2) / cos h, which keeps its digits where the radius is large.
  const out = bulges ? (radius * 2 * s * s) / (c * c - s * s) + CLEARANCE : -1;
  const places = bulges
    ? Array.from({ length: parts }, (_, index) => (index + 0.5) / parts)
    : Array.from({ length: parts - 1 }, (_, index) => (index + 1) / parts);
  return places.map((part) => {
    const on = pointOn(span, arc, part);
    return rounded(on.x + ((on.x - centre.x) * out) / radius, on.y + ((on.y - centre.y) * out) / radius);
  });
}
