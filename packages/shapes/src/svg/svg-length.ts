import { Scan } from "./scan.js";

/** A length of a file: in user units, or a part of the viewport (0.5 for 50 %). */
export type SvgLength = { readonly units: number } | { readonly part: number };

const UNIT = /%|[a-zA-Z]+/y;

/** Millimetres in each unit of CSS that has a fixed size (CSS Values 3, section 5.2). */
const MILLIMETRES: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
};

/**
 * Reads a length; a user unit and a px are `1 / unitsPerInch` inches. `"not-a-length"` or `"unknown-unit"` where it is none,
 * `"too-far"` where it is infinite.
 *
 * @internal
 */
export function parseSvgLength(
  text: string,
  unitsPerInch: number,
): SvgLength | "not-a-length" | "unknown-unit" | "too-far" {
  const scan = new Scan(text.trim());
  const number = scan.number();
  if (number === null) return "not-a-length";
  const unit = (scan.match(UNIT) ?? "").toLowerCase();
  if (!scan.isAtEnd) return "not-a-length";
  if (!Number.isFinite(number)) return "too-far";
  if (unit === "" || unit === "px") return { units: number };
  if (unit === "%") return { part: number / 100 };
  const millimetres = Object.hasOwn(MILLIMETRES, unit) ? MILLIMETRES[unit] : undefined;
  return millimetres === undefined
    ? "unknown-unit"
    : { units: ((number * millimetres) / 25.4) * unitsPerInch };
}

/** Whether a length is in a unit that measures paper rather than the screen. @internal */
export function isPaperLength(text: string): boolean {
  return /(?:mm|cm|q|in|pt|pc)\s*$/i.test(text);
}
