import type { PossibleCut } from "./find-cuts.js";

/** One cut on all members of a shape. */
export interface Step {
  readonly shape: number;
  readonly cut: PossibleCut;
}

/** How the trimmer is set: the fence's distance and the blade's direction; unset before the first cut. */
export interface Setup {
  readonly distance: number | undefined;
  readonly axis: "x" | "y" | undefined;
}

/** An order of cuts, and what it costs beyond the set-up it starts from. */
export interface Order {
  readonly steps: readonly Step[];
  readonly settings: number;
  readonly quarterTurns: number;
}

/** Says whether an order takes fewer settings, or as many with fewer quarter turns. */
export function isBetterOrder(a: Order, b: Order): boolean {
  return a.settings !== b.settings ? a.settings < b.settings : a.quarterTurns < b.quarterTurns;
}
