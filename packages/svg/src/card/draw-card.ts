/**
 * Draws one card of a project: its front at true scale in flat colours, every layer with a call-out, the fold, then each
 * other surface that something lies on in the same way, and a check ruler below. One user unit is one millimetre; the page
 * is as large as its content needs.
 *
 *     +----------------------------+
 *     | 3 Rooftops                 |
 *     | US A7 card ...             |
 *     |   +-------+                |
 *     |  f|  o----|--- 3b mat      |
 *     |   |  o----|--- 3c band     |
 *     |   +-------+                |
 *     | Inside page     Back       |
 *     |   +-------+     +-------+  |
 *     |   |  o----|---  |       |  |
 *     |   +-------+     +-------+  |
 *     | ruler                      |
 *     +----------------------------+
 */

import { checkRuler, RULER_HEIGHT, RULER_WIDTH } from "../drawing/check-ruler.js";
import { FONT_FAMILY, INK, PAPER, QUIET } from "../drawing/look.js";
import { textElement } from "../drawing/text-element.js";
import { ascentOf, lineHeightOf, textWidth } from "../text/text-width.js";
import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement, writeDocument } from "../writer/svg-element.js";
import {
  type CardOptions,
  type CardSource,
  cardFacts,
  copiesInWords,
  foldInWords,
  formatInWords,
  type SurfaceFacts,
} from "./card-facts.js";
import { type CardPicture, cardPicture, detailsOf } from "./card-picture.js";
import { closedFront } from "./closed-front.js";
import { wholeQuarters } from "./page-size.js";
import { surfaceTitle } from "./surface-in-words.js";
import { drawLines, linesHeight, setLines } from "./text-lines.js";

const MARGIN = 10;
const TITLE = 5.6;
const TEXT = 3.2;
const NOTE = 2.6;
const CAPTION = 3.8;
/** A caption and the white space under it. */
const CAPTION_ROOM = lineHeightOf(CAPTION) + 3;
const BETWEEN_ROWS = 9;
const BETWEEN_COLUMNS = 12;
/** Surfaces stand beside each other up to this number and width. */
const MOST_BESIDE = 3;
const MOST_WIDTH = 440;
const NOTE_TEXT = "Measure this after printing; if it is not 100 mm, print at 100 % / actual size.";

/**
 * Draws the card with the number `number` as an SVG document: the front, and below it each other surface with layers. Lengths of the source are ticks of 1/1600 mm. Throws a
 * RangeError where there is no such card, or where it names pieces or faces that are not there.
 */
export function drawCard(source: CardSource, number: number, options: CardOptions = {}): string {
  const facts = cardFacts(source, number, options);
  const titled = facts.elsewhere.length > 0;
  const pictures = [facts, ...facts.elsewhere].map((of) => pictureOf(of, titled));
  const { rows, columns } = inRows(pictures);
  const starts = columns.map((_, column) => widthOf([...columns.slice(0, column), 0]));
  const width = Math.max(widthOf(columns), RULER_WIDTH + 6, 120);

  const quiet = { width, size: TEXT, colour: QUIET };
  const small = { width, size: NOTE, colour: QUIET };
  const head = [
    ...setLines(`${number} ${facts.name}`, { width, size: TITLE, colour: INK, bold: true }),
    ...setLines(`${formatInWords(facts)}, ${foldInWords(facts.card)}`, quiet),
    ...setLines(copiesInWords(facts.card), quiet),
  ];
  const bodyY = MARGIN + linesHeight(head) + 6;
  const { note: closed } = closedFront(facts.card, facts.unit);
  const foot = [
    ...(closed === null ? [] : setLines(`Front: ${closed}`, small)),
    ...pictures.flatMap(({ of, picture }) => {
      const all = [of.base, ...of.layers];
      // The base is told of with the front.
      const untold = picture.untold.filter((piece) => of === facts || piece !== of.base);
      return untold.flatMap((piece) => {
        const details = detailsOf(of, all.indexOf(piece as (typeof all)[number]), true);
        return setLines(`Covered, not to be seen here: ${piece.label}, ${details}`, small);
      });
    }),
  ];
  let at = bodyY;
  const placed = rows.map((row, index) => {
    const y = at + (index === 0 ? 0 : BETWEEN_ROWS);
    at = y + Math.max(...row.map(({ height }) => height));
    return row.map((one, column) => drawPicture(one, MARGIN + (starts[column] ?? 0), y));
  });
  const footY = at + 5;
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
        ...placed.flat(),
        ...(foot.length === 0 ? [] : [element("g", { id: "notes" }, drawLines(foot, MARGIN, footY))]),
        element("g", { id: "check" }, [...checkRuler(MARGIN, rulerY), ...drawLines(note, MARGIN, noteY)]),
      ],
    ),
  );
}

/** A surface with its picture at true size, and what it takes of the page, its caption included. */
interface SurfacePicture {
  readonly of: SurfaceFacts;
  readonly picture: CardPicture;
  /** Empty where the front is all there is. */
  readonly caption: string;
  readonly width: number;
  readonly height: number;
}

function pictureOf(of: SurfaceFacts, titled: boolean): SurfacePicture {
  const { name } = of.surface;
  const picture = cardPicture(of, { scale: 1, callOuts: "all", prefix: name });
  const caption = titled ? surfaceTitle(of.card, name) : "";
  return {
    of,
    picture,
    caption,
    width: Math.max(picture.extent.width, textWidth(caption, CAPTION, true)),
    height: picture.extent.height + (titled ? CAPTION_ROOM : 0),
  };
}

/** Pictures in rows of equal length, with the widths of their columns. */
interface PictureRows {
  readonly rows: readonly (readonly SurfacePicture[])[];
  readonly columns: readonly number[];
}

/** Puts as many pictures beside each other as there is room for. */
function inRows(pictures: readonly SurfacePicture[]): PictureRows {
  const arranged = (count: number): PictureRows => {
    const rows = Array.from({ length: Math.ceil(pictures.length / count) }, (_, row) =>
      pictures.slice(row * count, (row + 1) * count),
    );
    const columns = Array.from({ length: count }, (_, column) =>
      Math.max(...rows.map((row) => row[column]?.width ?? 0)),
    );
    return { rows, columns };
  };
  for (let count = Math.min(pictures.length, MOST_BESIDE); count > 1; count -= 1) {
    const found = arranged(count);
    if (widthOf(found.columns) <= MOST_WIDTH) return found;
  }
  return arranged(1);
}

function widthOf(columns: readonly number[]): number {
  return columns.reduce((sum, width) => sum + width, (columns.length - 1) * BETWEEN_COLUMNS);
}

/** Draws a picture with its caption, its top left corner at (x, y). */
function drawPicture({ of, picture, caption }: SurfacePicture, x: number, y: number): SvgElement {
  const { name } = of.surface;
  const id = name === "front" ? "picture" : `picture-${name}`;
  return element("g", { id, "data-surface": name }, [
    ...(caption === ""
      ? []
      : [textElement({ text: caption, x, y: y + ascentOf(CAPTION), size: CAPTION, bold: true })]),
    ...picture.draw(x - picture.extent.x, y + (caption === "" ? 0 : CAPTION_ROOM) - picture.extent.y),
  ]);
}
