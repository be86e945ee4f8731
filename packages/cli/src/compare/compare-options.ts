import type { Command } from "commander";
import { addOptions } from "../request/add-options.js";
import { nameOf, type OptionWithHelp } from "../request/table-reader.js";

/** The options of `sheetwright compare`, in the order of its help. */
export const COMPARE_OPTIONS = {
  sizes: {
    flags: "--sizes <sizes>",
    help: "the sheet sizes, such as us-letter,12x12in,iso-a4; with the cost of a sheet: us-letter=0.35",
    example: "us-letter,12x12in",
  },
  copies: {
    flags: "--copies <numbers>",
    help: "the numbers of copies, such as 12, 1-50 or 1,6,12 (default: 1)",
    example: "1-50",
  },
  out: { flags: "--out <file>", help: "the SVG file that the chart is written to", example: "sizes.svg" },
  effort: {
    flags: "--effort <effort>",
    help: "how long to search for each: quick, standard or thorough (default: quick)",
    example: "standard",
  },
  seed: { flags: "--seed <number>", help: "another number may find other plans (default: 1)", example: "2" },
  jobs: {
    flags: "--jobs <number>",
    help: "sizes and numbers of copies worked out at the same time, on as many cores of the computer; the figures are the same, only the time differs (default: all cores)",
    example: "2",
  },
  json: { flags: "--json", help: "print all figures as JSON; the text goes to standard error" },
  force: { flags: "--force", help: "replace the file where it is there already" },
  pieces: {
    flags: "--pieces <file>",
    help: "the piece list of one copy: CSV with the header name,width,height,quantity,turn",
    example: "pieces.csv",
  },
  unit: {
    flags: "--unit <in|mm>",
    help: "unit of bare numbers (default: in)",
    example: "mm",
    inProject: "units: in or units: mm",
  },
  mode: {
    flags: "--mode <mode>",
    help: "guillotine or shelf, as in sheetwright plan (default: guillotine)",
    example: "shelf",
    inProject: "cuts: edge-to-edge or cuts: strips under trimmer",
  },
  trim: {
    flags: "--trim <length>",
    help: "squared off each side of every sheet first (default: 0)",
    example: "1/8",
    inProject: "the trim of each paper",
  },
  kerf: {
    flags: "--kerf <length>",
    help: "width lost by each cut (default: 0, as with a blade)",
    example: "0",
    inProject: "kerf under trimmer",
  },
  keep: {
    flags: "--keep <size>",
    help: "smallest leftover worth keeping (default: 2x2in or 50x50mm)",
    example: "2x2in",
    inProject: "smallest-offcut under trimmer",
  },
} as const satisfies Readonly<Record<string, OptionWithHelp>>;

/** Key of an option in what was written. */
export type CompareOptionKey = keyof typeof COMPARE_OPTIONS;

/** The keys of all options, in the order of the help. */
export const COMPARE_OPTION_KEYS = Object.keys(COMPARE_OPTIONS) as readonly CompareOptionKey[];

/** The option as a person writes it, such as `--sizes`. */
export function compareOptionName(key: CompareOptionKey): string {
  return nameOf(COMPARE_OPTIONS[key]);
}

/** Adds the options to a command. */
export function addCompareOptions(command: Command): Command {
  return addOptions(command, COMPARE_OPTIONS);
}
