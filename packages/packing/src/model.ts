/**
 * The model: what is cut (kinds), from what (sheets), and how (mode). All plain, JSON-serialisable data.
 *
 * Every length is an integer in one unit of the caller's choice; Sheetwright uses ticks of 1/1600 mm. The core never
 * converts, so any other integer grid works as well. Coordinates run from the top left corner of a sheet, x to the
 * right and y down, as in SVG. Sizes are always width x height with the sheet's pattern upright.
 */

/**
 * How a sheet may be cut.
 * - `guillotine`: every cut crosses the part that lies on the trimmer from edge to edge.
 * - `shelf`: edge to edge in at most three levels: strips, pieces from the strips, one last trim a piece.
 * - `stopped`: cuts may also stop inside the part, in the five-block way (see {@link StoppedCuts}).
 */
export type Mode = "shelf" | "guillotine" | "stopped";

/** `all`: the least cost for all pieces. `fill`: the most value from the given stock. */
export type Aim = "all" | "fill";

/** Which way a form may lie on a sheet: as given, after a quarter turn, or either. */
export type Turns = "upright" | "turned" | "both";

/** A width and a height. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A rectangle by its top left corner and size. */
export interface Rectangle extends Size {
  readonly x: number;
  readonly y: number;
}

/** A sheet that a form may be cut from, with the turns allowed there (default: the form's own). */
export interface SheetTurns {
  /** A sheet's id. */
  readonly sheet: string;
  readonly turns?: Turns | undefined;
}

/** The part of a piece that no one will see, and the tool that can open it. */
export interface Hidden extends Rectangle {
  /** The tool that opens the window, such as `knife` or `cutting machine`. */
  readonly tool: string;
}

/** One way to cut a kind: a size, and where and how it may lie. */
export interface Form extends Size {
  /** Turns allowed on every sheet that does not say otherwise (default `both`). */
  readonly turns?: Turns | undefined;
  /** The sheets this form may be cut from (default: every sheet). */
  readonly sheets?: readonly SheetTurns[] | undefined;
  /** The largest rectangle that may be opened in this form, in its upright coordinates. */
  readonly hidden?: Hidden | undefined;
}

/** The finished sets that a kind belongs to: when stock is short, complete sets come first. */
export interface SetShare {
  /** Name of the set, such as a card design. */
  readonly of: string;
  /** Pieces of this kind in one set; a positive integer. */
  readonly each: number;
}

/** Pieces that are all alike. Copies are counted, never listed. */
export interface Kind {
  /** Unique among the kinds; any text. */
  readonly id: string;
  /** What a reader sees instead of the id (default: the id). */
  readonly name?: string | undefined;
  /**
   * Copies wanted; a whole number from 0. With the aim `fill` it is the most that may be cut, and `null` sets no limit.
   */
  readonly quantity: number | null;
  /** The copies that must be there at least with the aim `fill` (default 0). */
  readonly least?: number | undefined;
  /** One or more sizes that serve the same end, such as the two flats of a card base. */
  readonly forms: readonly Form[];
  /** What one copy is worth with the aim `fill`; a whole number from 0 (default: the area of its first form). */
  readonly value?: number | undefined;
  /** Kinds with the same key are cut, as many copies as are cut of them, from one single sheet. */
  readonly together?: string | undefined;
  readonly set?: SetShare | undefined;
}

/** What is squared off each side of a sheet before anything else, the kerf of that cut included. */
export interface Trim {
  readonly left?: number | undefined;
  readonly right?: number | undefined;
  readonly top?: number | undefined;
  readonly bottom?: number | undefined;
}

