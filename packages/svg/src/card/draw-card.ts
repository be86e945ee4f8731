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
import { formatNumber } from "../writer/format-number.js";
import { element, writeDocument } from "../writer/svg-element.js";
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
import { drawLines, linesHeight, setLines } from "./text-lines.js";

const MARGIN = 10;
const TITLE = 5.6;
const TEXT = 3.2;
const NOTE = 2.6;
const NOTE_TEXT = "Measure this after printing; if it is not 100 mm, print at 100 % / actual size.";

/**
 * Draws the card with the number `number` as an SVG document. Lengths of the source are ticks of 1/1600 mm. Throws a
 * RangeError where there is no such card, or where it names pieces or faces that are not there.
 */
export function drawCard(source: CardSource, number: number, options: CardOptions = {}): string {
  const facts = cardFacts(source, number, options);
  const picture = cardPicture(facts, { scale: 1, callOuts: "all", prefix: "front" });
  const { extent } = picture;
  const width = Math.max(extent.width, RULER_WIDTH + 6, 120);

  const quiet = { width, size: TEXT, colour: QUIET };
  const small = { width, size: NOTE, colour: QUIET };
  const head = [
    ...setLines(`${number} ${facts.name}`, { width, size: TITLE, colour: INK, bold: true }),
    ...setLines(`${formatInWords(facts)}, ${foldInWords(facts.card)}`, quiet),
    ...setLines(copiesInWords(facts.card), quiet),
  ];
  const bodyY = MARGIN + linesHeight(head) + 6;
  const frontX = MARGIN - extent.x;
  const frontY = bodyY - extent.y;
  const all = [facts.base, ...facts.layers];
  const foot = picture.untold.flatMap((piece) => {
    const details = detailsOf(facts, all.indexOf(piece as (typeof all)[number]), true);
    return setLines(`Covered, not to be seen here: ${piece.label}, ${details}`, small);
  });
  const footY = bodyY + extent.height + 5;
  const rulerY = footY + (foot.length === 0 ? 1 : linesHeight(foot) + 5);
  const note = setLines(NOTE_TEXT, small);
  const noteY = rulerY + RULER_HEIGHT + 0.8;
  const pageWidth = wholeQuarters(2 * MARGIN + width);
  const pageHeight = wholeQuarters(noteY + linesHeight(note) + MARGIN);

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
