import type { Box } from "./box.js";
import { SMALLEST_TEXT } from "./look.js";

/** A cut as it is drawn: a level or upright line in millimetres from the sheet's top left corner. */
export interface CutLine {
  readonly number: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

export type Point = readonly [x: number, y: number];

/** A cut's number in its badge: a circle, or longish for three digits and more. */
export interface CutNumber {
  readonly number: number;
  /** Centre of the badge. */
  readonly x: number;
  readonly y: number;
  /** From a point on the cut to the badge, for a badge that is not on its line; else empty. */
  readonly leader: readonly Point[];
}

export const NUMBER_TEXT = SMALLEST_TEXT;
export const HALF_HEIGHT = 1.95;

/** Half the width of the badge for a number: a circle up to two digits, then wider. */
export function halfWidthOf(number: number): number {
  const digits = String(number).length;
  return digits <= 2 ? HALF_HEIGHT : HALF_HEIGHT + (digits - 2) * 0.85;
}

/** The rectangle round a badge. */
export function badgeBox({ number, x, y }: CutNumber): Box {
  const half = halfWidthOf(number);
  return { x: x - half, y: y - HALF_HEIGHT, width: 2 * half, height: 2 * HALF_HEIGHT };
}

/** Whether a cut runs from left to right. */
export function isLevel({ y1, y2 }: CutLine): boolean {
  return y1 === y2;
}

/** The length of a cut. */
export function lengthOf({ x1, y1, x2, y2 }: CutLine): number {
  return Math.abs(x2 - x1) + Math.abs(y2 - y1);
}

/** The cut as a box without width or height. */
export function lineBox({ x1, y1, x2, y2 }: CutLine): Box {
  return { x: Math.min(x1, x2), y: Math.min(y1, y2), width: Math.abs(x2 - x1), height: Math.abs(y2 - y1) };
}
