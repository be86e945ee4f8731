/**
 * Draws the measurements of one copy of a card as pages to hand out: the front with the letters of its pieces, the base as
 * it is cut, other surfaces with layers, the list of pieces, the steps. US letter for projects in inches, A4 for those in millimetres.
 *
 *     +----------------------+
 *     | 3 Three lanterns     |
 *     | +----+   +----|----+ |
 *     | |    |   |    |    | |
 *     | +----+   +----|----+ |
 *     | pieces ............. |
 *     | steps .............. |
 *     +----------------------+
 */

import { findNamedSize, formatSize, TICKS_PER_MM, type Unit } from "@sheetwright/measure";
import { fillDown, type Row } from "../drawing/flow-rows.js";
import { FONT_FAMILY, INK, PAPER, QUIET } from "../drawing/look.js";
import { textElement } from "../drawing/text-element.js";
import { ascentOf, lineHeightOf } from "../text/text-width.js";
import { displayName } from "../wording/display-name.js";
import { formatNumber } from "../writer/format-number.js";
import { element, writeDocument } from "../writer/svg-element.js";
import { baseFigure } from "./base-figure.js";
import {
  type AtScale,
  CAPTION,
  type CaptionedFigure,
  captionLine,
  largest,
  scaleInWords,
  TALLEST_FIGURE,
} from "./captioned-figure.js";
import {
  type CardFacts,
  type CardOptions,
  type CardSource,
  cardFacts,
  copiesInWords,
  foldInWords,
  formatInWords,
  type SurfaceFacts,
} from "./card-facts.js";
import { type CardPicture, cardPicture, type PictureWish } from "./card-picture.js";
import { closedFront } from "./closed-front.js";
import { lettersIn } from "./draw-call-outs.js";
import { blank, lineRows, measurementRows, paragraph } from "./measurement-rows.js";
import { measurementsOf } from "./measurements.js";
import { otherUnit } from "./place-in-words.js";
import { surfaceTitle } from "./surface-in-words.js";
import { drawLines, linesHeight, setLines, type TextLine } from "./text-lines.js";

const MARGIN = 12.7;
const TITLE = 5.6;
const TEXT = 3.2;
const FOOTER = 2.5;
const FOOTER_ROOM = 7;
/** What the figures may take of the page's height; they give way where that saves a page. */
const FIGURE_HEIGHTS = [78, 66, 56, 46] as const;
const BETWEEN_FIGURES = 8;
/** Other surfaces than the front: how many stand beside each other, and how high they may be drawn. */
const SURFACES_BESIDE = 3;
const SURFACE_HEIGHT = 52;

/**
 * Draws the measurements of the card with the number `number`, an SVG document for each page; one page for most cards.
 * Lengths of the source are ticks of 1/1600 mm. Throws a RangeError where there is no such card, or where it names pieces
 * or faces that are not there.
 */
export function drawMeasurements(
  source: CardSource,
  number: number,
  options: CardOptions = {},
): readonly string[] {
  const facts = cardFacts(source, number, options);
  const size = findNamedSize(facts.unit === "in" ? "us-letter" : "iso-a4");
  const [width, height] = [size.width / TICKS_PER_MM, size.height / TICKS_PER_MM];
  const inner = width - 2 * MARGIN;
  const second = otherUnit(facts.unit);
  const head = headRows(facts, inner, second);
  const rest = measurementRows(measurementsOf(facts), inner, [facts.unit, second]);
  const setPages = (figures: number) =>
    fillDown(
      [
        ...head,
        blank(3),
        ...figureRows(facts, inner, figures),
        ...surfaceRows(facts.elsewhere, inner).flatMap((row) => [blank(4), row]),
        blank(4),
        ...rest,
      ],
      height - 2 * MARGIN - FOOTER_ROOM,
    );
  let pages = setPages(FIGURE_HEIGHTS[0]);
  for (const figures of FIGURE_HEIGHTS.slice(1)) {
    if (pages.length === 1 || facts.surfaces.length > 2 * lettersIn(figures)) break;
    const smaller = setPages(figures);
    if (smaller.length < pages.length) pages = smaller;
  }
  return pages.map((page, index) => {
    const foot = [displayName({ id: "", name: source.title }), `${number} ${facts.name}`];
    return drawPage(page, { width, height, index, count: pages.length, number, foot });
  });
}

