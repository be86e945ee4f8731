/** The options that the suites on published instances share. */
import type { Effort } from "@sheetwright/packing";
import type { Option } from "commander";
import type { BenchFault } from "../bench-fault.js";
import type { Family } from "../instances/family.js";
import {
  allOf,
  collectingOption,
  effortsOf,
  LARGEST_SEED,
  onceOf,
  type Report,
  type WrittenOptions,
  wholeNumberOf,
} from "../written-options.js";

/** Which way round pieces may lie in a run: as given, or turned too. */
export type RunTurns = "fixed" | "turned";

/** What a suite is asked. */
export interface ComparisonOptions {
  /** Path as given; `null` where it is missing. */
  readonly data: string | null;
  /** Names of families; all that are found where there are none. */
  readonly families: readonly string[];
  readonly efforts: readonly Effort[];
  /** `null` for what is usual for each family. */
  readonly turns: RunTurns | null;
  readonly seed: number;
  readonly jobs: number;
  readonly json: string | null;
  readonly out: string | null;
  /** Parts of the results' file names that tell this run from one with defaults. */
  readonly differs: readonly string[];
}

const DEFAULT_SEED = 1;
const MOST_JOBS = 256;

/** The options in the order of the help. */
export function comparisonOptions(defaultEfforts: readonly Effort[]): readonly Option[] {
  const described: readonly (readonly [flags: string, help: string])[] = [
    ["--data <folder>", "the folder with the published instances (bench/README.md says what it holds)"],
    ["--family <name>", "only this family; may be given several times (default: all that are found)"],
    [
      "--effort <effort>",
      `how long to search: quick, standard or thorough; may be given several times (default: ${defaultEfforts.join(", ")})`,
    ],
    [
      "--turns <turns>",
      "fixed or turned: whether pieces may be turned (default: what is usual for each family)",
    ],
    ["--seed <number>", `another number makes other searches (default: ${DEFAULT_SEED})`],
    [
      "--jobs <number>",
      "instances solved at the same time; changes times only (default: the machine's cores)",
    ],
    ["--json <file>", "where the figures go as JSON (default: beside the table and the chart)"],
    ["--out <folder>", "where table and chart go (default: bench/results)"],
  ];
  return described.map(([flags, help]) => collectingOption(flags, help));
}

/** Reads the options; whatever is wrong is told to `faults`. */
export function readComparisonOptions(
  written: WrittenOptions,
  defaultEfforts: readonly Effort[],
  cores: number,
  faults: BenchFault[],
): ComparisonOptions {
  const report: Report = (where, message) => {
    faults.push({ where, message });
  };
  const data = onceOf(written, "data", report);
  const families = allOf(written, "family", report);
  for (const name of families.filter((name, i) => families.indexOf(name) < i)) {
    report("--family", `${name} is given twice. Keep one of them.`);
  }
  const efforts = effortsOf(written, defaultEfforts, report);
  const turnsText = onceOf(written, "turns", report);
  const turns = turnsText === "fixed" || turnsText === "turned" ? turnsText : null;
  if (turns !== turnsText) report("--turns", `found "${turnsText}", expected fixed or turned.`);
  const seed = wholeNumberOf(
    written,
    "seed",
    { least: 0, most: LARGEST_SEED, fallback: DEFAULT_SEED },
    report,
  );
  const jobs = wholeNumberOf(
    written,
    "jobs",
    { least: 1, most: MOST_JOBS, fallback: Math.max(1, Math.floor(cores)) },
    report,
  );
  const differs = [
    ...(families.length === 0
      ? []
      : [families.length > 4 ? `${families.length} families` : families.join(" ")]),
    ...(efforts.join() === defaultEfforts.join() ? [] : [efforts.join(" ")]),
    ...(turns === null ? [] : [turns]),
    ...(seed === DEFAULT_SEED ? [] : [`seed ${seed}`]),
  ];
  const json = onceOf(written, "json", report);
  const out = onceOf(written, "out", report);
  return { data, families, efforts, turns, seed, jobs, json, out, differs };
}

/** Whether pieces may be turned: both ways where the literature has both, else as it has them. */
export function turnsFor({ question }: Family, turns: RunTurns | null): readonly boolean[] {
  if (turns !== null) return [turns === "turned"];
  return question === "value" || question === "sizes" ? [false] : [false, true];
}
