import { dashLine } from "../drawing/dash-line.js";
import { scoreLine } from "../drawing/score-line.js";
import type { LaidOut } from "../layout/lay-out.js";
import type { PlaceMarks } from "../layout/lying-marks.js";
import { endOf, nearestFirst, type Point } from "./cut-path.js";

/** How scores are written: as dashes, each a stroke of its own, or as whole lines. */
export type ScoreStyle = "dashed" | "solid";

/** Dash and gap of a score in a cutter file, in millimetres: paper that is pierced rather than creased folds well so. */
const DASH = 2;
const GAP = 1;

/**
 * The scores of all pieces in the order a tool reaches them from the sheet's corner, each as the strokes of one path, in
 * millimetres. No stroke runs over a window of its piece, where something else may lie.
 */
export function scorePaths(
  laidOut: LaidOut,
  marks: readonly PlaceMarks[],
  style: ScoreStyle,
): readonly (readonly (readonly Point[])[])[] {
  const lines = laidOut.pieces.flatMap((piece, index) =>
    (marks[index]?.scores ?? []).flatMap((score) => {
      const { at, stretches } = scoreLine(piece, score);
      return stretches.map(([from, to]): readonly [Point, Point] =>
        score.upright
          ? [
              [at, from],
              [at, to],
            ]
          : [
              [from, at],
              [to, at],
            ],
      );
    }),
  );
  const paths = nearestFirst(
    lines.map((points) => ({ points, closed: false })),
    [0, 0],
  );
  return paths.map((path) => {
    const [start, end] = [path.points[0] as Point, endOf(path)];
    return style === "solid" ? [path.points] : dashes(start, end);
  });
}

/** A level or upright line as dashes from its start to its end. */
function dashes(start: Point, end: Point): readonly (readonly Point[])[] {
  const length = Math.abs(end[0] - start[0]) + Math.abs(end[1] - start[1]);
  const point = (at: number): Point => [
    start[0] + Math.sign(end[0] - start[0]) * at,
    start[1] + Math.sign(end[1] - start[1]) * at,
  ];
  return dashLine(length, DASH, GAP).map(([from, to]) => [point(from), to === length ? end : point(to)]);
}
