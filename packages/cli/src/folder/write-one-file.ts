import { resolve } from "node:path";
import { type Fault, FaultsFound, quote } from "../fault.js";
import { type Io, systemCode } from "../io.js";
import { systemErrorWords } from "../words/system-error.js";
import { writeNewFile } from "./write-new-file.js";

/**
 * Writes one file and the folders above it that are missing; where a step fails, all are taken back. Rejects with
 * {@link FaultsFound} where that cannot be done, and where the file is there already, unless it may be replaced.
 *
 * @param file the path as it was given with `--out`.
 */
export async function writeOneFile(
  file: string,
  content: string,
  { files, cwd, mayReplace }: Pick<Io, "files" | "cwd"> & { readonly mayReplace: boolean },
): Promise<void> {
  const path = resolve(cwd, file);
  try {
    const found = await files.look(path);
    if (found === null) return await writeNewFile(files, path, content);
    if (found !== "file" || !mayReplace) throw new FaultsFound([alreadyThere(file, found)]);
    // Whole before it takes the old one's place.
    const part = `${path}.sheetwright-part`;
    try {
      await files.write(part, content);
      await files.rename(part, path);
    } catch (error) {
      if (systemCode(error) !== "EEXIST") await files.removeFile(part).catch(() => undefined);
      throw error;
    }
  } catch (error) {
    const code = systemCode(error);
    if (code === undefined) throw error;
    const message = `${quote(file)} cannot be written: ${systemErrorWords(code)}.`;
    throw new FaultsFound([{ code: "not-writable", place: { option: "--out" }, message }], { cause: error });
  }
}

function alreadyThere(file: string, found: string): Fault {
  const message =
    found === "file"
      ? `${quote(file)} is there already, and it is not replaced without --force. Give another name, or add --force.`
      : `${quote(file)} is a ${found === "folder" ? "folder" : "thing that is no file"}. Give the name of a file in it.`;
  return { code: "already-there", place: { option: "--out" }, message };
}
