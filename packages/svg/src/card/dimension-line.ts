/**
 * Dimension lines as on working drawings: extension lines from the thing measured, a line between them with slanted ends,
 * the length over the line in the project's unit and under it in the other.
 */

import { formatLength, type Ticks, type Unit } from "@sheetwright/measure";
import { INK, OUTLINE, QUIET, RULE, SMALLEST_TEXT } from "../drawing/look.js";
import { ascentOf, lineHeightOf, textWidth } from "../text/text-width.js";
import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { otherUnit } from "./place-in-words.js";

const TEXT = SMALLEST_TEXT;
/** White space between the line and the text on either side of it. */
const AIR = 0.4;
const DESCENT = lineHeightOf(TEXT) - ascentOf(TEXT);
/** From the thing measured to the line: the text between them fits. */
const OFF = lineHeightOf(TEXT) + 2 * AIR + 0.4;
const SLANT = 0.9;
const BEYOND = 1.2;

/** What a dimension line takes beside the thing it measures. */
export const DIMENSION_ROOM = OFF + Math.max(BEYOND, AIR + lineHeightOf(TEXT));

/** The width of the longer of a dimension's two texts. */
export function dimensionText(length: Ticks, unit: Unit): number {
  const texts = [unit, otherUnit(unit)].map((each) => formatLength(length, { unit: each }));
  return Math.max(...texts.map((text) => textWidth(text, TEXT)));
}

/** A length to be shown between two points of an edge. */
export interface Dimension {
  /** The edge it is drawn beside. */
  readonly beside: "top" | "bottom" | "left" | "right";
  /** Where that edge lies: a height for top and bottom, else a distance from the left (millimetres on the page). */
  readonly edge: number;
  readonly from: number;
  readonly to: number;
  readonly length: Ticks;
  readonly unit: Unit;
}

/** Draws the dimension. Text beside an upright edge reads upwards. */
export function drawDimension({ beside, edge, from, to, length, unit }: Dimension): readonly SvgElement[] {
  const level = beside === "top" || beside === "bottom";
  const outwards = beside === "top" || beside === "left" ? -1 : 1;
  const at = edge + outwards * OFF;
  const point = (along: number, across: number): readonly [number, number] =>
    level ? [along, across] : [across, along];
  const line = (a: readonly [number, number], b: readonly [number, number], stroke: string): SvgElement =>
    element("line", { x1: a[0], y1: a[1], x2: b[0], y2: b[1], stroke, "stroke-width": OUTLINE });
  const slant = (along: number) =>
    level
      ? line([along - SLANT, at + SLANT], [along + SLANT, at - SLANT], INK)
      : line([at - SLANT, along + SLANT], [at + SLANT, along - SLANT], INK);

  const text = (words: string, across: number, fill: string): SvgElement => {
    // Text that is longer than its line goes beyond it to the right or upwards only, so that at no corner two meet.
    const half = textWidth(words, TEXT) / 2;
    const middle = level ? Math.max((from + to) / 2, from + half) : Math.min((from + to) / 2, to - half);
    const [x, y] = point(middle, across);
    return element(
      "text",
      {
        x,
        y,
        "font-size": TEXT,
        fill,
        "text-anchor": "middle",
        transform: level ? undefined : `rotate(-90 ${formatNumber(x)} ${formatNumber(y)})`,
      },
      [words],
    );
  };
  return [
    ...[from, to].map((along) =>
      line(point(along, edge + outwards * 0.8), point(along, at + outwards * BEYOND), RULE),
    ),
    line(point(from, at), point(to, at), INK),
    slant(from),
    slant(to),
    text(formatLength(length, { unit }), at - AIR - DESCENT, INK),
    text(formatLength(length, { unit: otherUnit(unit) }), at + AIR + ascentOf(TEXT), QUIET),
  ];
}
