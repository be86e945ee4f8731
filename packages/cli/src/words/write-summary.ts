import { formatSize } from "@sheetwright/measure";
import type { Leftover } from "@sheetwright/planner";
import type { PlanSummary } from "../plan/plan-summary.js";
import { counted } from "./counted.js";
import { block, row } from "./summary-rows.js";
import { writeNotes } from "./write-notes.js";

/** Leftover sizes that are listed before the rest is only counted. */
const LEFTOVERS_SHOWN = 8;

/** Layouts that are listed on a terminal before the rest is only counted. */
const LAYOUTS_SHOWN = 12;

/**
 * Sums a plan up for a person. Gives lines without a break at their end.
 *
 * @param mostLayouts lists so many layouts and counts the rest.
 */
export function writeSummary(summary: PlanSummary, mostLayouts = LAYOUTS_SHOWN): readonly string[] {
  const { sheets, pieces, layouts } = summary;
  const lines = [
    row("Pieces", summary.outcome === "complete" ? `all ${pieces.cut}` : `${pieces.cut} of ${pieces.wanted}`),
    row("Sheets", `${sheets.used} of ${sheetName(summary)}${writeBound(summary)}`),
  ];
  if (layouts.length > 0) {
    const settings = `${counted(summary.settings, "setting")} of the trimmer`;
    lines.push(
      row("Yield", `${summary.yieldPercent} % of the paper becomes pieces`),
      ...block("Layouts", writeLayouts(summary, mostLayouts)),
      row("Cuts", `${summary.cuts} on all sheets, with ${settings}`),
      ...block("Leftovers", writeLeftovers(summary)),
    );
  }
  const notes = writeNotes(summary, { hold: "--hold", longestCut: "--longest-cut" });
  if (summary.units.shown === "in" && lines.some((line) => line.includes("~"))) {
    return [...lines, ...notes, "", "~ marks a length rounded to 1/64 in; --unit mm shows millimetres."];
  }
  return [...lines, ...notes];
}

function writeLayouts({ layouts }: PlanSummary, most: number): readonly string[] {
  const lines = layouts
    .slice(0, most)
    .map(
      ({ name, run, cuts }) =>
        `${name}: cut ${counted(run, "sheet")} like this, ${counted(cuts, "cut")} each`,
    );
  const rest = layouts.length - lines.length;
  if (rest > 0) lines.push(`and ${counted(rest, "more layout")}, listed in cut-list.txt`);
  return lines;
}

function sheetName({ sheet, units }: PlanSummary): string {
  const size = formatSize(sheet.width, sheet.height, { unit: units.shown });
  return sheet.name === `${size} sheet` ? size : `${sheet.name}, ${size}`;
}

function writeBound({ outcome, sheets }: PlanSummary): string {
  if (outcome !== "complete") return sheets.onHand === null ? "" : `; ${sheets.onHand} on hand`;
  if (sheets.fewest) return ": fewest possible, proven";
  const more = sheets.atLeast === null ? null : sheets.used - sheets.atLeast;
  return more === null ? "" : `: at most ${more} more than the fewest possible`;
}

function writeLeftovers({ leftovers, units }: PlanSummary): readonly string[] {
  const kept = leftovers.filter((one) => one.keep);
  const write = ({ count, width, height }: Leftover): string =>
    `${count} of ${formatSize(width, height, { unit: units.shown })}`;
  const lines = kept.slice(0, LEFTOVERS_SHOWN).map(write);
  const rest = kept.slice(LEFTOVERS_SHOWN).reduce((total, one) => total + one.count, 0);
  if (rest > 0) lines.push(`and ${rest} smaller, listed in cut-list.txt`);
  if (lines.length === 0) lines.push("none worth keeping");
  return lines;
}
