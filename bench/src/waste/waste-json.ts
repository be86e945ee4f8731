/** The figures of the suite `waste` as plain JSON. Only `machine` and what is called `seconds` differ between runs. */
import type { Effort } from "@sheetwright/packing";
import type { Machine } from "../machine.js";
import { percentOf } from "../percent-of.js";
import type { SetMeasure } from "./measure-set.js";
import type { MeasuredSheet, SheetWaste, WasteRequest } from "./measure-waste.js";
import type { SheetYields } from "./measure-yields.js";
import { SET_WAYS, type SetWay, sumSets } from "./sum-sets.js";

/** One set, cut one way. */
interface WasteDetail {
  readonly id: string;
  readonly kinds: number;
  readonly copies: number;
  /** `null` where the set could not be planned whole. */
  readonly sheets: number | null;
  readonly bound: number | null;
  /** Share of the paper used that becomes pieces, in percent. */
  readonly utilisation: number | null;
  /** These three are `null` for the plain ways, which make no plan. */
  readonly proven: boolean | null;
  readonly verified: boolean | null;
  readonly seconds: number | null;
}

/** All sets of one family on one sheet, cut one way. */
interface WasteRow {
  readonly sheet: string;
  readonly family: string;
  /** `sheetwright`, or the plain way that it is compared with. */
  readonly solver: "sheetwright" | "first-fit-shelves" | "grid-by-kind";
  readonly mode: "guillotine" | "shelf" | null;
  readonly effort: Effort | null;
  readonly instances: number;
  readonly kinds: number;
  readonly copies: number;
  readonly sheets: number | null;
  readonly bound: number | null;
  readonly utilisation: number | null;
  /** Instances whose plan reaches the bound. */
  readonly proven: number | null;
  readonly verified: boolean | null;
  readonly seconds: number | null;
  readonly details: readonly WasteDetail[];
}

/** The JSON document of the suite. Lengths are ticks of 1/1600 mm. */
export interface WasteJson {
  readonly suite: "waste";
  /** Version of this format. */
  readonly version: 1;
  readonly options: {
    readonly sheets: readonly MeasuredSheet[];
    readonly seed: number;
    readonly effort: Effort;
    /** Sets of each family; `null` with a list. */
    readonly sets: number | null;
    /** Name of the list's file, without its folder. */
    readonly pieces: string | null;
  };
  readonly machine: Machine;
  readonly yields: readonly Omit<SheetYields, "faults">[];
  readonly rows: readonly WasteRow[];
}

/** Puts the figures together. */
export function wasteJson(
  request: WasteRequest,
  results: readonly SheetWaste[],
  machine: Machine,
): WasteJson {
  const { sheets, seed, effort, sets, list } = request;
  return {
    suite: "waste",
    version: 1,
    options: { sheets, seed, effort, sets: list ? null : sets, pieces: list?.name ?? null },
    machine,
    yields: results.map(({ yields: { faults: _, ...yields } }) => yields),
    rows: results.flatMap((result) =>
      [...new Set(result.sets.map(({ family }) => family))].flatMap((family) =>
        SET_WAYS.map((way) => rowOf(result, family, way, effort)),
      ),
    ),
  };
}

function rowOf({ sheet, sets }: SheetWaste, family: string, way: SetWay, effort: Effort): WasteRow {
  const chosen = sets.filter((set) => set.family === family);
  const sum = sumSets(sheet, chosen);
  const { sheets, usePercent } = sum.ways[way];
  const ours = way === "guillotine" || way === "shelf";
  const plans = ours ? sum.ways[way] : null;
  return {
    sheet: sheet.id,
    family,
    solver: ours ? "sheetwright" : way === "firstFitShelves" ? "first-fit-shelves" : "grid-by-kind",
    mode: ours ? way : null,
    effort: ours ? effort : null,
    instances: sum.sets,
    kinds: sum.kinds,
    copies: sum.copies,
    sheets,
    bound: sum.bound.sheets,
    utilisation: usePercent,
    proven: plans?.proven ?? null,
    verified: plans && plans.verified === sum.sets,
    seconds: plans?.seconds ?? null,
    details: chosen.map((set) => detailOf(sheet, set, way)),
  };
}

function detailOf(sheet: MeasuredSheet, set: SetMeasure, way: SetWay): WasteDetail {
  const plan = way === "guillotine" || way === "shelf" ? set[way] : null;
  const sheets = way === "guillotine" || way === "shelf" ? set[way].sheets : set[way];
  const paper = sheets === null ? 0n : BigInt(sheets) * BigInt(sheet.width * sheet.height);
  return {
    id: set.id,
    kinds: set.kinds,
    copies: set.copies,
    sheets,
    bound: set.guillotine.bound,
    utilisation: paper === 0n ? null : percentOf(set.area, paper),
    proven: plan?.proven ?? null,
    verified: plan?.verified ?? null,
    seconds: plan?.seconds ?? null,
  };
}
