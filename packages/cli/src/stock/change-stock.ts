import { resolve } from "node:path";
import { type Fault, FaultsFound, quote } from "../fault.js";
import { isSealed } from "../folder/seal.js";
import { type Io, systemCode } from "../io.js";
import { systemErrorWords } from "../words/system-error.js";
import { noStock, type ReadStock, readStock } from "./read-stock.js";
import { readStockText } from "./read-stock-text.js";
import { replaceStock, restoreStock, type StockPlace } from "./replace-stock.js";
import type { StockData } from "./stock-data.js";
import { withStockLock } from "./stock-lock.js";
import { STOCK_PLACE } from "./stock-request.js";
import { writeStockText } from "./write-stock-text.js";

/**
 * Changes a stock file while no other run does. Resolves to what was read and what is there now, its revision one higher;
 * nothing is written where the change gives the data back that it was given. Rejects with {@link FaultsFound}.
 *
 * @param file the file's path as it was given.
 * @param change works out the new content from the one that is there; `null` where there is no file.
 */
export function changeStock(
  file: string,
  change: (read: StockData | null) => StockData,
  io: Io,
): Promise<StockData> {
  return whileHeld(file, io, async (at) => {
    const read = await readStock(file, STOCK_PLACE, io);
    const wanted = change(read?.data ?? null);
    if (read !== null && wanted === read.data) return wanted;
    const now = { ...wanted, revision: (read?.data.revision ?? 0) + 1 };
    const earlier = read === null ? null : { text: read.text, revision: read.data.revision };
    await replaceStock(at, earlier, writeStockText(now));
    return now;
  });
}

/**
 * Takes the last change of a stock file back: it holds the very bytes that it held before. Rejects with
 * {@link FaultsFound} where there is nothing to go back to, or the file was edited by hand since.
 *
 * @param force whether what was edited by hand may be lost.
 */
export function undoStockChange(file: string, force: boolean, io: Io): Promise<StockData> {
  return whileHeld(file, io, async (at) => {
    const read = await readStock(file, STOCK_PLACE, io);
    if (read === null) throw new FaultsFound([noStock(file, STOCK_PLACE)]);
    requireUnedited(file, read, force);
    let earlier: StockData | null = null;
    const { revision } = read.data;
    const isBack = await restoreStock(at, { text: read.text, revision }, (text) => {
      const data = readStockText(text.replace(/^\uFEFF/, ""), `${file}.before-${revision - 1}`);
      if (!("papers" in data)) throw new FaultsFound(data);
      earlier = data;
    });
    if (isBack && earlier !== null) return earlier;
    const message = `there is nothing to take back: no content from before revision ${revision} is kept.`;
    throw new FaultsFound([{ code: "nothing-to-undo", place: { file, path: "" }, message }]);
  });
}

function requireUnedited(file: string, { text }: ReadStock, force: boolean): void {
  if (force || isSealed(text)) return;
  const message =
    "the file was edited by hand after its last change, and that would be lost. Correct it by hand, or give --force.";
  throw new FaultsFound([{ code: "changed-since", place: { file, path: "" }, message }]);
}

async function whileHeld<Result>(
  file: string,
  { files, cwd, holder }: Io,
  work: (at: StockPlace) => Promise<Result>,
): Promise<Result> {
  if (holder === undefined)
    throw new RangeError(
      "A stock is only written by a run that can be told from others; its io has no holder.",
    );
  try {
    // A link stays a link, and two ways to one file are one file.
    const path = await files.follow(resolve(cwd, file));
    const at = { files, path, place: STOCK_PLACE };
    return await withStockLock({ ...at, holder }, () => work(at));
  } catch (error) {
    const code = systemCode(error);
    if (code === undefined) throw error;
    throw new FaultsFound([notWritable(file, code)], { cause: error });
  }
}

function notWritable(file: string, code: string): Fault {
  const message = `${quote(file)} cannot be written: ${systemErrorWords(code)}. What was there before is unchanged.`;
  return { code: "not-writable", place: STOCK_PLACE, message };
}
