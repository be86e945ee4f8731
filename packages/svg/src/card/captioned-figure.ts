/** A figure of a measurements page with lines under it, at one of a list of scales. */

import { QUIET } from "../drawing/look.js";
import { textElement } from "../drawing/text-element.js";
import { formatNumber } from "../writer/format-number.js";
import type { SvgElement } from "../writer/svg-element.js";

/** The size of a caption's letters. */
export const CAPTION = 2.6;
/** No figure takes more of a page's height. */
export const TALLEST_FIGURE = 190;
/** True millimetres to a drawn one. */
const SCALES = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 20, 30, 50, 100, 200, 500] as const;

/** A figure and the lines under it. */
export interface CaptionedFigure {
  readonly width: number;
  /** The height of the figure itself. */
  readonly content: number;
  /** Each draws a line with its beginning at x and its baseline at y. */
  readonly captions: readonly ((x: number, y: number) => readonly SvgElement[])[];
  readonly draw: (x: number, y: number) => readonly SvgElement[];
}

/** A line of words. */
export function captionLine(text: string): CaptionedFigure["captions"][number] {
  return (x, y) => [textElement({ text, x, y, size: CAPTION, colour: QUIET })];
}

/** Something made at a scale; `scale` is in true millimetres to a drawn one. */
export interface AtScale<T> {
  readonly made: T;
  readonly scale: number;
}

/** What is made at the first of the scales that it fits at; those under `least` are not tried. */
export function largest<T>(least: number, make: (scale: number) => T | null): AtScale<T> | null {
  for (const scale of SCALES) {
    const made = scale < least ? null : make(1 / scale);
    if (made !== null) return { made, scale };
  }
  return null;
}

/** `true size`, `drawn at 1 : 2.5`. */
export function scaleInWords(denominator: number): string {
  return denominator === 1 ? "true size" : `drawn at 1 : ${formatNumber(denominator)}`;
}
