/** Results of instances and their sums: the rows of tables and of the JSON. */
import type { Effort } from "@sheetwright/packing";
import type { Question } from "../instances/family.js";

/** What is known of one instance, or of several together. A sum of which one part is missing is `null`. */
export interface Figures {
  /** Sheets used; `null` where not every piece could be placed. */
  readonly sheets: number | null;
  /** No plan is better than this, by a certificate of this run; counted as the row's measure counts. */
  readonly bound: number | null;
  /** The best that is published, counted the same way. */
  readonly bestPublished: number | null;
  /** Share of the sheets used that becomes pieces, in percent. */
  readonly utilisation: number | null;
  /** Time of the search, added up. */
  readonly seconds: number;
  readonly verified: boolean;
  /** What the row's measure counts: sheets, sheet area, value or area. */
  readonly measured: number | null;
  /** The best bound that is published. */
  readonly publishedBound: number | null;
  /** The better of the two bounds, and how much worse the result is. */
  readonly bestBound: number | null;
  readonly gap: number | null;
  /** Areas of the sheets used and of the pieces on them. */
  readonly sheetArea: number;
  readonly pieceArea: number;
  /** Value of the pieces placed, where the most value from given sheets is asked. */
  readonly value: number | null;
  /** Units of work of the search, and its steps where it counts them. */
  readonly work: number | null;
  readonly steps: number | null;
}

/** One instance. */
export interface Detail extends Figures {
  readonly id: string;
  /** True where the plan reaches a bound of this run. */
  readonly proven: boolean;
}

/** Several instances. */
export interface Sums extends Figures {
  readonly instances: number;
  /** Plans that reach a bound of this run. */
  readonly proven: number;
  /** Half of the instances take no longer than this. */
  readonly medianSeconds: number;
  /** Instances whose best is published one by one, and how many of these are reached. */
  readonly known: number;
  readonly reached: number;
  /** How the best published was found: a method that gives as much alone, or several together. */
  readonly bestMethod: string | null;
  /** The best that one published method alone gives. */
  readonly bestSingle: { readonly method: string; readonly measured: number } | null;
}

/** Instances of one group, such as a class. */
export interface GroupSums extends Sums {
  readonly group: string;
}

/** Instances of one class with n pieces, as published sums count them. */
export interface CellSums extends Sums {
  readonly class: number;
  readonly n: number;
}

/** All instances of a family, solved one way. */
export interface Row extends Sums {
  readonly family: string;
  readonly question: Question;
  /** What is counted. */
  readonly measure: string;
  /** Whether pieces might be turned by 90 degrees. */
  readonly rotation: boolean;
  /** `sheetwright`, or the name of another packer. */
  readonly solver: string;
  readonly effort: Effort | null;
  /** Mean of the instances' utilisations, in percent, and the best that is published of it. */
  readonly meanUtilisation: number | null;
  readonly bestUtilisation: { readonly percent: number; readonly method: string } | null;
  /** Sheets of all instances by each try of a packer that was tried several ways; the best of each instance counts. */
  readonly tries: Readonly<Record<string, number>>;
  readonly groups: readonly GroupSums[];
  readonly cells: readonly CellSums[];
  readonly details: readonly Detail[];
}

/** True where a figure is better than another, as the question counts. */
export function isBetter(question: Question, figure: number, than: number): boolean {
  return question === "sheets" || question === "sizes" ? figure < than : figure > than;
}
