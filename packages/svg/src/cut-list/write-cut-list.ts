/** Writes what a drawing of a layout shows as plain text to work from, at most 78 columns wide. */

import { formatLength, formatSize, type Unit } from "@sheetwright/measure";
import type { CutOrder, Kind, Layout, Packing, Problem, Rectangle } from "@sheetwright/packing";
import type { LayoutMarks } from "@sheetwright/planner";
import type { LaidOut } from "../layout/lay-out.js";
import { layoutFacts } from "../layout/layout-facts.js";
import { formatYield, layoutYield } from "../layout/layout-yield.js";
import type { OffcutList } from "../layout/list-leftovers.js";
import type { PieceList } from "../layout/list-pieces.js";
import { hasScores } from "../layout/list-trade-marks.js";
import { unbroken } from "../text/break-lines.js";
import { countOf, runInWords } from "../wording/count-of.js";
import { displayName } from "../wording/display-name.js";
import { cutSentences } from "./cut-sentences.js";
import { columnsOf, hangingLines, rightAligned } from "./text-columns.js";
import {
  dieSentences,
  scoreSentences,
  shapeSentences,
  sheetSentences,
  slitSentences,
  topSentences,
} from "./trade-sentences.js";

/** How a cut list is written. */
export interface CutListOptions {
  /** The unit of every length (default `in`). */
  readonly unit?: Unit;
  /** The cuts in working order; without them the list names pieces and offcuts only. */
  readonly cuts?: CutOrder;
  /** What only the trade knows: grain and pattern of the sheets, scores, slits, tops and printed backs of the pieces. */
  readonly marks?: LayoutMarks;
}

const COLUMNS = 78;
const CAUTION =
  "A blade that goes through paper goes through fingers. Keep guard and hold-down in place and hands away from the " +
  "blade's line, cut no more layers at once than the tool is made for, and lock or close the blade whenever you let " +
  "go of it. The instructions that came with your tool go before anything written here.";

/**
 * Writes the cut list of `packing.layouts[index]`: the sheet, how many, its pieces, the numbered cuts in words, scores,
 * slits and tops, what is left over, and a caution. Lengths of the problem are ticks of 1/1600 mm. The text is Unicode and ends in a
 * line feed. Throws a RangeError where the packing has no such layout or does not answer the problem, and where the marks
 * do not go with the problem.
 */
