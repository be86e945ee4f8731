/**
 * A plan of a whole project: what is cut from which paper, what is left, what is missing, and how sure that is. All plain
 * data; lengths are ticks of 1/1600 mm, sizes lie as on the sheet with its pattern upright.
 */

import type {
  Card,
  Expansion,
  FoldDirection,
  NoPaper,
  Piece,
  PieceDie,
  Score,
  Slit,
} from "@sheetwright/cards";
import type { Size, Ticks } from "@sheetwright/measure";
import type { Effort, Packing, Problem } from "@sheetwright/packing";
import type { RollCut } from "./items/cut-rolls.js";

/** What {@link plan} answers. `title`, `units`, `papers`, `cards` and `pieces` are the project worked out. */
export interface Plan extends Expansion {
  readonly version: 1;
  /**
   * Is there enough? `yes`: every piece of every copy is planned, and there is enough of every item. `no`: proven that these
   * papers, or these items, cannot give all. `not-found`: the search found less than asked, and nothing proves that it cannot
   * be done.
   */
  readonly enough: "yes" | "no" | "not-found";
  /** Papers that are planned together, since some piece may come from any of them, in the order of the project. */
  readonly groups: readonly PaperGroup[];
  /** Pieces that no paper they may be cut from is large enough for; they are in no group. */
  readonly noPaper: readonly NoPaper[];
  /** How many copies of each card the plan has every piece of, and every item that the project says something of. */
  readonly complete: readonly CompleteCopies[];
  /** What is missing, paper by paper and piece by piece; empty where there is enough. */
  readonly shortages: readonly Shortage[];
  /** Sheets used and left of each design of each paper, in the order of the project. */
  readonly use: readonly PaperUse[];
  /** What it takes of each item that the project says something of, in its order; absent where it says nothing. */
  readonly itemUse?: readonly ItemUse[] | undefined;
  /** Leftovers by paper and size, the largest first. */
  readonly leftovers: readonly PaperLeftover[];
  /** How the grain lies at the folds, base by base. */
  readonly folds: readonly FoldGrain[];
  /** Cost of the sheets used, as decimal text; `null` where a used paper has no cost. */
  readonly cost: string | null;
  /** What the work costs, and that with the sheets; absent where the project has no rates. */
  readonly costs?: PlanCosts | undefined;
  readonly search: {
    readonly effort: Effort;
    readonly seed: number;
    /** The linear-programming solver used, or `none`. */
    readonly lp: string;
    /** True where the search was ended early, so that another run may give another plan. */
    readonly cancelled: boolean;
  };
}

/** How many copies of a card a plan has every piece of. */
export interface CompleteCopies {
  readonly card: Card["number"];
  /** Copies asked for: those of guests and samples. */
  readonly wanted: number;
  /** How many of these are complete. */
  readonly complete: number;
  /**
   * The wish for copies more, and how many of them the plan has besides. None are made where some copy that is asked for is
   * not complete. Absent where none are wished for.
   */
  readonly spares?: { readonly wished: number; readonly made: number } | undefined;
}

/** What the work on a plan's complete copies and spares costs, as decimal text. */
export interface PlanCosts {
  /** The sign or name of the currency; `null` where not given. */
  readonly currency: string | null;
  /** The copies and spares that are reckoned with. */
  readonly copies: number;
  /** Minutes of work; `null` where the project does not say how many a copy takes. */
  readonly minutes: string | null;
  /** Cost of that work, rounded up to hundredths; `null` where the project does not say what an hour costs. */
  readonly work: string | null;
  /** Cost of work and sheets; `null` where one of them is not known. */
  readonly total: string | null;
}

/** Papers planned together, with the packing of all pieces that come from them. */
export interface PaperGroup {
  /** Ids of the designs of papers, in the order of the project. */
  readonly designs: readonly string[];
  /** Kinds are pieces (`3b`) with those of spare copies, or {@link PaperStrip strips} of them (`3b*4`); sheets are designs (`stars.comets`) and their offcuts (`stars.comets/1`). */
  readonly problem: Problem;
  readonly packing: Packing;
  /**
   * How many bags each hold these sheets whole: problem and packing are those of one bag, all else of the plan counts all of
   * them. Absent where the papers are cut for all together.
   */
  readonly bags?: number | undefined;
  /** Every design of a paper that a sheet of the problem is of, with the offcut's place in its list from 1. */
  readonly sheets: readonly {
    readonly sheet: string;
    readonly design: string;
    readonly offcut: number | null;
  }[];
  /** The kinds that are strips for several shapes of a die blank; absent where every die blank is cut by itself. */
  readonly strips?: readonly PaperStrip[] | undefined;
  /**
   * What bounds every way to cut the group's die blanks, in whatever strips: the same papers and copies with each blank no
   * larger than its share of a strip without end. Absent where no piece of the group may be cut in strips.
   */
  readonly endless?: { readonly problem: Problem; readonly packing: Packing } | undefined;
}

/**
 * A kind that is a strip: several shapes of a piece side by side, with one margin between neighbours. A group has strips
 * only where everything is planned.
 */
