import type { Command } from "commander";
import { addOptions } from "../request/add-options.js";
import { PLAN_OPTIONS } from "../request/plan-options.js";
import type { OptionWithHelp } from "../request/table-reader.js";

const { effort, seed, jobs, ownSolver } = PLAN_OPTIONS;

/** The options of `sheetwright need`, in the order of its help. */
export const NEED_OPTIONS = {
  effort,
  seed,
  jobs,
  ownSolver,
  json: { flags: "--json", help: "print what is needed as JSON; the text goes to standard error" },
} as const satisfies Readonly<Record<string, OptionWithHelp>>;

/** Key of an option in what was written. */
export type NeedOptionKey = keyof typeof NEED_OPTIONS;

/** Adds the options to a command. */
export function addNeedOptions(command: Command): Command {
  return addOptions(command, NEED_OPTIONS);
}