export function writeCutList(
  problem: Problem,
  packing: Packing,
  index: number,
  options: CutListOptions = {},
): string {
  const { unit = "in", cuts } = options;
  const { sheet, layout, kerf, laidOut, pieces, offcuts, marks } = layoutFacts(
    problem,
    packing,
    index,
    options.marks,
  );

  const name = hangingLines("", displayName(sheet), COLUMNS);
  const of = packing.layouts.length > 1 ? `Layout ${index + 1} of ${packing.layouts.length}. ` : "";
  const used = formatYield(layoutYield(laidOut, layout.run));
  const blocks: (readonly string[])[] = [
    [
      ...name,
      "=".repeat(Math.min(COLUMNS, Math.max(...name.map(columnsOf)))),
      formatSize(sheet.width, sheet.height, { unit }),
      ...hangingLines("", `${of}${runInWords(layout.run)}. ${used} of the sheet used.`, COLUMNS),
      ...sheetSentences(marks.sheet, sheet, marks.listed.some(hasScores), unit).flatMap((sentence) =>
        hangingLines("", sentence, COLUMNS),
      ),
    ],
    pieceLines(problem, layout, laidOut, pieces, unit),
  ];
  if (cuts !== undefined) blocks.push(cutLines(cuts, laidOut, pieces, layout.run, kerf, unit));
  if (laidOut.windows.length > 0) blocks.push(windowLines(laidOut, pieces, unit));
  const scores = scoreSentences(marks.listed, unit);
  if (scores.length > 0) blocks.push(["Scores, after the cuts", ...scores.flatMap(indented)]);
  const slits = slitSentences(marks.listed, unit);
  if (slits.length > 0) blocks.push(["Slits, after the scores", ...slits.flatMap(indented)]);
  const dies = dieSentences(marks.listed, unit);
  if (dies.length > 0) blocks.push(["By die, after the cuts", ...dies.flatMap(indented)]);
  const shapes = shapeSentences(marks.listed, unit);
  if (shapes.length > 0) blocks.push(["By machine or scissors, after the cuts", ...shapes.flatMap(indented)]);
  const tops = topSentences(marks.listed);
  if (tops.length > 0) blocks.push(["Which way up", ...tops.flatMap(indented)]);
  blocks.push(leftLines(offcuts, layout.run, unit));
  blocks.push(["Mind the blade", ...hangingLines("  ", CAUTION, COLUMNS)]);
  return `${blocks.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function indented(sentence: string): readonly string[] {
  return hangingLines("  ", sentence, COLUMNS);
}

function pieceLines(
  problem: Problem,
  layout: Layout,
  laidOut: LaidOut,
  { entries }: PieceList,
  unit: Unit,
): readonly string[] {
  if (entries.length === 0) return ["Pieces", "  none"];
  const lines = entries.flatMap(({ number, label, size, places, pieces, shared }) => {
    const count =
      layout.run === 1
        ? countOf(places, "piece")
        : shared
          ? `${places} a sheet`
          : `${places} a sheet, ${pieces} in all`;
    const text = `${label}: ${unbroken(`${formatSize(size.width, size.height, { unit })};`)} ${count}`;
    return hangingLines(`  ${rightAligned(String(number), 3)}  `, text, COLUMNS);
  });
  if (!entries.some(({ shared }) => shared)) return ["Pieces", ...lines];

  // Shared places hide how many of each there will be.
  const totals = problem.kinds
    .map((kind: Kind) => ({ name: displayName(kind), count: copiesOf(kind.id, laidOut) }))
    .filter(({ count }) => count > 0)
    .map(({ name, count }) => `${unbroken(`${count} x`)} ${name}`);
  const all = `From ${countOf(layout.run, "sheet")}: ${totals.join(", ")}.`;
  return ["Pieces", ...lines, ...hangingLines("  ", all, COLUMNS)];
}

function copiesOf(kind: string, { pieces }: LaidOut): number {
  const shares = pieces.flatMap((piece) => piece.shares.filter((share) => share.kind === kind));
  return shares.reduce((sum, { count }) => sum + count, 0);
}

function cutLines(
  order: CutOrder,
  laidOut: LaidOut,
  pieces: PieceList,
  run: number,
  kerf: number,
  unit: Unit,
): readonly string[] {
  if (order.cuts.length === 0) return ["Cuts", "  none: the sheet is left as it is."];
  const digits = Math.max(2, String(order.cuts.length).length);
  const lines = cutSentences(order, laidOut, pieces, unit).flatMap((sentence, i) =>
    hangingLines(`  ${rightAligned(String(order.cuts[i]?.number), digits)}. `, sentence, COLUMNS),
  );
  const summary = `${countOf(order.cuts.length, "cut")}; the fence is set ${order.settings === 1 ? "once" : countOf(order.settings, "time")}.`;
  const taken =
    kerf > 0 ? ` Each cut takes ${formatLength(kerf, { unit })} (kerf), which is allowed for.` : "";
  const sheets = run === 2 ? "both sheets" : `all ${run} sheets`;
  const all = run > 1 ? [`  Do each cut on ${sheets} before the next.`] : [];
  return ["Cuts, in this order", ...all, ...lines, ...hangingLines("  ", `${summary}${taken}`, COLUMNS)];
}

function windowLines(laidOut: LaidOut, { entryOf }: PieceList, unit: Unit): readonly string[] {
  const lines: string[] = [];
  laidOut.pieces.forEach((piece, index) => {
    const { window } = piece;
    if (window === null) return;
    const opened = laidOut.windows.find((other) => sameRectangle(other, window));
    const from = (length: number) => unbroken(formatLength(length, { unit }));
    const text =
      `${entryOf[index]?.label}: ${unbroken(formatSize(window.width, window.height, { unit }))}, ` +
      `${from(window.x - piece.x)} from the left and ${from(window.y - piece.y)} from the top of the piece as it ` +
      `lies; opened with: ${displayName({ id: opened?.tool ?? "" })}.`;
    lines.push(...hangingLines("  ", text, COLUMNS));
  });
  return ["Windows", ...lines];
}

function sameRectangle(a: Rectangle, b: Rectangle): boolean {
  return a.x === b.x && a.y === b.y && a.width === b.width && a.height === b.height;
}

function leftLines({ entries }: OffcutList, run: number, unit: Unit): readonly string[] {
  if (entries.length === 0) return ["Left over", "  no offcut worth keeping"];
  const lines = entries.flatMap(({ number, size, places }) => {
    const count = run === 1 ? countOf(places, "offcut") : `${places} a sheet, ${places * run} in all`;
    const text = `${formatSize(size.width, size.height, { unit })}; ${count}`;
    return hangingLines(`  ${rightAligned(String(number), 3)}  `, text, COLUMNS);
  });
  return ["Left over", ...lines];
}
