import type { Rates } from "../project.js";
import type { Written } from "./check-structure.js";
import { type Reading, readText } from "./reading.js";
import { sayValue } from "./say-value.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";
import { WORDINGS } from "./wording.js";

const DECIMAL = /^(\d{1,7})(?:\.(\d{1,4}))?$/;
const LONGEST_CURRENCY = 12;

/** Reads what work costs; `null` where nothing is said of it. */
export function readRates(rates: Written<ProjectFile["rates"]>, reading: Reading): Rates | null {
  if (rates === undefined) return null;
  return {
    currency: readText(rates.currency, pathTo("rates", "currency"), reading, LONGEST_CURRENCY),
    hour: readDecimal(rates.hour, pathTo("rates", "hour"), "hour", reading),
    minutesPerCard: readDecimal(
      rates["minutes-per-card"],
      pathTo("rates", "minutes-per-card"),
      "minutes",
      reading,
    ),
  };
}

/** Reads a number from 0 with up to four decimals, and gives it in its shortest form. */
function readDecimal(
  value: string | number | undefined,
  path: string,
  wording: "hour" | "minutes",
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
