import { dirname } from "node:path";
import { type Files, systemCode } from "../io.js";

/**
 * Writes a file that is not there yet, and the folders above it that are missing; where a step fails, all are taken back.
 * Rejects with the error of the operating system.
 *
 * @param path absolute.
 */
export async function writeNewFile(files: Files, path: string, content: string): Promise<void> {
  const missing: string[] = [];
  for (let at = dirname(path); (await files.look(at)) === null && dirname(at) !== at; at = dirname(at))
    missing.unshift(at);
  const made: string[] = [];
  try {
    for (const folder of missing) {
      await files.makeFolder(folder);
      made.unshift(folder);
    }
    await files.write(path, content);
  } catch (error) {
    // A file that came up in the meantime is somebody's; any other was broken off half-way.
    if (systemCode(error) !== "EEXIST" && (await files.look(path)) === "file")
      await files.removeFile(path).catch(() => undefined);
    for (const folder of made) await files.removeFolder(folder).catch(() => undefined);
    throw error;
  }
}
