/** Sums of planned sets: what the table shows a line of, the chart a bar, and the JSON a row. */
import type { Size } from "@sheetwright/measure";
import { percentOf } from "../percent-of.js";
import type { SetMeasure, SetPlan } from "./measure-set.js";

/** The ways of cutting that are compared for sets of pieces, ours first. */
export const SET_WAYS = ["guillotine", "shelf", "firstFitShelves", "gridByKind"] as const;
export type SetWay = (typeof SET_WAYS)[number];

/** One way of cutting, summed over sets. */
interface WaySum {
  /** Sheets used; `null` where a set could not be planned whole. */
  readonly sheets: number | null;
  /** Share of the paper used that becomes pieces, in percent; `null` with `sheets`. */
  readonly usePercent: number | null;
}

/** Our plans of one mode, summed over sets. */
interface PlanSum extends WaySum {
  /** Plans that reach their bound. */
  readonly proven: number;
  /** Plans in which `verify` found nothing. */
  readonly verified: number;
  readonly seconds: number;
}

/** Sets of one family on one sheet, or of all families. */
export interface SetsSum {
  readonly sets: number;
  readonly kinds: number;
  readonly copies: number;
  readonly ways: Readonly<
    Record<"guillotine" | "shelf", PlanSum> & Record<"firstFitShelves" | "gridByKind", WaySum>
  >;
  /** Sum of the bounds: no plans of these sets use fewer sheets; `null` where a piece does not fit. */
  readonly bound: WaySum;
}

/** Sums sets that were planned on one sheet. Throws a RangeError without any set. */
export function sumSets(sheet: Size, sets: readonly SetMeasure[]): SetsSum {
  if (sets.length === 0) throw new RangeError("Expected at least one set.");
  const area = sets.reduce((sum, set) => sum + set.area, 0n);
  const sheetArea = BigInt(sheet.width * sheet.height);
  const sumOf = (sheetsOf: (set: SetMeasure) => number | null): WaySum => {
    const counts = sets.map(sheetsOf).filter((count) => count !== null);
    if (counts.length < sets.length) return { sheets: null, usePercent: null };
    const sheets = counts.reduce((sum, count) => sum + count, 0);
    return { sheets, usePercent: sheets === 0 ? null : percentOf(area, BigInt(sheets) * sheetArea) };
  };
  const planOf = (mode: "guillotine" | "shelf"): PlanSum => {
    const count = (holds: (plan: SetPlan) => boolean): number =>
      sets.filter((set) => holds(set[mode])).length;
    return {
      ...sumOf((set) => set[mode].sheets),
      proven: count((plan) => plan.proven),
      verified: count((plan) => plan.verified),
      seconds: sets.reduce((sum, set) => sum + set[mode].seconds, 0),
    };
  };
  return {
    sets: sets.length,
    kinds: sets.reduce((sum, set) => sum + set.kinds, 0),
    copies: sets.reduce((sum, set) => sum + set.copies, 0),
    ways: {
      guillotine: planOf("guillotine"),
      shelf: planOf("shelf"),
      firstFitShelves: sumOf((set) => set.firstFitShelves),
      gridByKind: sumOf((set) => set.gridByKind),
    },
    bound: sumOf((set) => set.guillotine.bound),
  };
}
