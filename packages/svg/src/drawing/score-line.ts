import { TICKS_PER_MM } from "@sheetwright/measure";
import type { Rectangle } from "@sheetwright/packing";
import type { PlacedPiece } from "../layout/lay-out.js";
import type { LyingScore, LyingSlit } from "../layout/lying-marks.js";
import type { LyingShape } from "../layout/lying-shape.js";
import type { Box } from "./box.js";

/** Half of what is kept clear about a line. */
const CLEAR = 0.4;

/** A line over a piece, in millimetres on the sheet, in one stretch or, where a window is opened in the piece, two. */
export interface PieceLine {
  readonly upright: boolean;
  /** Where the line stands: x of an upright one, y of a level one. */
  readonly at: number;
  /** Stretches along it: from y to y of an upright one, from x to x of a level one. */
  readonly stretches: readonly (readonly [from: number, to: number])[];
}

/** The line of a score. */
export interface ScoreLine extends PieceLine {
  readonly score: LyingScore;
}

/** The line of a slit. */
export interface SlitLine extends PieceLine {
  readonly slit: LyingSlit;
}

/** Works out where a score runs on its piece: from edge to edge, but not over the piece's window. */
export function scoreLine(piece: PlacedPiece, score: LyingScore): ScoreLine {
  const length = score.upright ? piece.height : piece.width;
  return { score, ...pieceLine(piece, { ...score, from: 0, to: length }) };
}

/** Works out where a slit runs on its piece, but not over the piece's window. */
export function slitLine(piece: PlacedPiece, slit: LyingSlit): SlitLine {
  return { slit, ...pieceLine(piece, slit) };
}

/** How far the line of a straight cut reaches over its shape on both sides, in ticks, where the piece has room. */
const OVER = 2 * TICKS_PER_MM;

/** The lines along which the shape on a piece is cut straight afterwards. */
export function straightCutLines(piece: PlacedPiece, { trims }: LyingShape): readonly PieceLine[] {
  const lines = trims.map(([from, to]) =>
    from.x === to.x
      ? pieceLine(piece, {
          upright: true,
          at: from.x,
          from: Math.max(0, Math.min(from.y, to.y) - OVER),
          to: Math.min(piece.height, Math.max(from.y, to.y) + OVER),
        })
      : pieceLine(piece, {
          upright: false,
          at: from.y,
          from: Math.max(0, Math.min(from.x, to.x) - OVER),
          to: Math.min(piece.width, Math.max(from.x, to.x) + OVER),
        }),
  );
  // A window may leave nothing of a line.
  return lines.filter(({ stretches }) => stretches.length > 0);
}

function pieceLine(piece: PlacedPiece, line: Pick<LyingSlit, "upright" | "at" | "from" | "to">): PieceLine {
  const { upright } = line;
  const at = upright ? piece.x + line.at : piece.y + line.at;
  // Sums are of ticks, so that ends come out to the last bit where cuts and windows have them.
  const along = (box: Rectangle) =>
    upright ? ([box.y, box.y + box.height] as const) : ([box.x, box.x + box.width] as const);
  const across = (box: Rectangle) =>
    upright ? ([box.x, box.x + box.width] as const) : ([box.y, box.y + box.height] as const);

  const [corner] = along(piece);
  const [start, end] = [corner + line.from, corner + line.to];
  const { window } = piece;
  const [first, last] = window === null ? [at, at] : across(window);
  const over = window !== null && at > first && at < last;
  const stretches = over
    ? [[start, Math.min(end, along(window)[0])] as const, [Math.max(start, along(window)[1]), end] as const]
    : [[start, end] as const];
  return {
    upright,
    at: at / TICKS_PER_MM,
    stretches: stretches
      .filter(([from, to]) => from < to)
      .map(([from, to]) => [from / TICKS_PER_MM, to / TICKS_PER_MM] as const),
  };
}

/** The stretches of a line as boxes that nothing else may meet. */
export function lineBoxes({ upright, at, stretches }: PieceLine): readonly Box[] {
  return stretches.map(([from, to]) =>
    upright
      ? { x: at - CLEAR, y: from, width: 2 * CLEAR, height: to - from }
      : { x: from, y: at - CLEAR, width: to - from, height: 2 * CLEAR },
  );
}

/** The parts that a box falls into along some lines, row by row. */
export function partsBetween(box: Box, lines: readonly PieceLine[]): readonly Box[] {
  if (lines.length === 0) return [box];
  const stops = (upright: boolean, from: number, to: number) => [
    from,
    ...lines
      .filter((line) => line.upright === upright && line.at > from && line.at < to)
      .map(({ at }) => at)
      .sort((a, b) => a - b),
    to,
  ];
  const xs = stops(true, box.x, box.x + box.width);
  const ys = stops(false, box.y, box.y + box.height);
  return ys.slice(1).flatMap((bottom, row) =>
    xs.slice(1).map((right, column): Box => {
      const x = xs[column] as number;
      const y = ys[row] as number;
      return { x, y, width: right - x, height: bottom - y };
    }),
  );
}
