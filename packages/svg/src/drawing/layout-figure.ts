/** What stands on the sheet itself: labels fitted to their places and numbers on the cuts. */

import { formatSize, TICKS_PER_MM, type Unit } from "@sheetwright/measure";
import type { CutOrder } from "@sheetwright/packing";
import type { LaidOut, PlacedPiece } from "../layout/lay-out.js";
import type { OffcutList } from "../layout/list-leftovers.js";
import type { PieceList } from "../layout/list-pieces.js";
import type { PlaceMarks } from "../layout/lying-marks.js";
import { type Box, boxesOverlap } from "./box.js";
import { type CutLine, type CutNumber, lineBox } from "./cut-number.js";
import { type FittedLabel, fitLabel, type LabelText } from "./fit-label.js";
import { type PieceFigure, type PieceScore, pieceBoxes, pieceFigure } from "./piece-figure.js";
import { placeCutNumbers } from "./place-cut-numbers.js";
import type { SlitLine } from "./score-line.js";
import { toMillimetres } from "./to-millimetres.js";
import type { TopMark } from "./top-mark.js";

/** Nearer than this a piece lies along a cut. */
const TOUCH = 0.05;

/** A label with the id of the drawn element it belongs to. */
interface FigureLabel {
  readonly of: string;
  readonly what: "piece" | "offcut" | "waste";
  readonly label: FittedLabel;
}

/** Everything with a place on the sheet, in millimetres from its top left corner. */
export interface LayoutFigure {
  readonly labels: readonly FigureLabel[];
  /** Scores, slits and marks of the top, each with the id of its piece. */
  readonly scores: readonly (PieceScore & { readonly of: string })[];
  readonly slits: readonly (SlitLine & { readonly of: string })[];
  readonly tops: readonly (TopMark & { readonly of: string })[];
  /** What is drawn of shapes: which tools cut them, and whether some are of a strip, stitched or cut straight afterwards. */
  readonly shapes: {
    readonly die: boolean;
    readonly strip: boolean;
    readonly machine: boolean;
    readonly stitched: boolean;
    readonly straightCut: boolean;
  };
  readonly cuts: readonly CutLine[];
  /** Numbers of the cuts, but for those left out of a crowded sheet. */
  readonly numbers: readonly CutNumber[];
}

/** The id of a piece, leftover, window or trim on the drawing; counted from 1 in the order of the cut tree. */
export function idOf(what: string, index: number): string {
  return `${what}-${index + 1}`;
}

/**
 * Fits the labels, then finds places for the cut numbers between them. Where some number finds none near its cut, pieces
 * along those cuts give way: their number in the list takes less room than their name.
 */
export function layoutFigure(
  laidOut: LaidOut,
  pieces: PieceList,
  offcuts: OffcutList,
  marks: readonly PlaceMarks[],
  cutOrder: CutOrder | undefined,
  unit: Unit,
): LayoutFigure {
  const cuts = (cutOrder?.cuts ?? []).map(({ number, line }) => ({
    number,
    x1: line.x1 / TICKS_PER_MM,
    y1: line.y1 / TICKS_PER_MM,
    x2: line.x2 / TICKS_PER_MM,
    y2: line.y2 / TICKS_PER_MM,
  }));
  const boxes = laidOut.pieces.map(toMillimetres);
  const leftoverLabels = labelLeftovers(laidOut, offcuts, unit);
  const shapes = marks.flatMap(({ shape }) => (shape === null || shape.outlines.length === 0 ? [] : [shape]));
  const drawn = {
    die: shapes.some(({ die }) => die !== null),
    strip: shapes.some(({ count }) => count > 1),
    machine: shapes.some(({ die }) => die === null),
    stitched: shapes.some(({ stitches }) => stitches.dashes.length + stitches.holes.length > 0),
    straightCut: shapes.some(({ trims }) => trims.length > 0),
  };

  function attempt(byNumber: ReadonlySet<number>): LayoutFigure {
    const figures = pieceFigures(laidOut, pieces, marks, byNumber, unit);
    const numbers = placeCutNumbers({
      width: laidOut.width / TICKS_PER_MM,
      height: laidOut.height / TICKS_PER_MM,
      cuts,
      labels: [
        ...figures.flatMap(({ figure }) => pieceBoxes(figure)),
        ...leftoverLabels.map(({ label }) => label.box),
      ],
      pieces: boxes,
    });
    const labels = figures.flatMap(({ of, figure: { label } }) =>
      label === null ? [] : [{ of, what: "piece" as const, label }],
    );
    return {
      labels: [...labels, ...leftoverLabels],
      scores: figures.flatMap(({ of, figure }) => figure.scores.map((score) => ({ ...score, of }))),
      slits: figures.flatMap(({ of, figure }) => figure.slits.map((slit) => ({ ...slit, of }))),
      tops: figures.flatMap(({ of, figure: { top } }) => (top === null ? [] : [{ ...top, of }])),
      shapes: drawn,
      cuts,
      numbers,
    };
  }

  const first = attempt(new Set());
  const homeless = farFromCut(first);
  if (homeless.length === 0) return first;
  const along = new Set<number>();
  boxes.forEach((box, index) => {
    const touches = homeless.some((cut) => boxesOverlap(box, lineBox(cut), TOUCH));
    const entry = pieces.entryOf[index];
    if (touches && entry !== undefined) along.add(entry.number);
  });
  const second = attempt(along);
  return farFromCut(second).length < homeless.length ? second : first;
}

