/** The column beside the sheet: what is cut, what is left over, the cuts in order, and the key to the drawing. */

import { formatLength, formatSize, type Ticks, type Unit } from "@sheetwright/measure";
import type { Cut } from "@sheetwright/packing";
import type { FoldDirection } from "@sheetwright/planner";
import type { LaidOut } from "../layout/lay-out.js";
import type { OffcutList } from "../layout/list-leftovers.js";
import type { ListedPieces, PieceList } from "../layout/list-pieces.js";
import { hasScores, hasSlits, type ListedMarks } from "../layout/list-trade-marks.js";
import { STITCH_LINE } from "../shape/draw-stitches.js";
import { breakLines, unbroken } from "../text/break-lines.js";
import { ascentOf, fitsWidth, lineHeightOf } from "../text/text-width.js";
import { countOf } from "../wording/count-of.js";
import { groupBySetting, settingInWords } from "../wording/cut-in-words.js";
import { dieInWords, stripInWords } from "../wording/die-in-words.js";
import { displayName } from "../wording/display-name.js";
import { scoresInWords } from "../wording/score-in-words.js";
import { slitsInWords } from "../wording/slit-in-words.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { halfWidthOf } from "./cut-number.js";
import { dashLine } from "./dash-line.js";
import { drawCutNumber } from "./draw-cut-number.js";
import { STRAIGHT_CUT_DASH, STRAIGHT_CUT_GAP } from "./draw-shape-on-piece.js";
import { topSample } from "./draw-top.js";
import { hatchedBox, plainBox, windowEdge } from "./fills.js";
import type { Row } from "./flow-rows.js";
import type { LayoutFigure } from "./layout-figure.js";
import {
  ACCENT,
  CUT_LINE,
  INK,
  OUTLINE,
  PIECE,
  QUIET,
  RULE,
  SCORE,
  SCORE_LINE,
  SCORE_TEXT,
  TRIM,
  WASTE,
} from "./look.js";
import { SHEET_DASH, scoreDashes } from "./score-dashes.js";
import { textElement } from "./text-element.js";

export const PANEL_WIDTH = 72;
/** Text starts here; numbers and swatches stand before it. */
const INDENT = 8;
/** From the first number of a group of cuts to the last. */
const TO = 3.4;
const TEXT = 2.9;
const SMALL = 2.6;
const HEADING = 3.2;

/** What the panel tells about. */
export interface PanelContent {
  readonly laidOut: LaidOut;
  readonly pieces: PieceList;
  readonly offcuts: OffcutList;
  /** What is marked on the pieces under an entry of the list. */
  readonly marksOf: (entry: ListedPieces) => readonly ListedMarks[];
  readonly figure: LayoutFigure;
  readonly cuts: readonly Cut[];
  /** Whether some place on the sheet is labelled by its number in a list. */
  readonly numbered: boolean;
  /** Cuts whose number found no place on a crowded sheet. */
  readonly unnumbered: number;
  readonly run: number;
  readonly kerf: Ticks;
  readonly unit: Unit;
}

/** Makes the rows of the panel in reading order. */
export function panelRows(content: PanelContent): readonly Row[] {
  const blocks = [pieceRows(content), offcutRows(content), cutRows(content), keyRows(content)];
  return blocks
    .filter((rows) => rows.length > 0)
    .flatMap((rows, index) => (index === 0 ? rows : [blank(4.5), ...rows]));
}

