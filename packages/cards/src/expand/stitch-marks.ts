// The stitches of what is cut to a shape, and what a straight cut leaves of those that a die has pressed.

import type { Ticks } from "@sheetwright/measure";
import { moved, type Outline, type Point, type Stitches, stitch } from "@sheetwright/shapes";
import type { StitchMarks } from "../expansion.js";
import type { Stitched } from "../project.js";

/** What is kept of a plane by level and upright cuts: from one line to the other; `null` where there is none. */
export interface Kept {
  readonly left: Ticks | null;
  readonly right: Ticks | null;
  readonly top: Ticks | null;
  readonly bottom: Ticks | null;
}

/** A line of stitches in each of some outlines, as shapes makes it. */
export function stitchesIn(outlines: readonly Outline[], stitched: Stitched): readonly Stitches[] {
  const { by: _, ...options } = stitched;
  return outlines.map((outline) => stitch(outline, options));
}

/** All marks of some lines of stitches, moved. */
export function marksOf(all: readonly Stitches[], by: Point): StitchMarks {
  const shift = ({ x, y }: Point): Point => ({ x: x + by.x, y: y + by.y });
  return {
    dashes: all.flatMap(({ dashes }) => dashes.map((dash) => dash.map(shift))),
    holes: all.flatMap(({ holes }) =>
      holes.map(({ centre, diameter }) => ({ centre: shift(centre), diameter })),
    ),
  };
}

/** The same outlines, moved. */
export function allMoved(outlines: readonly Outline[], by: Point): readonly Outline[] {
  return outlines.map((outline) => moved(outline, by));
}

/** What cuts leave of marks: dashes are cut where they cross a line, holes stay or go by their middle. */
export function keptMarks({ dashes, holes }: StitchMarks, kept: Kept): StitchMarks {
  return {
    dashes: dashes.flatMap((dash) => keptParts(dash, kept)),
    holes: holes.filter(({ centre }) => isKept(centre, kept)),
  };
}

function isKept({ x, y }: Point, { left, right, top, bottom }: Kept): boolean {
  return x >= (left ?? x) && x <= (right ?? x) && y >= (top ?? y) && y <= (bottom ?? y);
}

/** A dash is short and nearly straight, so each of its steps is cut by itself, and steps that go on are joined. */
function keptParts(dash: readonly Point[], kept: Kept): readonly (readonly Point[])[] {
  const parts: Point[][] = [];
  for (const [index, to] of dash.entries()) {
    const from = dash[index - 1];
    if (from === undefined) continue;
    const step = keptStep(from, to, kept);
    if (step === null) continue;
    const [start, end] = step;
    const last = parts.at(-1);
    const before = last?.at(-1);
    if (last !== undefined && before?.x === start.x && before.y === start.y) last.push(end);
    else parts.push([start, end]);
  }
  return parts;
}

/** What is kept of a straight step (Liang and Barsky, 1984); `null` where nothing is, or no more than a point. */
function keptStep(from: Point, to: Point, kept: Kept): readonly [Point, Point] | null {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  let [first, last] = [0, 1];
  for (const [step, room] of [
    [-dx, kept.left === null ? null : from.x - kept.left],
    [dx, kept.right === null ? null : kept.right - from.x],
    [-dy, kept.top === null ? null : from.y - kept.top],
    [dy, kept.bottom === null ? null : kept.bottom - from.y],
  ] as const) {
    if (room === null) continue;
    if (step === 0 && room < 0) return null;
    if (step < 0) first = Math.max(first, room / step);
    if (step > 0) last = Math.min(last, room / step);
  }
  if (first >= last) return null;
  const at = (part: number): Point =>
    part === 0
      ? from
      : part === 1
        ? to
        : { x: Math.round(from.x + dx * part) + 0, y: Math.round(from.y + dy * part) + 0 };
  const [start, end] = [at(first), at(last)];
  return start.x === end.x && start.y === end.y ? null : [start, end];
}
