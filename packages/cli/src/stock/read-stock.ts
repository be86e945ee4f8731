import { resolve } from "node:path";
import { type Fault, FaultsFound, type Place, quote } from "../fault.js";
import { type Io, systemCode } from "../io.js";
import { decodeText } from "../text/decode-text.js";
import { systemErrorWords } from "../words/system-error.js";
import { readStockText } from "./read-stock-text.js";
import { exactText } from "./replace-stock.js";
import type { StockData } from "./stock-data.js";

/** A stock file as it was read. */
export interface ReadStock {
  readonly data: StockData;
  /** What it held, to the byte. */
  readonly text: string;
}

const HELP = "Save the file as UTF-8, or make sure that this is the stock.";

/**
 * Reads a stock file; `null` where there is none. Rejects with {@link FaultsFound} where it cannot be read or is no stock.
 *
 * @param file the file's path as it was given.
 * @param place the place of the fault where it cannot be read at all.
 */
export async function readStock(file: string, place: Place, io: Io): Promise<ReadStock | null> {
  let bytes: Uint8Array;
  try {
    bytes = await io.files.read(resolve(io.cwd, file));
  } catch (error) {
    const code = systemCode(error);
    if (code === undefined) throw error;
    if (code === "ENOENT") return null;
    const message = `${quote(file)} cannot be read: ${systemErrorWords(code)}.`;
    throw new FaultsFound([{ code: "not-readable", place, message }], { cause: error });
  }
  const text = decodeText(bytes, file, HELP);
  if (typeof text !== "string") throw new FaultsFound([text]);
  const data = readStockText(text, file);
  if ("papers" in data) return { data, text: exactText(bytes) };
  throw new FaultsFound(data);
}

/** The fault of a stock file that is not there. */
export function noStock(file: string, place: Place): Fault {
  const message = `there is no ${quote(file)}. sheetwright stock add cards.yaml --stock ${file} makes it from the counts of a project.`;
  return { code: "not-readable", place, message };
}