/** Sheets that are all alike: paper as bought, or an offcut. */
export interface Sheet extends Size {
  /** Unique among the sheets; any text. */
  readonly id: string;
  /** What a reader sees instead of the id (default: the id). */
  readonly name?: string | undefined;
  /** Sheets on hand; `null` or absent: as many as needed. */
  readonly stock?: number | null | undefined;
  /** Cost of one sheet in any whole unit, 0 for an offcut (default: its area). */
  readonly cost?: number | undefined;
  readonly trim?: Trim | undefined;
  /** The longest cut the tool can make: the extent of a part along the cut (default: no limit). */
  readonly longestCut?: number | null | undefined;
}

/** What is asked of {@link pack}. */
export interface Problem {
  readonly kinds: readonly Kind[];
  readonly sheets: readonly Sheet[];
  readonly mode: Mode;
  readonly aim: Aim;
  /** Width lost by each cut (default 0, a knife or shear). */
  readonly kerf?: number | undefined;
  /**
   * Most levels of parallel cuts, the cut that frees a piece from its strip included (default: no limit).
   * Squaring-up trims do not count.
   */
  readonly stages?: number | null | undefined;
  /** A leftover counts as an offcut when it is at least this large, in either direction (default: any leftover). */
  readonly smallestOffcut?: Size | undefined;
}

/** Copies of one kind at one place of a run. */
export interface Share {
  /** The kind's id. */
  readonly kind: string;
  /** Index into the kind's forms. */
  readonly form: number;
  /** True after a quarter turn. */
  readonly turned: boolean;
  /** On how many sheets of the run this place yields this kind. */
  readonly count: number;
}

/**
 * A rectangle opened in the hidden middle of a piece, with a cut tree of its own. Its place is given on the piece as it
 * lies. A quarter turn is clockwise: the point (x, y) of an upright piece of height h comes to (h - y, x).
 */
export interface Window extends Rectangle {
  readonly tool: string;
  readonly tree: CutNode;
}

/**
 * A finished piece. In a run of n sheets its shares count n together; where they count less, the place is an offcut on
 * the sheets that remain.
 */
export interface PieceLeaf {
  readonly type: "piece";
  readonly shares: readonly Share[];
  readonly window?: Window | undefined;
}

/** A leftover: an `offcut` when it reaches the smallest useful size, else `waste`. */
export interface LeftoverLeaf {
  readonly type: "offcut" | "waste";
}

/** One child of a {@link Split}: its extent along the split's axis, and what becomes of it. */
export interface SplitPart {
  readonly size: number;
  readonly node: CutNode;
}

/**
 * One level of parallel edge-to-edge cuts. `x` divides the width into parts from left to right, `y` the height from top
 * to bottom. Part extent = sizes + kerf x cuts between them; a remainder of at most one kerf vanishes in a last cut.
 * A child split along the same axis belongs to the same stage.
 */
export interface Split {
  readonly type: "split";
  readonly axis: "x" | "y";
  readonly parts: readonly SplitPart[];
}

/**
 * Five blocks round a centre, made by four cuts that enter at an edge and stop on the line of the next (x1 < x2,
 * y1 < y2; each line is the near side of its cut, and the kerf lies beyond it).
 *
 *     clockwise             anticlockwise
 *     +------+---+          +---+------+
 *     | top  |   |          |   | top  |
 *     +--+---+ r |  y1      | l +---+--+  y1
 *     |  | c | i |          | e | c |  |
 *     | l|   | g |          | f |   |r |
 *     | e+---+-h-+  y2      +-+-+---+i |  y2
 *     | f| bottom|          |bottom | g|
 *     +--+-------+          +-------+--+
 *        x1  x2                 x1  x2
 *
 * clockwise: top is (0..x2) x (0..y1), right is (x2..W) x (0..y2), bottom is (x1..W) x (y2..H), left is (0..x1) x (y1..H).
 * anticlockwise: top is (x1..W) x (0..y1), right is (x2..W) x (y1..H), bottom is (0..x2) x (y2..H), left is
 * (0..x1) x (0..y2). The centre is (x1..x2) x (y1..y2) in both.
 */