/** The front and the base beside each other, or the base below where its measures need the whole width. */
function figureRows(facts: CardFacts, width: number, height: number): readonly Row[] {
  const room = (width - BETWEEN_FIGURES) / 2;
  const front = frontFigure(facts, room, height);
  const beside = { width: room, height, besideHeight: front.content };
  const base =
    baseFigure(facts, beside, { isClear: true, isNamed: true }) ??
    baseFigure(facts, beside, { isClear: true }) ??
    baseFigure(facts, { ...beside, width }, { isClear: true }) ??
    baseFigure(facts, beside);
  if (base === null)
    throw new RangeError(`number: the base of card ${facts.card.number} is too large for a page.`);
  if (base.width > room)
    return [captionedRow([{ figure: front, x: 0 }]), blank(4), captionedRow([{ figure: base, x: 0 }])];
  return [
    captionedRow([
      { figure: front, x: 0 },
      { figure: base, x: room + BETWEEN_FIGURES },
    ]),
  ];
}

/** Figures beside each other, their captions on one line. */
function captionedRow(figures: readonly { readonly figure: CaptionedFigure; readonly x: number }[]): Row {
  const content = Math.max(...figures.map(({ figure }) => figure.content));
  const lines = Math.max(...figures.map(({ figure }) => figure.captions.length));
  return {
    height: content + 2 + lines * lineHeightOf(CAPTION),
    draw: (x, y) =>
      figures.flatMap(({ figure, x: off }) => [
        ...figure.draw(x + off, y),
        ...figure.captions.flatMap((caption, i) =>
          caption(x + off, y + content + 2 + i * lineHeightOf(CAPTION) + ascentOf(CAPTION)),
        ),
      ]),
  };
}

function frontFigure(facts: CardFacts, room: number, height: number): CaptionedFigure {
  const { card } = facts;
  const front =
    surfaceFigure(facts, room, height, "letters") ??
    // A great many letters need more of the page; where it has no room for them, the list has to do.
    surfaceFigure(facts, room, TALLEST_FIGURE, "letters") ??
    surfaceFigure(facts, room, height, "none");
  if (front === null)
    throw new RangeError(`number: the front of card ${card.number} is too large for a page.`);
  const { extent } = front.made;
  const caption = { text: `Front, ${scaleInWords(front.scale)}` };
  return {
    width: extent.width,
    content: extent.height,
    captions: [caption, ...frontNotes(facts, room)].map(({ text }) => captionLine(text)),
    draw: (x, y) => [element("g", { id: "picture" }, front.made.draw(x - extent.x, y - extent.y))],
  };
}

function headRows(facts: CardFacts, width: number, second: Unit): readonly Row[] {
  const { card, name } = facts;
  const { front } = card;
  const title = setLines(`${card.number} ${name}`, { width, size: TITLE, colour: INK, bold: true, most: 3 });
  const closed =
    `${formatInWords(facts)} (${formatSize(front.width, front.height, { unit: second })}), ` +
    foldInWords(card);
  return [
    ...lineRows(title),
    ...paragraph(closed, width, TEXT, QUIET),
    ...paragraph(`Measurements for one copy; to be made: ${copiesInWords(card)}`, width, TEXT, QUIET),
  ];
}

/** What the lines on the front are. */
function frontNotes({ card, unit }: CardFacts, width: number): readonly TextLine[] {
  const { note } = closedFront(card, unit);
  return note === null ? [] : setLines(note, { width, size: CAPTION, colour: QUIET });
}

