/**
 * Readers of values that may come from any file. Each gives the value in the type asked for, or reports what is wrong
 * with it and gives `undefined`. None throws.
 */

import { type Report, shown } from "./finding.js";

/** An object whose named fields may hold anything. */
export type Fields<Name extends string> = { readonly [Field in Name]?: unknown };

type ShapeReport = Report<"missing-value" | "wrong-type" | "unknown-word" | "out-of-range">;

function refuse(
  report: ShapeReport,
  code: "wrong-type" | "unknown-word" | "out-of-range",
  value: unknown,
  path: string,
  expected: string,
): undefined {
  if (value === undefined) {
    report("missing-value", path, `${path} is missing. Give ${expected}.`, undefined, expected);
  } else {
    report(code, path, `${path} is ${shown(value)}. Give ${expected}.`, value, expected);
  }
  return undefined;
}

/** Reads an object. */
export function readFields<Name extends string>(
  report: ShapeReport,
  value: unknown,
  path: string,
): Fields<Name> | undefined {
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return value as Fields<Name>;
  return refuse(report, "wrong-type", value, path, "an object");
}

/** Reads a list. */
export function readList(report: ShapeReport, value: unknown, path: string): readonly unknown[] | undefined {
  return Array.isArray(value) ? value : refuse(report, "wrong-type", value, path, "a list");
}

/** Reads a text. */
export function readText(report: ShapeReport, value: unknown, path: string): string | undefined {
  return typeof value === "string" ? value : refuse(report, "wrong-type", value, path, "a text");
}

/** Reads true or false. */
export function readFlag(report: ShapeReport, value: unknown, path: string): boolean | undefined {
  return typeof value === "boolean" ? value : refuse(report, "wrong-type", value, path, "true or false");
}

/** Reads one of a few words. */
export function readWord<Word extends string>(
  report: ShapeReport,
  value: unknown,
  path: string,
  words: readonly Word[],
): Word | undefined {
  const word = words.find((known) => known === value);
  if (word !== undefined) return word;
  const expected = `one of ${words.map((known) => `"${known}"`).join(", ")}`;
  return refuse(report, typeof value === "string" ? "unknown-word" : "wrong-type", value, path, expected);
}

/** Reads a whole number from `least` to 2^53 - 1. */
export function readWhole(
  report: ShapeReport,
  value: unknown,
  path: string,
  least: number,
): number | undefined {
  if (typeof value === "number" && Number.isSafeInteger(value) && value >= least) {
    // A minus zero would print as another value.
    return value === 0 ? 0 : value;
  }
  const expected = `a whole number from ${least} on`;
  return refuse(report, typeof value === "number" ? "out-of-range" : "wrong-type", value, path, expected);
}

/** Reads a whole number from 0 on, of any length, as decimal text without leading zeros. */
export function readDecimal(report: ShapeReport, value: unknown, path: string): string | undefined {
  if (typeof value === "string" && /^(?:0|[1-9][0-9]*)$/.test(value)) return value;
  return refuse(report, "wrong-type", value, path, "a whole number from 0 on as decimal text");
}

/** Compares two decimal texts without leading zeros: negative where the first is the smaller one. */
export function compareDecimals(a: string, b: string): number {
  if (a.length !== b.length) return a.length - b.length;
  return a < b ? -1 : a > b ? 1 : 0;
}
