import type { Command } from "commander";
import { addOptions } from "../request/add-options.js";
import { PLAN_OPTIONS } from "../request/plan-options.js";
import type { OptionWithHelp } from "../request/table-reader.js";

const { effort, seed, jobs, ownSolver } = PLAN_OPTIONS;

/** The options of `sheetwright price`, in the order of its help. */
export const PRICE_OPTIONS = {
  effort,
  seed,
  jobs,
  ownSolver,
  json: { flags: "--json", help: "print what it costs as JSON; the text goes to standard error" },
} as const satisfies Readonly<Record<string, OptionWithHelp>>;

/** Key of an option in what was written. */
export type PriceOptionKey = keyof typeof PRICE_OPTIONS;

/** Adds the options to a command. */
export function addPriceOptions(command: Command): Command {
  return addOptions(command, PRICE_OPTIONS);
}
