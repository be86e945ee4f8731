import { oddChecks } from "./odd-checks.js";

/** The name of a check that a project file may silence. */
export type SilenceableCode = Exclude<(typeof oddChecks)[number], { readonly severity: "error" }>["code"];

/**
 * The codes of all checks that can be silenced: warnings and notes.
 *
 * @example
 * silenceableCodes.includes("bare-seam") // => true
 * silenceableCodes.includes("no-paper") // => false
 */
export const silenceableCodes: readonly SilenceableCode[] = oddChecks.flatMap((check) =>
  check.severity === "error" ? [] : [check.code],
);
