import type { Offcut } from "@sheetwright/cards";
import { formatSize, type Unit } from "@sheetwright/measure";
import type { StockChange } from "@sheetwright/planner";
import { counted } from "../words/counted.js";
import { table } from "../words/table.js";
import type { Booking, StockData } from "./stock-data.js";

/** Offcut sizes of a paper that are listed before the rest is only counted. */
const SHOWN = 6;

/** Says what is on hand, and what of which plans was booked. Gives lines without a break at their end. */
export function writeStock({ papers, booked, revision, units }: StockData, file: string): readonly string[] {
  const rows = papers.map(({ name, sheets, offcuts }) => [
    name,
    sheets === null ? "as needed" : `${sheets}`,
    sizes(offcuts, units),
  ]);
  return [
    `On hand (${file}, revision ${revision})`,
    "",
    ...(rows.length === 0 ? ["No paper."] : table([["paper", "sheets", "offcuts"], ...rows])),
    ...(booked.length === 0 ? [] : ["", "Booked", ...booked.map(writeBooking)]),
  ];
}

/** Says of each paper what was taken and what came back. */
export function writeChanges(
  changes: readonly StockChange[],
  { papers, units }: Pick<StockData, "papers" | "units">,
): readonly string[] {
  const rows = changes.map(({ design, sheets, taken, left }) => [
    papers.find((paper) => paper.design === design)?.name ?? design,
    `${sheets}`,
    sizes(taken, units),
    sizes(left, units),
  ]);
  return table([["paper", "sheets taken", "offcuts taken", "back in stock"], ...rows]);
}

function writeBooking({ title, plan, done, spoiled }: Booking): string {
  const sum = (counts: Readonly<Record<string, number>>): number =>
    Object.values(counts).reduce((total, count) => total + count, 0);
  const lost = sum(spoiled);
  return `  ${title} (${plan.slice(0, 8)}): ${counted(sum(done), "sheet or offcut", "sheets and offcuts")} cut${lost === 0 ? "" : `, ${lost} spoiled`}`;
}

function sizes(offcuts: readonly Offcut[], unit: Unit): string {
  if (offcuts.length === 0) return "none";
  const shown = offcuts
    .slice(0, SHOWN)
    .map(({ width, height, count }) => `${count} of ${formatSize(width, height, { unit })}`);
  const rest = offcuts.slice(SHOWN).reduce((total, { count }) => total + count, 0);
  return [...shown, ...(rest === 0 ? [] : [`${rest} smaller`])].join(", ");
}
