import type { Reading } from "./reading.js";
import { sayValue } from "./say-value.js";

const DECIMAL = /^(\d{1,7})(?:\.(\d{1,4}))?$/;

/** Reads the cost of a sheet and gives it in its shortest form: `0.50` and `.5` become `0.5`. */
export function readCost(
  value: string | number | undefined,
  path: string,
  { faults }: Reading,
): string | null {
  if (value === undefined) return null;
  const text = String(value).trim().replace(/^\./, "0.");
  const match = DECIMAL.exec(text);
  if (match === null) {
    const help = /^[^\d.-]|[^\d.,]$/.test(text)
      ? "Leave out the sign of the currency."
      : "Write a number with a dot and at most four decimals, below 10,000,000.";
    faults.report({
      code: "not-a-count",
      path,
      found: value,
      expected: "the cost of one sheet, such as 0.35",
      message: `Found ${sayValue(value)}, expected the cost of one sheet, such as 0.35. ${help}`,
    });
    return null;
  }
  const [, whole = "", decimals = ""] = match;
  const rest = decimals.replace(/0+$/, "");
  const units = whole.replace(/^0+(?=\d)/, "");
  return rest === "" ? units : `${units}.${rest}`;
}
