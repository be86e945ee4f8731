import { TICKS_PER_MM } from "@sheetwright/measure";
import type { PlacedPiece } from "../layout/lay-out.js";
import type { LyingShape } from "../layout/lying-shape.js";
import { drawStitches } from "../shape/draw-stitches.js";
import { formatNumber } from "../writer/format-number.js";
import { outlinesData, type PlaceOf } from "../writer/path-data.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { dashLine } from "./dash-line.js";
import { ACCENT, CUT_LINE, OUTLINE, QUIET } from "./look.js";
import { type PieceLine, straightCutLines } from "./score-line.js";

/** Of the line of a straight cut, in millimetres. */
export const STRAIGHT_CUT_DASH = 2.4;
export const STRAIGHT_CUT_GAP = 1.2;

/**
 * The shape in its die blank: a thin grey outline where a die cuts it, one in the colour of cuts where a machine or scissors
 * follow it; stitches; and the lines along which it is cut straight afterwards. Nothing where only the size is known.
 */
export function drawShapeOnPiece(
  shape: LyingShape,
  piece: PlacedPiece,
  ids: { readonly number: number; readonly of: string },
  x: number,
  y: number,
): readonly SvgElement[] {
  if (shape.outlines.length === 0) return [];
  const perTick = 1 / TICKS_PER_MM;
  const placeOf: PlaceOf = (point) => [x + (piece.x + point.x) * perTick, y + (piece.y + point.y) * perTick];
  const { number, of } = ids;
  const byDie = shape.die !== null;
  return [
    element("path", {
      id: `shape-${number}`,
      "data-role": "shape",
      "data-piece": of,
      "data-by": byDie ? "die" : "machine",
      d: outlinesData(shape.outlines, placeOf),
      fill: "none",
      stroke: byDie ? QUIET : ACCENT,
      "stroke-width": OUTLINE,
    }),
    ...drawStitches(shape.stitches, placeOf, perTick, { "data-piece": of }),
    ...straightCutLines(piece, shape).map((line, index) =>
      element("path", {
        id: `straight-cut-${number}-${index + 1}`,
        "data-role": "straight-cut",
        "data-piece": of,
        d: straightCutDashes(line, x, y),
        fill: "none",
        stroke: ACCENT,
        "stroke-width": CUT_LINE,
      }),
    ),
  ];
}

/** Dashed, since it is cut when the shape is, and not with the sheet. */
function straightCutDashes({ upright, at, stretches }: PieceLine, x: number, y: number): string {
  const point = (along: number) =>
    upright
      ? `${formatNumber(x + at)} ${formatNumber(y + along)}`
      : `${formatNumber(x + along)} ${formatNumber(y + at)}`;
  return stretches
    .flatMap(([from, to]) =>
      dashLine(to - from, STRAIGHT_CUT_DASH, STRAIGHT_CUT_GAP).map(
        ([start, end]) => `M${point(from + start)}L${point(from + end)}`,
      ),
    )
    .join("");
}