export interface StoppedCuts {
  readonly type: "stopped";
  readonly hand: "clockwise" | "anticlockwise";
  readonly x1: number;
  readonly x2: number;
  readonly y1: number;
  readonly y2: number;
  readonly top: CutNode;
  readonly right: CutNode;
  readonly bottom: CutNode;
  readonly left: CutNode;
  readonly centre: CutNode;
}

/** A cut tree: what becomes of a part. Its root is the sheet inside the trim. */
export type CutNode = PieceLeaf | LeftoverLeaf | Split | StoppedCuts;

/** One way to cut a sheet, and how many sheets are cut by it (a run). */
export interface Layout {
  /** The sheet's id. */
  readonly sheet: string;
  /** Sheets cut like this; at least 1, and exactly 1 with stopped cuts or pieces that belong together. */
  readonly run: number;
  readonly tree: CutNode;
}

/** A number of copies of a kind. */
export interface KindCount {
  readonly kind: string;
  readonly count: number;
}

/**
 * A one-dimensional dual-feasible function on 0..C, C being the usable extent plus one kerf. Any extents that sum to at
 * most C have function values that sum to at most the function's capacity.
 * - `identity`: u(x) = x, capacity C.
 * - `threshold`, 1 <= at <= C/2: u(x) = C where x > C - at, 0 where x < at, else x; capacity C (Fekete & Schepers 2001).
 * - `rounding`, k >= 1: u(x) = k x where (k+1) x / C is whole, else floor((k+1) x / C) C; capacity k C
 *   (Fekete & Schepers 2001).
 * - `step`, 1 <= at <= C/2: u(x) = 2 floor(x / at) where 2x < C, floor(C / at) where 2x = C, else
 *   2 (floor(C / at) - floor((C - x) / at)); capacity 2 floor(C / at) (Carlier, Clautiaux & Moukrim 2007).
 * - `fitted`: values of the very pieces that are wanted, by kind and extent; what is not listed has the value 0. Its
 *   capacity is the most that the values of pieces in one row sum to, each kind in at most its quantity, each copy with
 *   one of its extents and a kerf, all within C: the conservative scales of Fekete & Schepers (A general framework for
 *   bounds for higher-dimensional orthogonal packing problems, Mathematical Methods of Operations Research 60 (2004)).
 *   Not for a sheet on which a window may be opened.
 */
export type DualFeasible =
  | { readonly family: "identity" }
  | { readonly family: "threshold"; readonly at: number }
  | { readonly family: "rounding"; readonly k: number }
  | { readonly family: "step"; readonly at: number }
  | { readonly family: "fitted"; readonly values: readonly FittedValue[] };

/** The value that a `fitted` function gives to copies of a kind that take an extent along its axis. */
export interface FittedValue {
  readonly kind: string;
  /** Extent of the piece as it lies, without a kerf. */
  readonly extent: number;
  /** A whole number from 1 to 1,000,000. */
  readonly value: number;
}

/** A dual-feasible function along each axis of a sheet. */
export interface FunctionPair {
  readonly x: DualFeasible;
  readonly y: DualFeasible;
}

/**
 * What one sheet can carry at most: on this sheet a piece weighs capacity x u(width) v(height) / (U V), with x and y as
 * u and v, U and V their capacities, and the extents taken with one kerf more. With pairs `besides`, it weighs the mean
 * over all pairs: each of them holds, so their mean does, and it may weigh a piece alike whichever way it lies. Where
 * turns allow it, the lighter way counts. Where a wanted kind is small enough, either way round, to come from the hidden
 * part of a form, that form weighs what its hidden part would weigh less: what comes out of a window lies on the same
 * paper as the piece round it.
 */
export interface SheetWeights extends FunctionPair {
  readonly sheet: string;
  /** More pairs, each counting as much as the first (default: none). */
  readonly besides?: readonly FunctionPair[] | undefined;
  /** Weight one sheet can carry; a positive whole number. */
  readonly capacity: number;
}

