import type { Ticks } from "@sheetwright/measure";

/** A point in ticks: x to the right, y down. Whole numbers in outlines. */
export interface Point {
  readonly x: Ticks;
  readonly y: Ticks;
}

/**
 * Twice the signed area of the triangle a, b, c: positive where c lies to the side that x turns to on its way to y. Exact
 * for whole numbers up to 10 m, since the differences stay below 2^25 and their products below 2^51.
 *
 * @internal
 */
export function cross(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/**
 * The distance between two points, in ticks.
 *
 * @internal
 */
export function distance(a: Point, b: Point): number {
  const x = b.x - a.x;
  const y = b.y - a.y;
  return Math.sqrt(x * x + y * y);
}

/**
 * Whether two points are the same.
 *
 * @internal
 */
export function isSame(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

/**
 * The nearest point in whole ticks.
 *
 * @internal
 */
export function rounded(x: number, y: number): Point {
  // Adding zero turns -0 into 0.
  return { x: Math.round(x) + 0, y: Math.round(y) + 0 };
}
