import { LONGEST_LENGTH, type Size } from "@sheetwright/measure";
import type { ProjectFault } from "../project-fault.js";
import { fault } from "./fault.js";

/** Finds a size of which a side is no length, or nothing. */
export function checkSize(path: string, { width, height }: Size): readonly ProjectFault[] {
  return [...checkLength(path, width, 1), ...checkLength(path, height, 1)].slice(0, 1);
}

/** Finds a length that is no whole number of ticks, or out of its range. */
export function checkLength(path: string, ticks: number, least: number): readonly ProjectFault[] {
  if (Number.isSafeInteger(ticks) && ticks >= least && ticks <= LONGEST_LENGTH) return [];
  const expected = `a whole number of ticks from ${least} to ${LONGEST_LENGTH}`;
  const message = `Expected a length as ${expected} of 1/1600 mm, found ${ticks}.`;
  return [fault({ code: "not-a-length", path, found: String(ticks), expected, message })];
}

/** Finds a number that is not whole, or out of its range. */
export function checkCount(
  path: string,
  value: number,
  least: number,
  most: number,
): readonly ProjectFault[] {
  if (Number.isSafeInteger(value) && value >= least && value <= most) return [];
  const expected = `a whole number from ${least} to ${most}`;
  const code = value > most ? "too-many" : "not-a-count";
  return [
    fault({ code, path, found: String(value), expected, message: `Expected ${expected}, found ${value}.` }),
  ];
}
