import { dirname, isAbsolute, join } from "node:path";
import { type ShelfText, shelfOf } from "@sheetwright/cards";
import type { Fault } from "../fault.js";
import type { Io } from "../io.js";
import { readText } from "../text/read-text.js";

const TEXT_HELP = "Save the file as UTF-8, or make sure that this is the shelf.";

/**
 * Reads the text of the shelf file that a project asks for, its path told from the project's own file. Resolves to `null`
 * where it asks for none, and to the fault where that cannot be read.
 *
 * @param file the project file's path as it was given.
 */
export async function readShelfFile(
  file: string,
  project: string,
  io: Io,
): Promise<ShelfText | Fault | null> {
  const named = shelfOf(project);
  if (named === null) return null;
  const path = isAbsolute(named) ? named : join(dirname(file), named);
  const text = await readText(path, { place: { file, path: "shelf" }, help: TEXT_HELP }, io);
  return typeof text === "string" ? { file: path, text } : text;
}
