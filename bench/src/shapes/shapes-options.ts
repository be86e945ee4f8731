/** The options of the suite `shapes`. */
import type { Option } from "commander";
import type { BenchFault } from "../bench-fault.js";
import { collectingOption, onceOf, type WrittenOptions, wholeNumberOf } from "../written-options.js";

/** What the suite is asked. */
export interface ShapesOptions {
  readonly rounds: number;
  /** Paths as given. */
  readonly json: string | null;
  readonly out: string | null;
  readonly differs: readonly string[];
}

const ROUNDS = 15;
const MOST_ROUNDS = 1000;

/** The options in the order of the help. */
export function shapesOptions(): readonly Option[] {
  return [
    collectingOption("--rounds <number>", `how often each operation is run (default: ${ROUNDS})`),
    collectingOption("--json <file>", "where the figures go as JSON (default: beside the table)"),
    collectingOption("--out <folder>", "where the table goes (default: bench/results)"),
  ];
}

/** Reads the options; gives all faults where there are any. */
export function readShapesOptions(written: WrittenOptions): ShapesOptions | readonly BenchFault[] {
  const faults: BenchFault[] = [];
  const report = (where: string, message: string): void => {
    faults.push({ where, message });
  };
  const rounds = wholeNumberOf(written, "rounds", { least: 1, most: MOST_ROUNDS, fallback: ROUNDS }, report);
  const json = onceOf(written, "json", report);
  const out = onceOf(written, "out", report);
  if (faults.length > 0) return faults;
  return { rounds, json, out, differs: rounds === ROUNDS ? [] : [`${rounds} rounds`] };
}
