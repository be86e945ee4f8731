import type { Effort } from "@sheetwright/packing";
import type { Machine } from "../machine.js";
import type { ComparisonOptions } from "./comparison-options.js";
import type { Row } from "./row.js";

/** The JSON document of a suite on published instances. Only `machine`, `jobs` and what is called seconds differ between runs. */
export interface ComparisonJson {
  readonly suite: "packing" | "peers";
  /** Version of this format. */
  readonly version: 1;
  readonly options: {
    readonly families: readonly string[];
    readonly efforts: readonly Effort[];
    readonly turns: "fixed" | "turned" | null;
    readonly seed: number;
  };
  readonly machine: Machine;
  readonly jobs: number;
  readonly versions: Readonly<Record<string, string>>;
  /** Of the whole run. */
  readonly seconds: number;
  readonly rows: readonly Row[];
}

/** Puts the figures together. */
export function comparisonJson(
  suite: ComparisonJson["suite"],
  { efforts, turns, seed, jobs }: ComparisonOptions,
  { machine, versions, seconds, rows }: Pick<ComparisonJson, "machine" | "versions" | "seconds" | "rows">,
): ComparisonJson {
  const families = [...new Set(rows.map(({ family }) => family))];
  return {
    suite,
    version: 1,
    options: { families, efforts, turns, seed },
    machine,
    jobs,
    versions,
    seconds,
    rows,
  };
}
