/** Checks what a packing says of itself against what its layouts hold: counts, cost, value, outcome, proof. */

import type { Proven } from "./check-certificate.js";
import { type Report, shown } from "./finding.js";
import type { KindFacts, ProblemFacts } from "./read-problem.js";
import { readDecimal, readFields, readFlag, readList, readText, readWhole, readWord } from "./read-value.js";
import type { Tally } from "./walk.js";

/** The parts of a packing that follow from its layouts. */
export interface Totals {
  readonly placed?: unknown;
  readonly missing?: unknown;
  readonly sheets?: unknown;
  readonly cost?: unknown;
  readonly value?: unknown;
  readonly outcome?: unknown;
  readonly proven?: unknown;
}

/**
 * Checks all totals. Where the layouts could not be counted, only the form of the totals is checked; where the bound
 * is no proof, only the form of the outcome and of the proven flag.
 */
export function checkTotals(
  facts: ProblemFacts,
  totals: Totals,
  tally: Tally,
  proven: Proven | undefined,
  report: Report,
): void {
  const kinds = [...facts.kinds.values()];
  const placedOf = (kind: KindFacts) => tally.placed.get(kind.id) ?? 0n;
  const missingOf = (kind: KindFacts) =>
    placedOf(kind) < kind.required ? kind.required - placedOf(kind) : 0n;
  const missing = kinds.filter((kind) => missingOf(kind) > 0n);

  if (tally.isWhole) checkLimits(kinds, placedOf, report);
  checkCounts(facts, tally, totals.placed, kinds, placedOf, { path: "placed", code: "wrong-placed" }, report);
  checkCounts(
    facts,
    tally,
    totals.missing,
    missing,
    missingOf,
    { path: "missing", code: "wrong-missing" },
    report,
  );

  let sheets = 0n;
  let cost = 0n;
  for (const [id, used] of tally.used) {
    sheets += used;
    cost += used * (facts.sheets.get(id)?.cost ?? 0n);
  }
  const value = kinds.reduce((sum, kind) => sum + placedOf(kind) * kind.value, 0n);
  const statedSheets = readWhole(report, totals.sheets, "sheets", 0);
  if (tally.isWhole && statedSheets !== undefined && BigInt(statedSheets) !== sheets) {
    const message = `sheets is ${statedSheets}, but the runs of the layouts sum to ${sheets}. Correct the one or the other.`;
    report("wrong-sheets", "sheets", message, statedSheets, sheets);
  }
  const statedCost = readDecimal(report, totals.cost, "cost");
  if (tally.isWhole && statedCost !== undefined && statedCost !== cost.toString()) {
    const message = `cost is ${shown(statedCost)}, but the sheets used cost ${cost}. Sum run times cost over the layouts.`;
    report("wrong-cost", "cost", message, statedCost, cost);
  }
  const statedValue = readDecimal(report, totals.value, "value");
  if (tally.isWhole && statedValue !== undefined && statedValue !== value.toString()) {
    const message = `value is ${shown(statedValue)}, but the copies placed are worth ${value}. Sum count times value.`;
    report("wrong-value", "value", message, statedValue, value);
  }

  const outcome = readWord(report, totals.outcome, "outcome", ["complete", "short", "not-found"]);
  const flag = readFlag(report, totals.proven, "proven");
  if (!tally.isWhole || outcome === undefined) return;
  checkOutcome(facts, outcome, missing.length > 0, proven, report);
  if (flag === undefined || proven === undefined) return;
  const isProven =
    facts.aim === "fill"
      ? proven.value === value
      : missing.length > 0
        ? proven.cost === null
        : proven.cost === cost;
  if (flag !== isProven) {
    const limit = facts.aim === "fill" ? `value of ${value}` : `cost of ${cost}`;
    const bound = (facts.aim === "fill" ? proven.value : proven.cost) ?? "nothing";
    const message =
      `proven is ${flag}, but the certificate proves ${bound} and the plan comes to a ${limit}` +
      `${missing.length > 0 ? " without all pieces" : ""}. Set it to ${isProven}.`;
    report("wrong-proven", "proven", message, flag, isProven);
  }
}

function checkLimits(
  kinds: readonly KindFacts[],
  placedOf: (kind: KindFacts) => bigint,
  report: Report,
): void {
  for (const [index, kind] of kinds.entries()) {
    const count = placedOf(kind);
    if (kind.quantity === null || count <= kind.quantity) continue;
    const message =
      `The layouts hold ${count} copies of kind ${shown(kind.id)}, but ${kind.quantity} are wanted. ` +
      "Make the others offcuts.";
    report("too-many-placed", `placed[${index}]`, message, count, kind.quantity);
  }
}

/** Checks a list of counts: the kinds expected, in the problem's order, each with its count. */
function checkCounts(
  facts: ProblemFacts,
  tally: Tally,
  value: unknown,
  expected: readonly KindFacts[],
  countOf: (kind: KindFacts) => bigint,
  { path, code }: { readonly path: string; readonly code: "wrong-placed" | "wrong-missing" },
  report: Report,
): void {
  const entries = readList(report, value, path);
  if (entries === undefined) return;
  for (const [index, entry] of entries.entries()) {
    const here = `${path}[${index}]`;
    const fields = readFields<"kind" | "count">(report, entry, here);
    const id = fields && readText(report, fields.kind, `${here}.kind`);
    const count = fields && readWhole(report, fields.count, `${here}.count`, 0);
    if (id !== undefined && !facts.kinds.has(id)) {
      const message = `${here}.kind is ${shown(id)}, but the problem has no such kind. Name one of the problem's kinds.`;
      report("unknown-kind", `${here}.kind`, message, id);
      continue;
    }
    const kind = expected[index];
    if (!tally.isWhole || id === undefined || count === undefined) continue;
    if (kind === undefined || id !== kind.id) {
      const message = `${here} counts kind ${shown(id)}, but ${shown(kind?.id)} is due there. Keep the problem's order.`;
      report(code, `${here}.kind`, message, id, kind?.id);
      continue;
    }
    if (BigInt(count) === countOf(kind)) continue;
    const message = `${here}.count is ${count} for kind ${shown(id)}, but the layouts make it ${countOf(kind)}. Correct it.`;
    report(code, `${here}.count`, message, count, countOf(kind));
  }
  if (tally.isWhole && entries.length < expected.length) {
    const next = expected[entries.length];
    const message = `${path} ends before kind ${shown(next?.id)}. List every kind that is due, in the problem's order.`;
    report(code, path, message, entries.length, expected.length);
  }
}

/**
 * With the aim `fill` the search need not prove that the least copies cannot be had, so there `not-found` stands even
 * where the certificate would prove it.
 */
function checkOutcome(
  facts: ProblemFacts,
  outcome: "complete" | "short" | "not-found",
  misses: boolean,
  proven: Proven | undefined,
  report: Report,
): void {
  let expected: string;
  if (!misses) expected = "complete";
  else if (proven === undefined) expected = outcome === "complete" ? "not-found" : outcome;
  else if (proven.isShort) expected = facts.aim === "fill" && outcome === "not-found" ? outcome : "short";
  else expected = "not-found";
  if (outcome === expected) return;
  const reason = misses
    ? `pieces are missing and the certificate ${proven?.isShort ? "proves" : "does not prove"} that the stock is short`
    : "no piece is missing";
  const message = `outcome is "${outcome}", but ${reason}. It should be "${expected}".`;
  report("wrong-outcome", "outcome", message, outcome, expected);
}
