/**
 * Where closed lines meet themselves or each other: a sweep over all their segments, sorted along one axis.
 *
 * Cost: n log n and the pairs that overlap along that axis, which are counted before: what would take long is not begun.
 * Exact for whole ticks up to 10 m.
 */

import type { Polygon } from "../flatten/flatten.js";
import { cross, type Point } from "../outline/point.js";

/**
 * Two lines that have a point in common other than as neighbours along a line, or one such line with itself.
 *
 * @internal
 */
export interface Contact {
  readonly one: number;
  readonly other: number;
  /** Where they cross, or else where they touch; in ticks, with fractions. */
  readonly at: Point;
}

/** Pairs of segments that overlap along an axis: below half a second for all sweeps that follow. */
const MOST_PAIRS = 25_000_000;

/** Pairs of segments that meet; where they cross, each makes corners and parts. */
const MOST_MEETINGS = 20_000;

/**
 * All pairs of lines that meet and are of interest, or `"too-intricate"`.
 *
 * @internal
 */
export function findContacts(
  lines: readonly Polygon[],
  isOfInterest: (one: number, other: number) => boolean,
): readonly Contact[] | "too-intricate" {
  // Flat arrays, an entry a segment: the inner loop runs millions of times.
  const count = lines.reduce((sum, line) => sum + line.length, 0);
  const [left, right, top, bottom] = [0, 1, 2, 3].map(() => new Int32Array(count)) as [
    Int32Array,
    Int32Array,
    Int32Array,
    Int32Array,
  ];
  const lineOf = new Int32Array(count);
  const placeOf = new Int32Array(count);
  let filled = 0;
  for (const [number, line] of lines.entries()) {
    for (let place = 0; place < line.length; place += 1) {
      const from = line[place] as Point;
      const to = line[place + 1 === line.length ? 0 : place + 1] as Point;
      left[filled] = Math.min(from.x, to.x);
      right[filled] = Math.max(from.x, to.x);
      top[filled] = Math.min(from.y, to.y);
      bottom[filled] = Math.max(from.y, to.y);
      lineOf[filled] = number;
      placeOf[filled] = place;
      filled += 1;
    }
  }
  // The sweeps of other parts of the package run along both axes.
  const beside = countOverlaps(left, right);
  const above = countOverlaps(top, bottom);
  if (Math.max(beside, above) > MOST_PAIRS) return "too-intricate";

  const runsDown = above < beside;
  const [start, end] = runsDown ? [top, bottom] : [left, right];
  const [low, high] = runsDown ? [left, right] : [top, bottom];
  const order = Array.from({ length: count }, (_, index) => index);
  order.sort((a, b) => (start[a] as number) - (start[b] as number) || a - b);
  const segmentAt = (index: number): Segment => {
    const line = lines[lineOf[index] as number] as Polygon;
    const place = placeOf[index] as number;
    return {
      from: line[place] as Point,
      to: line[(place + 1) % line.length] as Point,
      line: lineOf[index] as number,
      place,
      count: line.length,
    };
  };
  const found = new Map<number, Contact & { readonly isCrossing: boolean }>();
  const open = new Int32Array(count);
  let openCount = 0;
  let meetings = 0;
  for (const index of order) {
    const from = start[index] as number;
    const lowest = low[index] as number;
    const highest = high[index] as number;
    let kept = 0;
    for (let slot = 0; slot < openCount; slot += 1) {
      const other = open[slot] as number;
      if ((end[other] as number) < from) continue;
      open[kept] = other;
      kept += 1;
      if ((low[other] as number) > highest || (high[other] as number) < lowest) continue;
      const meeting = meetingOf(segmentAt(index), segmentAt(other));
      if (meeting === null) continue;
      meetings += 1;
      if (meetings > MOST_MEETINGS) return "too-intricate";
      const one = Math.min(lineOf[index] as number, lineOf[other] as number);
      const second = Math.max(lineOf[index] as number, lineOf[other] as number);
      if (!isOfInterest(one, second)) continue;
      const key = one * lines.length + second;
      const known = found.get(key);
      if (known === undefined || (!known.isCrossing && meeting.isCrossing)) {
        found.set(key, { one, other: second, ...meeting });
      }
    }
    open[kept] = index;
    openCount = kept + 1;
  }
  return [...found.values()].map(({ one, other, at }) => ({ one, other, at }));
}

/** How many pairs of intervals overlap. */
function countOverlaps(from: Int32Array, to: Int32Array): number {
  const starts = from.slice().sort();
  const ends = to.slice().sort();
  let ended = 0;
  let pairs = 0;
  for (let index = 0; index < starts.length; index += 1) {
    while ((ends[ended] as number) < (starts[index] as number)) ended += 1;
    pairs += index - ended;
  }
  return pairs;
}

interface Segment {
  readonly from: Point;
  readonly to: Point;
  readonly line: number;
  readonly place: number;
  /** Segments of its line. */
  readonly count: number;
}

function meetingOf(a: Segment, b: Segment): { readonly at: Point; readonly isCrossing: boolean } | null {
  const b1 = cross(a.from, a.to, b.from);
  const b2 = cross(a.from, a.to, b.to);
  if ((b1 > 0 && b2 > 0) || (b1 < 0 && b2 < 0)) return null;
  const a1 = cross(b.from, b.to, a.from);
  const a2 = cross(b.from, b.to, a.to);
  if ((a1 > 0 && a2 > 0) || (a1 < 0 && a2 < 0)) return null;
  if (a.line === b.line) {
    const { count } = a;
    const apart = Math.abs(a.place - b.place);
    // Neighbours share a corner; they meet beyond it only where the line runs back on itself.
    if ((apart === 1 || apart === count - 1) && !(count > 2 && b1 === 0 && b2 === 0 && runsBack(a, b))) {
      return null;
    }
  }
  const isCrossing = b1 !== 0 && b2 !== 0 && a1 !== 0 && a2 !== 0;
  const part = isCrossing ? b1 / (b1 - b2) : 0;
  const touch = b1 === 0 ? b.from : b2 === 0 ? b.to : a1 === 0 ? a.from : a.to;
  const at = isCrossing
    ? { x: b.from.x + part * (b.to.x - b.from.x), y: b.from.y + part * (b.to.y - b.from.y) }
    : touch;
  return { at, isCrossing };
}

function runsBack(a: Segment, b: Segment): boolean {
  return (a.to.x - a.from.x) * (b.to.x - b.from.x) + (a.to.y - a.from.y) * (b.to.y - b.from.y) < 0;
}
