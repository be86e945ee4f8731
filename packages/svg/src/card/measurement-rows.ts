/** The rows of a measurements page in reading order: figures, the list of pieces, steps, roundings, caution. */

import type { Unit } from "@sheetwright/measure";
import type { Row, TableRow } from "../drawing/flow-rows.js";
import { HAIRLINE, INK, QUIET, RULE } from "../drawing/look.js";
import { textElement } from "../drawing/text-element.js";
import { ascentOf, lineHeightOf, textWidth } from "../text/text-width.js";
import { element } from "../writer/svg-element.js";
import { paperSample, SAMPLE } from "./draw-call-outs.js";
import type { MeasuredPiece, Measurements } from "./measurements.js";
import { drawLines, linesHeight, setLines, type TextLine } from "./text-lines.js";

const TEXT = 2.8;
const HEADING = 3.4;
const SMALL = 2.6;
/** Lines that a cell of the list takes at most; the text of the same measurements has the rest. */
const MOST_LINES = 6;
const AIR = 0.8;
/** White space between columns. */
const COLUMN_GAP = 3;
/** The most that a column takes, from the left; the last has what is left. */
const WIDEST = [42, 38, 32, 38] as const;
/** Where the label begins behind its sample of paper. */
const BESIDE_SAMPLE = SAMPLE + 1.6;
const STEP_INDENT = 6.5;
/** White space after a paragraph. */
const AFTER = 0.8;
/** The last column. */
const PLACE = 4;

/** A column of the list: where it begins and how wide it is. */
interface Column {
  readonly x: number;
  readonly width: number;
}

/** Makes the rows behind the figures. */
export function measurementRows(
  { pieces, markNote, steps, roundings, caution }: Measurements,
  width: number,
  units: readonly [Unit, Unit],
): readonly TableRow[] {
  const goesOn = heading("Steps, continued", width);
  return [
    heading("Pieces for one copy", width),
    ...pieceRows(pieces, width, units),
    ...(markNote === null ? [] : paragraph(markNote, width, SMALL, QUIET)),
    blank(4),
    heading("Steps, from the bottom to the top", width),
    ...steps.flatMap((step, i) => stepRows(step, i + 1, width).map((row) => ({ ...row, head: goesOn }))),
    ...(roundings.length === 0
      ? []
      : [
          blank(4),
          heading("Rounded", width),
          ...roundings.flatMap((said) => paragraph(said, width, TEXT, INK)),
        ]),
    blank(4),
    ...kept([heading("Before you cut", width), ...paragraph(caution, width, TEXT, INK)]),
  ];
}

function pieceRows(
  pieces: readonly MeasuredPiece[],
  width: number,
  [first, second]: readonly [Unit, Unit],
): readonly TableRow[] {
  const contents = pieces.map(textsOf);
  const columns: Column[] = [];
  let x = 0;
  for (const [i, widest] of WIDEST.entries()) {
    const texts = contents.flatMap((cells) => cells[i] ?? []);
    const needed = texts.reduce((most, text) => Math.max(most, textWidth(text, TEXT, i === 0)), 0);
    const column = Math.min(widest, needed + (i === 0 ? BESIDE_SAMPLE : 0) + 0.01);
    columns.push({ x, width: column });
    x += column + COLUMN_GAP;
  }
  columns.push({ x, width: width - x });
  const head: Row = {
    height: lineHeightOf(SMALL) + AIR,
    keepWithNext: true,
    draw: (left, top) =>
      ["piece", "paper", first, second, "place"].map((text, i) =>
        textElement({
          text,
          x: left + (columns[i]?.x ?? 0),
          y: top + ascentOf(SMALL),
          size: SMALL,
          colour: QUIET,
        }),
      ),
  };
  return [
    head,
    ...pieces.map((measured, index) => ({
      ...pieceRow(measured, columns, width, index === pieces.length - 1),
      head,
    })),
  ];
}

/** The cells of a piece: each in paragraphs. */
function textsOf({ piece, sizes, notes }: MeasuredPiece): readonly (readonly string[])[] {
  return [
    [piece.label],
    [piece.paperName],
    sizes.map((size) => size.first),
    sizes.map((size) => size.second),
    [notes.join("; ")],
  ];
}

function pieceRow(measured: MeasuredPiece, columns: readonly Column[], width: number, last: boolean): Row {
  const cells = textsOf(measured).map((paragraphs, i) => {
    const indent = i === 0 ? BESIDE_SAMPLE : 0;
    const room = (columns[i]?.width ?? 0) - indent;
    const setting = {
      width: room,
      size: TEXT,
      colour: i === PLACE ? QUIET : INK,
      bold: i === 0,
      most: MOST_LINES,
    };
    const lines = paragraphs.flatMap((text) => setLines(text, setting));
    return { lines, height: linesHeight(lines), indent };
  });
  const content = Math.max(SAMPLE, ...cells.map(({ height }) => height));
  return {
    height: content + 2 * AIR,
    draw: (left, top) => [
      element("line", {
        x1: left,
        y1: top,
        x2: left + width,
        y2: top,
        stroke: RULE,
        "stroke-width": HAIRLINE,
      }),
      ...paperSample(measured.piece, left, top + AIR),
      ...cells.flatMap(({ lines, indent }, i) =>
        drawLines(lines, left + (columns[i]?.x ?? 0) + indent, top + AIR),
      ),
      ...(last
        ? [
            element("line", {
              x1: left,
              y1: top + content + 2 * AIR,
              x2: left + width,
              y2: top + content + 2 * AIR,
              stroke: RULE,
              "stroke-width": HAIRLINE,
            }),
          ]
        : []),
    ],
  };
}

function stepRows(step: string, number: number, width: number): readonly TableRow[] {
  const setting = { width: width - STEP_INDENT, size: TEXT, colour: INK };
  const beside = { text: String(number), size: TEXT, colour: INK, bold: true };
  return lineRows(setLines(step, setting)).map((row, i) => ({
    ...row,
    draw: (x, y) => [
      ...(i === 0 ? drawLines([beside], x + STEP_INDENT - 2, y, "end") : []),
      ...row.draw(x + STEP_INDENT, y),
    ],
  }));
}

/** Text over the whole width, a row for each line. */
export function paragraph(text: string, width: number, size: number, colour: string): readonly TableRow[] {
  return lineRows(setLines(text, { width, size, colour }));
}

/** Lines as rows that stay on one page. */
export function lineRows(lines: readonly TextLine[]): readonly TableRow[] {
  return lines.map((line, i) => ({
    height: lineHeightOf(line.size, line.text) + (i === lines.length - 1 ? AFTER : 0),
    keepWithNext: i < lines.length - 1,
    draw: (x, y) => drawLines([line], x, y),
  }));
}

function heading(text: string, width: number): TableRow {
  const y = lineHeightOf(HEADING);
  return {
    height: y + 1.4,
    keepWithNext: true,
    draw: (left, top) => [
      textElement({ text, x: left, y: top + ascentOf(HEADING), size: HEADING, bold: true }),
      element("line", {
        x1: left,
        y1: top + y + 0.3,
        x2: left + width,
        y2: top + y + 0.3,
        stroke: INK,
        "stroke-width": 0.25,
      }),
    ],
  };
}

/** White space. */
export function blank(height: number): TableRow {
  return { height, blank: true, draw: () => [] };
}

function kept(rows: readonly TableRow[]): readonly TableRow[] {
  return rows.map((row, i) => ({ ...row, keepWithNext: i < rows.length - 1 }));
}
