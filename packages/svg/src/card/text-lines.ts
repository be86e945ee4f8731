/** Text in lines one below the other, as wide as a given room allows. */

import { textElement } from "../drawing/text-element.js";
import { breakLines } from "../text/break-lines.js";
import { ascentOf, fitsWidth, lineHeightOf } from "../text/text-width.js";
import type { SvgElement } from "../writer/svg-element.js";

/** A line of text and its look. */
export interface TextLine {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
  readonly colour: string;
}

/** How text is set. */
export interface TextSetting {
  readonly width: number;
  readonly size: number;
  readonly colour: string;
  readonly bold?: boolean;
  /** Most lines; text that needs more ends in an ellipsis. */
  readonly most?: number;
}

/** Sets words in lines. A character that is wider than the room, as some rare signs are, gives way to an ellipsis. */
export function setLines(text: string, setting: TextSetting): readonly TextLine[] {
  const { width, size, colour, bold = false, most = Number.POSITIVE_INFINITY } = setting;
  const fits = fitsWidth(width, size, bold);
  const set = (words: readonly string[]) =>
    breakLines(words, { fits, lines: most, overflow: "anywhere" }) ??
    breakLines(words, { fits, lines: most, overflow: "shorten" });
  const narrow = [...text].map((character) => (fits(character) ? character : "…")).join("");
  const lines = set(narrow.split(" ")) ?? ["…"];
  return lines.map((line) => ({ text: line, size, bold, colour }));
}

/** What lines take one below the other. */
export function linesHeight(lines: readonly TextLine[]): number {
  return lines.reduce((sum, { text, size }) => sum + lineHeightOf(size, text), 0);
}

/** Draws lines from `top` on. */
export function drawLines(
  lines: readonly TextLine[],
  x: number,
  top: number,
  anchor: "start" | "end" = "start",
): readonly SvgElement[] {
  let y = top;
  return lines.map(({ text, size, bold, colour }) => {
    const baseline = y + ascentOf(size, text);
    y += lineHeightOf(size, text);
    return textElement({ text, x, y: baseline, size, bold, colour, anchor });
  });
}
