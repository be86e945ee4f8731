import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { dashLine } from "./dash-line.js";
import { HAIRLINE, SCORE, SCORE_LINE, SCORE_TEXT } from "./look.js";
import type { ScoreDimension } from "./score-dimension.js";
import type { ScoreLine } from "./score-line.js";
import { labelElement } from "./text-element.js";

/** Dash and gap of a printed score, in millimetres. */
export const SCORE_DASH = 2.6;
export const SCORE_GAP = 1.3;
/** A dimension has arrowheads from this length on. */
const WITH_HEADS = 5;
const HEAD = 1.5;
const HALF_HEAD = 0.45;
/** Hairlines of the dimension look as dark as the score with a little more width. */
const DIMENSION_LINE = 1.25 * HAIRLINE;

/** A score as one path of dashes, in the group of scores; the sheet's corner is at (x, y). */
export function drawScore(
  { score, at, stretches }: ScoreLine,
  id: string,
  of: string,
  x: number,
  y: number,
): SvgElement {
  const dashes = stretches.flatMap(([from, to]) =>
    dashLine(to - from, SCORE_DASH, SCORE_GAP).map(([start, end]) => [from + start, from + end] as const),
  );
  const point = (along: number) =>
    score.upright
      ? `${formatNumber(x + at)} ${formatNumber(y + along)}`
      : `${formatNumber(x + along)} ${formatNumber(y + at)}`;
  return element("path", {
    id,
    "data-role": "score",
    "data-piece": of,
    "data-edge": score.edge,
    "data-distance": String(score.distance),
    d: dashes.map(([start, end]) => `M${point(start)}L${point(end)}`).join(""),
    fill: "none",
    stroke: SCORE,
    "stroke-width": SCORE_LINE,
  });
}

/** The dimension line with its heads, and the words beside it. */
export function drawDimension({ line, label }: ScoreDimension, x: number, y: number): readonly SvgElement[] {
  const [x1, y1, x2, y2] = [x + line.x1, y + line.y1, x + line.x2, y + line.y2];
  const length = Math.abs(x2 - x1) + Math.abs(y2 - y1);
  const shaft = element("line", { x1, y1, x2, y2, stroke: SCORE_TEXT, "stroke-width": DIMENSION_LINE });
  const heads = length < WITH_HEADS ? [] : [arrowHead(x1, y1, x2, y2), arrowHead(x2, y2, x1, y1)];
  const words = labelElement(label, x + label.x, y + label.y, () => SCORE_TEXT);
  return [shaft, ...heads.map((d) => element("path", { d, fill: SCORE_TEXT })), words];
}

/** A head with its tip at (x, y), for a level or upright line that comes from the other point. */
function arrowHead(x: number, y: number, fromX: number, fromY: number): string {
  return arrowHeadPath(x, y, Math.sign(x - fromX), Math.sign(y - fromY), HEAD, HALF_HEAD);
}

/** A filled arrowhead with its tip at (x, y) that points along a level or upright direction. */
export function arrowHeadPath(
  x: number,
  y: number,
  towardsX: number,
  towardsY: number,
  length: number,
  half: number,
): string {
  const [baseX, baseY] = [x - towardsX * length, y - towardsY * length];
  const corners = [
    [x, y],
    [baseX + towardsY * half, baseY + towardsX * half],
    [baseX - towardsY * half, baseY - towardsX * half],
  ] as const;
  return `M${corners.map(([cx, cy]) => `${formatNumber(cx)} ${formatNumber(cy)}`).join("L")}Z`;
}
