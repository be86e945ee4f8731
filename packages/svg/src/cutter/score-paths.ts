import type { FoldDirection } from "@sheetwright/planner";
import { dashLine } from "../drawing/dash-line.js";
import { type PieceLine, scoreLine, slitLine } from "../drawing/score-line.js";
import type { LaidOut } from "../layout/lay-out.js";
import type { PlaceMarks } from "../layout/lying-marks.js";
import { type CutPath, endOf, nearestFirst, type Point } from "./cut-path.js";

/** How scores are written: as dashes, each a stroke of its own, or as whole lines. */
export type ScoreStyle = "dashed" | "solid";

/** Dash and gap of a score in a cutter file, in millimetres: paper that is pierced rather than creased folds well so. */
const DASH = 2;
const GAP = 1;

/**
 * The scores that fold so, of all pieces, in the order a tool reaches them from the sheet's corner, each as the strokes of one path, in
 * millimetres. No stroke runs over a window of its piece, where something else may lie.
 */
export function scorePaths(
  laidOut: LaidOut,
  marks: readonly PlaceMarks[],
  style: ScoreStyle,
  folds: readonly FoldDirection[],
): readonly (readonly (readonly Point[])[])[] {
  const lines = laidOut.pieces.flatMap((piece, index) =>
    (marks[index]?.scores ?? [])
      .filter((score) => folds.includes(score.folds))
      .flatMap((score) => strokesOf(scoreLine(piece, score))),
  );
  const paths = nearestFirst(lines, [0, 0]);
  return paths.map((path) => {
    const [start, end] = [path.points[0] as Point, endOf(path)];
    return style === "solid" ? [path.points] : dashes(start, end);
  });
}

/** The slits of all pieces, each stretch a path, in millimetres; none runs over a window of its piece. */
export function slitPaths(laidOut: LaidOut, marks: readonly PlaceMarks[]): readonly CutPath[] {
  const lines = laidOut.pieces.flatMap((piece, index) =>
    (marks[index]?.slits ?? []).flatMap((slit) => strokesOf(slitLine(piece, slit))),
  );
  return nearestFirst(lines, [0, 0]);
}

function strokesOf({ upright, at, stretches }: PieceLine): readonly CutPath[] {
  return stretches.map(([from, to]): CutPath => {
    const points: readonly [Point, Point] = upright
      ? [
          [at, from],
          [at, to],
        ]
      : [
          [from, at],
          [to, at],
        ];
    return { points, closed: false };
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
