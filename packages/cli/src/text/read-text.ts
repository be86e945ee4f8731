import { resolve } from "node:path";
import { type Fault, type Place, quote } from "../fault.js";
import { type Io, systemCode } from "../io.js";
import { systemErrorWords } from "../words/system-error.js";
import { decodeText } from "./decode-text.js";

/**
 * Reads a text file. Resolves to the fault where that cannot be done; rejects only for a fault of Sheetwright.
 *
 * @param file the file's path as it was given.
 * @param how the place of the fault where the file cannot be read at all, and what helps where it is no UTF-8 text.
 */
export async function readText(
  file: string,
  how: { readonly place: Place; readonly help: string },
  io: Io,
): Promise<string | Fault> {
  let bytes: Uint8Array;
  try {
    bytes = await io.files.read(resolve(io.cwd, file));
  } catch (error) {
    const code = systemCode(error);
    if (code === undefined) throw error;
    const message = `${quote(file)} cannot be read: ${systemErrorWords(code)}.`;
    return { code: "not-readable", place: how.place, message };
  }
  return decodeText(bytes, file, how.help);
}
