import type { Ticks } from "@sheetwright/measure";
import type { Edge, Outline } from "../outline/outline.js";
import { rounded } from "../outline/point.js";
import { angleOf } from "../outline/sines.js";
import { checkLength, checkSides } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { arcTo, axisOf, mapped, mirroredBoth, type Path, reversedPath } from "./path.js";
import {
  deepestTangent,
  depthParameter,
  LEAST_DEPTH,
  LEAST_PITCH,
  leastPitch,
  pitchParameter,
  type Scallops,
  scallopArc,
  usualPitch,
} from "./scallop.js";

/** A rectangle with an edge of scallops. */
export interface ScallopedRectangleShape {
  readonly shape: "scalloped-rectangle";
  readonly width: Ticks;
  readonly height: Ticks;
  /** How wide a scallop is meant to be from valley to valley. Default: 3/8 in, at most a fifth of the shorter side. */
  readonly pitch?: Ticks | undefined;
  /** How far a scallop rises over the line between its valleys. Default: so far that neighbours touch: half circles. */
  readonly depth?: Ticks | undefined;
}

/** A square with an edge of scallops. */
export interface ScallopedSquareShape {
  readonly shape: "scalloped-square";
  readonly side: Ticks;
  /** How wide a scallop is meant to be from valley to valley. Default: 3/8 in, at most a fifth of the side. */
  readonly pitch?: Ticks | undefined;
  /** How far a scallop rises over the line between its valleys. Default: so far that neighbours touch: half circles. */
  readonly depth?: Ticks | undefined;
}

/**
 * How far the pitches along width and height may differ, in parts of the narrower one, where counts whose pitches lie within a
 * quarter of the wish allow it. Where none do, as in small shapes of few scallops, the counts are taken that differ least.
 */
export const SAME_PITCH = 0.02;

/** How far the pitch may lie from the wish for the sake of equal pitches. */
const NEAR_WISH = 0.25;

/** The catalogue's entry. */
export const scallopedRectangleEntry = {
  id: "scalloped-rectangle",
  title: "Scalloped rectangle",
  about: "A rectangle with a whole number of scallops along each side and one round each corner.",
  parameters: [
    sizeParameter("width", "How wide it is, over its scallops.", "5 mm"),
    sizeParameter("height", "How high it is, over its scallops.", "5 mm"),
    pitchParameter("1 mm to a quarter of the shorter side, at most 1000 scallops"),
    { ...depthParameter, range: "0.1 mm to three eighths of the pitch" },
  ],
  symmetry: "upright and level",
} as const satisfies CatalogueEntry;

/** The catalogue's entry. */
export const scallopedSquareEntry = {
  id: "scalloped-square",
  title: "Scalloped square",
  about: "A square with a whole number of scallops along each side and one round each corner.",
  parameters: [
    sizeParameter("side", "How long its sides are, over the scallops.", "5 mm"),
    pitchParameter("1 mm to a quarter of the side, at most 1000 scallops"),
    { ...depthParameter, range: "0.1 mm to three eighths of the pitch" },
  ],
  symmetry: "upright and level; the same at every quarter turn",
} as const satisfies CatalogueEntry;

/**
 * A square is a rectangle.
 *
 * @internal
 */
export function asRectangle({ side, pitch, depth, ...rest }: ScallopedSquareShape): Scalloped {
  return { ...rest, width: side, height: side, pitch, depth };
}

type Scalloped = Omit<ScallopedRectangleShape, "shape"> & { readonly shape: string };

/**
 * The outline of a scalloped rectangle.
 *
 *        ___  ___  ___ ,           scallops of half circles, or flatter, between valleys at one depth s
 *      _/   \/   \/   \/ \         below all four sides; the one round a corner has the radius r of the others and
 *     /                r  \        touches both sides: about three quarters of a circle
 *     \                 _ /
 *      >               <           width = 2 e + m pitch,  e = r + sqrt(2 r s - s^2)
 *
 * Of a rectangle whose sides do not take a whole number of one pitch the pitches differ a little; where they do, those of the
 * wider pitch are a little flatter, so that the depth is the same all round.
 *
 * @internal
 */
export function scallopedRectangleOutline(shape: Scalloped): Outline {
  const { width, height } = shape;
  const { across, down, corner } = solve(shape);
  const axis = axisOf(width);
  const top = mapped(rowFromCorner(width, across, corner), ({ x, y }) => ({
    x: x === axis ? axis : width - x,
    y,
  }));
  const side = mapped(rowFromCorner(height, down, corner), ({ x, y }) => ({ x: width - y, y: x }));
  const { radius, half } = corner;
  const circle = { centre: { x: width - radius, y: radius }, radius };
  const edges = [
    ...reversedPath(top).edges,
    ...arcTo(circle, -Math.PI / 2 - half, -Math.PI / 2, { x: Math.round(width - radius), y: 0 }),
    ...arcTo(circle, -Math.PI / 2, 0, { x: width, y: Math.round(radius) }),
    ...arcTo(circle, 0, half, side.start),
    ...side.edges,
  ];
  return { outer: mirroredBoth({ start: reversedPath(top).start, edges }, width, height), windows: [] };
}

/**
 * How its scallops came out.
 *
 * @internal
 */
export function scallopedRectangleScallops(shape: Scalloped): Scallops {
  const { across, down, corner } = solve(shape);
  return {
    count: 2 * (across.count + down.count) + 4,
    depth: corner.depth,
    rows: [
      { along: "width", ...across },
      { along: "height", ...down },
    ],
  };
}