export interface PaperStrip {
  /** The id of the kind: `3b*4`. */
  readonly kind: string;
  /** The die blank that it stands for several of. */
  readonly piece: Piece["id"];
  /** How many shapes it holds. */
  readonly holds: number;
  /** For each form of the kind the side of the upright piece that its shapes lie side by side along. */
  readonly along: readonly ("width" | "height")[];
}

/** What is missing from one group of papers; where it is planned bag by bag, of all bags, and `withMore` is of one. */
export interface Shortage {
  /** Index of the group. */
  readonly group: number;
  /** `short` where it is proven, for all ways to cut die blanks in strips too. */
  readonly outcome: "short" | "not-found";
  readonly pieces: readonly { readonly piece: Piece["id"]; readonly missing: number }[];
  /**
   * More sheets of each design with which a plan for all pieces was found; empty where the search did not find one or was
   * ended early.
   */
  readonly wouldHelp: readonly { readonly design: string; readonly more: number }[];
  /**
   * No plan for all pieces of the group uses fewer sheets, offcuts counted, however many there are; proven. `null` where
   * that was not worked out, as where die blanks may be cut in strips.
   */
  readonly atLeast: number | null;
  /**
   * What proves the two: a plan for all pieces of the group with as many sheets as it takes; `null` where none was found.
   * Sheets whose id ends in `+` are sheets more of the design before it.
   */
  readonly withMore: { readonly problem: Problem; readonly packing: Packing } | null;
}

/** What a plan takes of one design of a paper. */
export interface PaperUse {
  readonly design: string;
  /** Whole sheets cut into. */
  readonly used: number;
  /** Whole sheets left; `null` where as many as needed are. */
  readonly left: number | null;
  /** Offcuts from earlier that are cut into. */
  readonly offcutsUsed: number;
}

/** What a plan takes of a ribbon, a tape or an extra that the project says something of. It is short where more is needed than there is. */
export interface ItemUse {
  /** Its name in the project. */
  readonly item: string;
  /** Rolls, or single ones, on hand; `null`: as many as needed. */
  readonly onHand: number | null;
  /** What all copies that are asked for, and the spares that are made, take of all bags: the fewest that were found. */
  readonly needed: number;
  /** They take no fewer, however lengths are cut; proven. */
  readonly atLeast: number;
  /** What is taken: all that is needed, or where the item is short what the complete copies take. */
  readonly used: number;
  /** How many bags each hold the rolls that are cut; absent where they are cut for all, and for what is counted singly. */
  readonly bags?: number | undefined;
  /** How the rolls that are used are cut, of one bag; absent for what is counted singly. */
  readonly cuts?: readonly RollCut[] | undefined;
  /** How all that are needed would be cut, of one bag; absent where the item is not short. */
  readonly withMore?: readonly RollCut[] | undefined;
}

/** Leftovers of one size. */
export interface PaperLeftover extends Size {
  readonly design: string;
  readonly count: number;
  /** True where it reaches the smallest size worth keeping. */
  readonly keep: boolean;
}

/** How many of a base's copies have the grain along the fold. */
export interface FoldGrain {
  readonly piece: string;
  readonly along: number;
  readonly across: number;
  /** Copies from paper whose grain is not known. */
  readonly unknown: number;
  /** Copies from paper that has none, such as handmade paper. */
  readonly none: number;
}

/** What drawings of the group's layouts show besides the layout: what only the trade knows of sheets and pieces. */
export interface LayoutMarks {
  /** By the id of the sheet. */
  readonly sheets: Readonly<Record<string, SheetMarks>>;
  /** By the id of the kind, one entry for each of its forms. */
  readonly forms: Readonly<Record<string, readonly FormMarks[]>>;
}

/** What is drawn on a sheet as a whole. */
export interface SheetMarks {
  readonly grain: "width" | "height" | "none" | "unknown";
  /** Whether the grain is only what such paper mostly has; absent where it is given, or not known. */
  readonly grainIsAssumed?: true | undefined;
  readonly pattern: "none" | "two-way" | "one-way";
  /** The colour of the paper, `#rrggbb`. */
  readonly colour: string;
}

/** What is drawn on a piece. */
export interface FormMarks {
  /** Scores of the upright form: the side divided, how far along it, and the way it folds (`mountain` where absent). */
  readonly scores: readonly (Pick<Score, "along" | "at"> & { readonly folds?: FoldDirection | undefined })[];
  /** Cuts inside the upright form that free strips of it; absent where there are none. */
  readonly slits?: readonly Slit[] | undefined;
  /** The die that cuts its shape out of the middle of the form; absent where none does. */
  readonly die?: PieceDie | undefined;
  /**
   * Where the die cuts several shapes out of a strip: the top left corner of each `die.cut`, from that of the upright form;
   * absent where it cuts one, in the middle.
   */
  readonly shapesAt?: readonly { readonly x: Ticks; readonly y: Ticks }[] | undefined;
  /** Sheets on which the piece's top is marked, since the pattern is one-way. */
  readonly topOn: readonly string[];
  /** Sheets from which the piece is cut with the printed back showing. */
  readonly backOn: readonly string[];
  /**
   * The two lists for copies that lie turned; absent where they are the same. They differ where front and back of one
   * sheet will do, and only one of them may be turned.
   */
  readonly turned?: { readonly topOn: readonly string[]; readonly backOn: readonly string[] };
}
