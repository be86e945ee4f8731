/**
 * Proves a packing right, or says what is wrong with it and where, from the problem and the packing alone.
 *
 * It guarantees, where it finds nothing: every piece is placed as often as stated and not more often than wanted, whole,
 * apart from the others and inside the usable part of its sheet, in a way allowed to it; every layout can be cut as the
 * mode says; counts, cost, value, outcome and bound are what they are said to be. It does not judge whether a better
 * plan exists, beyond what the certificate proves, nor which pieces a short plan should have placed first. It shares no
 * code with the search. Time grows with the number of nodes (times its logarithm) and with kinds x forms x sheets.
 */

import type { Packing, Problem } from "../model.js";
import { checkBound } from "./check-bound.js";
import { checkLayouts } from "./check-layouts.js";
import { checkTotals } from "./check-totals.js";
import { type Finding, type Report, shown, startFindings } from "./finding.js";
import { readProblem } from "./read-problem.js";
import { readFields, readText, readWhole, readWord } from "./read-value.js";

/**
 * Checks a packing against its problem and gives what is wrong, in the order of reading; an empty list means that the
 * plan is right. Any JSON may come in: whatever is missing or malformed is a finding, and nothing throws. With a
 * malformed problem only its own faults (`bad-problem`) are given. Lengths in messages are whole numbers in the
 * caller's unit.
 *
 * @example
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 10, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "cream", width: 12, height: 12 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * const packing = pack(problem);
 * verify(problem, packing) // => []
 * verify(problem, { ...packing, sheets: 3 }).map(({ code }) => code) // => ["wrong-sheets"]
 */
export function verify(problem: Problem, packing: Packing): readonly Finding[] {
  const { list, report } = startFindings();
  const facts = readProblem(problem, report);
  if (facts === undefined) return list;
  const fields = readFields<keyof Packing>(report, packing, "packing");
  if (fields === undefined) return list;

  if (fields.version !== 1) {
    const message = `version is ${shown(fields.version)}, but version 1 is checked here. Write the packing as version 1.`;
    report("wrong-version", "version", message, fields.version, 1);
  }
  const mode = readWord(report, fields.mode, "mode", ["shelf", "guillotine", "stopped"]);
  if (mode !== undefined && mode !== facts.mode) {
    const message = `mode is "${mode}", but the problem's mode is "${facts.mode}". Pack for the problem's mode.`;
    report("wrong-mode", "mode", message, mode, facts.mode);
  }
  const aim = readWord(report, fields.aim, "aim", ["all", "fill"]);
  if (aim !== undefined && aim !== facts.aim) {
    const message = `aim is "${aim}", but the problem's aim is "${facts.aim}". Pack for the problem's aim.`;
    report("wrong-aim", "aim", message, aim, facts.aim);
  }
  const tally = checkLayouts(facts, fields.layouts, report);
  const proven = checkBound(facts, fields.bound, report);
  checkTotals(facts, fields, tally, proven, report);
  checkSearch(fields.search, report);
  return list;
}

/** The record of the search proves nothing, so only its form is checked. */
function checkSearch(value: unknown, report: Report): void {
  const fields = readFields<"effort" | "seed" | "lp" | "starts" | "steps" | "work" | "ended">(
    report,
    value,
    "search",
  );
  if (fields === undefined) return;
  readWord(report, fields.effort, "search.effort", ["quick", "standard", "thorough"]);
  readWhole(report, fields.seed, "search.seed", Number.MIN_SAFE_INTEGER);
  readText(report, fields.lp, "search.lp");
  readWhole(report, fields.starts, "search.starts", 0);
  readWhole(report, fields.steps, "search.steps", 0);
  readWhole(report, fields.work, "search.work", 0);
  readWord(report, fields.ended, "search.ended", ["finished", "proven", "cancelled"]);
}
