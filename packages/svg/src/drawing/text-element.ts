import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { INK } from "./look.js";

/** One line of text on the page; x and y (millimetres) are on its baseline. */
export interface PageText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly bold?: boolean;
  readonly colour?: string;
  readonly anchor?: "start" | "middle" | "end";
  /** True for text that reads from bottom to top. */
  readonly upwards?: boolean;
}

/** Makes a text element with every style in its own attributes. */
export function textElement({ text, x, y, size, bold, colour, anchor, upwards }: PageText): SvgElement {
  return element(
    "text",
    {
      x,
      y,
      "font-size": size,
      "font-weight": bold === true ? "bold" : undefined,
      fill: colour ?? INK,
      "text-anchor": anchor === undefined || anchor === "start" ? undefined : anchor,
      transform: upwards === true ? `rotate(-90 ${formatNumber(x)} ${formatNumber(y)})` : undefined,
    },
    [text],
  );
}
