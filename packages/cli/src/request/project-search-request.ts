import { type Fault, quote } from "../fault.js";
import { faultsOfRest, freeWords, ONE_NAME } from "./free-words.js";
import { suggestOption, type WrittenOptions } from "./plan-options.js";
import { readSearchOptions, type SearchOptions } from "./shared-options.js";
import type { TableReader } from "./table-reader.js";

/** What a command is asked that searches for something about one project and writes no file. */
export interface ProjectSearchRequest {
  /** Path of the project file, as given; `null` where none was, or where it is none by its name. */
  readonly file: string | null;
  readonly search: SearchOptions;
  readonly json: boolean;
  /** Every fault of the command line, those of the reader among them. */
  readonly faults: readonly Fault[];
}

/** How such a command is called. */
export interface ProjectSearchCommand {
  /** As it is written, such as `sheetwright need`. */
  readonly name: string;
  readonly addOptions: Parameters<typeof suggestOption>[1];
  /** What helps who gives it a list of pieces. */
  readonly listHelp: string;
}

/**
 * Reads the project file and how to search.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 * @param reader of the command's options; what else it finds wrong must be read before.
 */
export function readProjectSearch(
  written: WrittenOptions,
  rest: readonly string[],
  reader: TableReader<"effort" | "seed" | "jobs">,
  { name, addOptions, listHelp }: ProjectSearchCommand,
): ProjectSearchRequest {
  const [file = null] = freeWords(rest).words;
  const others = rest.filter((_, index) => index !== rest.indexOf(file ?? ""));
  const search = readSearchOptions(written, reader);
  const place = { option: name };
  const faults: Fault[] = [
    ...faultsOfRest(others, {
      suggest: (option) => suggestOption(option, addOptions),
      help: `One project file is looked at at a time. ${ONE_NAME}`,
    }),
    ...reader.faults(),
  ];
  const isList = file !== null && /\.(csv|tsv|txt)$/i.test(file);
  if (file === null) {
    const message = `the project file is missing. Give its name, such as ${name} cards.yaml.`;
    faults.unshift({ code: "option-missing", place, message });
  } else if (isList) {
    const message = `${quote(file)} is no project file by its name, expected one that ends in .yaml or .json. ${listHelp}`;
    faults.unshift({ code: "not-a-project", place, message });
  }
  return { file: isList ? null : file, search, json: written.json === true, faults };
}
