import type { Ticks, Unit } from "@sheetwright/measure";
import { type Fault, quote } from "../fault.js";
import { readLength } from "../pieces/read-length.js";
import { listed } from "../words/listed.js";
import { faultsOfRest, type RestWords } from "./free-words.js";
import {
  OPTION_KEYS,
  type OptionKey,
  optionName,
  PLAN_OPTIONS,
  type WrittenOptions,
} from "./plan-options.js";

/** Reads written options one by one. What cannot be read is noted as a fault, and `null` comes back. */
export interface OptionReader {
  /** The faults so far, in the order of the options. */
  readonly faults: () => readonly Fault[];
  readonly report: (key: OptionKey, code: string, message: string) => void;
  /** The text of an option, or `undefined` where it was not given. */
  readonly value: (key: OptionKey) => string | undefined;
  /** The text of an option that must be given. */
  readonly required: (key: "pieces" | "sheet" | "out") => string | null;
  /** One of some words, whatever its capitals and spaces. */
  readonly oneOf: <T extends string>(key: OptionKey, allowed: readonly T[], fallback: T) => T | null;
  /** A whole number; `undefined` where it was not given. */
  readonly wholeNumber: (key: "count" | "seed", least: number, most: number) => number | null | undefined;
  readonly length: (
    key: OptionKey,
    fallback: string,
    how: { readonly unit: Unit; readonly allowZero: boolean },
  ) => Ticks | null;
}

/**
 * Makes a reader of written options.
 *
 * @param rest what stands on the command line beside known options: faults, all of it.
 * @param words how these are told.
 */
export function optionReader(
  written: WrittenOptions,
  rest: readonly string[],
  words?: RestWords,
): OptionReader {
  const found: { readonly key: OptionKey; readonly fault: Fault }[] = [];
  const report: OptionReader["report"] = (key, code, message) => {
    found.push({ key, fault: { code, place: { option: optionName(key) }, message } });
  };
  const value: OptionReader["value"] = (key) => {
    const given = written[key];
    if (given === undefined || given === true) return undefined;
    if (given.length > 1)
      report(key, "option-twice", `given ${given.length} times, expected once. Keep one of them.`);
    return given[0];
  };
  return {
    faults: () => [
      ...faultsOfRest(rest, words),
      ...[...found]
        .sort((a, b) => OPTION_KEYS.indexOf(a.key) - OPTION_KEYS.indexOf(b.key))
        .map(({ fault }) => fault),
    ],
    report,
    value,
    required: (key) => {
      const text = value(key);
      if (text !== undefined && text.trim() !== "" && !text.startsWith("--")) return text;
      const { flags, example } = PLAN_OPTIONS[key];
      const found = text === undefined ? "missing" : `found ${quote(text)} where its value should be`;
      report(key, "option-missing", `${found}. Give ${flags}, such as ${optionName(key)} ${example}.`);
      return null;
    },
    oneOf: (key, allowed, fallback) => {
      const text = value(key);
      if (text === undefined) return fallback;
      const bare = (word: string): string => word.toLowerCase().replace(/\s+/g, "");
      const found = allowed.find((one) => bare(one) === bare(text));
      if (found !== undefined) return found;
      report(key, "not-one-of", `found ${quote(text)}, expected ${listed(allowed, "or")}.`);
      return null;
    },
    wholeNumber: (key, least, most) => {
      const text = value(key);
      if (text === undefined) return undefined;
      const number = /^\d+$/.test(text.trim()) ? Number(text) : Number.NaN;
      if (number >= least && number <= most) return number;
      const such = `such as ${optionName(key)} ${PLAN_OPTIONS[key].example}`;
      report(
        key,
        "not-a-number",
        `found ${quote(text)}, expected a whole number from ${least} to ${most}, ${such}.`,
      );
      return null;
    },
    length: (key, fallback, how) => {
      const read = readLength(value(key) ?? fallback, how);
      if ("ticks" in read) return read.ticks;
      report(key, read.code, read.message);
      return null;
    },
  };
}
