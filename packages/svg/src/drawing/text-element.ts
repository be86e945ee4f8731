import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import type { FittedLabel, LabelLine } from "./fit-label.js";
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
}

/** Makes a text element with every style in its own attributes. */
export function textElement({ text, x, y, size, bold, colour, anchor }: PageText): SvgElement {
  return element(
    "text",
    {
      x,
      y,
      "font-size": size,
      "font-weight": bold === true ? "bold" : undefined,
      fill: colour ?? INK,
      "text-anchor": anchor === undefined || anchor === "start" ? undefined : anchor,
    },
    [text],
  );
}

/**
 * Makes a label as one text element, a line each where there are several; (x, y) is the centre of the label, which is
 * turned as a whole to read upwards.
 */
export function labelElement(
  label: FittedLabel,
  x: number,
  y: number,
  colourOf: (line: LabelLine) => string,
): SvgElement {
  const transform = label.upwards ? `rotate(-90 ${formatNumber(x)} ${formatNumber(y)})` : undefined;
  const [first] = label.lines;
  if (first !== undefined && label.lines.length === 1) {
    return element(
      "text",
      {
        x,
        y: y + first.down,
        "font-size": first.size,
        fill: colourOf(first),
        "text-anchor": "middle",
        transform,
      },
      [first.text],
    );
  }
  const lines = label.lines.map((line) =>
    element("tspan", { x, y: y + line.down, "font-size": line.size, fill: colourOf(line) }, [line.text]),
  );
  return element("text", { "text-anchor": "middle", transform }, lines);
}
