import { Command, CommanderError } from "commander";
import { addOptions } from "./add-options.js";
import { nameOf, type OptionWithHelp } from "./table-reader.js";

/** Values of the options as they were written, each as often as it was given. */
export type WrittenOptions = Readonly<Record<string, readonly string[] | true | undefined>>;

/** The options of `sheetwright plan`, in the order of its help. */
export const PLAN_OPTIONS = {
  pieces: {
    flags: "--pieces <file>",
    help: "the piece list: CSV with the header name,width,height,quantity,turn",
    example: "pieces.csv",
  },
  sheet: {
    flags: "--sheet <size>",
    help: "a named size (us-letter, iso-a4) or width x height (12x12in)",
    example: "us-letter",
    inProject: "the size of each paper, such as cardstock: us-letter",
  },
  out: { flags: "--out <folder>", help: "where the files are written", example: "plan" },
  stock: {
    flags: "--stock <file>",
    help: "of a project: take counts and offcuts from this stock file, for the papers that it knows",
    example: "stock.json",
  },
  after: {
    flags: "--after <folder>",
    help: "of a project, with --stock: only what is left to cut of the plan in this folder, as far as it is booked",
    example: "plan",
  },
  count: {
    flags: "--count <number>",
    help: "sheets on hand (default: as many as needed)",
    example: "20",
    inProject: "the count of each paper",
  },
  unit: {
    flags: "--unit <in|mm>",
    help: "unit of bare numbers, and of what is written (default: in)",
    example: "mm",
    inProject: "units: in or units: mm",
  },
  mode: {
    flags: "--mode <mode>",
    help:
      "guillotine: edge-to-edge cuts in any order; shelf: strips, pieces from the strips, and one last trim " +
      "(default: guillotine)",
    example: "shelf",
    inProject: "cuts: edge-to-edge or cuts: strips under trimmer",
  },
  trim: {
    flags: "--trim <length>",
    help: "squared off each side first (default: 0)",
    example: "1/8",
    inProject: "the trim of each paper",
  },
  trimSides: {
    flags: "--trim-sides <sides>",
    help: "which sides --trim takes, such as left,top (default: all four)",
    example: "left,top",
    inProject: "the trim of each paper, such as trim: { left: 1/8, top: 1/8 }",
  },
  kerf: {
    flags: "--kerf <length>",
    help: "width lost by each cut (default: 0, as with a blade)",
    example: "0",
    inProject: "kerf under trimmer",
  },
  longestCut: {
    flags: "--longest-cut <length>",
    help: "the longest cut your tool makes (default: no limit)",
    example: "12",
    inProject: "longest-cut under trimmer",
  },
  hold: {
    flags: "--hold <length>",
    help:
      "narrowest part your tool holds firmly; narrower ones are marked for a metal ruler " +
      "(default: 1 in or 25 mm)",
    example: "1",
    inProject: "narrowest-hold under trimmer",
  },
  keep: {
    flags: "--keep <size>",
    help: "smallest leftover worth keeping (default: 2x2in or 50x50mm)",
    example: "2x2in",
    inProject: "smallest-offcut under trimmer",
  },
  cutterUnit: {
    flags: "--cutter-unit <unit>",
    help:
      "unit inside the cutter files, for programs that open them at a wrong scale: mm, 1/96in or 1/72in " +
      "(default: mm)",
    example: "1/96in",
  },
  cutterEdges: {
    flags: "--cutter-edges <edges>",
    help:
      "once: an edge of two pieces is cut once; closed: a closed outline a piece, such edges cut twice " +
      "(default: once)",
    example: "closed",
  },
  effort: {
    flags: "--effort <effort>",
    help: "how long to search: quick, standard or thorough (default: standard)",
    example: "thorough",
  },
  seed: { flags: "--seed <number>", help: "another number may find another plan (default: 1)", example: "2" },
  jobs: {
    flags: "--jobs <number>",
    help: "parts of the search done at the same time, on as many cores of the computer; the plan is the same, only the time differs (default: all cores)",
    example: "2",
  },
  ownSolver: {
    flags: "--own-solver",
    help: "search without the helper HiGHS, which is used for many copies; another plan may come out",
  },
  json: { flags: "--json", help: "print the summary as JSON; the text goes to standard error" },
  force: { flags: "--force", help: "replace files in the folder that Sheetwright did not write" },
} as const satisfies Readonly<Record<string, OptionWithHelp>>;

/** Key of an option in {@link WrittenOptions}. */
export type OptionKey = keyof typeof PLAN_OPTIONS;

/** The keys of all options, in the order of the help. */
export const OPTION_KEYS = Object.keys(PLAN_OPTIONS) as readonly OptionKey[];

/** The option as a person writes it, such as `--trim-sides`. */
export function optionName(key: OptionKey): string {
  return nameOf(PLAN_OPTIONS[key]);
}

/** Adds the options to a command. */
export function addPlanOptions(command: Command): Command {
  return addOptions(command, PLAN_OPTIONS);
}

/**
 * The known option that an unknown one was probably meant to be, such as `--mode` for `--mod`.
 *
 * @param add adds the known options to a command.
 */
export function suggestOption(
  flag: string,
  add: (command: Command) => Command = addPlanOptions,
): string | undefined {
  const strict = add(new Command("strict"))
    .exitOverride()
    .configureOutput({ writeErr: () => undefined });
  try {
    strict.parse([flag], { from: "user" });
  } catch (error) {
    if (error instanceof CommanderError)
      return /\(Did you mean (?:one of )?(--[a-z-]+)/.exec(error.message)?.[1];
    throw error;
  }
  return undefined;
}
