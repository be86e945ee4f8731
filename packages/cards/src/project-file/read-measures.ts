import {
  findNamedSize,
  formatSize,
  type NamedSize,
  type ParsedSize,
  type Size,
  type Ticks,
  tryParseLength,
  tryParseSize,
} from "@sheetwright/measure";
import type { Reading } from "./reading.js";

/** What a length may be. */
export interface LengthRange {
  readonly allowZero?: boolean;
  readonly longest?: Ticks;
}

/** Reads a length into ticks: a number in the project's unit, or a text. Reports one that cannot be read. */
export function readLength(
  value: string | number | undefined,
  path: string,
  { faults, unit }: Reading,
  { allowZero = false, longest }: LengthRange = {},
): Ticks | null {
  if (value === undefined) return null;
  const text = String(value);
  const read = tryParseLength(text, { unit, allowZero, ...(longest === undefined ? {} : { longest }) });
  if (read.ok) return read.ticks;
  const { expected, message } = read.problem;
  faults.report({ code: "not-a-length", path, found: value, expected, message });
  return null;
}

/** Reads width x height. A name of a size is refused: what is cut and laid has its own. */
export function readPlainSize(value: string | undefined, path: string, reading: Reading): Size | null {
  const size = readAnySize(value, path, reading);
  if (size === null) return null;
  if (size.id === undefined) return { width: size.width, height: size.height };
  const written = formatSize(size.width, size.height, { unit: size.unit });
  reading.faults.report({
    code: "not-a-size",
    path,
    found: value,
    expected: "width x height",
    message: `${size.id} is the name of a ${size.kind} size (${written}); here stands a size as the thing lies. Write ${written}, or the two the other way round.`,
    suggestion: written,
  });
  return null;
}

/** Reads the size of a sheet: width x height, or the name of a sheet size. */
export function readSheetSize(value: string | undefined, path: string, reading: Reading): ParsedSize | null {
  if (value === undefined) return null;
  const other = findNamedSize(value);
  if (other !== undefined && other.kind !== "sheet" && findNamedSize(value, "sheet") === undefined) {
    reading.faults.report({
      code: "not-a-size",
      path,
      found: value,
      expected: "the name of a sheet, or width x height",
      message: `${sayNamed(other)}, and here a sheet of paper is needed. Write a sheet such as us-letter or iso-a4, or width x height.`,
    });
    return null;
  }
  return readAnySize(value, path, reading, "sheet");
}

/** Says a named size in full: `us-a2 is a card (US A2 card, 4 1/4 x 5 1/2 in)`. */
export function sayNamed(size: NamedSize): string {
  return `${size.id} is ${size.kind === "envelope" ? "an" : "a"} ${size.kind} (${writeNamed(size)})`;
}

/** Writes the measures of a named size in the unit it is best printed in. */
export function writeNamed({ width, height, unit }: NamedSize): string {
  return formatSize(width, height, { unit });
}

function readAnySize(
  value: string | undefined,
  path: string,
  { faults, unit }: Reading,
  kind?: "sheet",
): ParsedSize | null {
  if (value === undefined) return null;
  const read = tryParseSize(value, kind === undefined ? { unit } : { unit, kind });
  if (read.ok) return read;
  const { expected, message, suggestions } = read.problem;
  faults.report({
    code: "not-a-size",
    path,
    found: value,
    expected,
    message,
    suggestion: suggestions[0] ?? null,
  });
  return null;
}
