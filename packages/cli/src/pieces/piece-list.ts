import type { Ticks, Unit } from "@sheetwright/measure";
import { type Fault, quote } from "../fault.js";
import { readLength } from "./read-length.js";
import { type Row, splitRows } from "./split-rows.js";

/** A row of the piece list. */
export interface Piece {
  readonly name: string;
  readonly width: Ticks;
  readonly height: Ticks;
  /** Copies wanted, from 0. */
  readonly quantity: number;
  /** Whether the piece may be turned by a quarter turn. */
  readonly turn: boolean;
}

/** A piece list as it was read. `pieces` is complete only where there are no faults. */
export interface PieceList {
  readonly pieces: readonly Piece[];
  /** Lines left out since they start with `#`. */
  readonly comments: number;
  readonly faults: readonly Fault[];
}

const HEADINGS = ["name", "width", "height", "quantity", "turn"] as const;
type Heading = (typeof HEADINGS)[number];

/** Longer names fit no label. */
const LONGEST_NAME = 80;

/** More copies than anybody cuts by hand; a larger number is a slip, such as a length in the wrong column. */
const LARGEST_QUANTITY = 100_000;

/**
 * Reads a piece list: CSV with the columns name, width, height, quantity and turn, in any order. Collects every fault.
 *
 * @param file the file's path as it was given, for the messages.
 * @param unit of lengths that are written without one.
 */
export function readPieceList(text: string, file: string, unit: Unit): PieceList {
  const { header, rows, comments, faults: split } = splitRows(text, file);
  const faults: Fault[] = [...split];
  const done = (pieces: readonly Piece[]): PieceList => ({ pieces, comments, faults: inOrder(faults) });
  if (header === undefined) {
    const message = `the list is empty, expected a header (${HEADINGS.join(",")}) and a line for each kind of piece.`;
    if (faults.length === 0) faults.push({ code: "empty-list", place: { file }, message });
    return done([]);
  }
  const columns = findColumns(header, file, faults);
  if (columns === null) return done([]);
  const pieces: Piece[] = [];
  const lines = new Map<string, number>();
  for (const row of rows) {
    const piece = readPiece(row, columns, { file, width: header.cells.length, unit, lines, faults });
    if (piece !== null) pieces.push(piece);
  }
  if (faults.length === 0 && pieces.every((piece) => piece.quantity === 0)) {
    const found = pieces.length === 0 ? "the list has no pieces" : "every quantity is 0";
    const message = `${found}, expected at least one piece to cut. Add a line such as mat,4,5 1/4,12,yes.`;
    faults.push({ code: "no-pieces", place: { file }, message });
  }
  return done(pieces);
}

/** Index of each column, or `null` where the header will not do. */
function findColumns(header: Row, file: string, faults: Fault[]): ReadonlyMap<Heading, number> | null {
  const place = { file, line: header.line };
  const columns = new Map<Heading, number>();
  let sound = true;
  const report = (code: string, column: number | undefined, message: string): void => {
    faults.push({ code, place: column === undefined ? place : { ...place, column }, message });
    sound = false;
  };
  header.cells.forEach((cell, index) => {
    const name = cell.toLowerCase();
    const heading = HEADINGS.find((known) => known === name);
    if (heading === undefined) {
      // A header may end in empty cells, as spreadsheets write them.
      if (cell === "" && header.cells.slice(index).every((rest) => rest === "")) return;
      const found = cell === "" ? "this column has no heading" : `${quote(cell)} is not a known column`;
      report(
        "unknown-column",
        index + 1,
        `${found}. The columns are ${HEADINGS.join(", ")}; remove any other.`,
      );
    } else if (columns.has(heading)) {
      report("double-column", index + 1, `the column ${heading} is there twice. Remove one of the two.`);
    } else columns.set(heading, index);
  });
  const missing = HEADINGS.filter((heading) => !columns.has(heading));
  if (missing.length === HEADINGS.length) {
    // Without any known heading, one fault says more than a fault a cell.
    faults.length = 0;
    report(
      "no-header",
      undefined,
      `found ${quote(header.cells.join(","))}, expected the header ${HEADINGS.join(",")} as the first line.`,
    );
  } else if (missing.length > 0) {
    const columnsMissing =
      missing.length === 1 ? `the column ${missing[0]} is` : `the columns ${list(missing)} are`;
    report(
      "missing-column",
      undefined,
      `${columnsMissing} missing. The header is ${HEADINGS.join(",")}; turn says yes where a piece may be turned, else no.`,
    );
  }
  return sound ? columns : null;
}

