// What is cut to a shape with all that lies beneath it: mats of the next dies up, and a shadow. The shapes lie middle of box
// on middle of box; what is cut straight off one is cut off all, along the same lines:
//
//        .-----.          the disc and the scalloped mat under it are cut whole,
//       ( .---. )         then both along one line, so that both stand on it
//      ( (     ) )
//     ------------- cut
//       ( '---' )

import { inches, type Size, type Ticks } from "@sheetwright/measure";
import {
  type Box,
  boxOf,
  boxOfAll,
  type Die,
  intersection,
  moved,
  type NextUp,
  nextUp,
  type Outline,
  outlineOf,
  quarterTurned,
  type Shape,
  shadowOf,
  sizeOf,
} from "@sheetwright/shapes";
import type { PieceDie, Reveal, StitchMarks } from "../expansion.js";
import type { Choice, DieCut, DieMat, DieSize, Sides, Stitched } from "../project.js";
import { allMoved, type Kept, keptMarks, marksOf, stitchesIn } from "./stitch-marks.js";
import type { Rectangle } from "./surface.js";

/** A layer of a stack, the place told from the box of the shape on top before anything is cut off it. */
export interface StackPart extends Rectangle {
  readonly role: "top" | "mat" | "shadow";
  /** Where it stands in the file. */
  readonly path: string;
  readonly paper: Choice;
  /** From its own top left corner, after the straight cut. */
  readonly outline: readonly Outline[];
  readonly stitches: StitchMarks | null;
  readonly blank: Size;
  readonly die: PieceDie;
  /** Border that it gives, for a mat. */
  readonly reveal: Pick<Reveal, "wanted" | "least" | "most"> | null;
}

/** Why there is no such stack. */
export type StackFault =
  | { readonly what: "nothing-left"; readonly path: string }
  | { readonly what: "no-stitches"; readonly path: string; readonly part: StackPart["role"] }
  | { readonly what: "no-die"; readonly path: string; readonly mat: DieMat; readonly found: NextUp };

/** A shape before anything is cut off it. */
interface Whole {
  readonly outline: readonly Outline[];
  readonly box: Box;
  readonly stitched: Stitched | undefined;
}

type Stack = readonly StackPart[] | StackFault;

/**
 * Stacks that were worked out before, by all that they follow from: a project is worked out again by all that looks into it,
 * and offsets and borders take their time. What comes out is the same with and without.
 */
const KNOWN = new Map<string, Stack>();
const MOST_KNOWN = 64;

/**
 * The layers of a stack from the top down, or what is wrong with it. The layer must have a shape. Blanks that are reckoned
 * here are rounded up to the precision.
 *
 * @internal
 */
export function dieStack(layer: DieCut, precision: Ticks): Stack {
  const { layers: _, place: __, foam: ___, grain: ____, name: _____, ...own } = layer;
  const key = JSON.stringify([precision, own]);
  const known = KNOWN.get(key);
  if (known !== undefined) return known;
  const stack = workOutStack(layer, precision);
  if (KNOWN.size >= MOST_KNOWN) KNOWN.clear();
  KNOWN.set(key, stack);
  return stack;
}

function workOutStack(layer: DieCut, precision: Ticks): Stack {
  const { path, shape, paper, mats = [], shadow } = layer;
  if (shape === undefined) throw new RangeError(`${path}: the die has no shape.`);
  const kept = keptOf(layer);
  let whole: Whole = { ...wholeOf([outlineOf(shape)]), stitched: layer.stitched };
  const top = partOf(
    { role: "top", path, paper, name: layer.die, shape, blank: layer.blank, precision },
    whole,
    kept,
  );
  if ("what" in top) return top;
  const parts: StackPart[] = [top];
  for (const [index, mat] of mats.entries()) {
    const matPath = `${path}.mats[${index}]`;
    const found = nextUp(whole.outline[0] as Outline, mat.border - hairOf(mat.border), diesOf(mat));
    const { next } = found;
    if (next === null) return { what: "no-die", path: matPath, mat, found };
    const size = mat.sizes[Number(next.die.name)] as DieSize;
    const listed = outlineOf(size.shape as Shape);
    const turned = next.isTurned ? quarterTurned(listed, 1) : listed;
    const own = boxOf(turned);
    const { box } = whole;
    const lies = moved(turned, {
      x: box.x + Math.floor((box.width - own.width) / 2) - own.x,
      y: box.y + Math.floor((box.height - own.height) / 2) - own.y,
    });
    whole = { ...wholeOf([lies]), stitched: size.stitched };
    const blank = next.isTurned ? { width: size.blank.height, height: size.blank.width } : size.blank;
    const part = partOf(
      {
        role: "mat",
        path: matPath,
        paper: mat.paper,
        name: mat.die,
        shape: size.shape as Shape,
        blank,
        precision,
      },
      whole,
      kept,
    );
    if ("what" in part) return part;
    parts.push({ ...part, reveal: { wanted: mat.border, ...next.border } });
  }
  if (shadow !== undefined) {
    const { border, fillGaps, margin } = shadow;
    const grown = shadowOf(whole.outline, { border, fill: fillGaps }).outlines;
    whole = { ...wholeOf(grown), stitched: undefined };
    const { width, height } = whole.box;
    const blank = { width: width + 2 * margin, height: height + 2 * margin };
    const part = partOf(
      {
        role: "shadow",
        path: `${path}.shadow`,
        paper: shadow.paper,
        name: null,
        shape: null,
        blank,
        precision,
      },
      whole,
      kept,
    );
    if ("what" in part) return part;
    parts.push(part);
  }
  return parts;
}

/**
 * So much less than the wanted border counts as it: no hand glues nearer. A nested set of ovals, each 1/4 in larger both ways,
 * shows a hair less than 1/8 in where they bend most.
 */
