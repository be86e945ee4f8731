import type { Command } from "commander";
import { type Fault, quote } from "../fault.js";
import { faultsOfRest, freeWords, ONE_NAME } from "../request/free-words.js";
import { suggestOption, type WrittenOptions } from "../request/plan-options.js";

/** What `sheetwright check` is asked. */
export interface CheckRequest {
  /** Path of the project file, as given; `null` where it is missing. */
  readonly file: string | null;
  readonly json: boolean;
  /** Whether what the project silences is listed as well. */
  readonly silenced: boolean;
  readonly faults: readonly Fault[];
}

/** Adds the options of `sheetwright check` to a command. */
export function addCheckOptions(command: Command): Command {
  return command
    .option("--silenced", "list what the project silences as well, with its reasons")
    .option("--json", "print what is found as JSON; the text goes to standard error");
}

/**
 * Reads what a check is asked and collects every fault.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 */
export function readCheckRequest(written: WrittenOptions, rest: readonly string[]): CheckRequest {
  const [file = null] = freeWords(rest).words;
  const others = rest.filter((_, index) => index !== rest.indexOf(file ?? ""));
  const faults = [
    ...faultsOfRest(others, {
      suggest: (option) => suggestOption(option, addCheckOptions),
      help: `One project file is checked at a time. ${ONE_NAME}`,
    }),
  ];
  const place = { option: "sheetwright check" };
  if (file === null) {
    const message = "the project file is missing. Give its name, such as sheetwright check cards.yaml.";
    faults.unshift({ code: "option-missing", place, message });
  } else if (/\.(csv|tsv|txt)$/i.test(file)) {
    const message =
      `${quote(file)} is no project file by its name, expected one that ends in .yaml or .json. ` +
      "A list of pieces is checked when it is planned.";
    faults.unshift({ code: "not-a-project", place, message });
  }
  return { file, json: written.json === true, silenced: written.silenced === true, faults };
}
