import type { Reading } from "./reading.js";
import { sayValue } from "./say-value.js";
import { WORDINGS, type WordingName } from "./wording.js";

const DECIMAL = /^(\d{1,7})(?:\.(\d{1,4}))?$/;

/** Reads a number from 0 with up to four decimals, and gives it in its shortest form: `0.50` and `.5` become `0.5`. */
export function readDecimal(
  value: string | number | undefined,
  path: string,
  wording: WordingName,
  { faults }: Reading,
): string | null {
  if (value === undefined) return null;
  const match = DECIMAL.exec(String(value).trim().replace(/^\./, "0."));
  if (match === null) {
    const { expected } = WORDINGS[wording];
    const message = `Found ${sayValue(value)}, expected ${expected}. Write a number from 0 with a dot and at most four decimals, below 10,000,000.`;
    faults.report({ code: "not-a-count", path, found: value, expected, message });
    return null;
  }
  const [, whole = "", decimals = ""] = match;
  const rest = decimals.replace(/0+$/, "");
  const units = whole.replace(/^0+(?=\d)/, "");
  return rest === "" ? units : `${units}.${rest}`;
}
