import type { Check } from "./check.js";
import { faultChecks } from "./fault-checks.js";
import { oddChecks } from "./odd-checks.js";

/** The name of a check. */
export type CheckCode = (typeof faultChecks | typeof oddChecks)[number]["code"];

/**
 * All checks: those that make a project wrong, then those of what is odd in one without faults, errors first.
 *
 * @example
 * projectChecks.find(({ code }) => code === "bare-seam").severity // => "warning"
 */
export const projectChecks: readonly (Check & { readonly code: CheckCode })[] = [
  ...faultChecks,
  ...oddChecks,
];

const BY_CODE: ReadonlyMap<string, Check> = new Map(projectChecks.map((check) => [check.code, check]));

/**
 * The check of a code that is known.
 *
 * @internal
 */
export function checkOf(code: CheckCode): Check {
  const check = BY_CODE.get(code);
  if (check === undefined)
    throw new RangeError(`Expected the code of a check, found ${JSON.stringify(code)}.`);
  return check;
}