/** Cuts whose number stands outside the sheet at a leader, or nowhere. */
function farFromCut({ cuts, numbers }: LayoutFigure): readonly CutLine[] {
  const near = new Set(numbers.filter(({ leader }) => leader.length < 3).map(({ number }) => number));
  return cuts.filter(({ number }) => !near.has(number));
}

/** What stands on the pieces; on those listed under one of the numbers in `byNumber` the number alone. */
function pieceFigures(
  laidOut: LaidOut,
  pieces: PieceList,
  marks: readonly PlaceMarks[],
  byNumber: ReadonlySet<number>,
  unit: Unit,
): readonly { readonly of: string; readonly figure: PieceFigure }[] {
  return laidOut.pieces.flatMap((piece, index) => {
    const entry = pieces.entryOf[index];
    const own = marks[index];
    if (entry === undefined || own === undefined) return [];
    const text = {
      words: entry.words,
      mayShorten: !entry.shared,
      size: formatSize(entry.size.width, entry.size.height, { unit }),
      number: String(entry.number),
    };
    const plain = pieceFigure(piece, own, text, byNumber.has(entry.number), unit);
    const isTurned = piece.width !== entry.size.width && piece.width === entry.size.height;
    const figure = isTurned ? saidTurned(plain, piece, own, text, unit) : plain;
    return [{ of: idOf("piece", index), figure }];
  });
}

/**
 * Says of a piece that lies turned that it does, beside its size, where nothing else gives way to the word. A label that
 * reads upwards shows it already.
 */
function saidTurned(
  plain: PieceFigure,
  piece: PlacedPiece,
  marks: PlaceMarks,
  text: LabelText,
  unit: Unit,
): PieceFigure {
  const { label } = plain;
  if (label === null || label.upwards || label.shows !== "all") return plain;
  const said = pieceFigure(piece, marks, { ...text, size: `${text.size}, turned` }, false, unit);
  const keepsAll =
    said.label?.shows === "all" &&
    !said.label.upwards &&
    said.label.lines[0]?.size === label.lines[0]?.size &&
    said.label.lines.length === label.lines.length &&
    dimensioned(said) === dimensioned(plain);
  return keepsAll ? said : plain;
}

function dimensioned({ scores }: PieceFigure): number {
  return scores.filter(({ dimension }) => dimension !== null).length;
}

function labelLeftovers(laidOut: LaidOut, offcuts: OffcutList, unit: Unit): readonly FigureLabel[] {
  let offcut = 0;
  return laidOut.leftovers.flatMap((leftover, index) => {
    const box = toMillimetres(leftover);
    const entry = leftover.what === "offcut" ? offcuts.entryOf[offcut++] : undefined;
    const label =
      entry === undefined
        ? fitLabel(box, { words: ["waste"], mayShorten: false, size: null, number: null })
        : offcutLabel(box, formatSize(leftover.width, leftover.height, { unit }), String(entry.number));
    return label === null ? [] : [{ of: idOf("leftover", index), what: leftover.what, label }];
  });
}

/** The bare word says no more than the hatching does, so the size goes before it. */
function offcutLabel(box: Box, size: string, number: string): FittedLabel | null {
  const whole = fitLabel(box, { words: ["offcut"], mayShorten: false, size, number: null });
  if (whole?.shows === "all") return whole;
  return fitLabel(box, { words: [size], mayShorten: false, size: null, number });
}
