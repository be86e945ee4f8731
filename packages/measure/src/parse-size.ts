// Reads a size: two lengths with an x between them, width first, or the id of a named size.
//
//     8 1/2 x 11     8.5" x 11"     12x12in     210 × 297 mm     6 by 6     us-letter
//
// A unit given for one of the two lengths counts for both.

import type { SizeKind } from "./named-size.js";
import { findNamedSize } from "./named-sizes.js";
import { nearestNames } from "./nearest-names.js";
import type { ParseLengthOptions } from "./parse-length.js";
import { quote } from "./quote.js";
import { readLength, requireLongest } from "./read-length.js";
import { sayFound } from "./say-found.js";
import { scanNumber } from "./scan-number.js";
import { BASE_UNITS, scanUnit, skipSpace, type WrittenUnit } from "./scan-unit.js";
import type { Size } from "./size.js";
import { SizeError, type SizeProblem } from "./size-error.js";
import { LONGEST_LENGTH } from "./ticks.js";
import { requireUnit, type Unit } from "./unit.js";

/** How a size is read. */
export interface ParseSizeOptions extends Omit<ParseLengthOptions, "allowZero"> {
  /** The kind of named size that is accepted. Default: every kind. */
  readonly kind?: SizeKind;
}

/** A size that was read; a named one stands upright, with its id, name and kind. */
export interface ParsedSize extends Size {
  /** The unit it was written in, or that a named size is best printed in. */
  readonly unit: Unit;
  /** False where a length had to be rounded to the nearest tick. */
  readonly exact: boolean;
  readonly id?: string;
  readonly name?: string;
  readonly kind?: SizeKind;
}

/** What `tryParseSize` gives: the size, or what is wrong with the text. */
export type SizeResult =
  | ({ readonly ok: true } & ParsedSize)
  | { readonly ok: false; readonly problem: SizeProblem };

/** The longest text that is looked at: two lengths at their longest, with room. */
const LONGEST_TEXT = 250;

const BY = /x(?![a-wyz])|×|\bby\b/giu;

const HELP =
  "Write width x height, such as 8 1/2 x 11 in or 210 x 297 mm, or a name such as us-letter or iso-a4.";

/**
 * Reads a size, width first: `8 1/2 x 11`, `8.5"x11"`, `12x12in`, `210 × 297 mm`, or the id of a named size
 * (`us-letter`), which then also gives `id`, `name` and `kind`. A unit given once counts for both lengths; a
 * size without any is in `options.unit`. Nothing is turned: `11 x 8 1/2` is 11 wide. Throws a SizeError for
 * anything else, with suggestions for a misspelt name.
 *
 * @example
 * parseSize("8 1/2 x 11", { unit: "in" }) // => { width: 345440, height: 447040, unit: "in", exact: true }
 * parseSize("210x297mm", { unit: "in" }).height === millimetres(297) // => true
 * parseSize("us-letter", { unit: "mm" }).name // => "US Letter sheet"
 * parseSize("8 1/2", { unit: "in" }) // throws SizeError: expected two lengths
 */
export function parseSize(text: string, options: ParseSizeOptions): ParsedSize {
  const result = tryParseSize(text, options);
  if (!result.ok) throw new SizeError(result.problem);
  const { ok: _, ...size } = result;
  return size;
}

/**
 * Reads a size as `parseSize` does, but gives a fault back as data instead of throwing it, for whoever
 * collects all faults of a file. Throws only where the program is at fault, as `tryParseLength` does.
 *
 * @example
 * tryParseSize("12 x 12 ft", { unit: "in" }).problem.side // => "height"
 * tryParseSize("us-leter", { unit: "in" }).problem.suggestions // => ["us-letter"]
 */