/** The other surfaces that something lies on, all at one scale where that can be, some beside each other. */
function surfaceRows(surfaces: readonly SurfaceFacts[], width: number): readonly Row[] {
  const count = Math.min(surfaces.length, SURFACES_BESIDE);
  if (count === 0) return [];
  const room = (width - (count - 1) * BETWEEN_FIGURES) / count;
  const figures = surfaces.map((of) => {
    const figure =
      surfaceFigure(of, room, SURFACE_HEIGHT, "letters") ??
      surfaceFigure(of, room, TALLEST_FIGURE, "letters") ??
      surfaceFigure(of, room, SURFACE_HEIGHT, "none");
    if (figure === null) {
      throw new RangeError(
        `number: the ${of.surface.name} of card ${of.card.number} is too large for a page.`,
      );
    }
    return { ...figure, of };
  });
  const rows: Row[] = [];
  for (let first = 0; first < figures.length; first += count) {
    const beside = figures.slice(first, first + count);
    const content = Math.max(...beside.map(({ made }) => made.extent.height));
    const captions = beside.map(({ of, scale }) =>
      setLines(`${surfaceTitle(of.card, of.surface.name)}, ${scaleInWords(scale)}`, {
        width: room,
        size: CAPTION,
        colour: QUIET,
      }),
    );
    rows.push({
      height: content + 2 + Math.max(...captions.map(linesHeight)),
      draw: (x, y) =>
        beside.flatMap(({ made, of }, i) => {
          const left = x + i * (room + BETWEEN_FIGURES);
          const { name } = of.surface;
          return [
            element(
              "g",
              { id: `picture-${name}`, "data-surface": name },
              made.draw(left - made.extent.x, y - made.extent.y),
            ),
            ...drawLines(captions[i] ?? [], left, y + content + 2),
          ];
        }),
    });
  }
  return rows;
}

function surfaceFigure(
  facts: SurfaceFacts,
  room: number,
  height: number,
  callOuts: PictureWish["callOuts"],
): AtScale<CardPicture> | null {
  if (callOuts === "letters" && facts.surfaces.length > 2 * lettersIn(height)) return null;
  const { surface } = facts;
  const least = Math.max(surface.width / room, surface.height / height) / TICKS_PER_MM;
  return largest(least, (scale) => {
    const picture = cardPicture(facts, { scale, callOuts, prefix: surface.name });
    const { complete, extent } = picture;
    return complete && extent.width <= room && extent.height <= height ? picture : null;
  });
}

interface PageFrame {
  readonly width: number;
  readonly height: number;
  readonly index: number;
  readonly count: number;
  readonly number: number;
  readonly foot: readonly string[];
}

function drawPage(rows: readonly Row[], { width, height, index, count, number, foot }: PageFrame): string {
  let y = MARGIN;
  const body = rows.flatMap((row) => {
    const drawn = row.draw(MARGIN, y);
    y += row.height;
    return drawn;
  });
  const at = count === 1 ? "" : `page ${index + 1} of ${count}`;
  const footY = height - MARGIN;
  const [footer] = setLines(foot.join(", "), {
    width: width - 2 * MARGIN - 30,
    size: FOOTER,
    colour: QUIET,
    most: 1,
  });
  return writeDocument(
    element(
      "svg",
      {
        xmlns: "http://www.w3.org/2000/svg",
        width: `${formatNumber(width)}mm`,
        height: `${formatNumber(height)}mm`,
        viewBox: `0 0 ${formatNumber(width)} ${formatNumber(height)}`,
        "font-family": FONT_FAMILY,
        "text-rendering": "geometricPrecision",
        "data-drawing": "measurements",
        "data-card": number,
        "data-page": index + 1,
      },
      [
        element("title", {}, [`${foot[1] ?? ""}: measurements for one copy`]),
        element("rect", { id: "page", x: 0, y: 0, width, height, fill: PAPER }),
        element("g", { id: "body" }, body),
        element("g", { id: "foot" }, [
          textElement({ text: footer?.text ?? "", x: MARGIN, y: footY, size: FOOTER, colour: QUIET }),
          ...(at === ""
            ? []
            : [
                textElement({
                  text: at,
                  x: width - MARGIN,
                  y: footY,
                  size: FOOTER,
                  colour: QUIET,
                  anchor: "end",
                }),
              ]),
        ]),
      ],
    ),
  );
}
