import type { Ticks, Unit } from "@sheetwright/measure";
import { type Fault, quote } from "../fault.js";
import { readLength } from "../pieces/read-length.js";
import { listed } from "../words/listed.js";
import type { WrittenOptions } from "./plan-options.js";

/** An option as a table of them describes it. */
export interface DescribedOption {
  /** As a person writes it, such as `--sheet <size>`. */
  readonly flags: string;
  /** A value that would do, for messages. */
  readonly example?: string;
}

/** An option as its command describes it. */
export interface OptionWithHelp extends DescribedOption {
  readonly help: string;
  /** Where an option is for a list of pieces only: how a project file says the same. */
  readonly inProject?: string;
}

/** The option as a person writes it, such as `--trim-sides`. */
export function nameOf({ flags }: DescribedOption): string {
  return flags.split(" ")[0] ?? flags;
}

/** Reads the written options of a table one by one. What cannot be read is noted as a fault, and `null` comes back. */
export interface TableReader<Key extends string> {
  /** The faults so far, in the order of the table. */
  readonly faults: () => readonly Fault[];
  readonly report: (key: Key, code: string, message: string) => void;
  /** The text of an option, or `undefined` where it was not given. */
  readonly value: (key: Key) => string | undefined;
  /** The text of an option that must be given. */
  readonly required: (key: Key) => string | null;
  /** One of some words, whatever its capitals and spaces. */
  readonly oneOf: <T extends string>(key: Key, allowed: readonly T[], fallback: T) => T | null;
  /** A whole number; `undefined` where it was not given. */
  readonly wholeNumber: (key: Key, least: number, most: number) => number | null | undefined;
  readonly length: (
    key: Key,
    fallback: string,
    how: { readonly unit: Unit; readonly allowZero: boolean },
  ) => Ticks | null;
}

/** Makes a reader of written options by the table that describes them. */
export function tableReader<Key extends string>(
  table: Readonly<Record<Key, DescribedOption>>,
  written: WrittenOptions,
): TableReader<Key> {
  const keys: readonly string[] = Object.keys(table);
  const found: { readonly key: Key; readonly fault: Fault }[] = [];
  const report: TableReader<Key>["report"] = (key, code, message) => {
    found.push({ key, fault: { code, place: { option: nameOf(table[key]) }, message } });
  };
  const value: TableReader<Key>["value"] = (key) => {
    const given = written[key];
    if (given === undefined || given === true) return undefined;
    if (given.length > 1)
      report(key, "option-twice", `given ${given.length} times, expected once. Keep one of them.`);
    return given[0];
  };
  return {
    faults: () =>
      [...found].sort((a, b) => keys.indexOf(a.key) - keys.indexOf(b.key)).map(({ fault }) => fault),
    report,
    value,
    required: (key) => {
      const text = value(key);
      if (text !== undefined && text.trim() !== "" && !text.startsWith("--")) return text;
      const { flags, example } = table[key];
      const wrong = text === undefined ? "missing" : `found ${quote(text)} where its value should be`;
      report(key, "option-missing", `${wrong}. Give ${flags}, such as ${nameOf(table[key])} ${example}.`);
      return null;
    },
    oneOf: (key, allowed, fallback) => {
      const text = value(key);
      if (text === undefined) return fallback;
      const bare = (word: string): string => word.toLowerCase().replace(/\s+/g, "");
      const meant = allowed.find((one) => bare(one) === bare(text));
      if (meant !== undefined) return meant;
      report(key, "not-one-of", `found ${quote(text)}, expected ${listed(allowed, "or")}.`);
      return null;
    },
    wholeNumber: (key, least, most) => {
      const text = value(key);
      if (text === undefined) return undefined;
      const number = /^\d+$/.test(text.trim()) ? Number(text) : Number.NaN;
      if (number >= least && number <= most) return number;
      const such = `such as ${nameOf(table[key])} ${table[key].example}`;
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
