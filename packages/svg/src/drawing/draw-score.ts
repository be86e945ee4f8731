import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { ACCENT, CUT_LINE, HAIRLINE, SCORE, SCORE_LINE, SCORE_TEXT } from "./look.js";
import { SHEET_DASH, scoreDashes } from "./score-dashes.js";
import type { ScoreDimension } from "./score-dimension.js";
import type { PieceLine, ScoreLine, SlitLine } from "./score-line.js";
import { labelElement } from "./text-element.js";

/** A dimension has arrowheads from this length on. */
const WITH_HEADS = 5;
const HEAD = 1.5;
const HALF_HEAD = 0.45;
/** Hairlines of the dimension look as dark as the score with a little more width. */
const DIMENSION_LINE = 1.25 * HAIRLINE;

/** A score as one path of dashes, in the group of scores; the sheet's corner is at (x, y). */
export function drawScore(
  { score, stretches, ...line }: ScoreLine,
  id: string,
  of: string,
  x: number,
  y: number,
): SvgElement {
  const dashes = stretches.flatMap(([from, to]) =>
    scoreDashes(to - from, score.folds, SHEET_DASH).map(
      ([start, end]) => [from + start, from + end] as const,
    ),
  );
  return element("path", {
    id,
    "data-role": "score",
    "data-piece": of,
    "data-edge": score.edge,
    "data-distance": String(score.distance),
    "data-folds": score.folds === "mountain" ? undefined : score.folds,
    d: stepsOf(line, dashes, x, y),
    fill: "none",
    stroke: SCORE,
    "stroke-width": SCORE_LINE,
  });
}

/** A slit as a whole line in the colour of cuts. */
export function drawSlit(
  { slit, stretches, ...line }: SlitLine,
  id: string,
  of: string,
  x: number,
  y: number,
): SvgElement {
  return element("path", {
    id,
    "data-role": "slit",
    "data-piece": of,
    "data-edge": slit.edge,
    "data-distance": String(slit.distance),
    "data-ends-from": slit.endsFrom,
    "data-near-end": String(slit.ends[0]),
    "data-far-end": String(slit.ends[1]),
    d: stepsOf(line, stretches, x, y),
    fill: "none",
    stroke: ACCENT,
    "stroke-width": CUT_LINE,
  });
}

function stepsOf(
  { upright, at }: Pick<PieceLine, "upright" | "at">,
  steps: readonly (readonly [number, number])[],
  x: number,
  y: number,
): string {
  const point = (along: number) =>
    upright
      ? `${formatNumber(x + at)} ${formatNumber(y + along)}`
      : `${formatNumber(x + along)} ${formatNumber(y + at)}`;
  return steps.map(([start, end]) => `M${point(start)}L${point(end)}`).join("");
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
