import { discOf, type Hole, reversedRing, type Point as TickPoint } from "@sheetwright/shapes";
import type { PlacedPiece } from "../layout/lay-out.js";
import type { LyingShape } from "../layout/lying-shape.js";
import { type CutPath, nearestFirst, type Point, ringPath } from "./cut-path.js";

/** Stitches as paths of the blade in ticks: each dash a line of its own, each hole a small circle. */
export function stitchesAsPaths(
  { dashes, holes }: { readonly dashes: readonly (readonly TickPoint[])[]; readonly holes: readonly Hole[] },
  x: number,
  y: number,
): readonly CutPath[] {
  return [
    ...dashes.map(
      (dash): CutPath => ({
        points: dash.map((point): Point => [x + point.x, y + point.y]),
        closed: false,
      }),
    ),
    // A hole is cut out of paper, so it runs as windows do.
    ...holes.map((hole) => ringPath(reversedRing(discOf(hole).outer), x, y)),
  ];
}

/** The stitches of all shapes that a machine cuts, in the order that a blade reaches them from the sheet's corner. */
export function stitchPaths(shaped: ReadonlyMap<PlacedPiece, LyingShape>): readonly CutPath[] {
  return nearestFirst(
    [...shaped].flatMap(([{ x, y }, { stitches }]) => stitchesAsPaths(stitches, x, y)),
    [0, 0],
  );
}
