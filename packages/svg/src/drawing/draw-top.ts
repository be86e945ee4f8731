import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { INK } from "./look.js";
import type { TopMark } from "./top-mark.js";

/** The filled triangle that points to the top of a piece; the sheet's corner is at (x, y). */
export function drawTop({ edge, points }: TopMark, id: string, of: string, x: number, y: number): SvgElement {
  const corners = points.map(([px, py]) => `${formatNumber(x + px)} ${formatNumber(y + py)}`);
  return element("path", {
    id,
    "data-role": "top",
    "data-piece": of,
    "data-edge": edge,
    d: `M${corners.join("L")}Z`,
    fill: INK,
  });
}

/** The triangle for a key, its tip at (x, y). */
export function topSample(x: number, y: number): SvgElement {
  const corners = [
    [x, y],
    [x + 1.5, y + 2.2],
    [x - 1.5, y + 2.2],
  ] as const;
  const d = `M${corners.map(([cx, cy]) => `${formatNumber(cx)} ${formatNumber(cy)}`).join("L")}Z`;
  return element("path", { d, fill: INK });
}