function pieceRows({ pieces, marksOf, run, unit }: PanelContent): readonly Row[] {
  if (pieces.entries.length === 0) return [];
  const rows = pieces.entries.flatMap((entry) => {
    const { number, words, size, places, pieces: all, shared } = entry;
    const count =
      run === 1
        ? countOf(places, "piece")
        : shared
          ? `${places} a sheet`
          : `${places} a sheet, ${all} in all`;
    const detail = `${unbroken(formatSize(size.width, size.height, { unit }))}; ${unbroken(count)}`;
    const scores = marksOf(entry).flatMap((marks) => {
      const of = shared ? `${marks.name}: ` : "";
      return [
        ...(hasScores(marks)
          ? [{ text: `${of}score ${scoresInWords(marks, unit, "the")}`, colour: SCORE_TEXT }]
          : []),
        ...(marks.die === null
          ? []
          : [{ text: `${of}${cutInWords(marks.die, marks.shapesAt, unit)}`, colour: ACCENT }]),
        ...(hasSlits(marks)
          ? [{ text: `${of}slit ${slitsInWords(marks.slits, unit, "the")}`, colour: ACCENT }]
          : []),
      ];
    });
    return [
      ...lines({ words, size: TEXT, keepWithNext: true }, numberBeside(number)),
      ...lines({
        words: detail.split(" "),
        size: SMALL,
        colour: QUIET,
        after: scores.length > 0 ? 0.1 : 1.1,
        keepWithNext: scores.length > 0,
      }),
      ...scores.flatMap(({ text, colour }, i) =>
        lines({
          words: text.split(" "),
          size: SMALL,
          colour,
          after: i < scores.length - 1 ? 0.1 : 1.1,
        }),
      ),
    ];
  });
  return [heading("Pieces"), ...rows];
}

/** `cut by the die disc, 3 in across`, of a strip `4 cut, the first 1/4 in from the end …, by the die disc, 3 in across`. */
function cutInWords(
  die: NonNullable<ListedMarks["die"]>,
  shapesAt: ListedMarks["shapesAt"],
  unit: Unit,
): string {
  const by = `by ${dieInWords(die, unit)}`;
  if (shapesAt === null) return `cut ${by}`;
  return `${shapesAt.length} cut, ${stripInWords(shapesAt, unit)}, ${by}`;
}

function offcutRows({ offcuts, run, unit }: PanelContent): readonly Row[] {
  if (offcuts.entries.length === 0) return [];
  const rows = offcuts.entries.flatMap(({ number, size, places }) => {
    const count = run > 1 ? `; ${places} a sheet` : places > 1 ? `; ${places} of them` : "";
    const words = `${formatSize(size.width, size.height, { unit })}${count}`.split(" ");
    return lines({ words, size: TEXT, after: 0.4 }, numberBeside(number));
  });
  return [heading("Offcuts"), ...rows];
}

function cutRows({ cuts, unit }: PanelContent): readonly Row[] {
  if (cuts.length === 0) return [];
  const groups = groupBySetting(cuts);
  const indent = groups.reduce((widest, group) => Math.max(widest, widthOfNumbers(group) + 1.8), INDENT);
  const rows = groups.flatMap((group) => {
    const first = group[0] as Cut;
    const last = group.at(-1) as Cut;
    const trim = first.purpose === "trim" ? ["trim:"] : [];
    const ruler = first.tooNarrow ? ["along", "a", "metal", "ruler"] : [];
    const words = [...trim, ...settingInWords(first, unit), ...ruler];
    return lines({ words, size: TEXT, after: 0.5, indent }, (x, y) => {
      const middle = y + lineHeightOf(TEXT) / 2;
      const from = x + 2 * halfWidthOf(first.number);
      const numbers = drawCutNumber(first.number, x + halfWidthOf(first.number), middle);
      if (first === last) return numbers;
      return [
        ...numbers,
        element("line", {
          x1: from + 0.9,
          y1: middle,
          x2: from + TO - 0.9,
          y2: middle,
          stroke: QUIET,
          "stroke-width": OUTLINE,
        }),
        ...drawCutNumber(last.number, from + TO + halfWidthOf(last.number), middle),
      ];
    });
  });
  return [heading("Cuts, edge to edge, in this order"), ...rows];
}

/** What the first and last number of a group take. */
function widthOfNumbers(group: readonly Cut[]): number {
  const [first, last] = [group[0], group.at(-1)];
  if (first === undefined || last === undefined) return 0;
  const width = 2 * halfWidthOf(first.number);
  return first === last ? width : width + TO + 2 * halfWidthOf(last.number);
}

