import { formatNumber } from "../writer/format-number.js";
import { type Attributes, element, type SvgElement } from "../writer/svg-element.js";
import type { Box } from "./box.js";
import { hatchLines } from "./hatch-lines.js";
import { ACCENT, CUT_LINE, HAIRLINE, HATCH, PAPER, QUIET } from "./look.js";

const HATCH_SPACING = 2.2;

/** A filled and outlined rectangle; `attributes` come first. */
export function plainBox(
  box: Box,
  fill: string,
  stroke: string,
  attributes: Attributes = {},
  children: readonly SvgElement[] = [],
): readonly SvgElement[] {
  return [
    element(
      "rect",
      {
        ...attributes,
        x: box.x,
        y: box.y,
        width: box.width,
        height: box.height,
        fill,
        stroke,
        "stroke-width": HAIRLINE,
      },
      children,
    ),
  ];
}

/** An outlined rectangle filled with hatching, as offcuts are shown. */
export function hatchedBox(
  box: Box,
  attributes: Attributes = {},
  children: readonly SvgElement[] = [],
): readonly SvgElement[] {
  const d = hatchLines(box, HATCH_SPACING, formatNumber);
  return [
    ...plainBox(box, PAPER, QUIET, attributes, children),
    ...(d === "" ? [] : [element("path", { d, fill: "none", stroke: HATCH, "stroke-width": HAIRLINE })]),
  ];
}

/** The outline of a window, dashed. */
export function windowEdge(box: Box): SvgElement {
  return element("rect", {
    x: box.x,
    y: box.y,
    width: box.width,
    height: box.height,
    fill: "none",
    stroke: ACCENT,
    "stroke-width": CUT_LINE,
    "stroke-dasharray": "1.6 0.8",
  });
}
