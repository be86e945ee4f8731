/**
 * What a die, a cutting machine or scissors cut out of a piece, where it lies. The shape lies in the middle of its upright
 * form; a piece turned a quarter clockwise has its point (x, y) at (h - y, x), where h is the height of its form.
 */

import type { Ticks } from "@sheetwright/measure";
import type { Rectangle, Size } from "@sheetwright/packing";
import type { FormMarks } from "@sheetwright/planner";
import { moved, type Outline, type Point, quarterTurned } from "@sheetwright/shapes";

type Die = NonNullable<FormMarks["die"]>;

/** A shape on a piece as it lies, in ticks from the top left corner of the piece. */
export interface LyingShape {
  /** The name of the die; `null`: a cutting machine, or scissors along the line. */
  readonly die: string | null;
  /** The box of what is cut. */
  readonly box: Rectangle;
  /** Empty where only the size of the die is known. */
  readonly outlines: readonly Outline[];
  readonly stitches: NonNullable<Die["stitches"]>;
  /** Lines along which it is cut straight afterwards, across its box. */
  readonly trims: readonly (readonly [Point, Point])[];
}

/** The shape in a form that lies upright or turned by a quarter. */
export function lyingShape(die: Die, form: Size, turned: boolean): LyingShape {
  const { cut, outline = [], stitches = { dashes: [], holes: [] }, trim } = die;
  const left = Math.floor((form.width - cut.width) / 2);
  const top = Math.floor((form.height - cut.height) / 2);
  const place = ({ x, y }: Point): Point =>
    turned ? { x: form.height - top - y, y: left + x } : { x: left + x, y: top + y };
  const [a, b] = [place({ x: 0, y: 0 }), place({ x: cut.width, y: cut.height })];
  return {
    die: die.name,
    box: {
      x: Math.min(a.x, b.x),
      y: Math.min(a.y, b.y),
      width: Math.abs(a.x - b.x),
      height: Math.abs(a.y - b.y),
    },
    outlines: outline.map((part) =>
      turned
        ? moved(quarterTurned(part, 1), { x: form.height - top, y: left })
        : moved(part, { x: left, y: top }),
    ),
    stitches: {
      dashes: stitches.dashes.map((dash) => dash.map(place)),
      holes: stitches.holes.map(({ centre, diameter }) => ({ centre: place(centre), diameter })),
    },
    trims: trim === undefined ? [] : trimLines(cut, trim).map(([from, to]) => [place(from), place(to)]),
  };
}

function trimLines(
  { width, height }: Size,
  trim: NonNullable<Die["trim"]>,
): readonly (readonly [Point, Point])[] {
  const level = (y: Ticks) =>
    [
      { x: 0, y },
      { x: width, y },
    ] as const;
  const upright = (x: Ticks) =>
    [
      { x, y: 0 },
      { x, y: height },
    ] as const;
  return [
    ...(trim.top > 0 ? [level(trim.top)] : []),
    ...(trim.right > 0 ? [upright(width - trim.right)] : []),
    ...(trim.bottom > 0 ? [level(height - trim.bottom)] : []),
    ...(trim.left > 0 ? [upright(trim.left)] : []),
  ];
}
