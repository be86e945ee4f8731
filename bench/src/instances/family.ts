/** Published instances as the bench knows them: what is asked, of which pieces, and what is known about the answer. */
import type { Size } from "@sheetwright/packing";

/**
 * What the instances of a family ask, read from the fields they have.
 * - `sheets`: the fewest equal sheets for all pieces.
 * - `sizes`: the least area of sheets of several sizes in limited stock (`sheets`).
 * - `value`: the most value from one sheet, at most the given copies of a piece (`values`).
 * - `unlimited`: the most piece area from one sheet, any number of copies (`unconstrainedOptOG`).
 * - `strip`: the most piece area from one sheet of width x best height (`optHeight`).
 */
export type Question = "sheets" | "sizes" | "value" | "unlimited" | "strip";

/** A sheet that pieces may be cut from. */
interface StockedSheet extends Size {
  /** Sheets on hand; `null` for as many as needed. */
  readonly stock: number | null;
}

/** Equal pieces. */
interface InstancePiece extends Size {
  readonly quantity: number;
  /** What one of them is worth; its area where the file gives no value. */
  readonly value: number;
}

/** What is published about one instance, turned or not; counted as the question counts. */
export interface Reference {
  /** The best that is known to be possible, where the file gives it. */
  readonly best: number | null;
  /** No plan is better than this. */
  readonly bound: number | null;
}

/** One instance. */
export interface Instance {
  readonly id: string;
  readonly sheets: readonly StockedSheet[];
  readonly pieces: readonly InstancePiece[];
  /** Pieces with all their copies. */
  readonly copies: number;
  /** The instances that its results are summed with, such as `class 1`; `null` in families without such groups. */
  readonly group: string | null;
  /** The smaller groups that published sums are of: class and pieces. */
  readonly cell: { readonly class: number; readonly n: number } | null;
  readonly fixed: Reference;
  readonly turned: Reference;
}

/** A family of instances. */
export interface Family {
  readonly name: string;
  readonly question: Question;
  readonly instances: readonly Instance[];
}

/** What is counted for a question, and whether more of it is better. */
export const MEASURES = {
  sheets: { name: "sheets", moreIsBetter: false },
  sizes: { name: "sheet area", moreIsBetter: false },
  value: { name: "value", moreIsBetter: true },
  unlimited: { name: "area", moreIsBetter: true },
  strip: { name: "area", moreIsBetter: true },
} as const satisfies Record<Question, { readonly name: string; readonly moreIsBetter: boolean }>;
