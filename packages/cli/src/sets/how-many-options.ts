import type { Command } from "commander";
import { addOptions } from "../request/add-options.js";
import { PLAN_OPTIONS } from "../request/plan-options.js";
import type { OptionWithHelp } from "../request/table-reader.js";

const { stock, effort, seed, jobs, ownSolver } = PLAN_OPTIONS;

/** The options of `sheetwright how-many`, in the order of its help. */
export const HOW_MANY_OPTIONS = {
  stock: { ...stock, help: "take counts and offcuts from this stock file, for the papers that it knows" },
  effort,
  seed,
  jobs,
  ownSolver,
  json: { flags: "--json", help: "print the numbers as JSON; the text goes to standard error" },
} as const satisfies Readonly<Record<string, OptionWithHelp>>;

/** Key of an option in what was written. */
export type HowManyOptionKey = keyof typeof HOW_MANY_OPTIONS;

/** Adds the options to a command. */
export function addHowManyOptions(command: Command): Command {
  return addOptions(command, HOW_MANY_OPTIONS);
}
