import { formatLength, formatSize, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import type { Effort, Mode, Trim } from "@sheetwright/packing";
import { type Fault, quote } from "../fault.js";
import { readLength } from "../pieces/read-length.js";
import { type OptionKey, optionName, PLAN_OPTIONS, suggestOption, type WrittenOptions } from "./plan-options.js";
import { readSheetSize, readSize, type SheetSize } from "./sheet-size.js";

/** What `sheetwright plan` is asked, read and checked. Lengths are ticks. */
export interface PlanRequest {
  /** Path of the piece list, as given. */
  readonly pieces: string;
  /** Path of the folder, as given. */
  readonly out: string;
  readonly unit: Unit;
  readonly sheet: SheetSize;
  /** Sheets on hand; `null`: as many as needed. */
  readonly count: number | null;
  readonly mode: Exclude<Mode, "stopped">;
  readonly trim: Trim;
  readonly kerf: Ticks;
  readonly longestCut: Ticks | null;
  /** The narrowest part the tool can hold. */
  readonly hold: Ticks;
  /** The smallest leftover worth keeping. */
  readonly keep: Size;
  readonly effort: Effort;
  readonly seed: number;
  readonly json: boolean;
  readonly force: boolean;
}

const SIDES = ["left", "right", "top", "bottom"] as const;
const LARGEST_COUNT = 100_000;
const LARGEST_SEED = 4_294_967_295;

/**
 * Where nothing else is said, what a part must measure to be held firmly while it is cut, and a leftover to be kept. Both
 * are common practice, no published source; a part under 1 in is where fingers come near the blade.
 */
const DEFAULTS: Readonly<Record<Unit, { readonly hold: string; readonly keep: string }>> = {
  in: { hold: "1 in", keep: "2 x 2 in" },
  mm: { hold: "25 mm", keep: "50 x 50 mm" },
};

/** A request as far as it could be read, so that what it names can be looked at even where something else is wrong. */
export interface ReadRequest {
  /** `null` where there are faults. */
  readonly request: PlanRequest | null;
  readonly faults: readonly Fault[];
  readonly pieces: string | null;
  readonly out: string | null;
  readonly unit: Unit | null;
  readonly force: boolean;
}

/**
 * Reads the options of a plan and collects every fault.
 *
 * @param rest what stands on the command line beside known options.
 */
export function readPlanRequest(written: WrittenOptions, rest: readonly string[]): ReadRequest {
  const faults: Fault[] = [];
  const report = (option: string, code: string, message: string): void => {
    faults.push({ code, place: { option }, message });
  };
  const value = (key: OptionKey): string | undefined => {
    const given = written[key];
    if (given === undefined || given === true) return undefined;
    if (given.length > 1) {
      report(optionName(key), "option-twice", `given ${given.length} times, expected once. Keep one of them.`);
    }
    return given[0];
  };
  const required = (key: "pieces" | "sheet" | "out"): string => {
    const text = value(key);
    if (text !== undefined && text.trim() !== "" && !text.startsWith("--")) return text;
    const { flags, example } = PLAN_OPTIONS[key];
    const found = text === undefined ? "missing" : `found ${quote(text)} where its value should be`;
    report(optionName(key), "option-missing", `${found}. Give ${flags}, such as ${optionName(key)} ${example}.`);
    return "";
  };
  const oneOf = <T extends string>(key: OptionKey, allowed: readonly T[], fallback: T): T | null => {
    const text = value(key);
    if (text === undefined) return fallback;
    const found = allowed.find((one) => one === text.trim().toLowerCase());
    if (found === undefined) report(optionName(key), "not-one-of", `found ${quote(text)}, expected ${either(allowed)}.`);
    return found ?? null;
  };
  const wholeNumber = (key: "count" | "seed", least: number, most: number): number | null => {
    const text = value(key);
    if (text === undefined) return null;
    const number = /^\d+$/.test(text.trim()) ? Number(text) : Number.NaN;
    if (number >= least && number <= most) return number;
    const expected = `expected a whole number from ${least} to ${most}`;
    report(optionName(key), "not-a-number", `found ${quote(text)}, ${expected}, such as ${optionName(key)} ${PLAN_OPTIONS[key].example}.`);
    return null;
  };

  reportUnknown(rest, report);
  const pieces = required("pieces");
  const sheetText = required("sheet");
  const out = required("out");
  const unit = oneOf<Unit>("unit", ["in", "mm"], "in");
  const mode = oneOf("mode", ["shelf", "guillotine"], "guillotine");
  const effort = oneOf<Effort>("effort", ["quick", "standard", "thorough"], "standard");
  const count = wholeNumber("count", 1, LARGEST_COUNT);
  const seed = wholeNumber("seed", 0, LARGEST_SEED) ?? 1;
  const length = (key: OptionKey, fallback: string, allowZero: boolean): Ticks => {
    const read = readLength(value(key) ?? fallback, { unit: unit ?? "in", allowZero });
    if ("ticks" in read) return read.ticks;
    report(optionName(key), read.code, read.message);
    return 0;
  };
  const defaults = DEFAULTS[unit ?? "in"];
  const trimWidth = length("trim", "0", true);
  const kerf = length("kerf", "0", true);
  const longestCut = written["longestCut"] === undefined ? null : length("longestCut", "", false);
  const hold = length("hold", defaults.hold, true);
  const sheet = readSheetSize(sheetText, unit ?? "in");
  if ("message" in sheet && sheetText !== "") report("--sheet", sheet.code, sheet.message);
  const keep = readSize(value("keep") ?? defaults.keep, unit ?? "in");
  if ("message" in keep) report("--keep", keep.code, keep.message);
  const sides = readSides(value("trimSides"), report);
  const trim = Object.fromEntries(trimWidth === 0 ? [] : sides.map((side) => [side, trimWidth])) as Trim;
  if (!("message" in sheet)) checkTrim(sheet, trim, longestCut, unit ?? "in", report);

  const json = written["json"] === true;
  const force = written["force"] === true;
  const read = { faults, pieces: pieces || null, out: out || null, unit, force };
  if (faults.length > 0 || unit === null || mode === null || effort === null) return { ...read, request: null };
  if ("message" in sheet || "message" in keep) return { ...read, request: null };
  const request: PlanRequest = {
    pieces,
    out,
    unit,
    sheet,
    count,
    mode,
    trim,
    kerf,
    longestCut,
    hold,
    keep: { width: keep.width, height: keep.height },
    effort,
    seed,
    json,
    force,
  };
  return { ...read, request };
}

type Report = (option: string, code: string, message: string) => void;

/** Words that are no option, and no option's value. */
function reportUnknown(rest: readonly string[], report: Report): void {
  const extra: string[] = [];
  rest.forEach((word, index) => {
    if (word.startsWith("-") && word.length > 1) {
      const known = suggestOption(word);
      report(word, "unknown-option", `this option is not known.${known === undefined ? "" : ` Did you mean ${known}?`}`);
      return;
    }
    // The word after an unknown option is most likely its value: one fault is enough.
    const before = rest[index - 1] ?? "";
    if (!before.startsWith("--") || before.includes("=")) extra.push(word);
  });
  if (extra.length === 0) return;
  const help = 'A value with spaces in it goes in quotes, such as --sheet "8 1/2 x 11 in".';
  report(quote(extra.join(" ")), "extra-word", `nothing was expected here. ${help}`);
}

function readSides(text: string | undefined, report: Report): readonly (typeof SIDES)[number][] {
  if (text === undefined) return SIDES;
  const words = text.toLowerCase().split(/[\s,+]+/).filter((word) => word !== "");
  const unknown = words.find((word) => !SIDES.some((side) => side === word));
  if (words.length > 0 && unknown === undefined) return SIDES.filter((side) => words.includes(side));
  const found = quote(unknown ?? text);
  report("--trim-sides", "not-a-side", `found ${found}, expected one or more of ${SIDES.join(", ")}, such as left,top.`);
  return [];
}

/** The trim must leave something, and its own cuts must be possible. */
function checkTrim(sheet: SheetSize, trim: Trim, longestCut: Ticks | null, unit: Unit, report: Report): void {
  const { left = 0, right = 0, top = 0, bottom = 0 } = trim;
  const usable = sheet.width - left - right;
  const size = formatSize(sheet.width, sheet.height, { unit });
  if (usable < 1 || sheet.height - top - bottom < 1) {
    report("--trim", "nothing-left", `trimming takes the whole sheet of ${size}. Give a smaller trim.`);
    return;
  }
  const longest = Math.max(left + right > 0 ? sheet.height : 0, top + bottom > 0 ? usable : 0);
  if (longestCut === null || longest <= longestCut) return;
  const needed = formatLength(longest, { unit });
  const limit = formatLength(longestCut, { unit });
  const message =
    `squaring off the sheet of ${size} takes a cut of ${needed}, and --longest-cut allows ${limit}. ` +
    "Leave the trim out, take it from other sides with --trim-sides, or use a smaller sheet.";
  report("--trim", "trim-not-cuttable", message);
}

/** Joins words as a sentence does: a, b or c. */
function either(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
}
