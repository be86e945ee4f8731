/** The options of the suite `waste`: how they are described, and how what was written is read and checked. */
import { formatSize, inches, tryParseSize } from "@sheetwright/measure";
import type { Effort } from "@sheetwright/packing";
import { Option } from "commander";
import type { BenchFault } from "../bench-fault.js";
import type { MeasuredSheet } from "./measure-waste.js";

/** Values of the options as written, each as often as it was given. */
export interface WrittenWasteOptions {
  readonly sheet?: readonly string[];
  readonly pieces?: readonly string[];
  readonly seed?: readonly string[];
  readonly effort?: readonly string[];
  readonly sets?: readonly string[];
  readonly json?: readonly string[];
  readonly out?: readonly string[];
}

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
const EFFORTS: readonly Effort[] = ["quick", "standard", "thorough"];
const LARGEST_SEED = 4_294_967_295;
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
  const collect = (value: string, earlier: readonly string[] | undefined): readonly string[] => [
    ...(earlier ?? []),
    value,
  ];
  return described.map(([flags, help]) => new Option(flags, help).argParser(collect));
}

/** Reads the options; gives all faults where there are any. */
export function readWasteOptions(written: WrittenWasteOptions): WasteOptions | readonly BenchFault[] {
  const faults: BenchFault[] = [];
  const report = (where: string, message: string): void => {
    faults.push({ where, message });
  };
  const once = (key: Exclude<keyof WrittenWasteOptions, "sheet">): string | null => {
    const given = written[key] ?? [];
    if (given.length > 1) report(`--${key}`, `given ${given.length} times, expected once. Keep one of them.`);
    const [value] = given;
    if (value !== undefined && (value.trim() === "" || value.startsWith("--"))) {
      report(`--${key}`, `found "${value}" where its value should be.`);
    }
    return value ?? null;
  };
  const wholeNumber = (key: "seed" | "sets", least: number, most: number, fallback: number): number => {
    const text = once(key);
    if (text === null) return fallback;
    const number = /^\d{1,10}$/.test(text.trim()) ? Number(text) : Number.NaN;
    if (number >= least && number <= most) return number;
    report(`--${key}`, `found "${text}", expected a whole number from ${least} to ${most}.`);
    return fallback;
  };
  const sheets = readSheets(written.sheet ?? DEFAULT_SHEETS, report);
  const pieces = once("pieces");
  const seed = wholeNumber("seed", 0, LARGEST_SEED, DEFAULTS.seed);
  const sets = wholeNumber("sets", 1, MOST_SETS, DEFAULTS.sets);
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

function readSheets(
  texts: readonly string[],
  report: (where: string, message: string) => void,
): MeasuredSheet[] {
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
