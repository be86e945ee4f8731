/** The options of the suite `scale`. */
import type { Effort } from "@sheetwright/packing";
import type { Option } from "commander";
import type { BenchFault } from "../bench-fault.js";
import {
  collectingOption,
  EFFORTS,
  effortsOf,
  LARGEST_SEED,
  onceOf,
  type WrittenOptions,
  wholeNumberOf,
} from "../written-options.js";

/** What grows from row to row. */
export type Growing = "copies" | "kinds";

/** What the suite is asked. */
export interface ScaleOptions {
  readonly efforts: readonly Effort[];
  readonly seed: number;
  readonly growing: readonly Growing[];
  /** No row has more of what grows. */
  readonly most: number;
  /** Paths as given. */
  readonly json: string | null;
  readonly out: string | null;
  readonly differs: readonly string[];
}

const GROWING: readonly Growing[] = ["copies", "kinds"];
const DEFAULT_EFFORTS: readonly Effort[] = ["quick", "standard"];
const SEED = 1;
/** The most copies of any row. */
const MOST = 100_000;

/** The options in the order of the help. */
export function scaleOptions(): readonly Option[] {
  const described: readonly (readonly [flags: string, help: string])[] = [
    [
      "--effort <effort>",
      `quick, standard or thorough; may be given several times (default: ${DEFAULT_EFFORTS.join(", ")})`,
    ],
    ["--grow <what>", `only rows in which this grows: ${GROWING.join(" or ")} (default: both)`],
    ["--most <number>", `no row with more of what grows (default: ${MOST})`],
    ["--seed <number>", `another number makes other pieces and searches (default: ${SEED})`],
    ["--json <file>", "where the figures go as JSON (default: beside the table and the chart)"],
    ["--out <folder>", "where table and chart go (default: bench/results)"],
  ];
  return described.map(([flags, help]) => collectingOption(flags, help));
}

/** Reads the options; gives all faults where there are any. */
export function readScaleOptions(written: WrittenOptions): ScaleOptions | readonly BenchFault[] {
  const faults: BenchFault[] = [];
  const report = (where: string, message: string): void => {
    faults.push({ where, message });
  };
  const efforts = effortsOf(written, DEFAULT_EFFORTS, report);
  const seed = wholeNumberOf(written, "seed", { least: 0, most: LARGEST_SEED, fallback: SEED }, report);
  const most = wholeNumberOf(written, "most", { least: 1, most: MOST, fallback: MOST }, report);
  const what = onceOf(written, "grow", report);
  const growing = what === null ? GROWING : GROWING.filter((one) => one === what.trim());
  if (growing.length === 0) report("--grow", `found "${what}", expected ${GROWING.join(" or ")}.`);
  const json = onceOf(written, "json", report);
  const out = onceOf(written, "out", report);
  if (faults.length > 0) return faults;
  const isDefault = efforts.length === 2 && DEFAULT_EFFORTS.every((effort) => efforts.includes(effort));
  const differs = [
    ...(isDefault ? [] : [EFFORTS.filter((effort) => efforts.includes(effort)).join(" ")]),
    ...(what === null ? [] : growing),
    ...(most === MOST ? [] : [`at most ${most}`]),
    ...(seed === SEED ? [] : [`seed ${seed}`]),
  ];
  return { efforts, seed, growing, most, json, out, differs };
}
