import { arcOf } from "../outline/arc.js";
import { type Outline, ringsOf, spansOf } from "../outline/outline.js";
import { distance, type Point } from "../outline/point.js";
import { cosine } from "../outline/sines.js";
import { segmentOf } from "./area.js";

/**
 * Where an outline of even paper balances, in ticks with fractions: the mean of its corners' triangles and, for each arc,
 * of its circular segment, windows taken off. Exact up to rounding, some 1e-9 of the outline's size.
 *
 * @example
 * const square = [{ to: { x: 8, y: 0 } }, { to: { x: 8, y: 8 } }, { to: { x: 0, y: 8 } }, { to: { x: 0, y: 0 } }];
 * centroidOf({ outer: square, windows: [] }) // => { x: 4, y: 4 }
 */
export function centroidOf(outline: Outline): Point {
  const origin = spansOf(outline.outer)[0]?.from as Point;
  let area = 0;
  let momentX = 0;
  let momentY = 0;
  for (const span of ringsOf(outline).flatMap(spansOf)) {
    const fromX = span.from.x - origin.x;
    const fromY = span.from.y - origin.y;
    const toX = span.to.x - origin.x;
    const toY = span.to.y - origin.y;
    const triangle = (fromX * toY - fromY * toX) / 2;
    area += triangle;
    momentX += (triangle * (fromX + toX)) / 3;
    momentY += (triangle * (fromY + toY)) / 3;
    const arc = arcOf(span);
    if (arc === null) continue;
    const segment = segmentOf(span);
    // The moment about the chord, away from the centre: (2 r sin h)^3 / 12 - r cos h times the segment, for half the turn h.
    const c = cosine(arc.turn / 2);
    const chord = distance(span.from, span.to);
    const moment = (chord * chord * chord) / 12 - arc.radius * c * Math.abs(segment);
    area += segment;
    momentX += (segment * (fromX + toX)) / 2 + (moment * (toY - fromY)) / chord;
    momentY += (segment * (fromY + toY)) / 2 - (moment * (toX - fromX)) / chord;
  }
  return { x: origin.x + momentX / area, y: origin.y + momentY / area };
}
