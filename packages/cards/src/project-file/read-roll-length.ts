import { type Ticks, tryParseLength } from "@sheetwright/measure";
import type { Reading } from "./reading.js";
import { quote } from "./say-value.js";

/** The longest roll of a ribbon or a tape, 100 m: longer than the longest length of anything else. */
export const LONGEST_ROLL: Ticks = 160_000_000;

/** No letter before the word, so that mm is not taken for m. */
const LONG_UNIT = /^(.*[^a-z\s])\s*(yd|yds|yards?|m|met(?:re|er)s?)\.?$/i;

/** Of a yard or a metre, the unit that its number is read in, and how many of these make one. */
const YARD = { unit: "in", times: 36 } as const;
const METRE = { unit: "mm", times: 1000 } as const;

/** Reads how long a roll is: as any length, and in yards or metres too. Reports one that cannot be read. */
export function readRollLength(
  value: string | number | undefined,
  path: string,
  { faults, unit }: Reading,
): Ticks | null {
  if (value === undefined) return null;
  const [, number, word = ""] = LONG_UNIT.exec(String(value).trim()) ?? [];
  const long = number === undefined ? null : /^y/i.test(word) ? YARD : METRE;
  const read =
    long === null
      ? tryParseLength(String(value), { unit, longest: LONGEST_ROLL })
      : tryParseLength(number ?? "", { unit: long.unit, longest: Math.floor(LONGEST_ROLL / long.times) });
  if (read.ok) return read.ticks * (long?.times ?? 1);
  const expected = "how long a roll is, at most 100 m (about 109 yd), such as 3 yd or 2.5 m";
  // What is wrong with the number alone would be told in another unit than it stands in.
  const message =
    long === null
      ? `${read.problem.message} The length of a roll may be told in yd and m as well.`
      : `${quote(String(value))} is not the length of a roll. Expected ${expected}.`;
  faults.report({ code: "not-a-length", path, found: value, expected, message });
  return null;
}
