import { type Command, Option } from "commander";
import type { OptionWithHelp } from "./table-reader.js";

/** Adds the options of a table to a command. Each keeps all its values, so that one given twice can be refused. */
export function addOptions(command: Command, table: Readonly<Record<string, OptionWithHelp>>): Command {
  for (const { flags, help, inProject } of Object.values(table)) {
    const option = new Option(flags, help);
    if (inProject !== undefined || flags.startsWith("--pieces")) option.helpGroup("For a list of pieces:");
    if (option.required || option.optional) {
      option.argParser((value: string, earlier: readonly string[] | true | undefined) => [
        ...(Array.isArray(earlier) ? earlier : []),
        value,
      ]);
    }
    command.addOption(option);
  }
  return command;
}
