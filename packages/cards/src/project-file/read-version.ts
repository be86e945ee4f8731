import type { FaultList } from "./fault-list.js";
import { sayValue } from "./say-value.js";

/**
 * Reads the version of a file and reports one that is not known. Gives `null` where the rest cannot be judged: a later
 * version may mean anything. A missing or odd one is taken for the current one, so that the rest is looked into.
 */
export function readVersion(
  data: Readonly<Record<string, unknown>>,
  current: number,
  faults: FaultList,
): number | null {
  const expected = `sheetwright: ${current}`;
  const report = (message: string) =>
    faults.report({
      code: "version",
      path: "sheetwright",
      found: data.sheetwright,
      expected,
      message,
      suggestion: String(current),
    });
  const version = data.sheetwright;
  if (version === undefined) {
    if ("sheetwright" in data) return current;
    report(`The version of the format is missing. Begin the file with ${expected}.`);
    return current;
  }
  if (typeof version !== "number" || !Number.isSafeInteger(version) || version < 1) {
    const found = version === null ? "nothing" : sayValue(version);
    report(`Found ${found} as the version of the format. Write ${expected}.`);
    return current;
  }
  if (version <= current) return version;
  const known = current === 1 ? "version 1" : `versions 1 to ${current}`;
  report(
    `The file is written in version ${version} of the format, and this program knows ${known}. Use a newer Sheetwright; the rest of the file was not looked at.`,
  );
  return null;
}
