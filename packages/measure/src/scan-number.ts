import type { LengthFault } from "./length-error.js";
import { matchAt } from "./match-at.js";

/**
 * The number at the start of a length as an exact ratio: `8 1/2` is 17/2, `8.5` is 85/10.
 *
 * @internal
 */
export interface ScannedNumber {
  readonly numerator: bigint;
  readonly denominator: bigint;
  readonly isFraction: boolean;
  readonly start: number;
  readonly end: number;
}

/** The fractions that Unicode has one character for. Normalising would read 8½ as 81/2, hence a table. */
const VULGAR_FRACTIONS: Readonly<Record<string, readonly [bigint, bigint]>> = {
  "½": [1n, 2n],
  "⅓": [1n, 3n],
  "⅔": [2n, 3n],
  "¼": [1n, 4n],
  "¾": [3n, 4n],
  "⅕": [1n, 5n],
  "⅖": [2n, 5n],
  "⅗": [3n, 5n],
  "⅘": [4n, 5n],
  "⅙": [1n, 6n],
  "⅚": [5n, 6n],
  "⅐": [1n, 7n],
  "⅛": [1n, 8n],
  "⅜": [3n, 8n],
  "⅝": [5n, 8n],
  "⅞": [7n, 8n],
  "⅑": [1n, 9n],
  "⅒": [1n, 10n],
};

// The hyphen of `8-1/2`, also as word processors set it: hyphen, non-breaking hyphen, en dash.
const MIXED = /(\d+)(?:\s+|[-‐‑–])(\d+)\s*[/⁄∕]\s*(\d+)/y;
const FRACTION = /(\d+)\s*[/⁄∕]\s*(\d+)/y;
const WITH_VULGAR = /(\d+)?(?:\s*|[-‐‑–])([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒])/y;
const DECIMAL = /(\d*)\.(\d+)/y;
const WHOLE = /\d+/y;

const SIGN = /[-‐‑–−]\s*/y;
const COMMA = /,(\d+)(\.\d+)?/y;
const LONE_DOT = /\.(?!\d)/y;
const EXPONENT = /e[-+]?\d+/iy;
const FRACTION_AFTER_DECIMAL = /(?:\s*|[-‐‑–])(?:[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]|\d+\s*[/⁄∕]\s*\d+)/y;
const WORD = /\S+/y;

/**
 * Reads the number of a length at a position of the text: a whole number, a decimal with a dot, a fraction,
 * a whole number with a fraction (`8 1/2`, `8-1/2`, `8½`). Gives the fault where there is none.
 *
 * @internal
 */
export function scanNumber(text: string, start: number): ScannedNumber | LengthFault {
  return faultBefore(text, start) ?? readNumber(text, start);
}

function readNumber(text: string, start: number): ScannedNumber | LengthFault {
  const mixed = matchAt(MIXED, text, start);
  if (mixed) {
    const whole = BigInt(mixed[1] ?? "");
    return readFraction(start, mixed, whole, BigInt(mixed[2] ?? ""), BigInt(mixed[3] ?? ""));
  }
  const fraction = matchAt(FRACTION, text, start);
  if (fraction) {
    return readFraction(start, fraction, 0n, BigInt(fraction[1] ?? ""), BigInt(fraction[2] ?? ""));
  }
  const vulgar = matchAt(WITH_VULGAR, text, start);
  if (vulgar) {
    const [numerator, denominator] = VULGAR_FRACTIONS[vulgar[2] ?? ""] ?? [0n, 1n];
    return readFraction(start, vulgar, BigInt(vulgar[1] ?? "0"), numerator, denominator);
  }
  const decimal = matchAt(DECIMAL, text, start);
  if (decimal) {
    const digits = decimal[2] ?? "";
    const end = start + decimal[0].length;
    const number: ScannedNumber = {
      numerator: BigInt((decimal[1] ?? "") + digits),
      denominator: BigInt(`1${"0".repeat(digits.length)}`),
      isFraction: false,
      start,
      end,
    };
    return faultAfter(text, decimal[0], end) ?? faultOfFractionAfter(text, end) ?? number;
  }
  const whole = matchAt(WHOLE, text, start);
  if (whole) {
    const end = start + whole[0].length;
    const number = { numerator: BigInt(whole[0]), denominator: 1n, isFraction: false, start, end };
    return faultAfter(text, whole[0], end) ?? number;
  }
  return {
    code: "not-a-length",
    at: start + 1,
    found: matchAt(WORD, text, start)?.[0] ?? "",
    expected: "a number",
    help: "Write a length such as 8 1/2 in, 3/8, 8.5 in or 216 mm.",
  };
}

