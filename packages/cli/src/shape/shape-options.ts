import type { Command } from "commander";
import { addOptions } from "../request/add-options.js";
import { nameOf, type OptionWithHelp } from "../request/table-reader.js";

/** The options of `sheetwright shape`, in the order of its help. */
export const SHAPE_OPTIONS = {
  size: {
    flags: "--size <size>",
    help: 'how large it is: one length (3in) or width x height ("2 x 3in"), as the shape is called',
    example: "3in",
  },
  set: {
    flags: "--set <key=value>",
    help: "another parameter of the shape, such as points=6 or depth=1/4; as often as needed",
    example: "points=6",
  },
  window: {
    flags: "--window <name>",
    help: "a window in its middle: the name of a shape",
    example: "circle",
  },
  windowSize: { flags: "--window-size <size>", help: "how large the window is", example: "2in" },
  windowSet: {
    flags: "--window-set <key=value>",
    help: "another parameter of the window; as often as needed",
    example: "sides=6",
  },
  grow: {
    flags: "--grow <length>",
    help: "how far its edge is moved out all round; with a minus (-1/8) in",
    example: "1/8",
  },
  stitched: {
    flags: "--stitched [length]",
    help: "a line of stitches, so far from the edge (default: 1/8 in or 3 mm)",
    example: "1/8",
  },
  marks: {
    flags: "--marks <marks>",
    help: "how stitches are made: dashes or holes (default: dashes)",
    example: "holes",
  },
  list: { flags: "--list", help: "list all shapes with their parameters; with --out draw them on a page" },
  out: { flags: "--out <file>", help: "the SVG file that is written", example: "heart.svg" },
  lines: {
    flags: "--lines",
    help: "straight lines within 0.02 mm instead of curves, for programs that read none",
  },
  rulers: {
    flags: "--rulers",
    help: "rulers and a square below the shape, to find out whether a program opens it at its size",
  },
  unit: {
    flags: "--unit <in|mm>",
    help: "unit of bare numbers, and of what is said (default: in)",
    example: "mm",
  },
  json: { flags: "--json", help: "print the measures as JSON; the text goes to standard error" },
  force: { flags: "--force", help: "replace the file where it is there already" },
} as const satisfies Readonly<Record<string, OptionWithHelp>>;

/** Key of an option in what was written. */
export type ShapeOptionKey = keyof typeof SHAPE_OPTIONS;

/** The keys of all options, in the order of the help. */
export const SHAPE_OPTION_KEYS = Object.keys(SHAPE_OPTIONS) as readonly ShapeOptionKey[];

/** The option as a person writes it, such as `--window-size`. */
export function shapeOptionName(key: ShapeOptionKey): string {
  return nameOf(SHAPE_OPTIONS[key]);
}

/** Adds the options to a command. */
export function addShapeOptions(command: Command): Command {
  return addOptions(command, SHAPE_OPTIONS);
}
