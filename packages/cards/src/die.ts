/**
 * What dies and cutting machines make of paper, as a project describes it: a part of the model in project.ts, which gives
 * it out. All plain data; lengths are ticks.
 */

import type { Size, Ticks } from "@sheetwright/measure";
import type { Shape } from "@sheetwright/shapes";
import type { Choice } from "./layer.js";

/** The machine that presses dies through paper. */
export interface DieMachine {
  /** The width and the length of the plates that a die blank and its die must fit between, in either turn. */
  readonly platform: Size;
  /** What a die blank has more on each side where nothing else is said. */
  readonly margin: Ticks;
  /** Paper between two cuts that is narrower than this tears and curls. */
  readonly narrowestBridge: Ticks;
  /** Whether several shapes of a size may be cut from one strip where that saves paper; absent: yes. */
  readonly strips?: boolean | undefined;
}

/** One size of a die. */
export interface DieSize {
  /** The shape by the catalogue of shapes; absent where only its size is known: a rectangle is drawn. */
  readonly shape?: Shape | undefined;
  /** Width and height of the shape that it cuts: the box of its outline. */
  readonly cut: Size;
  /** What is cut from the sheet. */
  readonly blank: Size;
  /** The line of stitches in it; absent: none. */
  readonly stitched?: Stitched | undefined;
}

/** A line of stitches inside the edge of a shape. */
export interface Stitched {
  /** `die`: pressed as the shape is cut, before anything is cut off it. `hand`: made afterwards, by hand or by a machine. */
  readonly by: "die" | "hand";
  /** From the edge to the line. */
  readonly inset: Ticks;
  readonly marks: "dashes" | "holes";
  /** How long a stitch should be; absent: as usual. */
  readonly dash?: Ticks | undefined;
  /** How far apart stitches should be; absent: as usual. */
  readonly gap?: Ticks | undefined;
  /** Stitches to the inch, instead of one of the two or both. */
  readonly perInch?: number | undefined;
}

/** A mat beneath a die cut: cut by the smallest die of a set that shows the wanted border all round. */
export interface DieMat {
  readonly paper: Choice;
  /** The name of the die. */
  readonly die: string;
  /** The least border that is to show of it on what lies on it. */
  readonly border: Ticks;
  /** The sizes that there are of the die. */
  readonly sizes: readonly DieSize[];
}

/** A layer of contrasting paper beneath a die cut: its outline, grown. */
export interface Shadow {
  readonly paper: Choice;
  /** How far it is grown. */
  readonly border: Ticks;
  /** Gaps and windows up to this wide are filled. */
  readonly fillGaps: Ticks;
  /** What its blank has more on each side. */
  readonly margin: Ticks;
}
