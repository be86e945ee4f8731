import { formatLength, type Ticks, type Unit } from "@sheetwright/measure";

/** Ticks in a yard and in a metre, which ribbon is sold by. */
export const YARD: Ticks = 36 * 40_640;
export const METRE: Ticks = 1_600_000;

/**
 * How long a roll is as a label says it: in yards, or metres, where that comes out in quarters, or hundredths. In inches as well a
 * roll is told in metres where inches would be rounded.
 */
export function rollLength(length: Ticks, unit: Unit): string {
  const own = lengthIn(length, unit);
  return own.startsWith("~") && unit === "in" ? lengthIn(length, "mm") : own;
}

function lengthIn(length: Ticks, unit: Unit): string {
  if (unit === "in") {
    if (length < YARD || (4 * length) % YARD !== 0) return formatLength(length, { unit });
    return formatLength(length / 36, { unit }).replace(/ in$/, " yd");
  }
  if (length < METRE || (100 * length) % METRE !== 0) return formatLength(length, { unit });
  const hundredths = (100 * length) / METRE;
  const rest = hundredths % 100;
  const part = rest === 0 ? "" : `.${`${rest}`.padStart(2, "0").replace(/0$/, "")}`;
  return `${(hundredths - rest) / 100}${part} m`;
}
