/** Checks that a packing states the bound that its certificate proves: not more, and not less. */

import { checkCertificate, type Proven } from "./check-certificate.js";
import type { Report } from "./finding.js";
import type { ProblemFacts } from "./read-problem.js";
import { compareDecimals, readDecimal, readFields, readWhole, readWord } from "./read-value.js";

/** Checks the bound and its certificate; gives what the certificate proves, if it is one. */
export function checkBound(facts: ProblemFacts, value: unknown, report: Report): Proven | undefined {
  const bound = readFields<"aim" | "cost" | "sheets" | "value" | "certificate">(report, value, "bound");
  if (bound === undefined) return undefined;
  const aim = readWord(report, bound.aim, "bound.aim", ["all", "fill"]);
  if (aim !== undefined && aim !== facts.aim) {
    const message = `bound.aim is "${aim}", but the problem's aim is "${facts.aim}". Bound what the problem asks for.`;
    report("wrong-aim", "bound.aim", message, aim, facts.aim);
  }
  const proven = checkCertificate(facts, bound.certificate, report);
  if (aim !== facts.aim) return proven;
  if (aim === "all") {
    const cost = bound.cost === null ? null : readDecimal(report, bound.cost, "bound.cost");
    const sheets = bound.sheets === null ? null : readWhole(report, bound.sheets, "bound.sheets", 0);
    if (proven === undefined) return undefined;
    if (cost !== undefined) compareLeast(report, "bound.cost", cost, proven.cost);
    if (sheets !== undefined) {
      compareLeast(report, "bound.sheets", sheets === null ? null : String(sheets), proven.sheets);
    }
  } else {
    const most = readDecimal(report, bound.value, "bound.value");
    if (proven !== undefined && most !== undefined) compareMost(report, most, proven.value);
  }
  return proven;
}

/** Compares a stated least number with the proven one; `null` says that no number will do. */
function compareLeast(report: Report, path: string, stated: string | null, proven: bigint | null): void {
  const order =
    stated === null || proven === null
      ? Number(stated === null) - Number(proven === null)
      : compareDecimals(stated, proven.toString());
  if (order === 0) return;
  const words = (limit: string | null) =>
    limit === null ? "that the stock cannot give every piece" : `${limit}`;
  const given = proven === null ? null : proven.toString();
  const message =
    `${path} states ${words(stated)}, but the certificate proves ${words(given)}. ` +
    "State what the certificate proves, or find a stronger one.";
  report(order > 0 ? "bound-not-proven" : "bound-understated", path, message, stated, given);
}

function compareMost(report: Report, stated: string, proven: bigint | null): void {
  const given = proven === null ? null : proven.toString();
  const order = given === null ? -1 : compareDecimals(stated, given);
  if (order === 0) return;
  const message =
    `bound.value states ${stated}, but the certificate proves ${given ?? "no limit"}. ` +
    "State what the certificate proves, or find a stronger one.";
  report(order < 0 ? "bound-not-proven" : "bound-understated", "bound.value", message, stated, given);
}
