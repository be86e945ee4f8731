import { type ParseLengthOptions, type Ticks, tryParseLength } from "@sheetwright/measure";
import { quote } from "../fault.js";

/** A length, or why the text is none. */
export type LengthOrFault = { readonly ticks: Ticks } | { readonly code: string; readonly message: string };

/** What spreadsheets make of a fraction: `8-Jan`, `Jan-08`, `1/8/2024`, `2024-01-08`. */
const LOOKS_LIKE_A_DATE =
  /^\d{1,2}[-. ](jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)|^(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)\S*[- ]\d|^\d{1,2}\/\d{1,2}\/\d{2,4}$|^\d{4}-\d{1,2}-\d{1,2}/i;

/** Reads a length, and words a fault for a cell or an option, whose place is told elsewhere. */
export function readLength(text: string, options: ParseLengthOptions): LengthOrFault {
  const read = tryParseLength(text, options);
  if (read.ok) return { ticks: read.ticks };
  const { code, found, expected, help } = read.problem;
  if (code === "empty") return { code, message: `found nothing, expected a length. ${help}` };
  if (LOOKS_LIKE_A_DATE.test(text.trim())) {
    const advice =
      "A spreadsheet takes a fraction for a date: set the column to text and write the length again, or write a decimal.";
    return { code: "date", message: `${quote(text)} is a date, expected a length. ${advice}` };
  }
  const part = found === text.trim() || found === "" ? "" : `found ${quote(found)}, `;
  const verdict =
    code === "negative" || code === "zero" || code === "too-long" ? "cannot be used" : "is not a length";
  return { code, message: `${quote(text)} ${verdict}: ${part}expected ${expected}. ${help}` };
}
