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
import type { Flat } from "@sheetwright/planner";
import { fillDown, type Row } from "../drawing/flow-rows.js";
import { FONT_FAMILY, INK, PAPER, QUIET } from "../drawing/look.js";
import { textElement } from "../drawing/text-element.js";
import { ascentOf, lineHeightOf } from "../text/text-width.js";
import { displayName } from "../wording/display-name.js";
import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement, writeDocument } from "../writer/svg-element.js";
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
import { type FlatFigure, flatFigure, flatKey } from "./flat-figure.js";
import { blank, lineRows, measurementRows, paragraph } from "./measurement-rows.js";
import { measurementsOf } from "./measurements.js";
import { otherUnit } from "./place-in-words.js";
import { surfaceTitle } from "./surface-in-words.js";
import { drawLines, linesHeight, setLines, type TextLine } from "./text-lines.js";

const MARGIN = 12.7;
const TITLE = 5.6;
const TEXT = 3.2;
const CAPTION = 2.6;
const FOOTER = 2.5;
const FOOTER_ROOM = 7;
/** What the figures may take of the page's height; they give way where that saves a page. */
const FIGURE_HEIGHTS = [78, 66, 56, 46] as const;
const TALLEST_FIGURE = 190;
/** Beside a low picture of the front, the flat is drawn no higher than this. */
const SHORT_FIGURE = 58;
/** A flat with many measures may take so much. */
const TALL_FLAT = 100;
const BETWEEN_FIGURES = 8;
/** Other surfaces than the front: how many stand beside each other, and how high they may be drawn. */
const SURFACES_BESIDE = 3;
const SURFACE_HEIGHT = 52;
/** A sample of a line, and the white space behind it. */
const KEY_SAMPLE = 8.5;
const BETWEEN_FLATS = 3;
/** True millimetres to a drawn one. */
const SCALES = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 20, 30, 50, 100, 200, 500] as const;

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
        figuresRow(facts, inner, figures),
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

/** The front and the flats beside each other, each at the largest scale of the list that has room. */
function figuresRow(facts: CardFacts, width: number, height: number): Row {
  const { card, base, unit } = facts;
  const room = (width - BETWEEN_FIGURES) / 2;
  const front =
    surfaceFigure(facts, room, height, "letters") ??
    // A great many letters need more of the page; where it has no room for them, the list has to do.
    surfaceFigure(facts, room, TALLEST_FIGURE, "letters") ??
    surfaceFigure(facts, room, height, "none");
  if (front === null)
    throw new RangeError(`number: the front of card ${card.number} is too large for a page.`);
  // Two flats share the height, so they get all of it: small ones would have no room for their dimensions.
  const most =
    card.flats.length > 1 ? height : Math.min(height, Math.max(front.made.extent.height, SHORT_FIGURE));
  const flatsIn = (tallest: number, isClear: boolean) =>
    largest(0, (scale) => {
      const figures = card.flats.map((flat) => flatFigure(flat, base, scale, unit, `flat-${flat.fold}`));
      return isClear && figures.some((figure) => !figure.isClear) ? null : placeFlats(figures, room, tallest);
    });
  // The distances of many scores may need more height than the flat itself.
  const heights = [most, SHORT_FIGURE, FIGURE_HEIGHTS[0], TALL_FLAT];
  let flats: AtScale<PlacedFlats> | null = null;
  for (const tallest of heights) flats ??= flatsIn(tallest, true);
  for (const tallest of [...heights, TALLEST_FIGURE]) flats ??= flatsIn(tallest, false);
  if (flats === null)
    throw new RangeError(`number: the base of card ${card.number} is too large for a page.`);
  const key = flatKey(card.flats);
  const notes = frontNotes(facts, room);
  const under = Math.max(notes.length, key.length) * lineHeightOf(CAPTION);
  const content = Math.max(front.made.extent.height, flats.made.height);
  const captionY = content + 2 + ascentOf(CAPTION);
  const lineY = (y: number, index: number) => y + captionY + (index + 1) * lineHeightOf(CAPTION);
  return {
    height: content + 2 + lineHeightOf(CAPTION) + under,
    draw: (x, y) => [
      element("g", { id: "picture" }, front.made.draw(x - front.made.extent.x, y - front.made.extent.y)),
      ...flats.made.draw(x + room + BETWEEN_FIGURES, y),
      ...[
        { text: `Front, ${scaleInWords(front.scale)}`, at: x },
        {
          text: `Base, ${flatInWords(card.flats)}${scaleInWords(flats.scale)}`,
          at: x + room + BETWEEN_FIGURES,
        },
      ].map(({ text, at }) => textElement({ text, x: at, y: y + captionY, size: CAPTION, colour: QUIET })),
      ...notes.map(({ text }, i) => textElement({ text, x, y: lineY(y, i), size: CAPTION, colour: QUIET })),
      ...key.flatMap(({ text, sample }, i) => {
        const at = x + room + BETWEEN_FIGURES;
        const drawn = sample(at, lineY(y, i) - 0.36 * CAPTION, INK);
        return [
          ...drawn,
          textElement({
            text,
            x: drawn.length === 0 ? at : at + KEY_SAMPLE,
            y: lineY(y, i),
            size: CAPTION,
            colour: QUIET,
          }),
        ];
      }),
    ],
  };
}

/** What the lines on the front are. */
function frontNotes({ card, unit }: CardFacts, width: number): readonly TextLine[] {
  const { note } = closedFront(card, unit);
  return note === null ? [] : setLines(note, { width, size: CAPTION, colour: QUIET });
}

function flatInWords(flats: readonly Flat[]): string {
  const most = Math.max(...flats.map(({ scores }) => scores.length));
  if (most === 0) return "";
  if (flatKey(flats).length > 0) return "flat, outside up, ";
  return `flat, outside up, ${most === 1 ? "score" : "scores"} dashed, `;
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

/** Flats one below the other or, where that is too high, beside each other; `null` where there is no room either way. */
function placeFlats(figures: readonly FlatFigure[], room: number, most: number): PlacedFlats | null {
  for (const beside of [false, true]) {
    const sizes = figures.map(({ width, height }) => (beside ? [width, height] : [height, width]));
    const along = sizes.reduce((sum, [size = 0]) => sum + size, (figures.length - 1) * BETWEEN_FLATS);
    const across = sizes.reduce((most, [, size = 0]) => Math.max(most, size), 0);
    const [width, height] = beside ? [along, across] : [across, along];
    if (width > room || height > most) continue;
    return {
      height,
      draw: (x, y) => {
        let at = 0;
        return figures.map((figure, i) => {
          const drawn = beside ? figure.draw(x + at, y) : figure.draw(x, y + at);
          at += (sizes[i]?.[0] ?? 0) + BETWEEN_FLATS;
          return element("g", { id: `flat-figure-${i + 1}` }, drawn);
        });
      },
    };
  }
  return null;
}

interface PlacedFlats {
  readonly height: number;
  readonly draw: (x: number, y: number) => readonly SvgElement[];
}

/** Something made at a scale; `scale` is in true millimetres to a drawn one. */
interface AtScale<T> {
  readonly made: T;
  readonly scale: number;
}

/** What is made at the first of the scales that it fits at; those under `least` are not tried. */
function largest<T>(least: number, make: (scale: number) => T | null): AtScale<T> | null {
  for (const scale of SCALES) {
    const made = scale < least ? null : make(1 / scale);
    if (made !== null) return { made, scale };
  }
  return null;
}

function scaleInWords(denominator: number): string {
  return denominator === 1 ? "true size" : `drawn at 1 : ${formatNumber(denominator)}`;
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