/** What one copy of a kind counts for in a bound. */
export interface KindPrice {
  readonly kind: string;
  /** A whole number from 1 to 1,000,000,000. */
  readonly price: number;
}

/**
 * Why a bound holds.
 * - `weights`: one entry a sheet that any kind may be cut from. A kind weighs the least over the sheets, forms and turns
 *   it may be cut by. No layout of a sheet carries more than its capacity; the bound follows from the total weight.
 * - `prices`: a price for each kind (0 where none is given). A sheet carries V(sheet), the most that edge-to-edge cuts in
 *   any number of stages get from it by these prices; whoever checks the bound finds it anew. V(part) is the largest of the
 *   prices of kinds that fit the part and of V(one side) + V(other side) over all cuts. Only parts matter whose sides are
 *   sums of extents (each with a kerf) of wanted copies of priced kinds; other parts count as the next smaller ones, and a
 *   kind counts as often as it fits (Gilmore & Gomory, The theory and computation of knapsack functions, Operations
 *   Research 14 (1966)). Holds for the modes `guillotine` and `shelf`, and where no window may be opened. The bound follows
 *   from the total price as from a weight.
 * - `no-fit`: the named kind fits no sheet in any form or turn allowed to it.
 */
export type Certificate =
  | { readonly type: "weights"; readonly sheets: readonly SheetWeights[] }
  | { readonly type: "prices"; readonly prices: readonly KindPrice[] }
  | { readonly type: "no-fit"; readonly kind: string };

/**
 * A proven limit, independent of the search. With the aim `all`: no plan for all pieces costs less than `cost` or uses
 * fewer than `sheets` sheets; both are `null` where the certificate proves that the stock cannot give all pieces. With
 * the aim `fill`: no plan is worth more than `value`. Whole numbers as decimal text, since they may pass 2^53.
 */
export type Bound =
  | {
      readonly aim: "all";
      readonly cost: string | null;
      readonly sheets: number | null;
      readonly certificate: Certificate;
    }
  | { readonly aim: "fill"; readonly value: string; readonly certificate: Certificate };

/**
 * - `complete`: every piece is placed (with the aim `fill`: every copy that was allowed, or the bound is reached, or as
 *   much as the search found).
 * - `short`: proven that the stock cannot give every piece.
 * - `not-found`: the search placed less than asked, and nothing proves that it cannot be done.
 */
export type Outcome = "complete" | "short" | "not-found";

/** How a packing was found. */
export interface SearchRecord {
  readonly effort: Effort;
  readonly seed: number;
  /** The linear-programming solver passed in, with its version, or `none`. */
  readonly lp: string;
  /** Starts that were finished. */
  readonly starts: number;
  /** Steps of ruin and recreate that were made. */
  readonly steps: number;
  /** Units of work done. */
  readonly work: number;
  /** `cancelled`: cut short, so another run may give another plan. */
  readonly ended: "finished" | "proven" | "cancelled";
}

/** How much work a search may do: tens of milliseconds, about a second, about ten seconds for 100 pieces. */
export type Effort = "quick" | "standard" | "thorough";

/** The answer of {@link pack}. */
export interface Packing {
  readonly version: 1;
  readonly mode: Mode;
  readonly aim: Aim;
  readonly outcome: Outcome;
  readonly layouts: readonly Layout[];
  /** Copies placed, one entry a kind in the problem's order. */
  readonly placed: readonly KindCount[];
  /** Copies asked for but not placed, in the problem's order, without zeros; with the aim `fill`, below `least`. */
  readonly missing: readonly KindCount[];
  /** Sheets used. */
  readonly sheets: number;
  /** Cost of the sheets used, as decimal text. */
  readonly cost: string;
  /** Value of the copies placed, as decimal text. */
  readonly value: string;
  readonly bound: Bound;
  /** True where the plan reaches its bound, so that no better one exists. */
  readonly proven: boolean;
  readonly search: SearchRecord;
}
