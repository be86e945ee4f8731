/**
 * What a die, a cutting machine or scissors cut out of a piece, where it lies. A shape lies in the middle of its upright
 * form, those of a strip where the marks say; a piece turned a quarter clockwise has its point (x, y) at (h - y, x), where h is the height of its form.
 */

import type { Ticks } from "@sheetwright/measure";
import type { Rectangle, Size } from "@sheetwright/packing";
import type { FormMarks } from "@sheetwright/planner";
import { moved, type Outline, type Point, quarterTurned } from "@sheetwright/shapes";

type Die = NonNullable<FormMarks["die"]>;

/** What is cut out of a piece as it lies, in ticks from the top left corner of the piece: one shape, or those of a strip. */
export interface LyingShape {
  /** The name of the die; `null`: a cutting machine, or scissors along the line. */
  readonly die: string | null;
  /** How many shapes are cut: in a strip several. */
  readonly count: number;
  /** The box of what is cut, of a strip that of its first shape. */
  readonly box: Rectangle;
  /** Empty where only the size of the die is known. */
  readonly outlines: readonly Outline[];
  readonly stitches: NonNullable<Die["stitches"]>;
  /** Lines along which it is cut straight afterwards, each across the box of its shape. */
  readonly trims: readonly (readonly [Point, Point])[];
}

/** The shape in a form that lies upright or turned by a quarter; those of a strip from the left or the top of the upright form. */
export function lyingShape(
  { die, shapesAt }: Pick<FormMarks, "shapesAt"> & { readonly die: Die },
  form: Size,
  turned: boolean,
): LyingShape {
  const middle = {
    x: Math.floor((form.width - die.cut.width) / 2),
    y: Math.floor((form.height - die.cut.height) / 2),
  };
  const shapes = (shapesAt ?? [middle]).map((corner) => shapeAt(die, form, turned, corner));
  return {
    die: die.name,
    count: shapes.length,
    box: (shapes[0] ?? shapeAt(die, form, turned, middle)).box,
    outlines: shapes.flatMap(({ outlines }) => outlines),
    stitches: {
      dashes: shapes.flatMap(({ stitches }) => stitches.dashes),
      holes: shapes.flatMap(({ stitches }) => stitches.holes),
    },
    trims: shapes.flatMap(({ trims }) => trims),
  };
}

function shapeAt(die: Die, form: Size, turned: boolean, { x: left, y: top }: Point): LyingShape {
  const { cut, outline = [], stitches = { dashes: [], holes: [] }, trim } = die;
  const place = ({ x, y }: Point): Point =>
    turned ? { x: form.height - top - y, y: left + x } : { x: left + x, y: top + y };
  const [a, b] = [place({ x: 0, y: 0 }), place({ x: cut.width, y: cut.height })];
  return {
    die: die.name,
    count: 1,
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
