/**
 * Draws one card of a project: its front at true scale in flat colours, every layer with a call-out, the fold, and a check
 * ruler below. One user unit is one millimetre; the page is as large as its content needs.
 *
 *     +----------------------------+
 *     | 3 Rooftops                 |
 *     | US A7 card ...             |
 *     |   +-------+                |
 *     |  f|  o----|--- 3b mat      |
 *     |   |  o----|--- 3c band     |
 *     |   +-------+                |
 *     | ruler                      |
 *     +----------------------------+
 */

import { checkRuler, RULER_HEIGHT, RULER_WIDTH } from "../drawing/check-ruler.js";
import { FONT_FAMILY, INK, PAPER, QUIET } from "../drawing/look.js";
import { textElement } from "../drawing/text-element.js";
import { breakLines } from "../text/break-lines.js";
import { ascentOf, fitsWidth, lineHeightOf } from "../text/text-width.js";
import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement, writeDocument } from "../writer/svg-element.js";
import {
  type CardOptions,
  type CardSource,
  cardFacts,
  copiesInWords,
  foldInWords,
  formatInWords,
} from "./card-facts.js";
import { cardPicture, detailsOf } from "./card-picture.js";
import { wholeQuarters } from "./page-size.js";

const MARGIN = 10;
const TITLE = 5.6;
const TEXT = 3.2;
const NOTE = 2.6;
const NOTE_TEXT = "Measure this after printing; if it is not 100 mm, print at 100 % / actual size.";

/** A line of text with what follows it. */
interface TextLine {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
  readonly colour: string;
}

/**
 * Draws the card with the number `number` as an SVG document. Lengths of the source are ticks of 1/1600 mm. Throws a
 * RangeError where there is no such card, or where it names pieces or faces that are not there.
 */
export function drawCard(source: CardSource, number: number, options: CardOptions = {}): string {
  const facts = cardFacts(source, number, options);
  const picture = cardPicture(facts, { scale: 1, callOuts: "all", prefix: "front" });
  const { extent } = picture;
  const width = Math.max(extent.width, RULER_WIDTH + 6, 120);

  const head = [
    ...lines(`${number} ${facts.name}`, TITLE, INK, width, true),
    ...lines(`${formatInWords(facts)}, ${foldInWords(facts.card)}`, TEXT, QUIET, width),
    ...lines(copiesInWords(facts.card), TEXT, QUIET, width),
  ];
  const bodyY = MARGIN + heightOf(head) + 6;
  const frontX = MARGIN - extent.x;
  const frontY = bodyY - extent.y;
  const all = [facts.base, ...facts.layers];
  const foot = picture.untold.flatMap((piece) => {
    const details = detailsOf(facts, all.indexOf(piece as (typeof all)[number]), true).join(" ");
    return lines(`Covered, not to be seen here: ${piece.label}, ${details}`, NOTE, QUIET, width);
  });
  const footY = bodyY + extent.height + 5;
  const rulerY = footY + (foot.length === 0 ? 1 : heightOf(foot) + 5);
  const note = lines(NOTE_TEXT, NOTE, QUIET, width);
  const noteY = rulerY + RULER_HEIGHT + 0.8;
  const pageWidth = wholeQuarters(2 * MARGIN + width);
  const pageHeight = wholeQuarters(noteY + heightOf(note) + MARGIN);

  return writeDocument(
    element(
      "svg",
      {
        xmlns: "http://www.w3.org/2000/svg",
        width: `${formatNumber(pageWidth)}mm`,
        height: `${formatNumber(pageHeight)}mm`,
        viewBox: `0 0 ${formatNumber(pageWidth)} ${formatNumber(pageHeight)}`,
        "font-family": FONT_FAMILY,
        "text-rendering": "geometricPrecision",
        "data-drawing": "card",
        "data-card": number,
      },
      [
        element("title", {}, [`${number} ${facts.name}, ${formatInWords(facts)}`]),
        element("rect", { id: "page", x: 0, y: 0, width: pageWidth, height: pageHeight, fill: PAPER }),
        element("g", { id: "head" }, drawLines(head, MARGIN, MARGIN)),
        element("g", { id: "picture" }, picture.draw(frontX, frontY)),
        ...(foot.length === 0 ? [] : [element("g", { id: "covered" }, drawLines(foot, MARGIN, footY))]),
        element("g", { id: "check" }, [...checkRuler(MARGIN, rulerY), ...drawLines(note, MARGIN, noteY)]),
      ],
    ),
  );
}

function lines(text: string, size: number, colour: string, width: number, bold = false): readonly TextLine[] {
  const fits = fitsWidth(width, size, bold);
  const broken = breakLines(text.split(" "), { fits, overflow: "anywhere" }) ?? [text];
  return broken.map((line) => ({ text: line, size, colour, bold }));
}

function heightOf(all: readonly TextLine[]): number {
  return all.reduce((sum, { size, text }) => sum + lineHeightOf(size, text), 0);
}

function drawLines(all: readonly TextLine[], x: number, top: number): readonly SvgElement[] {
  let y = top;
  return all.map(({ text, size, bold, colour }) => {
    const baseline = y + ascentOf(size, text);
    y += lineHeightOf(size, text);
    return textElement({ text, x, y: baseline, size, bold, colour });
  });
}