function hairOf(border: Ticks): Ticks {
  return Math.min(inches(1 / 64), Math.floor(border / 8));
}

function diesOf({ sizes }: DieMat): readonly Die[] {
  return sizes.flatMap(({ shape }, index) => (shape === undefined ? [] : [{ name: String(index), shape }]));
}

/** The lines of the straight cuts. */
function keptOf({ trim, cut }: DieCut): Kept {
  const { left = 0, right = 0, top = 0, bottom = 0 } = trim ?? {};
  return {
    left: left > 0 ? left : null,
    right: right > 0 ? cut.width - right : null,
    top: top > 0 ? top : null,
    bottom: bottom > 0 ? cut.height - bottom : null,
  };
}

function wholeOf(outline: readonly Outline[]): Pick<Whole, "outline" | "box"> {
  return { outline, box: boxOfAll(outline) };
}

interface PartFacts {
  readonly role: StackPart["role"];
  readonly path: string;
  readonly paper: Choice;
  readonly name: string | null;
  readonly shape: Shape | null;
  /** For the whole shape. */
  readonly blank: Size;
  readonly precision: Ticks;
}

function partOf(facts: PartFacts, whole: Whole, kept: Kept): StackPart | StackFault {
  const { role, path, paper, name, shape, blank, precision } = facts;
  const left = cutStraight(whole, kept);
  if (left.length === 0) return { what: "nothing-left", path: `${path}.trim` };
  const box = boxOfAll(left);
  const corner = { x: 0 - box.x, y: 0 - box.y };
  const outline = allMoved(left, corner);
  const { stitched } = whole;
  const isPressed = stitched?.by === "die";
  const lines = stitched === undefined ? [] : stitchesIn(isPressed ? whole.outline : left, stitched);
  const all = marksOf(lines, { x: 0, y: 0 });
  const marks = isPressed ? keptMarks(all, kept) : all;
  const isBare = marks.dashes.length === 0 && marks.holes.length === 0;
  if (stitched !== undefined && isBare) return { what: "no-stitches", path, part: role };
  const stitches = stitched === undefined ? null : movedMarks(marks, corner);
  const { x, y, width, height } = box;
  const die =
    name === null
      ? {
          name,
          cut: { width, height },
          ...shapeOf(shape),
          outline,
          ...(stitches === null ? {} : { stitches }),
        }
      : dieOf({ name, shape, whole, pressed: isPressed ? all : null, trim: trimOf(whole.box, kept) });
  // Without a die the blank need not hold what is cut off.
  const own =
    name === null
      ? {
          width: roundedUp(blank.width - whole.box.width + width, precision),
          height: roundedUp(blank.height - whole.box.height + height, precision),
        }
      : { width: blank.width, height: blank.height };
  return { role, path, paper, x, y, width, height, outline, stitches, blank: own, die, reveal: null };
}

/** A blank is cut by marks. */
function roundedUp(length: Ticks, precision: Ticks): Ticks {
  return Math.ceil(length / precision) * precision;
}

function dieOf({
  name,
  shape,
  whole,
  pressed,
  trim,
}: {
  readonly name: string;
  readonly shape: Shape | null;
  readonly whole: Whole;
  readonly pressed: StitchMarks | null;
  readonly trim: Sides | null;
}): PieceDie {
  const { x, y, width, height } = whole.box;
  const corner = { x: 0 - x, y: 0 - y };
  return {
    name,
    cut: { width, height },
    ...shapeOf(shape),
    outline: allMoved(whole.outline, corner),
    ...(pressed === null ? {} : { stitches: movedMarks(pressed, corner) }),
    ...(trim === null ? {} : { trim }),
  };
}

function shapeOf(shape: Shape | null): Pick<PieceDie, "shape" | "across"> {
  if (shape === null) return {};
  const size = sizeOf(shape);
  const { shape: name } = shape;
  return { shape: name, ...("diameter" in size ? { across: size.diameter } : {}) };
}

function movedMarks(
  { dashes, holes }: StitchMarks,
  by: { readonly x: Ticks; readonly y: Ticks },
): StitchMarks {
  return {
    dashes: dashes.map((dash) => dash.map(({ x, y }) => ({ x: x + by.x, y: y + by.y }))),
    holes: holes.map(({ centre: { x, y }, diameter }) => ({
      centre: { x: x + by.x, y: y + by.y },
      diameter,
    })),
  };
}

/** What level and upright cuts leave of a shape. */
function cutStraight({ outline, box }: Whole, kept: Kept): readonly Outline[] {
  const { left, right, top, bottom } = kept;
  if (left === null && right === null && top === null && bottom === null) return outline;
  const from = { x: left ?? box.x - 1, y: top ?? box.y - 1 };
  const to = { x: right ?? box.x + box.width + 1, y: bottom ?? box.y + box.height + 1 };
  if (from.x >= to.x || from.y >= to.y) return [];
  const frame: Outline = {
    outer: [{ to: { x: to.x, y: from.y } }, { to }, { to: { x: from.x, y: to.y } }, { to: from }],
    windows: [],
  };
  return intersection(outline, [frame]);
}

/** What the cuts take off the sides of a box. */
function trimOf({ x, y, width, height }: Box, { left, right, top, bottom }: Kept): Sides | null {
  const sides = {
    left: left === null ? 0 : Math.max(0, left - x),
    right: right === null ? 0 : Math.max(0, x + width - right),
    top: top === null ? 0 : Math.max(0, top - y),
    bottom: bottom === null ? 0 : Math.max(0, y + height - bottom),
  };
  return Object.values(sides).some((length) => length > 0) ? sides : null;
}
