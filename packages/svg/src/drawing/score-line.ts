import { TICKS_PER_MM } from "@sheetwright/measure";
import type { Rectangle } from "@sheetwright/packing";
import type { PlacedPiece } from "../layout/lay-out.js";
import type { LyingScore } from "../layout/lying-marks.js";
import type { Box } from "./box.js";

/** Half of what is kept clear about a score's line. */
const CLEAR = 0.4;

/** A score's line on the sheet in millimetres, in one stretch or, where a window is opened in the piece, two. */
export interface ScoreLine {
  readonly score: LyingScore;
  /** Where the line stands: x of an upright one, y of a level one. */
  readonly at: number;
  /** Stretches along it: from y to y of an upright one, from x to x of a level one. */
  readonly stretches: readonly (readonly [from: number, to: number])[];
}

/** Works out where a score runs on its piece: from edge to edge, but not over the piece's window. */
export function scoreLine(piece: PlacedPiece, score: LyingScore): ScoreLine {
  const { upright } = score;
  const at = upright ? piece.x + score.at : piece.y + score.at;
  // Sums are of ticks, so that ends come out to the last bit where cuts and windows have them.
  const along = (box: Rectangle) =>
    upright ? ([box.y, box.y + box.height] as const) : ([box.x, box.x + box.width] as const);
  const across = (box: Rectangle) =>
    upright ? ([box.x, box.x + box.width] as const) : ([box.y, box.y + box.height] as const);

  const [start, end] = along(piece);
  const { window } = piece;
  const [first, last] = window === null ? [at, at] : across(window);
  const over = window !== null && at > first && at < last;
  const stretches = over
    ? [[start, along(window)[0]] as const, [along(window)[1], end] as const]
    : [[start, end] as const];
  return {
    score,
    at: at / TICKS_PER_MM,
    stretches: stretches
      .filter(([from, to]) => from < to)
      .map(([from, to]) => [from / TICKS_PER_MM, to / TICKS_PER_MM] as const),
  };
}

/** The stretches of a line as boxes that nothing else may meet. */
export function scoreBoxes({ score, at, stretches }: ScoreLine): readonly Box[] {
  return stretches.map(([from, to]) =>
    score.upright
      ? { x: at - CLEAR, y: from, width: 2 * CLEAR, height: to - from }
      : { x: from, y: at - CLEAR, width: to - from, height: 2 * CLEAR },
  );
}

/** The parts that a box falls into along some lines, row by row. */
export function partsBetween(box: Box, lines: readonly ScoreLine[]): readonly Box[] {
  if (lines.length === 0) return [box];
  const stops = (upright: boolean, from: number, to: number) => [
    from,
    ...lines.filter(({ score, at }) => score.upright === upright && at > from && at < to).map(({ at }) => at),
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
