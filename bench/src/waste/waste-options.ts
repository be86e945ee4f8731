/** The options of the suite `waste`: how they are described, and how what was written is read and checked. */
import { formatSize, inches, tryParseSize } from "@sheetwright/measure";
import type { Effort } from "@sheetwright/packing";
import type { Option } from "commander";
import type { BenchFault } from "../bench-fault.js";
import {
  collectingOption,
  EFFORTS,
  LARGEST_SEED,
  onceOf,
  type Report,
  type WrittenOptions,
  wholeNumberOf,
} from "../written-options.js";
import type { MeasuredSheet } from "./measure-waste.js";

/** What the suite is asked, as far as it can be read without looking at a file. */
export interface WasteOptions {
  readonly sheets: readonly MeasuredSheet[];
  readonly seed: number;
  readonly effort: Effort;
  readonly sets: number;
  /** Paths as given. */
  readonly pieces: string | null;
  readonly json: string | null;
  readonly out: string | null;
  /** Parts of the results' file names that tell this run from one with defaults; empty for a run with defaults. */
  readonly differs: readonly string[];
}

const DEFAULT_SHEETS = ["6x6in", "us-letter", "12x12in", "iso-a4"];
const DEFAULTS = { seed: 1, effort: "quick", sets: 5 } as const;
const MOST_SETS = 1000;

/** Craft sheets are 1 in to 30 x 40 in; beyond that, tables of card pieces say nothing and take long. */
const SHORTEST_SIDE = inches(1);
const LONGEST_SIDE = inches(40);

/** The options in the order of the help. Each keeps all its values, so that one given twice can be refused. */
export function wasteOptions(): readonly Option[] {
  const described: readonly (readonly [flags: string, help: string])[] = [
    [
      "--sheet <size>",
      `a named size or width x height; may be given several times (default: ${DEFAULT_SHEETS.join(", ")})`,
    ],
    [
      "--pieces <file>",
      "plan this list instead of the seeded sets: CSV with the header name,width,height,quantity,turn, bare lengths in inches",
    ],
    ["--seed <number>", `another number makes other sets and searches (default: ${DEFAULTS.seed})`],
    ["--effort <effort>", `how long to search: quick, standard or thorough (default: ${DEFAULTS.effort})`],
    ["--sets <number>", `sets of each family on each sheet (default: ${DEFAULTS.sets})`],
    ["--json <file>", "where the figures go as JSON (default: beside the table and the chart)"],
    ["--out <folder>", "where table and chart go (default: bench/results)"],
  ];
  return described.map(([flags, help]) => collectingOption(flags, help));
}

/** Reads the options; gives all faults where there are any. */
export function readWasteOptions(written: WrittenOptions): WasteOptions | readonly BenchFault[] {
  const faults: BenchFault[] = [];
  const report: Report = (where, message) => {
    faults.push({ where, message });
  };
  const once = (key: string): string | null => onceOf(written, key, report);
  const given = written.sheet;
  const sheets = readSheets(given === true || given === undefined ? DEFAULT_SHEETS : given, report);
  const pieces = once("pieces");
  const seed = wholeNumberOf(
    written,
    "seed",
    { least: 0, most: LARGEST_SEED, fallback: DEFAULTS.seed },
    report,
  );
  const sets = wholeNumberOf(written, "sets", { least: 1, most: MOST_SETS, fallback: DEFAULTS.sets }, report);
  const effortText = once("effort");
  const effort = EFFORTS.find((one) => one === (effortText ?? DEFAULTS.effort).trim());
  if (effort === undefined) report("--effort", `found "${effortText}", expected ${EFFORTS.join(", ")}.`);
  if (pieces !== null && written.sets !== undefined) {
    report("--sets", "the list given with --pieces is planned instead of sets. Leave one of the two out.");
  }
  const json = once("json");
  const out = once("out");
  if (faults.length > 0 || effort === undefined) return faults;
  const differs = [
    ...(isDefault(sheets)
      ? []
      : [sheets.length > 4 ? `${sheets.length} sheets` : sheets.map(({ id }) => id).join(" ")]),
    ...(pieces === null ? [] : [(pieces.split(/[\\/]/).at(-1) ?? "").replace(/\.csv$/i, "")]),
    ...(seed === DEFAULTS.seed ? [] : [`seed ${seed}`]),
    ...(effort === DEFAULTS.effort ? [] : [effort]),
    ...(sets === DEFAULTS.sets ? [] : [`${sets} sets`]),
  ];
  return { sheets, seed, effort, sets, pieces, json, out, differs };
}

function readSheets(texts: readonly string[], report: Report): MeasuredSheet[] {
  const sheets: MeasuredSheet[] = [];
  for (const text of texts) {
    const read = tryParseSize(text, { unit: "in", kind: "sheet" });
    if (!read.ok) {
      report("--sheet", read.problem.message);
      continue;
    }
    const { width, height, unit } = read;
    const size = formatSize(width, height, { unit });
    if (Math.min(width, height) < SHORTEST_SIDE || Math.max(width, height) > LONGEST_SIDE) {
      report("--sheet", `found ${size}, expected sides of 1 to 40 in (25.4 to 1016 mm).`);
    } else if (sheets.some((sheet) => sheet.width === width && sheet.height === height)) {
      report("--sheet", `${size} is given twice. Keep one of them.`);
    } else {
      sheets.push({ id: read.id ?? size, name: read.name ?? size, width, height, unit });
    }
  }
  return sheets;
}

function isDefault(sheets: readonly MeasuredSheet[]): boolean {
  const defaults = readSheets(DEFAULT_SHEETS, () => undefined);
  return JSON.stringify(sheets) === JSON.stringify(defaults);
}
