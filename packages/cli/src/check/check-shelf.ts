import { isShelf, readShelf } from "@sheetwright/cards";
import { FaultsFound } from "../fault.js";
import type { Io } from "../io.js";
import { faultOf } from "../project/read-project-file.js";
import { readText } from "../text/read-text.js";
import { counted } from "../words/counted.js";
import { listed } from "../words/listed.js";

/**
 * Checks a shelf file on its own and says what is on it. Resolves to false, and does nothing, where the file is no shelf or
 * cannot be read. Rejects with {@link FaultsFound} for every mistake in it.
 *
 * @param file the file's path as it was given.
 */
export async function checkShelf(file: string, json: boolean, io: Io): Promise<boolean> {
  const text = await readText(file, { place: { option: "sheetwright check" }, help: "" }, io);
  if (typeof text !== "string" || !isShelf(text)) return false;
  const { faults, holds } = readShelf({ file, text });
  if (holds === null) throw new FaultsFound(faults.map((fault) => faultOf(fault, file)));
  const { papers, trimmers, dies, rates } = holds;
  const sections = [
    [papers, "paper"],
    [trimmers, "trimmer"],
    [dies, "die"],
  ] as const;
  const words = [
    ...sections.flatMap(([names, noun]) => (names.length === 0 ? [] : [counted(names.length, noun)])),
    ...(rates ? ["rates"] : []),
  ];
  const said = words.length === 0 ? "The shelf is empty" : `A shelf of ${listed(words)}`;
  if (json) {
    io.stdout.write(`${JSON.stringify({ sheetwright: "shelf-check", version: 1, ...holds }, null, 2)}\n`);
  }
  (json ? io.stderr : io.stdout).write(`${said}; nothing odd was found.\n`);
  return true;
}
