/** A base as it is cut: the flat with its score, its halves named, and dimension lines. Drawn smaller than it is. */

import { TICKS_PER_MM, type Unit } from "@sheetwright/measure";
import type { Flat } from "@sheetwright/planner";
import type { Box } from "../drawing/box.js";
import { OUTLINE, SMALLEST_TEXT } from "../drawing/look.js";
import { textElement } from "../drawing/text-element.js";
import { textWidth } from "../text/text-width.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import type { CardPiece } from "./card-facts.js";
import { DIMENSION_ROOM, dimensionText, drawDimension } from "./dimension-line.js";
import { edgeColour, inkOn } from "./paper-colours.js";

/** A flat at a scale. */
export interface FlatFigure {
  readonly width: number;
  readonly height: number;
  /** Draws it with its top left corner, dimensions included, at (x, y). */
  readonly draw: (x: number, y: number) => readonly SvgElement[];
}

const DASH = 1.8;
const DASH_GAP = 1;
const WORD = SMALLEST_TEXT;

/** Makes the figure of one flat; `id` is that of its rectangle. */
export function flatFigure(flat: Flat, base: CardPiece, scale: number, unit: Unit, id: string): FlatFigure {
  const toPage = (ticks: number) => (ticks * scale) / TICKS_PER_MM;
  const [width, height] = [toPage(flat.width), toPage(flat.height)];
  const side = flat.along === "width";
  const ends = flat.scores.map(({ at }) => at);
  // Text may be longer than its line.
  const beyond = (drawn: number, length: number) => Math.max(1, dimensionText(length, unit) - drawn);
  const right = side ? beyond(width, flat.width) : DIMENSION_ROOM;
  const top = side
    ? DIMENSION_ROOM
    : Math.max(...flat.panels.map((panel) => beyond(toPage(panel), panel)), beyond(height, flat.height));
  return {
    width: DIMENSION_ROOM + width + right,
    height: top + height + DIMENSION_ROOM,
    draw: (x, y) => {
      const box: Box = { x: x + DIMENSION_ROOM, y: y + top, width, height };
      const far = { x: box.x + width, y: box.y + height };
      const panels = flat.panels.map((length, index) => {
        const from = toPage(ends[index - 1] ?? 0);
        return { from, to: from + toPage(length), length };
      });
      const whole = { unit };
      return [
        element("rect", {
          id,
          "data-role": "flat",
          "data-fold": flat.fold,
          ...box,
          fill: base.face.colour,
          stroke: edgeColour(base.face.colour),
          "stroke-width": OUTLINE,
        }),
        ...flat.scores.flatMap(({ at }) => dashes(box, flat.along, toPage(at), inkOn(base.face.colour))),
        ...(panels.length === 2
          ? halves(box, flat.along, toPage(ends[0] ?? 0), inkOn(base.face.colour))
          : []),
        ...panels
          // Of two panels the first is measured; the second follows from the whole.
          .slice(0, panels.length === 2 ? 1 : panels.length === 1 ? 0 : undefined)
          .flatMap(({ from, to, length }) =>
            side
              ? drawDimension({
                  beside: "top",
                  edge: box.y,
                  from: box.x + from,
                  to: box.x + to,
                  length,
                  unit,
                })
              : drawDimension({
                  beside: "left",
                  edge: box.x,
                  from: box.y + from,
                  to: box.y + to,
                  length,
                  unit,
                }),
          ),
        ...drawDimension({
          beside: "bottom",
          edge: far.y,
          from: box.x,
          to: far.x,
          length: flat.width,
          ...whole,
        }),
        ...drawDimension(
          side
            ? { beside: "left", edge: box.x, from: box.y, to: far.y, length: flat.height, ...whole }
            : { beside: "right", edge: far.x, from: box.y, to: far.y, length: flat.height, ...whole },
        ),
      ];
    },
  };
}

/** The score in dashes of its own; a dash pattern would end anywhere. */
function dashes(box: Box, along: "width" | "height", at: number, stroke: string): readonly SvgElement[] {
  const length = along === "width" ? box.height : box.width;
  const count = Math.max(1, Math.round((length + DASH_GAP) / (DASH + DASH_GAP)));
  const fit = length / (count * DASH + (count - 1) * DASH_GAP);
  return Array.from({ length: count }, (_, i) => {
    const from = i * (DASH + DASH_GAP) * fit;
    const to = from + DASH * fit;
    const ends =
      along === "width"
        ? { x1: box.x + at, y1: box.y + from, x2: box.x + at, y2: box.y + to }
        : { x1: box.x + from, y1: box.y + at, x2: box.x + to, y2: box.y + at };
    return element("line", {
      "data-role": i === 0 ? "score" : undefined,
      ...ends,
      stroke,
      "stroke-width": 0.3,
    });
  });
}

/** The names of the two parts, where there is room for both. */
function halves(box: Box, along: "width" | "height", at: number, colour: string): readonly SvgElement[] {
  const [whole, across] = along === "width" ? [box.width, box.height] : [box.height, box.width];
  const name = (text: string, middle: number) =>
    textElement({
      text,
      x: along === "width" ? box.x + middle : box.x + box.width / 2,
      y: (along === "width" ? box.y + box.height / 2 : box.y + middle) + 0.36 * WORD,
      size: WORD,
      colour,
      anchor: "middle",
    });
  const room = along === "width" ? Math.min(at, whole - at) : across;
  const down = along === "width" ? across : Math.min(at, whole - at);
  if (room < textWidth("front", WORD) + 2 || down < 2 * WORD + 1) return [];
  return [name("back", at / 2), name("front", (at + whole) / 2)];
}