function keyRows({
  laidOut,
  pieces,
  marksOf,
  figure,
  offcuts,
  cuts,
  numbered,
  unnumbered,
  kerf,
  unit,
}: PanelContent): readonly Row[] {
  const rows: Row[] = [];
  const entry = (text: string, sample: (x: number, y: number) => readonly SvgElement[]) =>
    rows.push(...lines({ words: text.split(" "), size: SMALL, after: 0.9 }, (x, y) => sample(x, y + 0.2)));
  const box = (x: number, y: number) => ({ x, y, width: 6, height: 3.2 });

  if (pieces.entries.length > 0) entry("piece", (x, y) => plainBox(box(x, y), PIECE, INK));
  if (offcuts.entries.length > 0) entry("offcut, worth keeping", (x, y) => hatchedBox(box(x, y)));
  if (laidOut.leftovers.some(({ what }) => what === "waste")) {
    entry("waste", (x, y) => plainBox(box(x, y), WASTE, RULE));
  }
  if (laidOut.trims.length > 0) {
    const sides = laidOut.trims.map(({ side, width, height }) => {
      const depth = side === "left" || side === "right" ? width : height;
      return unbroken(`${side} ${formatLength(depth, { unit })}`);
    });
    entry(`trim, cut off first: ${sides.join(", ")}`, (x, y) => plainBox(box(x, y), TRIM, RULE));
  }
  for (const tool of new Set(laidOut.windows.map((window) => displayName({ id: window.tool })))) {
    entry(`window, opened with: ${tool}`, (x, y) => [windowEdge(box(x, y))]);
  }
  if (cuts.length > 0) {
    entry("cut and its number", (x, y) => [
      element("line", {
        x1: x,
        y1: y + 1.6,
        x2: x + 6,
        y2: y + 1.6,
        stroke: ACCENT,
        "stroke-width": CUT_LINE,
      }),
      ...drawCutNumber(1, x + 3, y + 1.6),
    ]);
  }
  const dashed =
    (stroke: string, strokeWidth: number, [dash, gap]: readonly [number, number]) =>
    (x: number, y: number) =>
      dashLine(6, dash, gap).map(([from, to]) =>
        element("line", {
          x1: x + from,
          y1: y + 1.6,
          x2: x + to,
          y2: y + 1.6,
          stroke,
          "stroke-width": strokeWidth,
        }),
      );
  const whole = (stroke: string) => (x: number, y: number) => [
    element("line", { x1: x, y1: y + 1.6, x2: x + 6, y2: y + 1.6, stroke, "stroke-width": OUTLINE }),
  ];
  const { shapes } = figure;
  const place = shapes.strip ? "in the middle of its blank or along its strip" : "in the middle of its blank";
  if (shapes.die) entry(`what the die cuts, ${place}`, whole(QUIET));
  if (shapes.machine) entry("cut along this line by a cutting machine or scissors", whole(ACCENT));
  if (shapes.stitched) entry("stitches", dashed(QUIET, STITCH_LINE, [1, 0.5]));
  if (shapes.straightCut)
    entry("then cut straight", dashed(ACCENT, CUT_LINE, [STRAIGHT_CUT_DASH, STRAIGHT_CUT_GAP]));
  if (figure.scores.length > 0) {
    const shown = figure.scores.filter(({ dimension }) => dimension !== null).length;
    const where =
      shown === figure.scores.length
        ? "score, with its distance from the edge"
        : shown > 0
          ? "score, with its distance where there is room"
          : "score: distance in the list of pieces";
    const folds = (["mountain", "valley", "both"] as const).filter((each) =>
      figure.scores.some(({ line }) => line.score.folds === each),
    );
    const sample = (each: FoldDirection) => (x: number, y: number) =>
      scoreDashes(6, each, { ...SHEET_DASH, gap: SHEET_DASH.gap / 2 }).map(([from, to]) =>
        element("line", {
          x1: x + from,
          y1: y + 1.6,
          x2: x + to,
          y2: y + 1.6,
          stroke: SCORE,
          "stroke-width": SCORE_LINE,
        }),
      );
    const [first] = folds;
    if (first !== undefined)
      entry(`${where}${folds[1] === undefined ? FOLD_ALONE[first] : ""}`, sample(first));
    for (const each of folds.slice(1)) entry(FOLD_KEY[each], sample(each));
  }
  if (figure.slits.length > 0) {
    entry("slit, cut with a craft knife: it starts and stops inside the piece", (x, y) => [
      element("line", {
        x1: x,
        y1: y + 1.6,
        x2: x + 6,
        y2: y + 1.6,
        stroke: ACCENT,
        "stroke-width": CUT_LINE,
      }),
    ]);
  }
  if (figure.tops.length > 0) entry("top of the pattern", (x, y) => [topSample(x + 3, y + 0.5)]);
  if (pieces.entries.some((listed) => marksOf(listed).some(({ backUp }) => backUp))) {
    entry("(back up): the printed back of the paper shows on the card", () => []);
  }
  if (unnumbered > 0) {
    entry(`no room on the sheet for ${countOf(unnumbered, "cut number")}: go by the cut list`, () => []);
  }
  if (numbered) {
    entry("a bare number stands for a list entry", (x, y) => [
      textElement({ text: "1", x: x + 3, y: y + 2.6, size: TEXT, anchor: "middle" }),
    ]);
  }
  if (kerf > 0) entry(`each cut takes ${formatLength(kerf, { unit })} (kerf)`, () => []);
  // The key is one thing to look at, so it stays in one column.
  const kept = rows.map((row, index) => ({ ...row, keepWithNext: index < rows.length - 1 }));
  return rows.length === 0 ? [] : [heading("Key"), ...kept];
}

