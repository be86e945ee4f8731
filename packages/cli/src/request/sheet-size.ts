import { findNamedSize, formatSize, type Size, tryParseSize, type Unit } from "@sheetwright/measure";
import { quote } from "../fault.js";

/** A sheet as it was asked for: a size, and what it is called. */
export interface SheetSize extends Size {
  /** Id of the named size, or the size itself. */
  readonly id: string;
  readonly name: string;
}

/** Why a text is no size. */
export interface SizeFault {
  readonly code: string;
  readonly message: string;
}

/** Reads the size of a sheet: a named one, which stands upright, or width x height. */
export function readSheetSize(text: string, unit: Unit): SheetSize | SizeFault {
  const read = readSize(text, unit);
  if ("message" in read) return read;
  const { width, height } = read;
  const size = formatSize(width, height, { unit: read.unit });
  return { id: read.id ?? size, name: read.name ?? `${size} sheet`, width, height };
}

/** Reads a size in words for an option, whose name is told elsewhere. */
export function readSize(text: string, unit: Unit): ReadSize | SizeFault {
  const read = tryParseSize(text, { unit, kind: "sheet" });
  if (read.ok) return read;
  const { code, found, expected, help, side } = read.problem;
  if (code === "empty") return { code, message: `found nothing, expected a size. ${help}` };
  const other = code === "unknown-name" ? findNamedSize(text) : undefined;
  if (other !== undefined) {
    const size = formatSize(other.width, other.height, { unit: other.unit });
    const message = `${quote(text)} is the size of a ${other.kind}, expected that of a sheet. Write ${size} if that is meant.`;
    return { code: "not-a-sheet", message };
  }
  const part = found === text.trim() || found === "" ? "" : `found ${quote(found)}, `;
  const where = side === undefined ? "" : ` as the ${side}`;
  return { code, message: `${quote(text)} is not a size: ${part}expected ${expected}${where}. ${help}` };
}

interface ReadSize extends Size {
  readonly unit: Unit;
  readonly id?: string;
  readonly name?: string;
}
