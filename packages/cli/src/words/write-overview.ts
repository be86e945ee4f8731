import { formatSize } from "@sheetwright/measure";
import type { Packing, Problem } from "@sheetwright/packing";
import type { PlanSummary } from "../plan/plan-summary.js";
import { countPieces } from "./count-pieces.js";
import { counted } from "./counted.js";
import { table } from "./table.js";
import { BLADE_CAUTION } from "./write-notes.js";
import { writeShortfall } from "./write-shortfall.js";
import { writeSolver } from "./write-solver.js";
import { writeSummary } from "./write-summary.js";

/**
 * Writes the overview of a plan, the file `cut-list.txt`: the summary, what is missing, every piece with the layouts it
 * comes from, and all leftovers. How each layout is cut is in its own list.
 */
export function writeOverview(summary: PlanSummary, problem: Problem, packing: Packing): string {
  const shortfall = writeShortfall(summary, problem);
  const lines = [
    "SHEETS TO CUT",
    "",
    ...writeSummary(summary, summary.layouts.length),
    "",
    ...(shortfall.length === 0 ? [] : ["MISSING", "", ...shortfall, ""]),
    "PIECES",
    "",
    ...writePieces(summary, problem, packing),
    "",
    "LEFTOVERS",
    "",
    ...writeAllLeftovers(summary),
    "",
    ...writeSolver(packing.search.lp),
    ...BLADE_CAUTION,
  ];
  return `${lines.map((line) => line.trimEnd()).join("\n")}\n`;
}

function writePieces(summary: PlanSummary, problem: Problem, packing: Packing): readonly string[] {
  const counts = packing.layouts.map((layout) => countPieces(layout.tree));
  const rows = problem.kinds.map((kind, index): readonly string[] => {
    const [form] = kind.forms;
    const size = form === undefined ? "" : formatSize(form.width, form.height, { unit: summary.units.shown });
    const turn = form?.turns === "upright" ? "never turned" : "";
    const from = summary.layouts
      .map(({ name }, layout) => ({ name, count: counts[layout]?.get(kind.id) ?? 0 }))
      .filter(({ count }) => count > 0)
      .map(({ name, count }) => `${count} from ${name}`);
    const cut = packing.placed[index]?.count ?? 0;
    const wanted = cut === kind.quantity ? `${cut}` : `${cut} of ${kind.quantity ?? 0}`;
    return [kind.name ?? kind.id, size, wanted, from.join(", "), turn];
  });
  return table([["piece", "width x height", "number", "cut", ""], ...rows]);
}

function writeAllLeftovers({ leftovers, units }: PlanSummary): readonly string[] {
  if (leftovers.length === 0) return ["none"];
  return leftovers.map(({ count, width, height, keep }) => {
    const size = formatSize(width, height, { unit: units.shown });
    return `${counted(count, "leftover")} of ${size}${keep ? "" : ", too small to keep"}`;
  });
}
