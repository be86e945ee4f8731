/**
 * What a list of pieces, or a project, takes of sheets of several sizes, for several numbers of copies. All plain data;
 * lengths are ticks.
 */

import type { Size } from "@sheetwright/measure";
import type { Effort } from "@sheetwright/packing";

/** A size of sheet that is compared, width x height as it lies with its pattern upright. */
export interface ComparedSize extends Size {
  /** Unique among the sizes, such as `us-letter`. */
  readonly id: string;
  /** What a reader sees. */
  readonly name: string;
  /** Cost of one sheet as decimal text with up to four decimals; `null` where it is not known. */
  readonly cost: string | null;
}

/** What one number of copies takes of sheets of one size. */
export interface ComparisonRow {
  /** Id of the size. */
  readonly size: ComparedSize["id"];
  readonly copies: number;
  /** Pieces that no sheet of the size is large enough for; where there are any, nothing else is told. */
  readonly tooLarge: readonly string[];
  /** Sheets that all pieces take; `null` where not all can be cut. */
  readonly sheets: number | null;
  /** No plan uses fewer sheets, proven; `null` where not all can be cut. */
  readonly atLeast: number | null;
  /** Areas of all sheets and of all pieces in square ticks, as decimal text since they may pass 2^53. */
  readonly sheetArea: string | null;
  readonly pieceArea: string | null;
  /** Part of the sheets' area that becomes no piece, in percent with one decimal, rounded to nearest. */
  readonly wastePercent: number | null;
  /** Part of the sheets' area that is left in parts worth keeping, in the same way. */
  readonly keptPercent: number | null;
  /** Edge-to-edge cuts on all sheets; a stack cut at once counts each of its sheets. */
  readonly cuts: number | null;
  /** Different layouts. */
  readonly layouts: number | null;
  /** The copies that the sheets were planned for: more than asked where no plan for fewer takes fewer sheets. */
  readonly plannedFor: number | null;
  /** What the sheets cost, as decimal text; `null` where that is not known. */
  readonly cost: string | null;
}

/** All sizes with all numbers of copies: sizes in the order given, and for each its copies in the order given. */
export interface Comparison {
  readonly sizes: readonly ComparedSize[];
  readonly copies: readonly number[];
  readonly rows: readonly ComparisonRow[];
  readonly search: { readonly effort: Effort; readonly seed: number };
}
