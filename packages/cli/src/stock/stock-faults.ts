import type { Unit } from "@sheetwright/measure";
import type { StockFault } from "@sheetwright/planner";
import type { Fault } from "../fault.js";
import { exactSize } from "./exact-size.js";

/** Faults of a stock at their places in its file. */
export function stockFaults(faults: readonly StockFault[], file: string, unit: Unit): readonly Fault[] {
  return faults.map(({ code, design, at, found, expected, message }) => {
    const key = at === null ? "" : typeof at === "string" ? `.${at}` : `.offcuts["${exactSize(at, unit)}"]`;
    return {
      code,
      place: { file, path: at === null ? "papers" : `papers.${design}${key}` },
      message,
      found,
      expected,
    };
  });
}
