// How a fold divides a flat: the widths of its panels and the way each score folds. Seen with the outside of the card up
// and the front upright, from left to right (or from the top down), so that a card with one fold is [back, front].
//
//     side        | back | front |              z         | back W | W/2 | W/2 |
//     gate        | door W/2 | back W | door |  tri       | flap W - s | back | front |
//     accordion   | ... | 3 | 2 | front |       easel     | back | W/2 | W/2 |
//
// Allowances: print-finishing folding guides. Proportions of z, gate, double gate, shutter and easel: common practice.

import { inches, type Ticks } from "@sheetwright/measure";
import type { FoldDirection, FoldKind } from "../project.js";

/** A panel that folds inside another one is shorter by this (print-finishing folding guides: 1/16 to 3/32 in). */
export const SHORTER_INSIDE = inches(1 / 16);
/** In a roll fold each next inner panel is shorter by this (print-finishing folding guides). */
const SHORTER_IN_ROLL = inches(3 / 32);

/** The kinds of fold that come out of the size of the front; all but `own`. */
export type NamedFold = Exclude<FoldKind, "own">;

/** What a fold may be asked to do otherwise. */
export interface FoldMeasures {
  /** Panels of an accordion (default 3) or a roll (default 4). */
  readonly panels?: number | undefined;
  /** How much shorter the panel is that folds inside (tri, double-parallel); default 1/16 in. */
  readonly shorten?: Ticks | undefined;
  /** Gap in all between the two doors of a gate; default 0. */
  readonly gap?: Ticks | undefined;
}

/** Widths of panels, and between each two how they fold. */
export interface Panels {
  readonly widths: readonly Ticks[];
  readonly folds: readonly FoldDirection[];
}

/**
 * The panels of a fold for a front that is `front` ticks wide (high, for a fold along the height).
 *
 * @internal
 */
export function panelsOf(kind: NamedFold, front: Ticks, measures: FoldMeasures = {}): Panels {
  const { shorten = SHORTER_INSIDE, gap = 0 } = measures;
  const half = Math.floor(front / 2);
  switch (kind) {
    case "flat":
      return { widths: [front], folds: [] };
    case "side":
    case "top":
      return { widths: [front, front], folds: ["mountain"] };
    case "gate": {
      const short = Math.floor(gap / 2);
      return { widths: [front - half - (gap - short), front, half - short], folds: ["mountain", "mountain"] };
    }
    case "double-gate": {
      const share = (parts: number) => Math.round((front * parts) / 17);
      // From a 5 1/2 x 11 in flat: 1 3/4, 3 3/4, 4 1/4 and 1 1/4 in. That all fold the same way is from memory.
      return { widths: [share(5), front, share(15), share(7)], folds: ["mountain", "mountain", "mountain"] };
    }
    case "z":
      return { widths: [front, half, half], folds: ["mountain", "valley"] };
    case "tri":
      return { widths: [front - shorten, front, front], folds: ["mountain", "mountain"] };
    case "accordion": {
      const { panels = 3 } = measures;
      const folds = Array.from({ length: panels - 1 }, (_, i) =>
        (panels - 2 - i) % 2 === 0 ? "mountain" : "valley",
      );
      return { widths: Array.from({ length: panels }, () => front), folds };
    }
    case "easel":
      return { widths: [front, front - half, half], folds: ["mountain", "valley"] };
    case "roll": {
      const { panels = 4 } = measures;
      const widths = Array.from({ length: panels }, (_, index) => {
        const inner = Math.max(0, panels - 2 - index);
        return front - inner * SHORTER_IN_ROLL + (index === 0 && inner > 0 ? SHORTER_IN_ROLL - shorten : 0);
      });
      return { widths, folds: Array.from({ length: panels - 1 }, () => "mountain") };
    }
    case "double-parallel":
      return {
        widths: [front - shorten, front - shorten, front, front],
        folds: ["valley", "mountain", "mountain"],
      };
    case "shutter":
      return {
        widths: [half, front - half, front, front - half, half],
        folds: ["both", "both", "both", "both"],
      };
  }
}

/**
 * The front that a fold gives when the flat itself is as wide as the paper: for `tri` of 11 in, 3 11/16 in. What does not
 * divide evenly is taken up by the panel that lies innermost, so that the panels make up the flat to the tick. Rounded up
 * to 1/32 in, as print-finishing folding guides do.
 *
 * @internal
 */
export function frontOfFlat(kind: NamedFold, flat: Ticks, measures: FoldMeasures = {}): Ticks {
  const { gap = 0 } = measures;
  if (kind === "gate") return Math.floor((flat + gap) / 2);
  if (kind === "z" || kind === "easel" || kind === "side" || kind === "top") return Math.floor(flat / 2);
  if (kind === "flat") return flat;
  if (kind === "double-gate") return Math.floor((17 * flat) / 44);
  if (kind === "shutter") return Math.floor(flat / 3);
  const count = panelsOf(kind, flat, measures).widths.length;
  const missing = count * flat - panelsOf(kind, flat, measures).widths.reduce((sum, width) => sum + width, 0);
  const exact = (flat + missing) / count;
  if (kind === "accordion") return Math.floor(exact);
  return Math.ceil(exact / ROUNDED_UP_TO) * ROUNDED_UP_TO;
}

const ROUNDED_UP_TO = inches(1 / 32);
