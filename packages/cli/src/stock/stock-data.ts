import type { Unit } from "@sheetwright/measure";
import type { Stock } from "@sheetwright/planner";

/** What a stock file says, read and checked. */
export interface StockData extends Stock {
  /** Raised by every write. */
  readonly revision: number;
  /** The unit that lengths are written in. */
  readonly units: Unit;
  /** Plans that something was cut of, in the order of their first booking. */
  readonly booked: readonly Booking[];
}

/** What was cut of one plan so far. */
export interface Booking {
  /** SHA-256 of its `plan.json`. */
  readonly plan: string;
  /** The title of its project. */
  readonly title: string;
  /** Sheets cut by each layout that was begun, by the name of its files: `sheet-night-1`. */
  readonly done: Readonly<Record<string, number>>;
  /** Sheets spoiled over each, without zeros. */
  readonly spoiled: Readonly<Record<string, number>>;
  /** SHA-256 of the plan that went on from this one, after which no more of this one is cut; absent without one. */
  readonly continuedBy?: string | undefined;
}
