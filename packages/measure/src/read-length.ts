// Reads a length as a maker writes it, into whole ticks. The number is kept as a ratio of two integers from
// the text to the tick, so nothing is lost on the way; one rounding, half up, happens at the end, and only
// where the value lies between two ticks.
//
//     length = number [unit]
//     number = 8 | 8.5 | .5 | 3/8 | 8 1/2 | 8-1/2 | 8½
//     unit   = in | inch | inches | " | ″ | '' | mm | cm | millimetres | centimetres ...
//
// Fractions belong to inches. `3/8 mm` is refused: nobody rules a third of a millimetre, so a fraction in
// a metric project is nearly always a forgotten `in`, and reading it would be out by a factor of 25.

import { formatLength } from "./format-length.js";
import type { LengthFault } from "./length-error.js";
import { quote } from "./quote.js";
import { sayFound } from "./say-found.js";
import { scanNumber } from "./scan-number.js";
import { scanUnit, skipSpace, type WrittenUnit } from "./scan-unit.js";
import { LONGEST_LENGTH, type Ticks } from "./ticks.js";
import type { Unit } from "./unit.js";

/** A length that was read: its ticks, whether they are exactly what was written, and the unit it was in. */
export interface ParsedLength {
  readonly ticks: Ticks;
  /** False where the written value lies between two ticks and was rounded to the nearest, half up. */
  readonly exact: boolean;
  /** The unit it was written in, or the default; cm counts as mm. */
  readonly unit: Unit;
}

/** No real length needs more; the limit keeps the work on hostile input small. */
const LONGEST_TEXT = 100;

/**
 * Reads the text of a length; gives the fault where it is none, above `longest`, or 0 without `allowZero`.
 *
 * @internal
 */
export function readLength(
  text: string,
  defaultUnit: WrittenUnit,
  longest: Ticks,
  allowZero: boolean,
): ParsedLength | LengthFault {
  const start = skipSpace(text, 0);
  if (start === text.length) {
    return fault("empty", 0, "", "a length", "Write a length such as 8 1/2 in, 3/8 in or 216 mm.");
  }
  if (text.length > LONGEST_TEXT) {
    return fault("not-a-length", start, text, `at most ${LONGEST_TEXT} characters`, "Write one length.");
  }
  const number = scanNumber(text, start);
  if ("code" in number) return number;
  const scanned = scanUnit(text, number.end);
  if ("code" in scanned) return scanned;

  const written = scanned.unit ?? defaultUnit;
  const numberText = text.slice(start, number.end);
  if (number.isFraction && written.unit === "mm") {
    return fault(
      "fraction-in-metric",
      start,
      numberText,
      `a decimal, since fractions are read in inches only, and this is in ${written.word}`,
      `Write ${numberText} in for inches, or a decimal such as 9.5 mm.`,
    );
  }
  const value = number.numerator * BigInt(written.ticks);
  const exact = value % number.denominator === 0n;
  const ticks = (2n * value + number.denominator) / (2n * number.denominator);
  if (ticks > BigInt(longest)) {
    const tenMetres = written.unit === "in" ? "10 m (about 393 in)" : "10 m";
    const limit = longest === LONGEST_LENGTH ? tenMetres : formatLength(longest, { unit: written.unit });
    return fault(
      "too-long",
      start,
      text.trim(),
      `at most ${limit}`,
      "Check the unit: inches and millimetres are easily mixed up.",
    );
  }
  if (ticks === 0n && !allowZero) {
    return fault("zero", start, text.trim(), "a length above 0", "Write a length such as 1/16 in or 0.5 mm.");
  }
  return { ticks: Number(ticks), exact, unit: written.unit };
}

function fault(
  code: LengthFault["code"],
  start: number,
  found: string,
  expected: string,
  help: string,
): LengthFault {
  return { code, at: start + 1, found, expected, help };
}

const UNUSABLE: ReadonlySet<string> = new Set(["negative", "zero", "too-long"]);

/**
 * Says a fault in full sentences: the text, what was found in it and where, what was expected, and what helps.
 *
 * @internal
 */
export function sayFault(text: string, { code, at, found, expected, help }: LengthFault): string {
  const verdict = UNUSABLE.has(code) ? "is not a usable length" : "is not a length";
  return `${quote(text)} ${verdict}: found ${sayFound(found, at)}, expected ${expected}. ${help}`;
}

/**
 * Throws a RangeError unless the longest length is a positive whole number of ticks.
 *
 * @internal
 */
export function requireLongest(longest: Ticks): void {
  if (!Number.isSafeInteger(longest) || longest <= 0) {
    throw new RangeError(`Expected the longest length in ticks, a positive whole number, found ${longest}.`);
  }
}
