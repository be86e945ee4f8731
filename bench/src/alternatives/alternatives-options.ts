/** The options of the suite `alternatives`. */
import type { Effort } from "@sheetwright/packing";
import type { Option } from "commander";
import type { BenchFault } from "../bench-fault.js";
import { collectingOption, EFFORTS, onceOf, type WrittenOptions } from "../written-options.js";

/** What the suite is asked. */
export interface AlternativesOptions {
  readonly effort: Effort;
  /** Paths as given. */
  readonly projects: string | null;
  readonly json: string | null;
  readonly out: string | null;
  readonly differs: readonly string[];
}

const EFFORT: Effort = "standard";

/** The options in the order of the help. */
export function alternativesOptions(): readonly Option[] {
  return [
    collectingOption("--projects <folder>", "plan these projects (default: test-fixtures/projects)"),
    collectingOption("--effort <effort>", `how long to search: ${EFFORTS.join(", ")} (default: ${EFFORT})`),
    collectingOption("--json <file>", "where the figures go as JSON (default: beside the table)"),
    collectingOption("--out <folder>", "where the table goes (default: bench/results)"),
  ];
}

/** Reads the options; gives all faults where there are any. */
export function readAlternativesOptions(
  written: WrittenOptions,
): AlternativesOptions | readonly BenchFault[] {
  const faults: BenchFault[] = [];
  const report = (where: string, message: string): void => {
    faults.push({ where, message });
  };
  const once = (key: string) => onceOf(written, key, report);
  const [projects, text, json, out] = [once("projects"), once("effort"), once("json"), once("out")];
  const effort = EFFORTS.find((one) => one === (text ?? EFFORT).trim());
  if (effort === undefined) report("--effort", `found "${text}", expected ${EFFORTS.join(", ")}.`);
  if (faults.length > 0 || effort === undefined) return faults;
  const name = projects?.split(/[\\/]/).filter(Boolean).at(-1);
  const differs = [...(name === undefined ? [] : [name]), ...(effort === EFFORT ? [] : [effort])];
  return { effort, projects, json, out, differs };
}