interface Reading {
  readonly file: string;
  /** Cells of the header. */
  readonly width: number;
  readonly unit: Unit;
  /** Line of each name so far. */
  readonly lines: Map<string, number>;
  readonly faults: Fault[];
}

function readPiece(row: Row, columns: ReadonlyMap<Heading, number>, reading: Reading): Piece | null {
  const { file, unit, faults } = reading;
  const { line } = row;
  const before = faults.length;
  const report = (heading: Heading, code: string, message: string): void => {
    const column = (columns.get(heading) ?? 0) + 1;
    faults.push({ code, place: { file, line, column, heading }, message });
  };
  if (row.cells.slice(reading.width).some((cell) => cell !== "")) {
    const message =
      `found ${row.cells.length} cells, expected ${reading.width}. A decimal takes a dot (8.5), ` +
      "and a name with a comma in it takes quotes.";
    faults.push({ code: "too-many-cells", place: { file, line }, message });
    return null;
  }
  const cell = (heading: Heading): string => row.cells[columns.get(heading) ?? 0] ?? "";
  const length = (heading: "width" | "height"): Ticks => {
    const read = readLength(cell(heading), { unit });
    if ("ticks" in read) return read.ticks;
    report(heading, read.code, read.message);
    return 0;
  };
  const name = cell("name").replace(/\s+/gu, " ");
  const fault = faultOfName(name);
  if (fault !== null) report("name", "bad-name", fault);
  const key = name.toLowerCase();
  const earlier = reading.lines.get(key);
  if (name !== "" && earlier !== undefined) {
    const message =
      `${quote(name)} is the name of the piece in line ${earlier} as well. ` +
      "Give every size a name of its own, and put equal pieces in one line with their number together.";
    report("name", "double-name", message);
  } else reading.lines.set(key, line);
  const width = length("width");
  const height = length("height");
  const quantity = readQuantity(cell("quantity"));
  if (typeof quantity === "string") report("quantity", "not-a-quantity", quantity);
  const turn = cell("turn").toLowerCase();
  if (turn !== "yes" && turn !== "no") {
    const found = turn === "" ? "found nothing" : `found ${quote(cell("turn"))}`;
    const advice = "Write no where the pattern or the grain forbids a quarter turn.";
    report("turn", "not-yes-or-no", `${found}, expected yes or no. ${advice}`);
  }
  if (faults.length > before || typeof quantity === "string") return null;
  return { name, width, height, quantity, turn: turn === "yes" };
}

function faultOfName(name: string): string | null {
  if (name === "") return "found nothing, expected a name. It is printed on the piece in the drawing.";
  if (/[\p{Cc}\p{Cs}\p{Co}\p{Cn}\u2028\u2029]/u.test(name)) {
    return `${quote(name)} holds a character that cannot be printed. Type the name again.`;
  }
  const length = [...name].length;
  if (length <= LONGEST_NAME) return null;
  return `found a name of ${length} characters, expected at most ${LONGEST_NAME}. Shorten it; it is printed on the piece.`;
}

function readQuantity(text: string): number | string {
  if (text === "") return "found nothing, expected a whole number of copies, such as 12.";
  const number = /^\d+$/.test(text) ? Number(text) : undefined;
  if (number !== undefined && number <= LARGEST_QUANTITY) return number;
  const range = `a whole number of copies from 0 to ${LARGEST_QUANTITY}`;
  return `found ${quote(text)}, expected ${range}, such as 12.`;
}

/** Joins words as a sentence does: a, b and c. */
function list(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

function inOrder(faults: readonly Fault[]): readonly Fault[] {
  const key = ({ place }: Fault): readonly [number, number] =>
    "file" in place ? [place.line ?? 0, place.column ?? 0] : [0, 0];
  return [...faults].sort((a, b) => key(a)[0] - key(b)[0] || key(a)[1] - key(b)[1]);
}
