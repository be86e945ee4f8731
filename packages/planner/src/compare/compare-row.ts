import { countCuts } from "@sheetwright/packing";
import { costText, costUnits } from "../group/cost-units.js";
import type { PaperGroup } from "../plan-model.js";
import { keptArea, kindAreas, sumOf } from "../totals/areas.js";
import { groupBound } from "../totals/group-bound.js";
import { percentOf } from "../totals/percent-of.js";
import type { ComparedSize, ComparisonRow } from "./comparison.js";

/** Papers that were planned together: one or more make up a row. */
export type PlannedPart = Pick<PaperGroup, "problem" | "packing" | "endless" | "bags">;

/** A row where some piece is too large for the size. */
export function rowTooLarge(size: ComparedSize, copies: number, tooLarge: readonly string[]): ComparisonRow {
  return {
    size: size.id,
    copies,
    tooLarge,
    sheets: null,
    atLeast: null,
    sheetArea: null,
    pieceArea: null,
    wastePercent: null,
    keptPercent: null,
    cuts: null,
    layouts: null,
    plannedFor: null,
    cost: null,
  };
}

/** The row of plans that have every piece. Throws RangeError where one has not. */
export function rowOf(size: ComparedSize, copies: number, parts: readonly PlannedPart[]): ComparisonRow {
  let sheets = 0;
  let atLeast = 0;
  let cuts = 0;
  let layouts = 0;
  let pieces = 0n;
  let kept = 0n;
  for (const part of parts) {
    const { problem, packing, bags = 1 } = part;
    const { outcome } = packing;
    const bound = groupBound(part);
    if (outcome !== "complete" || bound.aim !== "all" || bound.sheets === null)
      throw new RangeError(`Expected a plan of all pieces, found one that is ${outcome}.`);
    sheets += packing.sheets * bags;
    atLeast += bound.sheets * bags;
    layouts += packing.layouts.length;
    const known = new Map(problem.sheets.map((sheet) => [sheet.id, sheet]));
    for (const layout of packing.layouts)
      cuts += layout.run * bags * countCuts(known.get(layout.sheet)!, layout, problem.kerf);
    pieces += sumOf(kindAreas(problem, packing).values()) * BigInt(bags);
    kept += keptArea(problem, packing) * BigInt(bags);
  }
  const whole = BigInt(size.width) * BigInt(size.height) * BigInt(sheets);
  return {
    size: size.id,
    copies,
    tooLarge: [],
    sheets,
    atLeast,
    sheetArea: whole.toString(),
    pieceArea: pieces.toString(),
    wastePercent: percentOf(whole - pieces, whole),
    keptPercent: percentOf(kept, whole),
    cuts,
    layouts,
    plannedFor: copies,
    cost: size.cost === null ? null : costText(costUnits(size.cost) * BigInt(sheets)),
  };
}

/**
 * A row by the plan of a row with more copies, which has all that is asked for here as well; null where that takes no fewer
 * sheets.
 */
export function rowByMore(row: ComparisonRow, more: ComparisonRow): ComparisonRow | null {
  if (row.sheets === null || more.sheets === null || more.sheets >= row.sheets) return null;
  const whole = BigInt(more.sheetArea ?? 0);
  const wastePercent = percentOf(whole - BigInt(row.pieceArea ?? 0), whole);
  const { tooLarge, atLeast, pieceArea } = row;
  return { ...more, copies: row.copies, tooLarge, atLeast, pieceArea, wastePercent };
}
