import { formatLength, formatSize } from "@sheetwright/measure";
import type { Problem } from "@sheetwright/packing";
import { usablePart, writeNoFit } from "../plan/explain-no-fit.js";
import type { PlanSummary } from "../plan/plan-summary.js";
import { counted } from "./counted.js";

/**
 * Says what cannot be cut as asked: which pieces are missing, whether that is proven, and what would help. Gives lines
 * without a break at their end; none where nothing is missing.
 */
export function writeShortfall(summary: PlanSummary, problem: Problem): readonly string[] {
  const { pieces, sheets, outcome } = summary;
  if (outcome === "complete") return [];
  const unit = summary.units.shown;
  const missing = pieces.missing.reduce((total, one) => total + one.count, 0);
  const lines = [`Cannot be planned as asked: ${missing} of ${counted(pieces.wanted, "piece")} missing.`, ""];
  const unfit = new Set(pieces.fitNoSheet.map((one) => one.kind));
  for (const { kind, count } of pieces.missing) {
    const found = problem.kinds.find((one) => one.id === kind);
    const [form] = found?.forms ?? [];
    const size = form === undefined ? "" : `, ${formatSize(form.width, form.height, { unit })}`;
    const why = unfit.has(kind) ? ": fits no sheet" : "";
    lines.push(`  ${count} of ${found?.quantity ?? 0} ${kind}${size}${why}`);
  }
  lines.push("", ...pieces.fitNoSheet.map((one) => writeNoFit(one, problem, unit)));
  const others = pieces.missing.some((one) => !unfit.has(one.kind));
  if (others) lines.push(writeStock(summary), ...writeHelp(summary, problem));
  else if (sheets.used > 0) lines.push("All other pieces are in the plan.");
  return lines;
}

/** Answers 'is there enough' with `no, proven`, or `not found` and what is proven. */
function writeStock({ outcome, sheets, pieces }: PlanSummary): string {
  const someUnfit = pieces.fitNoSheet.length > 0;
  const { onHand, atLeast } = sheets;
  if (onHand === null) return "No way was found to cut the missing pieces.";
  const proven = (atLeast !== null && atLeast > onHand) || (outcome === "short" && !someUnfit);
  const all = someUnfit ? "all the others" : "all pieces";
  const needed =
    atLeast === null
      ? ""
      : ` At least ${atLeast === 1 ? "1 sheet is" : `${atLeast} sheets are`} needed, proven.`;
  const answer = proven ? "No, proven." : "Not found; nothing proves that it cannot be done.";
  return `Can ${all} be cut from ${counted(onHand, "sheet")}? ${answer}${needed}`;
}

function writeHelp({ sheets, units }: PlanSummary, problem: Problem): readonly string[] {
  const help: string[] = [];
  const [sheet] = problem.sheets;
  if (sheet === undefined) return help;
  const longest = sheet.longestCut ?? null;
  const { width, height } = usablePart(sheet);
  if (longest !== null && longest < Math.min(width, height)) {
    const limit = formatLength(longest, { unit: units.shown });
    const size = formatSize(width, height, { unit: units.shown });
    help.push(
      `No cut across a part of ${size} is possible where --longest-cut is ${limit}: use a smaller sheet.`,
    );
    return help;
  }
  if (sheets.enough !== null && sheets.onHand !== null && sheets.enough > sheets.onHand) {
    help.push(`${sheets.enough} sheets were found to be enough: --count ${sheets.enough}.`);
  }
  if (longest !== null) help.push("A longer --longest-cut may help.");
  if (problem.mode === "shelf") help.push("--mode guillotine may place more.");
  if (help.length === 0) help.push("--effort thorough searches longer.");
  return help;
}
