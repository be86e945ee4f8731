/**
 * The largest circle inside an outline; its centre is the pole of inaccessibility, the point furthest from the line.
 *
 * Method: squares are searched in the order of the largest circle that one of their points may have, its middle's plus
 * half its diagonal, and quartered until none can beat the best found by more than the precision (after Agafonkin,
 * Polylabel, 2016). Distances are exact to arcs, and each square hands down only those edges that may be nearest to a
 * point of it, so that the many small ones look at a few. Deterministic: the middles of the box and of the area come
 * first, then the first found of equal ones.
 */

import { TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import type { Outline } from "../outline/outline.js";
import { distance, type Point } from "../outline/point.js";
import { exactBoxOf } from "./box.js";
import { centroidOf } from "./centroid.js";
import type { Circle } from "./enclosing-circle.js";
import { windingOf } from "./inside.js";
import { boxGap, distanceFromAll, nearestOn, type Stretch, stretchesOf } from "./stretch.js";

/** How much larger the largest circle may be where nothing else is said: 0.01 mm. */
export const INSCRIBED_PRECISION: Ticks = TICKS_PER_MM / 100;

interface Square {
  readonly middle: Point;
  readonly half: number;
  /** What the middle's circle is at most as large as, where it lies in the material; else 0 or less. */
  readonly radius: number;
  /** No circle about a point of the square is larger. */
  readonly most: number;
  readonly near: readonly Stretch[];
}

/**
 * The largest circle that lies in the material of an outline, clear of its windows: what fits on it. Its radius is true
 * for its centre; the largest one's is at most `precision` more.
 *
 * Throws a RangeError for a precision below a hundredth of a tick.
 *
 * @example
 * const square = outlineOf({ shape: "rectangle", width: 300, height: 300 });
 * inscribedCircle(square) // => { centre: { x: 150, y: 150 }, radius: 150 }
 */
export function inscribedCircle(
  outline: Outline,
  { precision = INSCRIBED_PRECISION }: { readonly precision?: number | undefined } = {},
): Circle {
  if (!(precision >= 0.01)) {
    throw new RangeError(`Expected a precision of at least 0.01 ticks, found ${String(precision)}.`);
  }
  const all = stretchesOf(outline);
  const box = exactBoxOf(outline);
  const signed: Signed = (point, near, isKnownInside) => {
    const away = distanceFromAll(near, point);
    return (isKnownInside ?? windingOf(all, point) > 0) ? away : -away;
  };
  let best: Circle = { centre: { x: box.x + box.width / 2, y: box.y + box.height / 2 }, radius: 0 };
  const offer = (centre: Point, radius: number) => {
    if (radius > best.radius) best = { centre, radius };
  };
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  offer(middle, signed(middle, all, null));
  const balance = centroidOf(outline);
  offer(balance, signed(balance, all, null));
  const half = Math.max(box.width, box.height) / 2;
  const queue = new SquareQueue();
  queue.push(squareAt(middle, half, all, signed, null));
  for (let square = queue.pop(); square !== null; square = queue.pop()) {
    if (square.most <= best.radius + precision) break;
    offer(square.middle, square.radius);
    const quarter = square.half / 2;
    // A square that the line does not enter lies on one side of it as a whole.
    const isInside = Math.abs(square.radius) > square.half * Math.sqrt(2) ? square.radius > 0 : null;
    for (const [x, y] of QUARTERS) {
      const at = { x: square.middle.x + x * quarter, y: square.middle.y + y * quarter };
      const part = squareAt(at, quarter, square.near, signed, isInside);
      if (part.most > best.radius + precision) queue.push(part);
    }
  }
  return best;
}

/** How far a point lies from the nearest of some edges, less than 0 outside the material; `null` where the side is not known. */
type Signed = (point: Point, near: readonly Stretch[], isInside: boolean | null) => number;

const QUARTERS = [
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
] as const;

function squareAt(
  middle: Point,
  half: number,
  from: readonly Stretch[],
  signed: Signed,
  isInside: boolean | null,
): Square {
  const radius = signed(middle, from, isInside);
  const diagonal = half * Math.sqrt(2);
  // What is nearest to a point of the square is at most so far from its middle. A little more, for rounding.
  const reach = Math.abs(radius) + 2 * diagonal + 1e-6;
  const near = from.filter(
    (stretch) =>
      boxGap(stretch, middle.x, middle.y, middle.x, middle.y) <= reach &&
      distance(middle, nearestOn(stretch, middle)) <= reach,
  );
  return { middle, half, radius, most: radius + diagonal, near };
}

/** Gives back the square with the highest `most` first; of equal ones the one that came first. */
class SquareQueue {
  readonly #heap: { readonly square: Square; readonly number: number }[] = [];
  #count = 0;

  push(square: Square): void {
    const heap = this.#heap;
    heap.push({ square, number: this.#count });
    this.#count += 1;
    let index = heap.length - 1;
    while (index > 0) {
      const parent = (index - 1) >> 1;
      if (!this.#isBefore(index, parent)) break;
      this.#swap(index, parent);
      index = parent;
    }
  }

  pop(): Square | null {
    const heap = this.#heap;
    const first = heap[0];
    const last = heap.pop();
    if (first === undefined || last === undefined) return null;
    if (heap.length === 0) return first.square;
    heap[0] = last;
    let index = 0;
    for (;;) {
      const left = 2 * index + 1;
      if (left >= heap.length) break;
      const child = left + 1 < heap.length && this.#isBefore(left + 1, left) ? left + 1 : left;
      if (!this.#isBefore(child, index)) break;
      this.#swap(child, index);
      index = child;
    }
    return first.square;
  }

  #isBefore(a: number, b: number): boolean {
    const one = this.#heap[a] as { square: Square; number: number };
    const other = this.#heap[b] as { square: Square; number: number };
    return one.square.most === other.square.most
      ? one.number < other.number
      : one.square.most > other.square.most;
  }

  #swap(a: number, b: number): void {
    const held = this.#heap[a] as { square: Square; number: number };
    this.#heap[a] = this.#heap[b] as { square: Square; number: number };
    this.#heap[b] = held;
  }
}
