/** What stands round the sheet on the page: head, panel and check marks. */

import { ascentOf, lineHeightOf, textWidth } from "../text/text-width.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { checkRuler, checkSquare } from "./check-ruler.js";
import { ACCENT, OUTLINE, QUIET, SMALLEST_TEXT } from "./look.js";
import { NOTE, type Page, SUBTITLE, SWATCH } from "./plan-page.js";
import { drawBelow, drawBeside, type SheetArrows } from "./sheet-arrows.js";
import { PANEL_WIDTH } from "./side-panel.js";
import { textElement } from "./text-element.js";

/** The words of the head. */
export interface HeadWords {
  /** Under the title: the sheet's size, and which layout this is. */
  readonly line: string;
  readonly run: string;
  readonly used: string;
}

const RUN = 5;

/** Draws the sheet's name and size, and over the panel how many sheets to cut and how much of them is used. */
export function drawHead(
  { title, subtitle, project, swatch, panel }: Page,
  words: HeadWords,
  colour: string | undefined,
): readonly SvgElement[] {
  // The run counts any number of sheets; a very long one gets smaller text.
  const widest = textWidth(words.run, RUN, true);
  const runSize = widest <= PANEL_WIDTH ? RUN : Math.max(SMALLEST_TEXT, (RUN * PANEL_WIDTH) / widest);
  let down = title.y;
  // In the middle of the title's first line.
  const swatchY = title.y + (lineHeightOf(title.size, title.lines[0] ?? "") - SWATCH) / 2;
  return [
    ...(swatch === null || colour === undefined
      ? []
      : [
          element("rect", {
            id: "swatch",
            x: swatch.x,
            y: swatchY,
            width: SWATCH,
            height: SWATCH,
            rx: 0.8,
            fill: colour,
            stroke: QUIET,
            "stroke-width": OUTLINE,
          }),
        ]),
    ...title.lines.map((text) => {
      const y = down + ascentOf(title.size, text);
      down += lineHeightOf(title.size, text);
      return textElement({ text, x: title.x, y, size: title.size, bold: true });
    }),
    textElement({ text: words.line, x: subtitle.x, y: subtitle.y, size: SUBTITLE, colour: QUIET }),
    ...project.map((line) => textElement({ ...line, size: SUBTITLE, colour: QUIET })),
    textElement({
      text: words.run,
      x: panel.x,
      y: subtitle.y - ascentOf(SUBTITLE) - (lineHeightOf(RUN) - ascentOf(RUN)),
      size: runSize,
      bold: true,
      colour: ACCENT,
    }),
    textElement({ text: words.used, x: panel.x, y: subtitle.y, size: SUBTITLE, colour: QUIET }),
  ];
}

/** Draws what is told of the sheet as a whole, beside and below it. */
export function drawSheetArrows({ beside, below }: Page, arrows: SheetArrows): readonly SvgElement[] {
  return [...drawBeside(arrows.beside, beside.x, beside.y), ...drawBelow(arrows.below, below.x, below.y)];
}

/** Draws the columns beside the sheet. */
export function drawPanel({ columns }: Page): readonly SvgElement[] {
  return columns.flatMap(({ rows, x, y }) => {
    let down = y;
    return rows.flatMap((row) => {
      const drawn = row.draw(x, down);
      down += row.height;
      return drawn;
    });
  });
}

/** Draws the ruler, the note under it and, where there is room, the square. */
export function drawCheck({ ruler, note, square }: Page): readonly SvgElement[] {
  return [
    ...checkRuler(ruler.x, ruler.y),
    ...note.lines.map((text, index) =>
      textElement({
        text,
        x: note.x,
        y: note.y + index * lineHeightOf(NOTE) + ascentOf(NOTE),
        size: NOTE,
        colour: QUIET,
      }),
    ),
    ...(square === null ? [] : checkSquare(square.x, square.y)),
  ];
}
