import type { CompareOptions, ComparisonCase } from "@sheetwright/planner";

/** What a thread is sent of a comparison. */
export interface SentCase {
  readonly one: ComparisonCase;
  readonly options: CompareOptions;
}

/** Name of the worker's function. */
export const COMPARE_FUNCTION = "compareOne";
