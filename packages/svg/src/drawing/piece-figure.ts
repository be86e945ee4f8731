/** What stands on one piece: its label beside its scores, the mark of its top, and the dimensions of the scores. */

import { formatLength, type Unit } from "@sheetwright/measure";
import type { PlacedPiece } from "../layout/lay-out.js";
import type { PlaceMarks, TopEdge } from "../layout/lying-marks.js";
import type { LyingShape } from "../layout/lying-shape.js";
import type { Box } from "./box.js";
import { type FittedLabel, fitLabel, fitNumber, type LabelText } from "./fit-label.js";
import { freeOfWindow } from "./free-of-window.js";
import { insideShape, meetsShape } from "./inside-shape.js";
import { dimensionBoxes, mayHoldDimension, placeDimension, type ScoreDimension } from "./score-dimension.js";
import {
  lineBoxes,
  type PieceLine,
  partsBetween,
  type ScoreLine,
  type SlitLine,
  scoreLine,
  slitLine,
  straightCutLines,
} from "./score-line.js";
import { toMillimetres } from "./to-millimetres.js";
import { belowTop, placeTop, smallestTop, type TopMark } from "./top-mark.js";

/** A score and, where there is room for it, its dimension. */
export interface PieceScore {
  readonly line: ScoreLine;
  readonly dimension: ScoreDimension | null;
}

/** Everything that stands on a piece, in millimetres on the sheet. */
export interface PieceFigure {
  readonly label: FittedLabel | null;
  readonly scores: readonly PieceScore[];
  readonly slits: readonly SlitLine[];
  readonly top: TopMark | null;
  /** Lines along which its shape is cut straight afterwards. */
  readonly straightCuts: readonly PieceLine[];
}

/**
 * Settles what stands on a piece. The label goes into the part beside the scores where it reads best, the top next, and
 * dimensions where room is left. With `numberOnly` the number stands for the label, and scores are left to the list.
 */
export function pieceFigure(
  piece: PlacedPiece,
  { scores, slits: lyingSlits, top: edge, shape }: PlaceMarks,
  text: LabelText,
  numberOnly: boolean,
  unit: Unit,
): PieceFigure {
  const box = toMillimetres(piece);
  const lines = scores.map((score) => scoreLine(piece, score));
  const slits = lyingSlits
    .map((slit) => slitLine(piece, slit))
    // A window may leave nothing of a slit.
    .filter(({ stretches }) => stretches.length > 0);
  const isDrawn = shape !== null && shape.outlines.length > 0;
  const straightCuts = isDrawn ? straightCutLines(piece, shape) : [];
  const labelIn = (free: Box) =>
    labelInShape(shape, piece, free, (part) =>
      labelBeside([...lines, ...slits, ...straightCuts], part, text, numberOnly),
    );
  const hole = piece.window === null ? [] : [toMillimetres(piece.window)];
  const clear = [...[...lines, ...slits, ...straightCuts].flatMap(lineBoxes), ...hole];

  const free = freeOfWindow(box, piece.window);
  let label = labelIn(free);
  let top: TopMark | null = null;
  if (edge !== null) {
    const beside = (found: FittedLabel | null) => (found === null ? clear : [...clear, found.box]);
    top = placeTop(box, edge, beside(label));
    if (top === null) {
      label = labelIn(belowTop(free, edge));
      top = placeTop(box, edge, beside(label));
    }
    if (top === null) {
      label = null;
      top = smallestTop(box, edge, depthAt(box, edge, hole[0]));
    }
  }

  const taken = [...hole, ...(label === null ? [] : [label.box]), ...(top === null ? [] : [top.box])];
  // The nearest to its edge is dimensioned first, so that longer dimensions stand behind shorter ones.
  const dimensions = new Map<ScoreLine, ScoreDimension>();
  for (const line of [...lines].sort((a, b) => a.score.distance - b.score.distance)) {
    const words = `score at ${formatLength(line.score.distance, { unit })}`;
    if (numberOnly || !mayHoldDimension(box, words)) continue;
    const others = lines.filter(({ score }) => score.upright === line.score.upright).map(({ at }) => at);
    const found = placeDimension(line, words, {
      piece: box,
      taken: [...taken, ...[...dimensions.values()].flatMap(dimensionBoxes)],
      scores: [...lines, ...slits].flatMap(lineBoxes),
      others,
    });
    if (found !== null) dimensions.set(line, found);
  }
  return {
    label,
    top,
    scores: lines.map((line) => ({ line, dimension: dimensions.get(line) ?? null })),
    slits,
    straightCuts,
  };
}

/** The boxes on a piece that cut numbers keep clear of. */
export function pieceBoxes({ label, scores, slits, top, straightCuts }: PieceFigure): readonly Box[] {
  return [
    ...(label === null ? [] : [label.box]),
    ...(top === null ? [] : [top.box]),
    ...scores.flatMap(({ line, dimension }) => [
      ...lineBoxes(line),
      ...(dimension === null ? [] : dimensionBoxes(dimension)),
    ]),
    ...[...slits, ...straightCuts].flatMap(lineBoxes),
  ];
}

/** The label inside the shape that is drawn on the piece, where it says as much there, so that lines keep clear of it. */
function labelInShape(
  shape: LyingShape | null,
  piece: PlacedPiece,
  free: Box,
  labelIn: (part: Box) => FittedLabel | null,
): FittedLabel | null {
  const label = labelIn(free);
  if (label === null || shape === null) return label;
  const inner = insideShape(shape, piece, free)
    .map(labelIn)
    .filter((one) => one?.shows === label.shows);
  const clear = inner.find((one) => one !== null && !meetsShape(shape, piece, one.box));
  return clear ?? inner[0] ?? label;
}

const SHOWS = ["all", "short", "name", "number"] as const;

/** The label in the part beside the scores where most of it fits, then largest, then where most room is. */
function labelBeside(
  lines: readonly PieceLine[],
  free: Box,
  text: LabelText,
  numberOnly: boolean,
): FittedLabel | null {
  const labelIn = (box: Box) =>
    numberOnly && text.number !== null ? fitNumber(box, text.number) : fitLabel(box, text);
  if (lines.length === 0) return labelIn(free);
  let best: { readonly label: FittedLabel; readonly rank: readonly number[] } | null = null;
  for (const part of partsBetween(free, lines)) {
    const label = labelIn(part);
    if (label === null) continue;
    // Scores are measured from the left and top, so that of equal parts the last has most room.
    const rank = [
      SHOWS.indexOf(label.shows),
      -(label.lines[0]?.size ?? 0),
      -Math.round(part.width * part.height),
    ];
    if (best === null || isNoWorse(rank, best.rank)) best = { label, rank };
  }
  return best?.label ?? null;
}

function isNoWorse(rank: readonly number[], other: readonly number[]): boolean {
  for (const [i, value] of rank.entries()) {
    const difference = value - (other[i] ?? 0);
    if (difference !== 0) return difference < 0;
  }
  return true;
}

/** How deep the piece is from an edge on, up to its window. */
function depthAt(box: Box, edge: TopEdge, hole: Box | undefined): number {
  if (edge === "top") return hole === undefined ? box.height : hole.y - box.y;
  return hole === undefined ? box.width : box.x + box.width - hole.x - hole.width;
}
