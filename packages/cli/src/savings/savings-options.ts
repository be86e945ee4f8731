import type { Command } from "commander";
import { addOptions } from "../request/add-options.js";
import { PLAN_OPTIONS } from "../request/plan-options.js";
import type { OptionWithHelp } from "../request/table-reader.js";

const { effort, seed, jobs, ownSolver } = PLAN_OPTIONS;

/** The options of `sheetwright savings`, in the order of its help. */
export const SAVINGS_OPTIONS = {
  most: {
    flags: "--most <number>",
    help: "how many changes are told at most (default: 3)",
    example: "10",
  },
  effort: {
    ...effort,
    help: "how long to search for each change: quick, standard or thorough (default: quick)",
  },
  seed,
  jobs,
  ownSolver,
  json: { flags: "--json", help: "print the changes as JSON; the text goes to standard error" },
} as const satisfies Readonly<Record<string, OptionWithHelp>>;

/** Key of an option in what was written. */
export type SavingsOptionKey = keyof typeof SAVINGS_OPTIONS;

/** Adds the options to a command. */
export function addSavingsOptions(command: Command): Command {
  return addOptions(command, SAVINGS_OPTIONS);
}
