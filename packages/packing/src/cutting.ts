/**
 * Words for the work at the trimmer: what {@link cutOrder} returns. Coordinates are those of the whole sheet, trim
 * included, from its top left corner; lengths are in the caller's unit.
 */

import type { Rectangle } from "./model.js";

/** A rectangle that lies on the trimmer or leaves it. Numbered from 0, the sheet as bought. */
export interface CutPart extends Rectangle {
  readonly id: number;
  /**
   * What it is once no cut is left to make on it: a `piece`, an `offcut`, `waste` or a squared-off `trim`; else
   * `part`, or `sheet` for the sheet as bought.
   */
  readonly what: "sheet" | "part" | "piece" | "offcut" | "waste" | "trim";
  /**
   * Place in the cut tree as indices into `parts` of the splits, for what stands in the tree; else absent, as for the
   * rest of a strip. Every leaf that is not in a window has exactly one part, and so has the part that the tree divides.
   */
  readonly path?: readonly number[];
}

/** The side of a part that is laid against the fence. */
export type Edge = "left" | "right" | "top" | "bottom";

/** One pass of the blade, made on every sheet of the run. */
export interface Cut {
  /** 1 for the first cut. */
  readonly number: number;
  /** The part that is cut. */
  readonly part: number;
  /** The side of that part which is laid against the fence. */
  readonly edge: Edge;
  /** From the fence to the near side of the cut: the width of the part that stays held. */
  readonly distance: number;
  /** What lies between fence and blade afterwards. */
  readonly held: number;
  /** What comes off beyond the blade; `null` where the kerf takes it all. */
  readonly off: number | null;
  /** The blade's way, on the near side of the kerf, in sheet coordinates. */
  readonly line: { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number };
  readonly purpose: "trim" | "cut";
  /** True where the fence must be moved before this cut. */
  readonly newSetting: boolean;
  /** True where the held part is narrower than the tool can hold: cut along a metal ruler instead. */
  readonly tooNarrow: boolean;
}

/** The cuts of one layout in working order. */
export interface CutOrder {
  readonly parts: readonly CutPart[];
  readonly cuts: readonly Cut[];
  /** How often the fence is set. */
  readonly settings: number;
}

/** What the tool does and can do. */
export interface CutOrderOptions {
  /** Width lost by each cut (default 0, a knife or shear). */
  readonly kerf?: number | undefined;
  /** The narrowest width the tool can hold between fence and blade (default 0). */
  readonly narrowestHold?: number | undefined;
}
