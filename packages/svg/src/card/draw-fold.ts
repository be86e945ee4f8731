/** Draws where a card is folded: a double line along that edge of a surface, and the word. */

import { TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import type { Box } from "../drawing/box.js";
import { INK, OUTLINE, QUIET, SMALLEST_TEXT } from "../drawing/look.js";
import { textElement } from "../drawing/text-element.js";
import { ascentOf, lineHeightOf, OVERHANG, textWidth } from "../text/text-width.js";
import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import type { Edge, FoldedEdge } from "./folded-edges.js";

const FIRST = 0.8;
const SECOND = 1.6;
const AIR = 0.5;
const WORD = SMALLEST_TEXT;
/** From the surface to the baseline of a word that stands over or beside it, and under it. */
const BASELINE = SECOND + AIR + (lineHeightOf(WORD) - ascentOf(WORD));
const BASELINE_BELOW = SECOND + AIR + ascentOf(WORD);

/** What a fold takes beside a surface, from its edge: with the word, and the lines alone. */
const FOLD_ROOM = SECOND + AIR + lineHeightOf(WORD) + AIR;
const LINES_ROOM = SECOND + AIR;

/** What the folds of a surface take at an edge. */
export function foldRoomAt(edges: readonly FoldedEdge[], edge: Edge): number {
  const found = edges.find((each) => each.edge === edge);
  if (found === undefined) return 0;
  return found.word === null ? LINES_ROOM : FOLD_ROOM;
}

/** The heights on a surface beside which the word of a fold at that edge stands; `null` where there is none. */
export function foldWordHeights(
  edges: readonly FoldedEdge[],
  edge: "left" | "right",
  height: Ticks,
  scale: number,
): { readonly from: Ticks; readonly to: Ticks } | null {
  const word = edges.find((each) => each.edge === edge)?.word ?? null;
  if (word === null) return null;
  const { from, to } = wordAlong((height * scale) / TICKS_PER_MM, word);
  const toTicks = (length: number) => Math.round((length * TICKS_PER_MM) / scale);
  return { from: toTicks(from), to: toTicks(to) };
}

/** From the top of the edge. */
function wordAlong(length: number, word: string): { readonly from: number; readonly to: number } {
  const room = textWidth(word, WORD) + 2 * OVERHANG;
  const to = Math.max(room, length - 2);
  return { from: to - room, to };
}

/** Draws the folds round a surface (millimetres on the page). */
export function drawFolds(edges: readonly FoldedEdge[], box: Box, prefix: string): readonly SvgElement[] {
  return edges.map(({ edge, fold, word }) =>
    element(
      "g",
      { id: `${prefix}-fold-${edge}`, "data-role": "fold", "data-fold": fold, "data-edge": edge },
      [
        ...[FIRST, SECOND].map((off) => edgeLine(box, edge, off)),
        ...(word === null ? [] : [foldWord(box, edge, word)]),
      ],
    ),
  );
}

function edgeLine({ x, y, width, height }: Box, edge: Edge, off: number): SvgElement {
  const upright = (at: number) => ({ x1: at, y1: y, x2: at, y2: y + height });
  const level = (at: number) => ({ x1: x, y1: at, x2: x + width, y2: at });
  const ends = {
    left: () => upright(x - off),
    right: () => upright(x + width + off),
    top: () => level(y - off),
    bottom: () => level(y + height + off),
  }[edge]();
  return element("line", { ...ends, stroke: INK, "stroke-width": OUTLINE });
}

function foldWord({ x, y, width, height }: Box, edge: Edge, word: string): SvgElement {
  if (edge === "top" || edge === "bottom") {
    return textElement({
      text: word,
      x: x + OVERHANG,
      y: edge === "top" ? y - BASELINE : y + height + BASELINE_BELOW,
      size: WORD,
      colour: QUIET,
    });
  }
  const { from, to } = wordAlong(height, word);
  // Both read upwards, so that a word at the right has its letters' feet away from the surface.
  const baseX = edge === "left" ? x - BASELINE : x + width + BASELINE_BELOW;
  const middle = y + (from + to) / 2;
  return element(
    "text",
    {
      x: baseX,
      y: middle,
      "font-size": WORD,
      fill: QUIET,
      "text-anchor": "middle",
      transform: `rotate(-90 ${formatNumber(baseX)} ${formatNumber(middle)})`,
    },
    [word],
  );
}
