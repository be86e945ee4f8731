import { CsvError } from "csv-parse";
import { parse } from "csv-parse/sync";
import type { Fault } from "../fault.js";

/** One line of a CSV file that holds something. */
export interface Row {
  /** Line in the file, from 1. */
  readonly line: number;
  /** The line's cells, without the white space round them. */
  readonly cells: readonly string[];
}

/** A CSV file taken apart. */
export interface SplitRows {
  /** The first row. */
  readonly header: Row | undefined;
  readonly rows: readonly Row[];
  /** Lines left out since they start with `#`. */
  readonly comments: number;
  readonly faults: readonly Fault[];
}

/** What may stand between two cells, the standard's comma first. */
const SEPARATORS = [",", ";", "\t"] as const;

/**
 * Takes CSV text (RFC 4180) apart, line by line: no cell of a piece list spans lines, so an open quote is a fault of its
 * own line and never swallows the rows below. Takes a semicolon or a tab for the separator where the header has no comma,
 * as some spreadsheets write them; leaves out empty lines, lines of empty cells, and lines that start with `#`.
 *
 * @param file the file's path as it was given, for the messages.
 */
export function splitRows(text: string, file: string): SplitRows {
  const faults: Fault[] = [];
  const rows: Row[] = [];
  let comments = 0;
  let separator: string | undefined;
  text.split(/\r\n|\r|\n/).forEach((content, index) => {
    if (content.trim() === "") return;
    if (content.startsWith("#")) {
      comments += 1;
      return;
    }
    separator ??= SEPARATORS.find((mark) => content.includes(mark)) ?? ",";
    const line = index + 1;
    const cells = splitLine(content, separator);
    if (cells === null) {
      const message =
        'a quote mark opens a cell and none closes it. Close it on the same line; inside quotes an inch mark is written twice ("8.5"""), ' +
        "without quotes once.";
      faults.push({ code: "open-quote", place: { file, line }, message });
      return;
    }
    if (cells.some((cell) => cell !== "")) rows.push({ line, cells });
  });
  const [header, ...rest] = rows;
  return { header, rows: rest, comments, faults };
}

function splitLine(content: string, separator: string): readonly string[] | null {
  try {
    const [cells] = parse(content, {
      delimiter: separator,
      trim: true,
      relax_quotes: true,
      record_delimiter: "\n",
    });
    return (cells ?? []).map((cell) => cell.trim());
  } catch (error) {
    if (error instanceof CsvError && error.code === "CSV_QUOTE_NOT_CLOSED") return null;
    throw error;
  }
}
