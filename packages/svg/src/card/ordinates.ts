/**
 * Distances from one edge of a flat, each beside the line it tells of, as a maker reads them off a scoring board: the
 * length in the project's unit, and in the other one under it. Where two would meet, one stands further out.
 *
 *     0   1 3/4 in   3 1/2 in   7 in
 *     |    44.45 mm   88.9 mm    177.8 mm
 *     +-------:----------:-------:-----
 */

import { formatLength, type Ticks, type Unit } from "@sheetwright/measure";
import { INK, OUTLINE, PAPER, QUIET, RULE, SMALLEST_TEXT } from "../drawing/look.js";
import { textElement } from "../drawing/text-element.js";
import { ascentOf, lineHeightOf, textWidth } from "../text/text-width.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { otherUnit } from "./place-in-words.js";

const TEXT = SMALLEST_TEXT;
const LINE = lineHeightOf(TEXT);
/** White space between the flat and the first line, and between two labels. */
const AIR = 1.2;
const APART = 1.6;
/** How far a label that stands outwards reaches over its line. */
const INSIDE = 1;

/** A distance to be told. */
export interface Ordinate {
  /** Along the edge, in millimetres from where the distances begin. */
  readonly at: number;
  readonly length: Ticks;
}

/** Distances beside an edge. */
export interface Ordinates {
  /** What they take beside the edge. */
  readonly room: number;
  /** What they take before the edge begins and after it ends. */
  readonly before: number;
  readonly after: number;
  /** True where no line runs through a label that stands further in. */
  readonly isClear: boolean;
  /** Draws them; (x, y) is where the edge begins. */
  readonly draw: (x: number, y: number) => readonly SvgElement[];
}

/**
 * Sets distances beside the edge of a flat that is `extent` millimetres long. Those of a second edge, which are few, stand
 * outwards from each other and do not say again where they begin.
 */
export function ordinates(
  beside: "top" | "left" | "right",
  extent: number,
  distances: readonly Ordinate[],
  unit: Unit,
  isSecond = false,
): Ordinates {
  if (distances.length === 0) return { room: 0, before: 0, after: 0, isClear: true, draw: () => [] };
  const labels = [
    ...(isSecond ? [] : [{ at: 0, texts: ["0"] }]),
    ...distances.map(({ at, length }) => ({
      at,
      texts: [formatLength(length, { unit }), formatLength(length, { unit: otherUnit(unit) })],
    })),
  ].map(({ at, texts }, index) => {
    const width = Math.max(...texts.map((text) => textWidth(text, TEXT)));
    const along = beside === "top" ? width : texts.length * LINE;
    const outwards = index < distances.length / 2 ? at - along + INSIDE : at - INSIDE;
    // Beside the corner stands the dimension of the other side, which may be longer than that side.
    const centred = at === 0 ? 0 : at - along / 2;
    const from = isSecond ? Math.max(beside === "right" ? 0 : -along, outwards) : centred;
    return { at, texts, width, from, to: from + along };
  });

  const levels: number[] = [];
  const placed = labels.map((label) => {
    let level = levels.findIndex((end) => end + APART <= label.from);
    if (level < 0) level = levels.length;
    levels[level] = label.to;
    return { ...label, level };
  });
  const widest = Math.max(...labels.map(({ width }) => width));
  const step = beside === "top" ? 2 * LINE + 0.8 : widest + 2;
  const off = (level: number) => AIR + 0.6 + level * step;
  const outwards = beside === "right" ? 1 : -1;

  const isClear = placed.every(({ at, level }) =>
    placed.every((other) => other.level >= level || at < other.from - 0.3 || at > other.to + 0.3),
  );
  return {
    room: off(levels.length - 1) + (beside === "top" ? 2 * LINE : widest) + 0.4,
    before: Math.max(0, ...labels.map(({ from }) => -from)),
    after: Math.max(0, ...labels.map(({ to }) => to - extent)),
    isClear,
    draw: (x, y) =>
      // Lines first, so that where one has to run through a label it gives way to it.
      [...placed]
        .sort((a, b) => b.level - a.level)
        .flatMap(({ at, texts, level, from, to, width }) => {
          const out = off(level);
          const line =
            beside === "top"
              ? { x1: x + at, y1: y - 0.8, x2: x + at, y2: y - out + 0.2 }
              : { x1: x + outwards * 0.8, y1: y + at, x2: x + outwards * (out - 0.4), y2: y + at };
          const top = beside === "top" ? y - out - texts.length * LINE : y + from;
          return [
            element("line", { ...line, stroke: RULE, "stroke-width": OUTLINE }),
            ...(isClear || beside !== "top"
              ? []
              : [
                  element("rect", {
                    x: x + (from + to) / 2 - width / 2,
                    y: top,
                    width,
                    height: texts.length * LINE,
                    fill: PAPER,
                  }),
                ]),
            ...texts.map((text, row) =>
              textElement({
                text,
                x: beside === "top" ? x + (from + to) / 2 : x + outwards * out,
                y: top + row * LINE + ascentOf(TEXT),
                size: TEXT,
                colour: row === 0 ? INK : QUIET,
                anchor: beside === "top" ? "middle" : beside === "left" ? "end" : "start",
              }),
            ),
          ];
        }),
  };
}
