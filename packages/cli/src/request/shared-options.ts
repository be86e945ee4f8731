import type { Effort } from "@sheetwright/packing";
import type { CutterUnit, Edges } from "@sheetwright/svg";
import type { OptionReader } from "./option-reader.js";
import type { WrittenOptions } from "./plan-options.js";
import type { TableReader } from "./table-reader.js";

/** What is asked alike of a plan from a project and of one from a list of pieces. */
export interface SharedOptions {
  readonly cutterUnit: CutterUnit;
  readonly cutterEdges: Edges;
  readonly effort: Effort;
  readonly seed: number;
  /** Searches at the same time; `null`: as many as there are cores. */
  readonly jobs: number | null;
  /** True where linear programs are solved without HiGHS. */
  readonly ownSolver: boolean;
  readonly json: boolean;
  readonly force: boolean;
}

const LARGEST_SEED = 4_294_967_295;
const MOST_JOBS = 256;

/** What is asked alike of every command that searches. */
export type SearchOptions = Pick<SharedOptions, "effort" | "seed" | "jobs" | "ownSolver">;

/** Reads how to search. For what could not be read, which the reader notes, a default comes. */
export function readSearchOptions(
  written: WrittenOptions,
  { oneOf, wholeNumber }: TableReader<"effort" | "seed" | "jobs">,
  defaultEffort: Effort = "standard",
): SearchOptions {
  return {
    effort: oneOf<Effort>("effort", ["quick", "standard", "thorough"], defaultEffort) ?? defaultEffort,
    seed: wholeNumber("seed", 0, LARGEST_SEED) ?? 1,
    jobs: wholeNumber("jobs", 1, MOST_JOBS) ?? null,
    ownSolver: written.ownSolver === true,
  };
}

/** Reads the options that both forms of a plan have. For what could not be read, which the reader notes, a default comes. */
export function readSharedOptions(written: WrittenOptions, reader: OptionReader): SharedOptions {
  const { oneOf } = reader;
  return {
    ...readSearchOptions(written, reader),
    cutterUnit: oneOf<CutterUnit>("cutterUnit", ["mm", "1/96 in", "1/72 in"], "mm") ?? "mm",
    cutterEdges: oneOf<Edges>("cutterEdges", ["once", "closed"], "once") ?? "once",
    json: written.json === true,
    force: written.force === true,
  };
}
