/**
 * What a maker has of her papers, whatever project they are for: the whole sheets of each design and the offcuts from
 * earlier plans. All plain data; lengths are ticks of 1/1600 mm, sizes lie as on the sheet with its pattern upright.
 */

import type { Grain, Offcut } from "@sheetwright/cards";
import type { Size } from "@sheetwright/measure";

/** The papers on hand, each design once. */
export interface Stock {
  readonly papers: readonly StockPaper[];
}

/** The sheets and offcuts on hand of one design of a paper. */
export interface StockPaper {
  /** The id of the design as in a project: `night`, `stars.comets`. */
  readonly design: string;
  /** What a reader sees. */
  readonly name: string;
  /** The size of a whole sheet. */
  readonly sheet: Size;
  /** The side of the sheet that its fibres run along; it is that of its offcuts too. */
  readonly grain: Grain;
  /** Whole sheets on hand; `null` where they are not counted and there are as many as needed. */
  readonly sheets: number | null;
  /** Usable leftovers, each size once, the largest first. */
  readonly offcuts: readonly Offcut[];
}

/** A reason why a stock cannot serve. */
export interface StockFault {
  /**
   * - `other-size`: the whole sheets of the design are of another size than the stock's
   * - `other-grain`: the grain of the design runs along another side than the stock's
   * - `not-in-stock`: the stock does not know the design
   * - `not-enough`: fewer sheets or offcuts are on hand than are taken
   */
  readonly code: "other-size" | "other-grain" | "not-in-stock" | "not-enough";
  readonly design: string;
  /** What of the stock's paper is at fault: one of its keys, or with an offcut that size of its offcuts. */
  readonly at: "sheet" | "grain" | "sheets" | Size | null;
  /** In short, what the stock has and what it should have. */
  readonly found: string;
  readonly expected: string;
  /** What was found, what is expected and what would help, as full sentences. */
  readonly message: string;
}
