import type { Point } from "./cut-path.js";
import { type StrokeText, strokeText } from "./stroke-text.js";

/** Things to measure, below the sheet, as strokes in millimetres. */
export interface CheckMarks {
  /** One entry a path: the two rulers, the square, and what is written beside them. */
  readonly paths: readonly { readonly strokes: readonly (readonly Point[])[]; readonly closed: boolean }[];
  /** How far right and down they reach. */
  readonly right: number;
  readonly bottom: number;
}

const INCH = 25.4;
const LEFT = 4;
const BELOW_SHEET = 8;
const TICK = 4;
const CAPITALS = 2.5;
/** Where a sheet is at least this wide the square stands beside the rulers. */
const WIDE = 190;

/** A 100 mm and a 4 in ruler and a 50 mm square, for a sheet of the given size. */
export function checkMarks(width: number, height: number): CheckMarks {
  const first = height + BELOW_SHEET;
  const second = first + 10;
  const beside = width >= WIDE;
  const square: Point = beside ? [LEFT + 132, first - TICK] : [LEFT, second + TICK + 6];
  const corners: readonly Point[] = [
    square,
    [square[0] + 50, square[1]],
    [square[0] + 50, square[1] + 50],
    [square[0], square[1] + 50],
  ];
  return {
    paths: [
      { strokes: ruler(first, 10, 10), closed: false },
      { strokes: ruler(second, INCH, 4), closed: false },
      { strokes: [corners], closed: true },
      written("100 mm", LEFT + 100 + 3, first),
      written("4 in", LEFT + 4 * INCH + 3, second),
      written("50 mm", square[0] + 3, square[1] + 25),
    ],
    right: beside ? square[0] + 50 + LEFT : LEFT + 130,
    bottom: square[1] + 50 + LEFT,
  };
}

/** A line with a tick at each step. */
function ruler(y: number, step: number, steps: number): readonly (readonly Point[])[] {
  const ticks = Array.from({ length: steps + 1 }, (_, i): readonly Point[] => [
    [LEFT + i * step, y - (i % steps === 0 ? TICK : TICK / 2)],
    [LEFT + i * step, y],
  ]);
  const line: readonly Point[] = [
    [LEFT, y],
    [LEFT + steps * step, y],
  ];
  return [line, ...ticks];
}

function written(text: string, left: number, y: number) {
  const laid: StrokeText = strokeText([text], CAPITALS);
  const across = left + laid.width / 2;
  return {
    strokes: laid.strokes.map((stroke) => stroke.map(([dx, dy]): Point => [across + dx, y - 1 + dy])),
    closed: false,
  };
}
