import { ascentOf, lineHeightOf } from "../text/text-width.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { INK, OUTLINE, QUIET, SMALLEST_TEXT } from "./look.js";
import { textElement } from "./text-element.js";

const BAND = 5;
const NUMERAL = SMALLEST_TEXT;
const INCH = 25.4;
/** Numerals stand a little off their ticks. */
const AIR = 0.3;

export const RULER_WIDTH = 4 * INCH;
/** Numerals above, the band with its ticks, numerals below, the note. */
export const RULER_HEIGHT = BAND + 2 * (lineHeightOf(NUMERAL) + AIR);

/**
 * Draws the check ruler with its top left corner at (x, y): the upper edge measures exactly 100 mm, the lower exactly
 * 4 in.
 */
export function checkRuler(x: number, y: number): readonly SvgElement[] {
  const top = y + lineHeightOf(NUMERAL) + AIR;
  const bottom = top + BAND;
  const line = (id: string | undefined, x1: number, y1: number, x2: number, y2: number) =>
    element("line", { id, x1, y1, x2, y2, stroke: INK, "stroke-width": OUTLINE });

  const ticks: SvgElement[] = [];
  for (let mm = 0; mm <= 100; mm += 1) {
    const length = mm % 10 === 0 ? 2 : mm % 5 === 0 ? 1.4 : 0.8;
    ticks.push(line(undefined, x + mm, top, x + mm, top + length));
  }
  for (let eighth = 0; eighth <= 32; eighth += 1) {
    const length = eighth % 8 === 0 ? 2 : eighth % 4 === 0 ? 1.4 : 0.8;
    const at = x + (eighth * INCH) / 8;
    ticks.push(line(undefined, at, bottom, at, bottom - length));
  }

  const numerals: SvgElement[] = [];
  for (let mm = 0; mm <= 100; mm += 20) {
    numerals.push(
      textElement({
        text: mm === 100 ? "100 mm" : String(mm),
        x: x + mm,
        y: y + ascentOf(NUMERAL),
        size: NUMERAL,
        colour: QUIET,
        anchor: mm === 0 ? "start" : "middle",
      }),
    );
  }
  for (let inch = 0; inch <= 4; inch += 1) {
    numerals.push(
      textElement({
        text: inch === 4 ? "4 in" : String(inch),
        x: x + inch * INCH,
        y: bottom + AIR + ascentOf(NUMERAL),
        size: NUMERAL,
        colour: QUIET,
        anchor: inch === 0 ? "start" : "middle",
      }),
    );
  }
  return [
    line("ruler-100-mm", x, top, x + 100, top),
    line("ruler-4-in", x, bottom, x + RULER_WIDTH, bottom),
    ...ticks,
    ...numerals,
  ];
}

/** Draws the check square: 50 mm a side, its top left corner at (x, y), with its size inside. */
export function checkSquare(x: number, y: number): readonly SvgElement[] {
  return [
    element("rect", {
      id: "square-50-mm",
      x,
      y,
      width: 50,
      height: 50,
      fill: "none",
      stroke: QUIET,
      "stroke-width": OUTLINE,
    }),
    textElement({
      text: "50 mm square",
      x: x + 25,
      y: y + 25 + SMALLEST_TEXT * 0.36,
      size: SMALLEST_TEXT,
      colour: QUIET,
      anchor: "middle",
    }),
  ];
}
