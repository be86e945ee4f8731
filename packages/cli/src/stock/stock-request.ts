import type { Size } from "@sheetwright/measure";
import { type Fault, FaultsFound, quote } from "../fault.js";
import { faultsOfRest, freeWords, ONE_NAME } from "../request/free-words.js";
import { suggestOption, type WrittenOptions } from "../request/plan-options.js";
import { readSize } from "../request/sheet-size.js";
import { tableReader } from "../request/table-reader.js";
import { listed } from "../words/listed.js";
import { type LayoutCounts, readLayoutCounts } from "./layout-counts.js";
import {
  addStockOptions,
  STOCK_ACTIONS,
  STOCK_OPTION_KEYS,
  STOCK_OPTIONS,
  type StockAction,
  type StockOptionKey,
  stockOptionName,
} from "./stock-options.js";

/** What `sheetwright stock` is asked. Paths are as they were given. */
export interface StockRequest {
  readonly action: StockAction;
  /** The project to add, or the folder of the plan to book; empty for the other actions. */
  readonly what: string;
  readonly stock: string;
  readonly done: LayoutCounts | null;
  readonly spoiled: LayoutCounts;
  readonly keep: Size | null;
  readonly json: boolean;
  readonly force: boolean;
}

/** Where a stock is kept unless something else is said. */
const USUAL_FILE = "stock.json";

const NEEDS: Readonly<Partial<Record<StockAction, string>>> = {
  add: "the project file is missing. Give its name, such as sheetwright stock add cards.yaml.",
  book: "the folder of the plan is missing. Give its name, such as sheetwright stock book plan.",
};

/**
 * Reads what is asked of a stock. Throws {@link FaultsFound} with every fault.
 *
 * @param rest what stands on the command line beside known options: the action, the project or the folder, and faults.
 */
export function readStockRequest(written: WrittenOptions, rest: readonly string[]): StockRequest {
  const [word, what = ""] = freeWords(rest).words;
  const action = STOCK_ACTIONS.find((one) => one === word);
  if (action === undefined) throw new FaultsFound([unknownAction(word)]);
  const reader = tableReader<StockOptionKey>(STOCK_OPTIONS, written);
  const { value, report } = reader;
  for (const key of STOCK_OPTION_KEYS) {
    const actions: readonly StockAction[] = STOCK_OPTIONS[key].of;
    if (written[key] === undefined || actions.includes(action)) continue;
    const message = `this has no meaning for stock ${action}, only for stock ${listed(actions)}. Leave it out.`;
    report(key, "no-meaning", message);
  }
  const counts = (key: "done" | "spoiled"): LayoutCounts | null => {
    const text = value(key);
    if (text === undefined) return null;
    const read = readLayoutCounts(text);
    if (typeof read !== "string") return read;
    report(key, "not-a-count", read);
    return null;
  };
  const done = counts("done");
  const spoiled = counts("spoiled") ?? new Map();
  const keepText = value("keep");
  const keep = keepText === undefined ? null : readSize(keepText, "in");
  if (keep !== null && "message" in keep) report("keep", keep.code, keep.message);
  const stock = written.stock === undefined ? USUAL_FILE : (reader.required("stock") ?? USUAL_FILE);
  const needed = NEEDS[action];
  const own = [word, needed === undefined ? undefined : what].filter(
    (one) => one !== undefined && one !== "",
  );
  const others = rest.filter((one, index) => !(own.includes(one) && rest.indexOf(one) === index));
  const faults: readonly Fault[] = [
    ...faultsOfRest(others, {
      suggest: (option) => suggestOption(option, addStockOptions),
      help:
        needed === undefined ? `stock ${action} takes no name. ${ONE_NAME}` : `One at a time. ${ONE_NAME}`,
    }),
    ...(needed !== undefined && what === ""
      ? [{ code: "option-missing", place: { option: `sheetwright stock ${action}` }, message: needed }]
      : []),
    ...reader.faults(),
  ];
  if (faults.length > 0) throw new FaultsFound(faults);
  return {
    action,
    what,
    stock,
    done,
    spoiled,
    keep: keep === null || "message" in keep ? null : { width: keep.width, height: keep.height },
    json: written.json === true,
    force: written.force === true,
  };
}

function unknownAction(word: string | undefined): Fault {
  const found =
    word === undefined ? "what to do is missing" : `${quote(word)} is nothing that can be done with a stock`;
  const message = `${found}. Give ${listed(STOCK_ACTIONS, "or")}, such as sheetwright stock show.`;
  return { code: "unknown-action", place: { option: "sheetwright stock" }, message };
}

/** The option of the stock file, as faults name it. */
export const STOCK_PLACE = { option: stockOptionName("stock") } as const;