interface Row {
  /** Without those at the corners. */
  readonly count: number;
  readonly pitch: number;
}

interface Corner {
  readonly depth: number;
  readonly radius: number;
  /** By how much it turns further to either side than the quarter of a plain round corner, in radians. */
  readonly half: number;
  /** From the edge of the box to where it ends. */
  readonly end: number;
}

interface Solution {
  readonly across: Row;
  readonly down: Row;
  readonly corner: Corner;
}

/** Half of a row, from its valley at the corner to the middle: x along the side from the edge of the box, y inwards. */
function rowFromCorner(length: Ticks, { count, pitch }: Row, { depth, end }: Corner): Path {
  const valley = Math.round(depth);
  const axis = axisOf(length);
  const isOdd = count % 2 === 1;
  const whole = Math.floor(count / 2);
  const edges = Array.from({ length: whole }, (_, index): Edge => {
    const isLast = index === whole - 1 && !isOdd;
    return {
      through: rounded(end + (index + 0.5) * pitch, 0),
      to: { x: isLast ? axis : Math.round(end + (index + 1) * pitch), y: valley },
    };
  });
  const { radius, half } = scallopArc(pitch / 2, depth);
  const middle = { centre: { x: length / 2, y: radius }, radius };
  const last = isOdd ? arcTo(middle, -Math.PI / 2 - half, -Math.PI / 2, { x: axis, y: 0 }) : [];
  return { start: rounded(end, depth), edges: [...edges, ...last] };
}

/** Corners of flat scallops are no rounder than this part of a pitch. */
const ROUNDEST_CORNER = 0.75;

function cornerOf(pitch: number, wished: Ticks | undefined): Corner {
  const deepest = (deepestTangent(0, pitch / 2) * pitch) / 2;
  const depth = Math.min(wished ?? deepest, deepest);
  const radius = Math.min(scallopArc(pitch / 2, depth).radius, ROUNDEST_CORNER * pitch);
  const out = Math.sqrt(2 * radius * depth - depth * depth);
  return { depth, radius, half: angleOf(radius - depth, out), end: radius + out };
}

/** So many halvings take any length below a thousandth of a tick. */
const HALVINGS = 40;

/** The pitch at which a side takes so many scallops and its two corners; the length grows with the pitch. */
function pitchOf(length: Ticks, count: number, depth: Ticks | undefined): number {
  let low = 0;
  let high = length / count;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (count * middle + 2 * cornerOf(middle, depth).end > length) high = middle;
    else low = middle;
  }
  return low;
}

function solve({ shape, width, height, pitch: given, depth }: Scalloped): Solution {
  checkSides(shape, { width, height }, 5 * LEAST_PITCH);
  const shorter = Math.min(width, height);
  const wish = given ?? usualPitch(shorter, 2 * (width + height));
  checkLength(wish, {
    shape,
    key: "pitch",
    least: leastPitch(2 * (width + height)),
    most: Math.floor(shorter / 4),
    because: "a quarter of the shorter side, and at most a thousand scallops",
    help: "Use another pitch or another size.",
  });
  if (depth !== undefined) {
    checkLength(depth, {
      shape,
      key: "depth",
      least: LEAST_DEPTH,
      most: Math.floor((wish * (1 - NEAR_WISH)) / 2),
      because:
        "three eighths of the wished pitch, so that neighbours do not overlap; leave it out for half circles",
      help: "Make the scallops shallower or wider.",
    });
  }
  const fewest = Math.max(1, Math.floor(width / wish / (1 + 2 * NEAR_WISH)) - 3);
  let best: { readonly solution: Solution; readonly rank: readonly [number, number] } | null = null;
  for (let count = fewest; ; count += 1) {
    const pitch = pitchOf(width, count, depth);
    for (const solution of fits(width, height, count, pitch, depth)) {
      const rank = rankOf(solution, wish);
      if (best === null || rank[0] < best.rank[0] || (rank[0] === best.rank[0] && rank[1] < best.rank[1]))
        best = { solution, rank };
    }
    if (best !== null && pitch < wish * (1 - NEAR_WISH)) return best.solution;
  }
}

/** With so many scallops along the width: the two nearest counts along the height. */
function fits(
  width: Ticks,
  height: Ticks,
  count: number,
  pitch: number,
  depth: Ticks | undefined,
): readonly Solution[] {
  const fewer = Math.max(1, Math.floor((height - 2 * cornerOf(pitch, depth).end) / pitch));
  return [fewer, fewer + 1].map((other) => {
    const narrower = Math.min(pitch, pitchOf(height, other, depth));
    const corner = cornerOf(narrower, depth);
    return {
      across: { count, pitch: (width - 2 * corner.end) / count },
      down: { count: other, pitch: (height - 2 * corner.end) / other },
      corner,
    };
  });
}

/** Lower is better: first by group, then by how far off. */
function rankOf({ across, down }: Solution, wish: number): readonly [number, number] {
  const difference = Math.abs(across.pitch - down.pitch) / Math.min(across.pitch, down.pitch);
  const off = Math.max(Math.abs(across.pitch / wish - 1), Math.abs(down.pitch / wish - 1));
  if (off > NEAR_WISH) return [2, off];
  return difference <= SAME_PITCH ? [0, off] : [1, difference];
}
