/**
 * The paths that free every piece of a sheet, in working order: windows, then the pieces that lie in windows (deepest
 * first), then the pieces of the sheet itself; among pieces side by side the edges between two of them before those
 * round the outside, so that nothing comes loose too early. Lengths are ticks; nothing is rounded.
 *
 * With `once` an edge that pieces share is cut a single time, edges that lie on the sheet's own are not cut, and stretches
 * of one line are joined; a piece that shares no edge keeps its closed outline. With `closed` every piece has its own.
 *
 * A piece that a machine cuts to a shape is cut by the outlines of that shape alone, windows first.
 */

import type { Rectangle } from "@sheetwright/packing";
import type { LaidOut, PlacedPiece } from "../layout/lay-out.js";
import type { LyingShape } from "../layout/lying-shape.js";
import { type CutPath, endOf, nearestFirst, type Point, rectangleOutline, ringPath } from "./cut-path.js";
import { type Interval, mergeIntervals, overlapsAny, subtractIntervals } from "./intervals.js";

/** How the edges of pieces side by side are cut. */
export type Edges = "once" | "closed";

/** Works out the paths of a layout. */
export function cutPaths(
  laidOut: LaidOut,
  edges: Edges,
  shapes: readonly (LyingShape | null)[],
): readonly CutPath[] {
  const { pieces, windows, width, height } = laidOut;
  const deepest = pieces.reduce((most, { level }) => Math.max(most, level), 0);
  const shaped = machineShapes(laidOut, shapes);
  const byLevel = Array.from({ length: deepest + 1 }, (_, i) => ({
    plain: pieces.filter((piece) => piece.level === deepest - i && !shaped.has(piece)),
    shaped: pieces.flatMap((piece) => {
      const shape = piece.level === deepest - i ? shaped.get(piece) : undefined;
      return shape === undefined ? [] : [{ x: piece.x, y: piece.y, shape }];
    }),
  }));

  const batches: (readonly CutPath[])[] = [];
  if (edges === "closed") {
    batches.push(windows.map((window) => rectangleOutline(window, false)));
    for (const level of byLevel)
      batches.push(
        ...outlinesOf(level.shaped),
        level.plain.map((piece) => rectangleOutline(piece, true)),
      );
  } else {
    const done = new Map<string, Interval[]>();
    markDone(done, edgesOf({ x: 0, y: 0, width, height }));
    batches.push(...cutOnce(windows, false, done));
    for (const level of byLevel)
      batches.push(...outlinesOf(level.shaped), ...cutOnce(level.plain, true, done));
  }

  const ordered: CutPath[] = [];
  let at: Point = [0, 0];
  for (const batch of batches) {
    const next = nearestFirst(batch, at);
    ordered.push(...next);
    const last = next.at(-1);
    if (last !== undefined) at = endOf(last);
  }
  return ordered;
}

/** The pieces that are cut by the outline of a shape, each with it: those of a machine whose outline is known. */
export function machineShapes(
  { pieces }: LaidOut,
  shapes: readonly (LyingShape | null)[],
): ReadonlyMap<PlacedPiece, LyingShape> {
  const found = new Map<PlacedPiece, LyingShape>();
  pieces.forEach((piece, index) => {
    const shape = shapes[index] ?? null;
    if (shape !== null && shape.die === null && shape.outlines.length > 0) found.set(piece, shape);
  });
  return found;
}

/** All windows of shapes, then their outer lines. */
function outlinesOf(
  shaped: readonly { readonly x: number; readonly y: number; readonly shape: LyingShape }[],
): readonly (readonly CutPath[])[] {
  const outlines = shaped.flatMap(({ x, y, shape }) => shape.outlines.map((outline) => ({ x, y, outline })));
  return [
    outlines.flatMap(({ x, y, outline }) => outline.windows.map((window) => ringPath(window, x, y))),
    outlines.map(({ x, y, outline }) => ringPath(outline.outer, x, y)),
  ];
}

/** One side of a rectangle: a stretch of the line `line`, with the rectangle before it (left, above) or after it. */
interface Edge {
  readonly line: string;
  readonly upright: boolean;
  readonly at: number;
  readonly stretch: Interval;
  readonly before: boolean;
}

function edgesOf({ x, y, width, height }: Rectangle): readonly Edge[] {
  const edge = (upright: boolean, at: number, from: number, to: number, before: boolean): Edge => ({
    line: `${upright ? "x" : "y"} ${at}`,
    upright,
    at,
    stretch: [from, to],
    before,
  });
  return [
    edge(false, y, x, x + width, false),
    edge(true, x + width, y, y + height, true),
    edge(false, y + height, x, x + width, true),
    edge(true, x, y, y + height, false),
  ];
}

function markDone(done: Map<string, Interval[]>, edges: readonly Edge[]): void {
  for (const { line, stretch } of edges) {
    const stretches = done.get(line);
    if (stretches === undefined) done.set(line, [stretch]);
    else stretches.push(stretch);
  }
}

/** Cuts what is not done yet of all edges: first the stretches between two rectangles, then the rest. */
function cutOnce(
  rectangles: readonly Rectangle[],
  clockwise: boolean,
  done: Map<string, Interval[]>,
): readonly (readonly CutPath[])[] {
  const edges = rectangles.map(edgesOf);
  const byLine = new Map<string, Edge[]>();
  for (const edge of edges.flat()) {
    const others = byLine.get(edge.line);
    if (others === undefined) byLine.set(edge.line, [edge]);
    else others.push(edge);
  }

  const between: CutPath[] = [];
  const around: CutPath[] = [];
  const closed = new Set<Edge>();
  rectangles.forEach((rectangle, index) => {
    const own = edges[index] ?? [];
    const stands = own.every((edge) => {
      const others = (byLine.get(edge.line) ?? []).filter((other) => other !== edge);
      return !overlapsAny(edge.stretch, [
        ...others.map(({ stretch }) => stretch),
        ...(done.get(edge.line) ?? []),
      ]);
    });
    if (!stands) return;
    around.push(rectangleOutline(rectangle, clockwise));
    for (const edge of own) closed.add(edge);
  });

  for (const [line, all] of byLine) {
    const open = all.filter((edge) => !closed.has(edge));
    const first = open[0];
    if (first === undefined) continue;
    const stretches = open.map(({ stretch }) => stretch);
    const before = mergeIntervals(open.filter((edge) => edge.before).map(({ stretch }) => stretch));
    const after = mergeIntervals(open.filter((edge) => !edge.before).map(({ stretch }) => stretch));
    for (const [from, to] of subtractIntervals(stretches, done.get(line) ?? [])) {
      const holds = (side: readonly Interval[]) => side.some((other) => other[0] <= from && to <= other[1]);
      const points: readonly Point[] = first.upright
        ? [
            [first.at, from],
            [first.at, to],
          ]
        : [
            [from, first.at],
            [to, first.at],
          ];
      (holds(before) && holds(after) ? between : around).push({ points, closed: false });
    }
  }
  markDone(done, edges.flat());
  return [between, around];
}
