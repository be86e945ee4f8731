import { formatSize, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import type { Effort, Mode } from "@sheetwright/packing";
import type { ComparedSize } from "@sheetwright/planner";
import { type Fault, quote } from "../fault.js";
import { faultsOfRest, freeWords, ONE_NAME } from "../request/free-words.js";
import { suggestOption, type WrittenOptions } from "../request/plan-options.js";
import { PLAN_DEFAULTS } from "../request/plan-request.js";
import { readSearchOptions, type SharedOptions } from "../request/shared-options.js";
import { readSize } from "../request/sheet-size.js";
import { type TableReader, tableReader } from "../request/table-reader.js";
import {
  addCompareOptions,
  COMPARE_OPTION_KEYS,
  COMPARE_OPTIONS,
  type CompareOptionKey,
} from "./compare-options.js";
import { readCopies } from "./read-copies.js";
import { readSizes } from "./read-sizes.js";

/** How the sheets of a list of pieces are cut; a project says it in its file. Lengths are ticks. */
export interface PieceCutting {
  readonly unit: Unit;
  readonly mode: Exclude<Mode, "stopped">;
  readonly trim: Ticks;
  readonly kerf: Ticks;
  readonly keep: Size;
}

/** What `sheetwright compare` is asked. */
export interface CompareRequest {
  /** A project file, or a list of pieces, by its path as given. */
  readonly what:
    | { readonly of: "project"; readonly file: string }
    | { readonly of: "pieces"; readonly file: string; readonly cutting: PieceCutting };
  readonly sizes: readonly ComparedSize[];
  readonly copies: readonly number[];
  readonly effort: Effort;
  readonly seed: number;
  /** Cases at the same time; `null`: as many as there are cores. */
  readonly jobs: SharedOptions["jobs"];
  readonly out: string | null;
  readonly json: boolean;
  readonly force: boolean;
}

/** A request as far as it could be read, so that what it names can be looked at even where something else is wrong. */
export interface ReadCompareRequest {
  readonly request: CompareRequest | null;
  readonly faults: readonly Fault[];
}

/** What is compared, by the words beside known options alone: it is read before the rest, for the unit of bare numbers. */
export function comparedFile(
  written: WrittenOptions,
  rest: readonly string[],
): { readonly project: string | null } {
  const [file = null] = freeWords(rest).words;
  return { project: written.pieces === undefined && file !== null && !isListName(file) ? file : null };
}

function isListName(file: string): boolean {
  return /\.(csv|tsv|txt)$/i.test(file);
}

/**
 * Reads what is to be compared and collects every fault.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 * @param projectUnit the unit of the project, for bare numbers among the sizes.
 */
export function readCompareRequest(
  written: WrittenOptions,
  rest: readonly string[],
  projectUnit: Unit,
): ReadCompareRequest {
  const [file = null] = freeWords(rest).words;
  const others = rest.filter((_, index) => index !== rest.indexOf(file ?? ""));
  const reader = tableReader<CompareOptionKey>(COMPARE_OPTIONS, written);
  const { oneOf, report, value } = reader;
  const unit = oneOf<Unit>("unit", ["in", "mm"], projectUnit) ?? "in";
  const what = readWhat(file, written, reader, unit);

  const sizesText = reader.required("sizes");
  const { sizes, faults: wrong } =
    sizesText === null ? { sizes: [], faults: [] } : readSizes(sizesText, unit);
  for (const { code, message } of wrong) report("sizes", code, message);
  const trim = what?.of === "pieces" ? what.cutting.trim : 0;
  for (const { width, height } of sizes) {
    if (width > 2 * trim && height > 2 * trim) continue;
    const message = `trimming takes the whole sheet of ${formatSize(width, height, { unit })}. Give a smaller trim, or leave that size out.`;
    report("trim", "nothing-left", message);
  }
  const copies = readCopies(value("copies") ?? "1");
  if ("message" in copies) report("copies", copies.code, copies.message);
  const out = readOut(reader, written);
  if (written.force === true && out === null)
    report("force", "no-meaning", "this has no meaning without --out, the file. Give that too.");
  const { effort, seed, jobs } = readSearchOptions(written, reader, "quick");

  const faults = [
    ...faultsOfRest(others, {
      suggest: (option) => suggestOption(option, addCompareOptions),
      help: `One project file is compared at a time. ${ONE_NAME}`,
    }),
    ...(what === null ? [missingFile(file)] : []),
    ...reader.faults(),
  ];
  if (what === null || faults.length > 0 || "message" in copies) return { request: null, faults };
  const { json, force } = { json: written.json === true, force: written.force === true };
  return { request: { what, sizes, copies: copies.copies, effort, seed, jobs, out, json, force }, faults };
}

function readWhat(
  file: string | null,
  written: WrittenOptions,
  reader: TableReader<CompareOptionKey>,
  unit: Unit,
): CompareRequest["what"] | null {
  const { report } = reader;
  if (written.pieces === undefined) {
    for (const key of COMPARE_OPTION_KEYS) {
      const option = COMPARE_OPTIONS[key];
      if (!("inProject" in option) || written[key] === undefined) continue;
      const message = `this option is for a list of pieces. A project says it in its file: ${option.inProject}.`;
      report(key, "other-form", message);
    }
    return file === null || isListName(file) ? null : { of: "project", file };
  }
  const pieces = reader.required("pieces");
  if (file !== null) {
    const message = `${quote(file)} and --pieces are both given, expected a project file or a list of pieces. Leave one out.`;
    report("pieces", "two-forms", message);
  }
  const length = (key: "trim" | "kerf"): Ticks => reader.length(key, "0", { unit, allowZero: true }) ?? 0;
  const keep = readSize(reader.value("keep") ?? PLAN_DEFAULTS[unit].keep, unit);
  if ("message" in keep) report("keep", keep.code, keep.message);
  const cutting: PieceCutting = {
    unit,
    mode: reader.oneOf<"guillotine" | "shelf">("mode", ["guillotine", "shelf"], "guillotine") ?? "guillotine",
    trim: length("trim"),
    kerf: length("kerf"),
    keep: "message" in keep ? { width: 1, height: 1 } : { width: keep.width, height: keep.height },
  };
  return pieces === null ? null : { of: "pieces", file: pieces, cutting };
}

function missingFile(file: string | null): Fault {
  const place = { option: "sheetwright compare" };
  if (file !== null) {
    const message = `${quote(file)} is no project file by its name, expected one that ends in .yaml or .json. For a list of pieces give --pieces ${file}.`;
    return { code: "not-a-project", place, message };
  }
  const message =
    "the project file is missing. Give its name, such as sheetwright compare cards.yaml --sizes us-letter,12x12in; " +
    "for a list of pieces give --pieces.";
  return { code: "option-missing", place, message };
}

function readOut({ value, report }: TableReader<CompareOptionKey>, written: WrittenOptions): string | null {
  const text = value("out");
  if (written.out === undefined || text === undefined) return null;
  if (text.trim() === "" || text.startsWith("--")) {
    const message = `found ${quote(text)} where its value should be. Give --out <file>, such as --out sizes.svg.`;
    report("out", "option-missing", message);
    return null;
  }
  if (/\.svg$/i.test(text)) return text;
  const meant = quote(`${text.replace(/\.[a-z0-9]{1,4}$/i, "")}.svg`);
  report(
    "out",
    "not-a-drawing",
    `${quote(text)} is no drawing by its name, expected one that ends in .svg. Write ${meant}.`,
  );
  return null;
}
