/** Draws where a card is folded: a double line along that edge of the front, and the word. */

import { TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import type { Flat } from "@sheetwright/planner";
import type { Box } from "../drawing/box.js";
import { INK, OUTLINE, QUIET, SMALLEST_TEXT } from "../drawing/look.js";
import { textElement } from "../drawing/text-element.js";
import { ascentOf, lineHeightOf, OVERHANG, textWidth } from "../text/text-width.js";
import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement } from "../writer/svg-element.js";

const FIRST = 0.8;
const SECOND = 1.6;
const AIR = 0.5;
const WORD = SMALLEST_TEXT;

/** What the fold takes beside the front, from its edge. */
export const FOLD_ROOM = SECOND + AIR + lineHeightOf(WORD) + AIR;

/** The heights on the front beside which the word of a side fold stands; `null` where there is none. */
export function foldWordHeights(
  flats: readonly Flat[],
  height: Ticks,
  scale: number,
): { readonly from: Ticks; readonly to: Ticks } | null {
  if (!flats.some(({ fold }) => fold === "side")) return null;
  const { from, to } = wordAlong((height * scale) / TICKS_PER_MM, wordFor(flats, "side"));
  const toTicks = (length: number) => Math.round((length * TICKS_PER_MM) / scale);
  return { from: toTicks(from), to: toTicks(to) };
}

function wordFor(flats: readonly Flat[], fold: EdgeFold): string {
  return flats[0]?.fold === fold ? "fold" : "or fold";
}

/** From the top of the edge. */
function wordAlong(length: number, word: string): { readonly from: number; readonly to: number } {
  const room = textWidth(word, WORD) + 2 * OVERHANG;
  const to = Math.max(room, length - 2);
  return { from: to - room, to };
}

/** The edges of the front that a card is folded along. */
type EdgeFold = "side" | "top";

/** Draws the folds round a front (millimetres on the page); a fold inside the front has no edge of it. */
export function drawFolds(flats: readonly Flat[], front: Box, prefix: string): readonly SvgElement[] {
  const folds = [...new Set(flats.map(({ fold }) => fold))].filter(
    (fold): fold is EdgeFold => fold === "side" || fold === "top",
  );
  return folds.map((fold) =>
    element("g", { id: `${prefix}-fold-${fold}`, "data-role": "fold", "data-fold": fold }, [
      ...[FIRST, SECOND].map((off) => edgeLine(front, fold, off)),
      foldWord(front, fold, wordFor(flats, fold)),
    ]),
  );
}

function edgeLine({ x, y, width, height }: Box, fold: EdgeFold, off: number): SvgElement {
  const ends =
    fold === "side"
      ? { x1: x - off, y1: y, x2: x - off, y2: y + height }
      : { x1: x, y1: y - off, x2: x + width, y2: y - off };
  return element("line", { ...ends, stroke: INK, "stroke-width": OUTLINE });
}

function foldWord({ x, y, height }: Box, fold: EdgeFold, word: string): SvgElement {
  if (fold === "top") {
    return textElement({
      text: word,
      x: x + OVERHANG,
      y: y - SECOND - AIR - (lineHeightOf(WORD) - ascentOf(WORD)),
      size: WORD,
      colour: QUIET,
    });
  }
  const { from, to } = wordAlong(height, word);
  const baseX = x - SECOND - AIR - (lineHeightOf(WORD) - ascentOf(WORD));
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
