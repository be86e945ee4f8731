import type { LengthFault } from "./length-error.js";
import { matchAt } from "./match-at.js";
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from "./ticks.js";
import type { Unit } from "./unit.js";

/**
 * The unit that a length was written with: how long it is and the unit it is printed in again.
 *
 * @internal
 */
export interface WrittenUnit {
  readonly word: string;
  readonly ticks: Ticks;
  readonly unit: Unit;
}

const INCH: WrittenUnit = { word: "in", ticks: TICKS_PER_INCH, unit: "in" };
const MILLIMETRE: WrittenUnit = { word: "mm", ticks: TICKS_PER_MM, unit: "mm" };
const CENTIMETRE: WrittenUnit = { word: "cm", ticks: 10 * TICKS_PER_MM, unit: "mm" };

/**
 * The written form of the units that a bare number is read in.
 *
 * @internal
 */
export const BASE_UNITS: Readonly<Record<Unit, WrittenUnit>> = { in: INCH, mm: MILLIMETRE };

const WORDS: ReadonlyMap<string, WrittenUnit> = new Map([
  ["in", INCH],
  ["inch", INCH],
  ["inches", INCH],
  ["mm", MILLIMETRE],
  ["millimetre", MILLIMETRE],
  ["millimetres", MILLIMETRE],
  ["millimeter", MILLIMETRE],
  ["millimeters", MILLIMETRE],
  ["cm", CENTIMETRE],
  ["centimetre", CENTIMETRE],
  ["centimetres", CENTIMETRE],
  ["centimeter", CENTIMETRE],
  ["centimeters", CENTIMETRE],
]);

/** How units that are not read relate to one that is. */
const OTHER_UNITS: ReadonlyMap<string, string> = new Map([
  ["ft", "1 ft is 12 in"],
  ["foot", "1 foot is 12 in"],
  ["feet", "1 foot is 12 in"],
  ["yd", "1 yd is 36 in"],
  ["yard", "1 yard is 36 in"],
  ["yards", "1 yard is 36 in"],
  ["m", "1 m is 100 cm"],
  ["metre", "1 metre is 100 cm"],
  ["metres", "1 metre is 100 cm"],
  ["meter", "1 meter is 100 cm"],
  ["meters", "1 meter is 100 cm"],
  ["dm", "1 dm is 10 cm"],
  ["pt", "1 pt is 1/72 in"],
]);

const INCH_MARK = /''|′′|’’|["″”“]/y;
const FOOT_MARK = /['′’]/y;
// Trade tables write `in.` with the dot of an abbreviation.
const WORD = /([a-z]+)\.?/iy;
const SPACE = /\s*/y;

/**
 * Reads the unit at a position of the text, and requires that nothing follows it. Gives no unit where the
 * text has ended, and the fault where something else stands.
 *
 * @internal
 */
export function scanUnit(
  text: string,
  start: number,
): { readonly unit: WrittenUnit | undefined } | LengthFault {
  const at = skipSpace(text, start);
  if (at === text.length) return { unit: undefined };
  const mark = matchAt(INCH_MARK, text, at);
  if (mark) return faultOfRest(text, at + mark[0].length) ?? { unit: INCH };
  if (matchAt(FOOT_MARK, text, at)) return unknownUnit(text.charAt(at), at, "1 foot is 12 in");
  const word = matchAt(WORD, text, at)?.[0];
  if (word === undefined) return faultOfRest(text, at) ?? { unit: undefined };
  const name = word.replace(".", "").toLowerCase();
  const unit = WORDS.get(name);
  if (unit === undefined) return unknownUnit(word, at, OTHER_UNITS.get(name));
  return faultOfRest(text, at + word.length) ?? { unit };
}

function unknownUnit(found: string, at: number, relation: string | undefined): LengthFault {
  return {
    code: "unknown-unit",
    at: at + 1,
    found,
    expected: "one of the units in, mm and cm",
    help: relation === undefined ? "Write the length in inches, mm or cm." : `Convert it: ${relation}.`,
  };
}

function faultOfRest(text: string, start: number): LengthFault | undefined {
  const at = skipSpace(text, start);
  if (at === text.length) return undefined;
  const found = text.slice(at).trimEnd();
  return {
    code: "extra-text",
    at: at + 1,
    found,
    expected: "the end of the length",
    help: /^[-‐‑–]\s/.test(found)
      ? "Write 8-1/2 or 8 1/2; a hyphen between spaces could mean a subtraction."
      : "Write one length, such as 8 1/2 in, 8.5 in or 216 mm.",
  };
}

/**
 * Gives the position of the next character that is not white space, or the length of the text.
 *
 * @internal
 */
export function skipSpace(text: string, start: number): number {
  return start + (matchAt(SPACE, text, start)?.[0] ?? "").length;
}
