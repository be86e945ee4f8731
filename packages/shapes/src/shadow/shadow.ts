/**
 * Makes the layer that shows round a word or a motif as a border of its own paper.
 *
 * Method: the motif is grown by the border; then all that a disc of the width `fill` cannot reach from outside is filled
 * (the closing of mathematical morphology: Serra, Image Analysis and Mathematical Morphology, 1982), by growing further by
 * half of it and shrinking back. So windows and bays narrower than `fill` close, sharp inner corners become round, and
 * every opening that is left can be swept by a disc of that width. Where two round parts come near each other the throat
 * between them may stay narrower, since discs reach it from both sides.
 */

import { LONGEST_LENGTH, TICKS_PER_INCH, type Ticks } from "@sheetwright/measure";
import { difference, union } from "../clip/combine.js";
import { offset } from "../offset/offset.js";
import { type Outline, reversedRing } from "../outline/outline.js";
import { joinNear } from "./join-near.js";

/** How a shadow layer should be. */
export interface ShadowOptions {
  /** The width that shows all round. */
  readonly border: Ticks;
  /**
   * Gaps narrower than this are filled; 0 fills none. Default: 3/32 in, the narrowest slot of a steel-rule die (steel-rule
   * die maker guidance).
   */
  readonly fill?: Ticks | undefined;
  /** `fill`: no windows at all are left. Default: `keep`, those wide enough. */
  readonly windows?: "keep" | "fill" | undefined;
  /**
   * Parts of the layer nearer to each other than this are joined by a neck as wide as a line with its border would be.
   * Default: 0, none but those that `fill` joins.
   */
  readonly join?: Ticks | undefined;
}

/** A shadow layer. */
export interface Shadow {
  /** One for each part. */
  readonly outlines: readonly Outline[];
  /** Windows of the motif of which nothing is left open. */
  readonly closedWindows: number;
  /** Windows of the layer. */
  readonly windows: number;
  /** How many parts fewer than the motif it has, because some grew together. */
  readonly joined: number;
}

/**
 * Makes the shadow layer of outlines that belong together: grown by a border, with small gaps filled.
 *
 * Off by at most some ticks (0.01 mm). Throws a RangeError for lengths that are no whole ticks from 0 to 10 m, and for a
 * border of 0.
 *
 * @example
 * const frame = difference(
 *   [outlineOf({ shape: "rectangle", width: 16000, height: 16000 })],
 *   [moved(outlineOf({ shape: "rectangle", width: 6000, height: 6000 }), { x: 5000, y: 5000 })],
 * );
 * shadowOf(frame, { border: 1000, fill: 3000 }).windows // => 1
 * shadowOf(frame, { border: 1600, fill: 3000 }).closedWindows // => 1
 */
export function shadowOf(
  outlines: readonly Outline[],
  { border, fill = (3 * TICKS_PER_INCH) / 32, windows = "keep", join = 0 }: ShadowOptions,
): Shadow {
  checkLength("the border of a shadow", border, 1);
  checkLength("the width of gaps to fill", fill, 0);
  checkLength("the distance at which parts are joined", join, 0);
  const motif = union(outlines);
  const radius = Math.ceil(fill / 2);
  const closed = closedBy(motif, border, radius);
  const near = joinNear(closed, join, border);
  // What joins parts leaves narrow corners of its own.
  const joined = near.length < closed.length ? closedBy(near, 0, radius) : closed;
  const filled = windows === "fill" ? union(joined.map(({ outer }) => ({ outer, windows: [] }))) : joined;
  return {
    outlines: filled,
    closedWindows: windowsOf(motif).filter((window) => difference([window], filled).length === 0).length,
    windows: filled.reduce((sum, part) => sum + part.windows.length, 0),
    joined: motif.length - filled.length,
  };
}

function closedBy(outlines: readonly Outline[], border: Ticks, radius: Ticks): readonly Outline[] {
  const grown = offset(outlines, border + radius).outlines;
  return radius === 0 ? grown : offset(grown, -radius).outlines;
}

/** The windows of outlines as outlines of their own. */
function windowsOf(outlines: readonly Outline[]): readonly Outline[] {
  return outlines.flatMap(({ windows }) =>
    windows.map((window) => ({ outer: reversedRing(window), windows: [] })),
  );
}

function checkLength(what: string, value: number, least: Ticks): void {
  if (!Number.isInteger(value) || value < least || value > LONGEST_LENGTH) {
    throw new RangeError(
      `Expected ${what} in whole ticks, at least ${least} and up to 10 m, found ${String(value)}.`,
    );
  }
}
