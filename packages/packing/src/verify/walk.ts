/** What a walk of a cut tree carries along, and what it gathers. */

import type { Rectangle } from "../model.js";
import type { Report } from "./finding.js";
import type { ProblemFacts, SheetFacts } from "./read-problem.js";

/** A piece by the size of its form, at the corner of its part, in sheet coordinates. */
export interface PlacedPiece extends Rectangle {
  readonly path: string;
}

/** Where a cut tree has its root: the usable part of a sheet, or a window. */
export interface Ground {
  readonly bounds: Rectangle;
  /** What a reader calls it: `sheet` or `window`. */
  readonly name: "sheet" | "window";
  /** On how many sheets it is there; `null` where the plan does not say it in a way that can be read. */
  readonly run: bigint | null;
  /** Filled during the walk. */
  readonly pieces: PlacedPiece[];
}

/** A split of the third level in shelf mode, with the pieces that it frees, counted during the walk. */
export interface LastTrim {
  readonly path: string;
  pieces: number;
}

/** A node that waits for its visit, with the part that it stands for in sheet coordinates. */
export interface Part extends Rectangle {
  readonly node: unknown;
  readonly path: string;
  readonly ground: Ground;
  /** Axis of the split above; `null` under anything else. */
  readonly axis: "x" | "y" | null;
  /** Levels of parallel cuts down to here. */
  readonly level: number;
  readonly lastTrim: LastTrim | null;
}

/** What all walks of a packing add up to. */
export interface Tally {
  /** Copies placed, by kind. */
  readonly placed: Map<string, bigint>;
  /** Layouts that hold kinds that belong together, by key. */
  readonly togetherIn: Map<string, Set<number>>;
  /** Sheets used, by id. */
  readonly used: Map<string, bigint>;
  /** Nodes that may still be visited: a cyclic or a monstrous tree must come to an end. */
  nodesLeft: number;
  /** False once something could not be counted, so that totals mean nothing. */
  isWhole: boolean;
}

/** One walk through the tree of one layout. */
export interface Walk {
  readonly facts: ProblemFacts;
  readonly sheet: SheetFacts;
  /** Index of the layout. */
  readonly layout: number;
  readonly report: Report;
  readonly tally: Tally;
  /** The nodes that wait; a stack of our own, for no depth of tree may overflow that of the engine. */
  readonly waiting: Part[];
  readonly grounds: Ground[];
  readonly lastTrims: LastTrim[];
  hasStoppedCuts: boolean;
}
