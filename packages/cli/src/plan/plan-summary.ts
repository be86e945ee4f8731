import type { Size, Unit } from "@sheetwright/measure";
import type { CutOrder, KindCount, Packing, Problem } from "@sheetwright/packing";
import { findLeftovers, type Leftover } from "@sheetwright/planner";
import { explainNoFit, type NoFit } from "./explain-no-fit.js";

/** A plan in short, as plain data: what `--json` prints, and what the words for a person are made from. */
export interface PlanSummary {
  readonly sheetwright: "summary";
  readonly version: 1;
  /** `complete`: all pieces; `short`: proven that these sheets cannot give all; `not-found`: neither. */
  readonly outcome: Packing["outcome"];
  /** True where the search was ended early, so that another run may give another plan. */
  readonly endedEarly: boolean;
  readonly units: { readonly length: "tick"; readonly ticksPerInch: 40640; readonly shown: Unit };
  readonly sheet: Size & { readonly name: string };
  readonly sheets: {
    readonly used: number;
    /** Sheets on hand; `null` where as many as needed are. */
    readonly onHand: number | null;
    /** No plan for all pieces that fit the sheet uses fewer, proven; `null` where that was not worked out. */
    readonly atLeast: number | null;
    /** True where `used` is proven to be the fewest for all pieces. */
    readonly fewest: boolean;
    /** With too few sheets: how many were found to be enough for all pieces that fit the sheet; else `null`. */
    readonly enough: number | null;
  };
  readonly pieces: {
    readonly wanted: number;
    readonly cut: number;
    readonly missing: readonly KindCount[];
    readonly fitNoSheet: readonly NoFit[];
  };
  /** Part of the sheets' area that becomes pieces, in percent with one decimal, rounded to nearest. */
  readonly yieldPercent: number;
  readonly layouts: readonly LayoutSummary[];
  /** Cuts on all sheets; a stack cut at once counts each of its sheets. */
  readonly cuts: number;
  /** How often the trimmer is lined up, once a layout and setting. */
  readonly settings: number;
  /** The narrowest part the tool holds firmly. */
  readonly hold: number;
  /** Cuts, counted once a layout, that hold a narrower part. */
  readonly narrowCuts: number;
  /** The longest cut; 0 without any. */
  readonly longestCut: number;
  readonly leftovers: readonly Leftover[];
  /** Names of the files written to the folder. */
  readonly files: readonly string[];
}

/** One way to cut a sheet, in short. */
export interface LayoutSummary {
  /** The beginning of its files' names, such as `sheet-1`. */
  readonly name: string;
  /** Sheets cut like this. */
  readonly run: number;
  readonly cuts: number;
  readonly settings: number;
}

/** What {@link planSummary} needs beside the plan itself. */
export interface SummaryParts {
  readonly unit: Unit;
  readonly hold: number;
  readonly cutOrders: readonly CutOrder[];
  readonly files: readonly string[];
  /** A plan for all pieces that fit, from as many sheets as it takes; `null` where none was needed. */
  readonly unlimited: Packing | null;
}

/** Begins the names of a layout's files, counted from 1. */
export function layoutName(index: number): string {
  return `sheet-${index + 1}`;
}

/** Sums a plan up. */
export function planSummary(problem: Problem, packing: Packing, parts: SummaryParts): PlanSummary {
  const { unit, hold, cutOrders, files, unlimited } = parts;
  const [sheet] = problem.sheets;
  if (sheet === undefined) throw new RangeError("The problem has no sheet.");
  const complete = packing.outcome === "complete";
  const fitNoSheet = explainNoFit(problem, unit);
  const layouts = packing.layouts.map((layout, index): LayoutSummary => {
    const order = cutOrders[index];
    if (order === undefined) throw new RangeError(`Layout ${index} has no cut order.`);
    return { name: layoutName(index), run: layout.run, cuts: order.cuts.length, settings: order.settings };
  });
  const cuts = cutOrders.flatMap((order) => order.cuts);
  const { bound } = unlimited ?? packing;
  const atLeast = bound.aim === "all" ? bound.sheets : null;
  return {
    sheetwright: "summary",
    version: 1,
    outcome: packing.outcome,
    endedEarly: packing.search.ended === "cancelled",
    units: { length: "tick", ticksPerInch: 40640, shown: unit },
    sheet: { name: sheet.name ?? sheet.id, width: sheet.width, height: sheet.height },
    sheets: {
      used: packing.sheets,
      onHand: sheet.stock ?? null,
      atLeast,
      fewest: complete && packing.proven,
      enough: unlimited !== null && unlimited.outcome === "complete" ? unlimited.sheets : null,
    },
    pieces: {
      wanted: sum(problem.kinds.map((kind) => kind.quantity ?? 0)),
      cut: sum(packing.placed.map((one) => one.count)),
      missing: packing.missing,
      fitNoSheet,
    },
    yieldPercent: yieldPercent(problem, packing),
    layouts,
    cuts: sum(layouts.map((layout) => layout.cuts * layout.run)),
    settings: sum(layouts.map((layout) => layout.settings)),
    hold,
    narrowCuts: cuts.filter((cut) => cut.tooNarrow).length,
    longestCut: cuts.reduce(
      (longest, { line }) => Math.max(longest, line.x2 - line.x1, line.y2 - line.y1),
      0,
    ),
    leftovers: findLeftovers(problem, packing),
    files,
  };
}

/** 100 only where every bit of every sheet becomes a piece. */
function yieldPercent(problem: Problem, packing: Packing): number {
  const areas = new Map(problem.kinds.map((kind) => [kind.id, area(kind.forms[0])]));
  const used = packing.placed.reduce(
    (total, one) => total + (areas.get(one.kind) ?? 0n) * BigInt(one.count),
    0n,
  );
  const sheet = area(problem.sheets[0]) * BigInt(packing.sheets);
  if (sheet === 0n) return 0;
  if (used === sheet) return 100;
  const tenths = Number((used * 2000n + sheet) / (2n * sheet));
  return Math.min(tenths, 999) / 10;
}

function area(size: Size | undefined): bigint {
  return size === undefined ? 0n : BigInt(size.width) * BigInt(size.height);
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
