/** Checks every layout: its sheet, its run, its trims, its tree, and where its pieces come to lie. */

import { findMeetings, isWithin } from "./check-apart.js";
import { checkTree } from "./check-tree.js";
import { type Report, shown } from "./finding.js";
import type { ProblemFacts, SheetFacts } from "./read-problem.js";
import { readFields, readList, readText, readWhole } from "./read-value.js";
import type { Ground, Tally, Walk } from "./walk.js";

/** Far above what any plan needs, low enough that a tree without end is given up within a second. */
const mostNodes = 200_000;

/** Checks the list of layouts and adds up what they hold. */
export function checkLayouts(facts: ProblemFacts, value: unknown, report: Report): Tally {
  const tally: Tally = {
    placed: new Map(),
    togetherIn: new Map(),
    used: new Map(),
    nodesLeft: mostNodes,
    isWhole: true,
  };
  const runs: (bigint | null)[] = [];
  const layouts = readList(report, value, "layouts");
  if (layouts === undefined) tally.isWhole = false;
  for (const [index, layout] of (layouts ?? []).entries()) {
    runs.push(checkLayout(facts, layout, index, report, tally));
  }
  checkStock(facts, tally, report);
  checkTogether(tally, runs, report);
  return tally;
}

/** Checks one layout and gives its run, if that can be read. */
function checkLayout(
  facts: ProblemFacts,
  value: unknown,
  index: number,
  report: Report,
  tally: Tally,
): bigint | null {
  const path = `layouts[${index}]`;
  const fields = readFields<"sheet" | "run" | "tree">(report, value, path);
  const id = fields && readText(report, fields.sheet, `${path}.sheet`);
  const count = fields && readWhole(report, fields.run, `${path}.run`, 1);
  const run = count === undefined ? null : BigInt(count);
  const sheet = id === undefined ? undefined : facts.sheets.get(id);
  if (id !== undefined && sheet === undefined) {
    const message = `${path}.sheet is ${shown(id)}, but the problem has no such sheet. Name one of the problem's sheets.`;
    report("unknown-sheet", `${path}.sheet`, message, id);
  }
  if (run === null || sheet === undefined) tally.isWhole = false;
  if (fields === undefined || sheet === undefined) return run;
  if (run !== null) tally.used.set(sheet.id, (tally.used.get(sheet.id) ?? 0n) + run);

  checkTrims(sheet, path, report);
  const walk: Walk = {
    facts,
    sheet,
    layout: index,
    report,
    tally,
    waiting: [],
    grounds: [],
    lastTrims: [],
    hasStoppedCuts: false,
  };
  checkTree(walk, fields.tree, `${path}.tree`, { bounds: sheet.usable, name: "sheet", run, pieces: [] });
  for (const ground of walk.grounds) checkPlaces(ground, facts.kerf, report);
  if (walk.hasStoppedCuts && run !== null && run > 1n) {
    const message = `${path} has stopped cuts, which are made one sheet at a time, but its run is ${run}. Repeat the layout.`;
    report("stopped-run", `${path}.run`, message, run, 1);
  }
  return run;
}

/** Trims come first, in the order left, right, top, bottom, so the last two cross a sheet that is narrower by then. */
function checkTrims(sheet: SheetFacts, path: string, report: Report): void {
  const longest = sheet.longestCut;
  if (longest === null) return;
  const sides = [
    { name: "left", trim: sheet.trim.left, length: sheet.height },
    { name: "right", trim: sheet.trim.right, length: sheet.height },
    { name: "top", trim: sheet.trim.top, length: sheet.usable.width },
    { name: "bottom", trim: sheet.trim.bottom, length: sheet.usable.width },
  ];
  for (const { name, trim, length } of sides) {
    if (trim === 0 || length <= longest) continue;
    const message =
      `The ${name} trim of ${path} is a cut of ${length}, but the longest cut on sheet ${shown(sheet.id)} is ` +
      `${longest}. Trim nothing there, or use a tool with a longer cut.`;
    report("cut-too-long", `${path}.sheet`, message, length, longest);
  }
}

/** Proves once more, from rectangles alone, that pieces lie inside and apart. */
function checkPlaces(ground: Ground, kerf: number, report: Report): void {
  const { bounds, name, pieces } = ground;
  for (const piece of pieces) {
    if (isWithin(piece, bounds)) continue;
    const found = `${piece.width} x ${piece.height} at ${piece.x}, ${piece.y}`;
    const expected = `${bounds.width} x ${bounds.height} at ${bounds.x}, ${bounds.y}`;
    const where = name === "sheet" ? "the usable part of the sheet" : "the window";
    const message = `The piece of ${piece.path} is ${found} and reaches out of ${where}, ${expected}. Move it inside.`;
    report("outside", piece.path, message, found, expected);
  }
  for (const { first, second } of findMeetings(pieces, 0)) {
    const message =
      `The piece of ${second.path} (${second.width} x ${second.height} at ${second.x}, ${second.y}) lies on that of ` +
      `${first.path} (${first.width} x ${first.height} at ${first.x}, ${first.y}). Move one of them.`;
    report("overlap", second.path, message, first.path);
  }
  if (kerf === 0) return;
  for (const { first, second } of findMeetings(pieces, kerf)) {
    const message =
      `The piece of ${second.path} lies closer to that of ${first.path} than the kerf of ${kerf}. ` +
      "Leave the kerf between them.";
    report("too-close", second.path, message, first.path, kerf);
  }
}

function checkStock(facts: ProblemFacts, tally: Tally, report: Report): void {
  for (const [id, used] of tally.used) {
    const stock = facts.sheets.get(id)?.stock ?? null;
    if (stock === null || used <= stock) continue;
    const message = `The layouts use ${used} of sheet ${shown(id)}, but there are ${stock}. Cut fewer, or add to the stock.`;
    report("over-stock", "layouts", message, used, stock);
  }
}

function checkTogether(tally: Tally, runs: readonly (bigint | null)[], report: Report): void {
  for (const [key, indices] of tally.togetherIn) {
    const layouts = [...indices];
    if (layouts.length > 1) {
      const places = layouts.map((index) => `layouts[${index}]`).join(", ");
      const message = `What belongs together as ${shown(key)} is cut in ${places}. Cut all of it from one single sheet.`;
      report("together-split", "layouts", message, layouts.length, 1);
    }
    for (const index of layouts) {
      const run = runs[index] ?? null;
      if (run === null || run === 1n) continue;
      const message =
        `layouts[${index}] holds what belongs together as ${shown(key)}, but its run is ${run}. ` +
        "Cut all of it from one single sheet.";
      report("together-split", `layouts[${index}].run`, message, run, 1);
    }
  }
}