/** What is added to the one entry of scores where all fold alike. */
const FOLD_ALONE: Readonly<Record<FoldDirection, string>> = {
  mountain: "",
  valley: "; on the inside, so turn the piece over",
  both: "; folds both ways beside the slits",
};
const FOLD_KEY: Readonly<Record<FoldDirection, string>> = {
  mountain: "score",
  valley: "score on the inside: turn the piece over",
  both: "score that folds both ways beside the slits",
};

function heading(text: string): Row {
  return {
    height: lineHeightOf(HEADING) + 1.6,
    keepWithNext: true,
    draw: (x, y) => [
      textElement({ text, x, y: y + ascentOf(HEADING), size: HEADING, bold: true }),
      element("line", {
        x1: x,
        y1: y + lineHeightOf(HEADING) + 0.3,
        x2: x + PANEL_WIDTH,
        y2: y + lineHeightOf(HEADING) + 0.3,
        stroke: RULE,
        "stroke-width": 0.15,
      }),
    ],
  };
}

function blank(height: number): Row {
  return { height, blank: true, draw: () => [] };
}

/** Text of one row or more, and how it is set. */
interface Lines {
  readonly words: readonly string[];
  readonly size: number;
  readonly colour?: string;
  /** White space after the last row. */
  readonly after?: number;
  readonly indent?: number;
  readonly keepWithNext?: boolean;
}

/** Text in as many rows as it takes, with something beside its first row. */
function lines(
  { words, size, colour, after = 0, indent = INDENT, keepWithNext = false }: Lines,
  beside: (x: number, y: number) => readonly SvgElement[] = () => [],
): readonly Row[] {
  const fits = fitsWidth(PANEL_WIDTH - indent, size);
  const broken = breakLines(words, { fits, overflow: "anywhere" }) ?? [words.join(" ")];
  return broken.map((text, index) => ({
    height: lineHeightOf(size, text) + (index === broken.length - 1 ? after : 0),
    keepWithNext: keepWithNext || (index === 0 && broken.length > 1),
    draw: (x: number, y: number) => [
      ...(index === 0 ? beside(x, y) : []),
      textElement({
        text,
        x: x + indent,
        y: y + ascentOf(size, text),
        size,
        ...(colour === undefined ? {} : { colour }),
      }),
    ],
  }));
}

/** A number in bold before the text. */
function numberBeside(number: number): (x: number, y: number) => readonly SvgElement[] {
  return (x, y) => [
    textElement({
      text: String(number),
      x: x + INDENT - 2.2,
      y: y + ascentOf(TEXT),
      size: TEXT,
      bold: true,
      anchor: "end",
    }),
  ];
}