function readFraction(
  start: number,
  match: RegExpExecArray,
  whole: bigint,
  numerator: bigint,
  denominator: bigint,
): ScannedNumber | LengthFault {
  const end = start + match[0].length;
  if (denominator === 0n) {
    const zero = match[match.length - 1] ?? "";
    return {
      code: "zero-denominator",
      at: end - zero.length + 1,
      found: zero,
      expected: "a number other than 0 below the line of the fraction",
      help: "Write the fraction in full, such as 1/2.",
    };
  }
  const total = whole * denominator + numerator;
  if (whole > 0n && numerator >= denominator) {
    const rest = total % denominator;
    const meant = rest === 0n ? `${total / denominator}` : `${total / denominator} ${rest}/${denominator}`;
    return {
      code: "improper-fraction",
      at: start + 1,
      found: match[0],
      expected: "a fraction smaller than 1 after a whole number",
      help: `Write ${meant} if that is meant.`,
    };
  }
  return { numerator: total, denominator, isFraction: true, start, end };
}

function faultBefore(text: string, start: number): LengthFault | undefined {
  const sign = matchAt(SIGN, text, start);
  if (sign) {
    const rest = text.slice(start + sign[0].length).trim();
    return {
      code: "negative",
      at: start + 1,
      found: text.slice(start).trim(),
      expected: "a length above 0",
      help: rest === "" ? "Write a length such as 8 1/2 in." : `Write ${rest} if that is meant.`,
    };
  }
  if (text.startsWith("~", start)) {
    return {
      code: "not-a-length",
      at: start + 1,
      found: "~",
      expected: "an exact length",
      help: "The mark ~ stands for a rounded length; leave it out if the rounded length is meant.",
    };
  }
  return faultAfter(text, "", start);
}

function faultAfter(text: string, number: string, end: number): LengthFault | undefined {
  const comma = matchAt(COMMA, text, end);
  if (comma) {
    const before = number === "" ? "0" : number.replace(".", "");
    const [, digits = "", decimals] = comma;
    let help = `Write ${before}.${digits} with a dot.`;
    if (decimals !== undefined) help = `Write ${before}${digits}${decimals} without a comma.`;
    else if (number !== "" && digits.length === 3) {
      help = `Write ${before}.${digits} with a dot, or ${before}${digits} if thousands are meant.`;
    }
    return { code: "decimal-comma", at: end + 1, found: ",", expected: "a dot as the decimal mark", help };
  }
  if (number !== "" && matchAt(LONE_DOT, text, end)) {
    const help = `Write ${number}, or ${number}.5 with digits after the dot.`;
    return { code: "not-a-length", at: end + 1, found: ".", expected: "a digit after the dot", help };
  }
  const exponent = number === "" ? undefined : matchAt(EXPONENT, text, end);
  if (exponent) {
    return {
      code: "not-a-length",
      at: end + 1,
      found: exponent[0],
      expected: "a number without an exponent",
      help: "Write the number out in full, such as 1000.",
    };
  }
  return undefined;
}

function faultOfFractionAfter(text: string, end: number): LengthFault | undefined {
  const fraction = matchAt(FRACTION_AFTER_DECIMAL, text, end);
  if (!fraction) return undefined;
  const leading = fraction[0].length - fraction[0].trimStart().length;
  return {
    code: "decimal-with-fraction",
    at: end + leading + 1,
    found: fraction[0].trim(),
    expected: "either a decimal or a fraction",
    help: "Write 8.5 or 8 1/2, not both in one length.",
  };
}