export function tryParseSize(text: string, options: ParseSizeOptions): SizeResult {
  if (typeof text !== "string") throw new TypeError(`Expected a text, found ${typeof text}.`);
  requireUnit(options.unit);
  requireLongest(options.longest ?? LONGEST_LENGTH);
  const start = skipSpace(text, 0);
  if (start === text.length || text.length > LONGEST_TEXT) {
    const code = start === text.length ? "empty" : "not-two-lengths";
    return refuse(text, options, { code, at: 1, found: text.trim(), expected: "a size", help: HELP });
  }
  const parts = splitAtBy(text);
  return /\p{L}/u.test(text.charAt(start)) && !startsWithBy(parts)
    ? readName(text, start, options)
    : readLengths(text, parts, options);
}

function readName(text: string, start: number, options: ParseSizeOptions): SizeResult {
  const size = findNamedSize(text, options.kind);
  if (size !== undefined) {
    const { id, name, kind, unit, width, height } = size;
    return { ok: true, width, height, unit, exact: true, id, name, kind };
  }
  const suggestions = nearestNames(text, options.kind === undefined ? {} : { kind: options.kind });
  return refuse(text, options, {
    code: "unknown-name",
    at: start + 1,
    found: text.trim(),
    expected: `the name of a ${options.kind ?? "size"}`,
    help: suggestions.length > 0 ? `Did you mean ${list(suggestions)}?` : HELP,
    suggestions,
  });
}

function readLengths(text: string, parts: readonly Part[], options: ParseSizeOptions): SizeResult {
  const [width, height, third] = parts;
  if (width === undefined || height === undefined || third !== undefined) {
    const at = third === undefined ? skipSpace(text, 0) : third.start;
    const found = third === undefined ? text.trim() : text.slice(third.start).trim();
    return refuse(text, options, {
      code: "not-two-lengths",
      at: at + 1,
      found,
      expected: third === undefined ? "two lengths with an x between them" : "the end after two lengths",
      help: HELP,
    });
  }
  const { longest = LONGEST_LENGTH } = options;
  const unit = writtenUnit(height.text) ?? writtenUnit(width.text) ?? BASE_UNITS[options.unit];
  const across = readLength(width.text, unit, longest, false);
  if ("code" in across) {
    return refuse(text, options, { ...across, at: width.start + across.at, side: "width" });
  }
  const down = readLength(height.text, unit, longest, false);
  if ("code" in down) {
    return refuse(text, options, { ...down, at: height.start + down.at, side: "height" });
  }
  const exact = across.exact && down.exact;
  return { ok: true, width: across.ticks, height: down.ticks, unit: down.unit, exact };
}

/** The unit written after a length, if the length can be read so far. */
function writtenUnit(text: string): WrittenUnit | undefined {
  const number = scanNumber(text, skipSpace(text, 0));
  if ("code" in number) return undefined;
  const scanned = scanUnit(text, number.end);
  return "code" in scanned ? undefined : scanned.unit;
}

interface Part {
  readonly text: string;
  readonly start: number;
}

function splitAtBy(text: string): readonly Part[] {
  const parts: Part[] = [];
  let start = 0;
  for (const match of text.matchAll(BY)) {
    parts.push({ text: text.slice(start, match.index), start });
    start = match.index + match[0].length;
  }
  parts.push({ text: text.slice(start), start });
  return parts;
}

function startsWithBy(parts: readonly Part[]): boolean {
  return parts.length > 1 && parts[0]?.text.trim() === "";
}

interface Fault extends Pick<SizeProblem, "code" | "at" | "found" | "expected" | "help"> {
  readonly side?: "width" | "height";
  readonly suggestions?: readonly string[];
}

function refuse(text: string, { path = "" }: ParseSizeOptions, fault: Fault): SizeResult {
  const { side, suggestions = [], at, found, expected, help } = fault;
  const where = sayFound(found, at) + (side === undefined ? "" : ` in the ${side}`);
  const message = `${quote(text)} is not a size: found ${where}, expected ${expected}. ${help}`;
  return { ok: false, problem: { ...fault, suggestions, path, text, message } };
}

function list(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} or ${names.at(-1)}`;
}
