import type { Finding, Severity } from "@sheetwright/cards";
import { counted } from "./counted.js";
import { listed } from "./listed.js";

const WORDS: Readonly<Record<Severity, string>> = { error: "Error", warning: "Warning", note: "Note" };

/**
 * Writes findings in a project, a line each: place, severity, what was found and what would help, and the code that
 * silences it; for one that is silenced the reason as well.
 *
 * @param place writes where a value stands in the project file.
 */
export function writeFindings(
  findings: readonly Finding[],
  place: (path: string) => string,
): readonly string[] {
  return findings.map(({ code, severity, path, message, silenced }) => {
    const word = silenced === null ? WORDS[severity] : `Silenced ${severity}`;
    const reason = silenced === null ? "" : ` Because: ${silenced}`;
    return `${place(path)}: ${word}: ${message} (${code})${reason}`;
  });
}

/** Counts findings by their severity: `1 error, 2 warnings and 1 note`; empty where there are none. */
export function countFindings(findings: readonly Pick<Finding, "severity">[]): string {
  const counts = (["error", "warning", "note"] as const).flatMap((severity) => {
    const number = findings.filter((one) => one.severity === severity).length;
    return number === 0 ? [] : [counted(number, severity)];
  });
  return listed(counts);
}
