import type { Command } from "commander";
import { addOptions } from "../request/add-options.js";
import { PLAN_OPTIONS } from "../request/plan-options.js";
import type { OptionWithHelp } from "../request/table-reader.js";

const { stock, effort, seed, jobs, ownSolver } = PLAN_OPTIONS;

/** The options of `sheetwright bonus`, in the order of its help. */
export const BONUS_OPTIONS = {
  panels: {
    flags: "--panels <file>",
    help: "sizes that would be of use: a list as for plan --pieces, with how many in quantity",
    example: "panels.csv",
  },
  stock: { ...stock, help: "take counts and offcuts from this stock file, for the papers that it knows" },
  effort,
  seed,
  jobs,
  ownSolver,
  json: { flags: "--json", help: "print what can be made as JSON; the text goes to standard error" },
} as const satisfies Readonly<Record<string, OptionWithHelp>>;

/** Key of an option in what was written. */
export type BonusOptionKey = keyof typeof BONUS_OPTIONS;

/** Adds the options to a command. */
export function addBonusOptions(command: Command): Command {
  return addOptions(command, BONUS_OPTIONS);
}
