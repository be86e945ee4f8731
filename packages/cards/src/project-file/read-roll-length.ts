import { type Ticks, tryParseLength } from "@sheetwright/measure";
import type { Reading } from "./reading.js";

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
  const { expected, message } = read.problem;
  faults.report({ code: "not-a-length", path, found: value, expected, message });
  return null;
}
