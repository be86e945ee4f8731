import { LengthError, type LengthProblem } from "./length-error.js";
import { type ParsedLength, readLength, requireLongest, sayFault } from "./read-length.js";
import { BASE_UNITS } from "./scan-unit.js";
import { LONGEST_LENGTH, type Ticks } from "./ticks.js";
import { requireUnit, type Unit } from "./unit.js";

/** How a length is read. */
export interface ParseLengthOptions {
  /** The unit of a number that is written without one. */
  readonly unit: Unit;
  /** Whether 0 is a length, as a kerf or a trim may be. Default false. */
  readonly allowZero?: boolean;
  /** The longest length that is accepted, in ticks. Default 10 m. */
  readonly longest?: Ticks;
  /** Where the text stands in the caller's input; it is handed on in the error. Default empty. */
  readonly path?: string;
}

/** What `tryParseLength` gives: the length, or what is wrong with the text. */
export type LengthResult =
  | ({ readonly ok: true } & ParsedLength)
  | { readonly ok: false; readonly problem: LengthProblem };

/**
 * Reads a length as a maker writes it and gives ticks: `8 1/2`, `8-1/2 in`, `8.5"`, `3/8`, `8½`, `216 mm`,
 * `21.6cm`. A number without a unit is in `options.unit`. Fractions are read in inches only. Rounds to the
 * nearest tick, half up, where the value lies between two (`parseLengthExact` tells). Throws a LengthError
 * for anything else, for a length above 10 m, and for 0 unless `allowZero` is set.
 *
 * @example
 * parseLength("8 1/2", { unit: "in" }) // => inches(8.5)
 * parseLength('8.5"', { unit: "mm" }) // => inches(8.5)
 * parseLength("21.6cm", { unit: "in" }) // => millimetres(216)
 * parseLength("8 1/0", { unit: "in" }) // throws LengthError: a number other than 0 below the line
 * parseLength("3 ft", { unit: "in" }) // throws LengthError: 1 ft is 12 in
 */
export function parseLength(text: string, options: ParseLengthOptions): Ticks {
  return parseLengthExact(text, options).ticks;
}

/**
 * Reads a length as `parseLength` does, and tells whether the ticks are exactly what was written. Throws a
 * LengthError in the same cases.
 *
 * @example
 * parseLengthExact("3/8", { unit: "in" }) // => { ticks: 15240, exact: true, unit: "in" }
 * parseLengthExact("1/3", { unit: "in" }) // => { ticks: 13547, exact: false, unit: "in" }
 */
export function parseLengthExact(text: string, options: ParseLengthOptions): ParsedLength {
  const result = tryParseLength(text, options);
  if (!result.ok) throw new LengthError(result.problem);
  return { ticks: result.ticks, exact: result.exact, unit: result.unit };
}

/**
 * Reads a length as `parseLength` does, but gives a fault back as data instead of throwing it, for whoever
 * collects all faults of a file. Throws only where the program is at fault: a TypeError for a text that is no
 * string or an unknown default unit, a RangeError for a `longest` that is not a positive whole number.
 *
 * @example
 * const result = tryParseLength("3 ft", { unit: "in", path: "cards[2].border" });
 * result.ok // => false
 * result.problem.code // => "unknown-unit"
 * result.problem.path // => "cards[2].border"
 * result.problem.at // => 3
 */
export function tryParseLength(text: string, options: ParseLengthOptions): LengthResult {
  const { unit: defaultUnit, longest = LONGEST_LENGTH, path = "" } = options;
  if (typeof text !== "string") throw new TypeError(`Expected a text, found ${typeof text}.`);
  requireUnit(defaultUnit);
  requireLongest(longest);
  const read = readLength(text, BASE_UNITS[defaultUnit], longest, options.allowZero ?? false);
  if ("ticks" in read) return { ok: true, ...read };
  return { ok: false, problem: { ...read, path, text, message: sayFault(text, read) } };
}
