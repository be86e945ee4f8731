/** What stands on the sheet itself: labels fitted to their places and numbers on the cuts. */

import { formatSize, TICKS_PER_MM, type Unit } from "@sheetwright/measure";
import type { CutOrder, Rectangle } from "@sheetwright/packing";
import type { LaidOut } from "../layout/lay-out.js";
import type { OffcutList } from "../layout/list-leftovers.js";
import type { PieceList } from "../layout/list-pieces.js";
import { type Box, boxesOverlap } from "./box.js";
import { type CutLine, type CutNumber, lineBox } from "./cut-number.js";
import { type FittedLabel, fitLabel, fitNumber } from "./fit-label.js";
import { placeCutNumbers } from "./place-cut-numbers.js";

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
  readonly cuts: readonly CutLine[];
  /** Numbers of the cuts, but for those left out of a crowded sheet. */
  readonly numbers: readonly CutNumber[];
}

/** A rectangle of the plan in millimetres. */
export function toMillimetres({ x, y, width, height }: Rectangle): Box {
  return {
    x: x / TICKS_PER_MM,
    y: y / TICKS_PER_MM,
    width: width / TICKS_PER_MM,
    height: height / TICKS_PER_MM,
  };
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

  function attempt(byNumber: ReadonlySet<number>): LayoutFigure {
    const labels = [...labelPieces(laidOut, pieces, byNumber, unit), ...leftoverLabels];
    const numbers = placeCutNumbers({
      width: laidOut.width / TICKS_PER_MM,
      height: laidOut.height / TICKS_PER_MM,
      cuts,
      labels: labels.map(({ label }) => label.box),
      pieces: boxes,
    });
    return { labels, cuts, numbers };
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

/** Labels of the pieces; of those listed under one of the numbers in `byNumber` the number alone. */
function labelPieces(
  laidOut: LaidOut,
  pieces: PieceList,
  byNumber: ReadonlySet<number>,
  unit: Unit,
): readonly FigureLabel[] {
  return laidOut.pieces.flatMap((piece, index) => {
    const entry = pieces.entryOf[index];
    if (entry === undefined) return [];
    const box = freeOfWindow(toMillimetres(piece), piece.window);
    const number = String(entry.number);
    const label = byNumber.has(entry.number)
      ? fitNumber(box, number)
      : fitLabel(box, {
          words: entry.words,
          mayShorten: !entry.shared,
          size: formatSize(entry.size.width, entry.size.height, { unit }),
          number,
        });
    return label === null ? [] : [{ of: idOf("piece", index), what: "piece" as const, label }];
  });
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

/** The largest band beside a piece's window, or the whole piece. */
export function freeOfWindow(piece: Box, window: Rectangle | null): Box {
  if (window === null) return piece;
  const hole = toMillimetres(window);
  const right = piece.x + piece.width;
  const bottom = piece.y + piece.height;
  const bands: readonly Box[] = [
    { ...piece, height: hole.y - piece.y },
    { ...piece, y: hole.y + hole.height, height: bottom - hole.y - hole.height },
    { ...piece, width: hole.x - piece.x },
    { ...piece, x: hole.x + hole.width, width: right - hole.x - hole.width },
  ];
  return bands.reduce((best, band) =>
    Math.min(band.width, band.height) > Math.min(best.width, best.height) ? band : best,
  );
}
