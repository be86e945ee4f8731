import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { HALF_HEIGHT, halfWidthOf, NUMBER_TEXT, type Point } from "./cut-number.js";
import { ACCENT, HAIRLINE, PAPER } from "./look.js";
import { textElement } from "./text-element.js";

/** Digits reach from the baseline to about 0.72 of the font size in all fonts counted on. */
const HALF_DIGIT = 0.36;

/** A cut's number in its badge, centred on (x, y). */
export function drawCutNumber(number: number, x: number, y: number): readonly SvgElement[] {
  const half = halfWidthOf(number);
  return [
    element("rect", {
      x: x - half,
      y: y - HALF_HEIGHT,
      width: 2 * half,
      height: 2 * HALF_HEIGHT,
      rx: HALF_HEIGHT,
      fill: ACCENT,
    }),
    textElement({
      text: String(number),
      x,
      y: y + NUMBER_TEXT * HALF_DIGIT,
      size: NUMBER_TEXT,
      bold: true,
      colour: PAPER,
      anchor: "middle",
    }),
  ];
}

/** A dotted line from a dot on the cut to its badge: no one takes it for a cut. */
export function drawLeader(points: readonly Point[]): readonly SvgElement[] {
  const [start] = points;
  if (start === undefined) return [];
  return [
    element("polyline", {
      points: points.map(([x, y]) => `${formatNumber(x)},${formatNumber(y)}`).join(" "),
      fill: "none",
      stroke: ACCENT,
      "stroke-width": 1.5 * HAIRLINE,
      "stroke-dasharray": "0.5 0.6",
    }),
    element("circle", { cx: start[0], cy: start[1], r: 0.55, fill: ACCENT }),
  ];
}
