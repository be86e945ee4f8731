import type { Command } from "commander";
import { addOptions } from "../request/add-options.js";
import { nameOf, type OptionWithHelp } from "../request/table-reader.js";

interface StockOption extends OptionWithHelp {
  /** The actions that it has a meaning for. */
  readonly of: readonly StockAction[];
}

/** What can be done with a stock. */
export const STOCK_ACTIONS = ["show", "add", "book", "undo"] as const;

/** One of {@link STOCK_ACTIONS}. */
export type StockAction = (typeof STOCK_ACTIONS)[number];

/** The options of `sheetwright stock`, in the order of its help. */
export const STOCK_OPTIONS = {
  stock: {
    flags: "--stock <file>",
    help: "the stock file (default: stock.json)",
    example: "stock.json",
    of: STOCK_ACTIONS,
  },
  done: {
    flags: "--done <layouts>",
    help: "book: the sheets cut so far of some layouts, such as sheet-night-1=3,sheet-cream-1; or none (default: all)",
    example: "sheet-night-1=3",
    of: ["book"],
  },
  spoiled: {
    flags: "--spoiled <layouts>",
    help: "book: the sheets spoiled so far over some layouts, such as sheet-night-1=1 (default: none)",
    example: "sheet-night-1=1",
    of: ["book"],
  },
  keep: {
    flags: "--keep <size>",
    help: "book: keep what is at least this large too, such as 1/2x12in for strips",
    example: "1/2x12in",
    of: ["book"],
  },
  json: {
    flags: "--json",
    help: "print what is on hand as JSON; the text goes to standard error",
    of: STOCK_ACTIONS,
  },
  force: { flags: "--force", help: "undo: even where the file was edited by hand since", of: ["undo"] },
} as const satisfies Readonly<Record<string, StockOption>>;

/** Key of an option in what was written. */
export type StockOptionKey = keyof typeof STOCK_OPTIONS;

/** The keys of all options, in the order of the help. */
export const STOCK_OPTION_KEYS = Object.keys(STOCK_OPTIONS) as readonly StockOptionKey[];

/** The option as a person writes it, such as `--done`. */
export function stockOptionName(key: StockOptionKey): string {
  return nameOf(STOCK_OPTIONS[key]);
}

/** Adds the options to a command. */
export function addStockOptions(command: Command): Command {
  return addOptions(command, STOCK_OPTIONS);
}
