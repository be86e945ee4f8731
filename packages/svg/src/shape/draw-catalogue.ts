/**
 * Draws all shapes of the catalogue on a page, in a grid at one scale, each with its name and size.
 *
 *     +--------------------------+
 *     | Die shapes               |
 *     | ( )   ( )   [ ]   [ ]    |
 *     | Circle ...               |
 *     |                          |
 */

import { findNamedSize, TICKS_PER_MM, type Unit } from "@sheetwright/measure";
import { boxOf, outlineOf } from "@sheetwright/shapes";
import { scaleInWords } from "../card/captioned-figure.js";
import { drawLines, linesHeight, setLines } from "../card/text-lines.js";
import { FONT_FAMILY, INK, OUTLINE, PAPER, PIECE, QUIET } from "../drawing/look.js";
import { shapeSizeInWords } from "../wording/shape-in-words.js";
import { formatNumber } from "../writer/format-number.js";
import { outlinesData, type PlaceOf } from "../writer/path-data.js";
import { element, type SvgElement, writeDocument } from "../writer/svg-element.js";
import { type CatalogueSample, catalogueSamples } from "./catalogue-samples.js";
import { drawStitches } from "./draw-stitches.js";

/** How the page of the catalogue is drawn. */
export interface CatalogueOptions {
  /** `in` (the default): sizes in inches on US letter. `mm`: sizes in millimetres on A4. */
  readonly unit?: Unit | undefined;
}

const MARGIN = 12.7;
const TITLE = 5.6;
const TEXT = 3.2;
const NAME = 3.2;
const NOTE = 2.6;
const COLUMNS = 4;
const GAP = 4;
const BELOW_HEAD = 5;
/** From a shape to its name. */
const ABOVE_NAME = 1.6;
/** How many of its millimetres one of the page is. */
const SCALE = 2.5;

/**
 * Draws the page of the catalogue as an SVG document, US letter or A4: every shape with its name, what it is called by in
 * projects and commands, and the size that it would have.
 *
 * @example
 * drawCatalogue().includes(">Scalloped circle</text>") // => true
 */
export function drawCatalogue({ unit = "in" }: CatalogueOptions = {}): string {
  const size = findNamedSize(unit === "in" ? "us-letter" : "iso-a4");
  const [width, height] = [size.width / TICKS_PER_MM, size.height / TICKS_PER_MM];
  const samples = catalogueSamples(unit);
  const inner = width - 2 * MARGIN;
  const room = (inner - (COLUMNS - 1) * GAP) / COLUMNS;

  const head = [
    ...setLines("Die shapes", { width: inner, size: TITLE, colour: INK, bold: true }),
    ...setLines(
      `The shapes of the catalogue, each ${scaleInWords(SCALE)}. Sizes, scallops, corners, points and windows can be set.`,
      { width: inner, size: TEXT, colour: QUIET },
    ),
  ];
  const rows = Array.from({ length: Math.ceil(samples.length / COLUMNS) }, (_, row) =>
    samples.slice(row * COLUMNS, (row + 1) * COLUMNS).map((sample) => cellOf(sample, room, unit)),
  );
  const top = MARGIN + linesHeight(head) + BELOW_HEAD;
  const heights = rows.map((row) => Math.max(...row.map((cell) => cell.height + cell.below)));
  const used = heights.reduce((sum, each) => sum + each, 0);
  // What is left of the page stands between the rows.
  const between = (height - MARGIN - top - used) / Math.max(1, rows.length - 1);
  let y = top;
  const cells = rows.flatMap((row, index) => {
    const tallest = Math.max(...row.map((cell) => cell.height));
    const drawn = row.map((cell, column) =>
      cell.draw(MARGIN + column * (room + GAP), y + tallest / 2, y + tallest, index * COLUMNS + column + 1),
    );
    y += (heights[index] ?? 0) + between;
    return drawn;
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
        "data-drawing": "catalogue",
      },
      [
        element("title", {}, ["Die shapes"]),
        element("rect", { id: "page", x: 0, y: 0, width, height, fill: PAPER }),
        element("g", { id: "head" }, drawLines(head, MARGIN, MARGIN)),
        ...cells,
      ],
    ),
  );
}

interface Cell {
  /** Of the shape, and of what is written below it. */
  readonly height: number;
  readonly below: number;
  /** Draws the shape round the middle of its row, and the words below the row. */
  readonly draw: (left: number, middle: number, bottom: number, number: number) => SvgElement;
}

function cellOf({ shape, title, note, stitches }: CatalogueSample, room: number, unit: Unit): Cell {
  const outline = outlineOf(shape);
  const box = boxOf(outline);
  const perTick = 1 / (SCALE * TICKS_PER_MM);
  const words = [
    ...setLines(title, { width: room, size: NAME, colour: INK, bold: true, most: 1 }),
    ...setLines(note === "" ? shapeSizeInWords(shape, unit) : `${shapeSizeInWords(shape, unit)}, ${note}`, {
      width: room,
      size: NOTE,
      colour: QUIET,
      most: 2,
    }),
  ];
  return {
    height: box.height * perTick,
    below: ABOVE_NAME + linesHeight(words),
    draw: (left, middle, bottom, number) => {
      const placeOf: PlaceOf = ({ x, y }) => [
        left + (x - box.x) * perTick,
        middle + (y - box.y - box.height / 2) * perTick,
      ];
      return element("g", { id: `shape-${number}`, "data-role": "shape", "data-shape": shape.shape }, [
        element("path", {
          d: outlinesData([outline], placeOf),
          fill: PIECE,
          "fill-rule": "evenodd",
          stroke: INK,
          "stroke-width": OUTLINE,
        }),
        ...(stitches === null ? [] : drawStitches(stitches, placeOf, perTick)),
        ...drawLines(words, left, bottom + ABOVE_NAME),
      ]);
    },
  };
}
