/**
 * Replaces a file so that at every moment, a power cut included, it is the old or the new one in full, and keeps the
 * earlier contents to go back to. To be called by who holds the lock alone.
 *
 *     stock.json.part         the new content, until it is whole and on the disk
 *     stock.json              takes its name, in one step
 *     stock.json.before-7     the content of revision 7, whole before the step
 */

import { dirname } from "node:path";
import { FaultsFound, type Place } from "../fault.js";
import { type Files, systemCode } from "../io.js";

/** Earlier contents that are kept. */
const KEPT = 10;

/** A file to replace. */
export interface StockPlace {
  readonly files: Files;
  /** Absolute path of the file. */
  readonly path: string;
  /** Its path as it was given, for faults. */
  readonly place: Place;
}

/** A content with its number. */
export interface Revision {
  readonly text: string;
  readonly revision: number;
}

/**
 * Writes a new content, and keeps the earlier one. Rejects with {@link FaultsFound} where the file is not as it was read any
 * more, or with the error of the operating system; it is then unchanged.
 *
 * @param earlier what was read, or `null` where there was no file.
 */
export async function replaceStock(at: StockPlace, earlier: Revision | null, text: string): Promise<void> {
  const { files, path } = at;
  const part = `${path}.part`;
  try {
    // Left by a run that was broken off: nobody else writes it while we hold the lock.
    await writeWhole(files, part, text);
    if (earlier !== null) {
      const kept = `${path}.before.part`;
      await writeWhole(files, kept, earlier.text);
      await files.rename(kept, keptPath(path, earlier.revision));
    }
    await requireUnchanged(at, earlier?.text ?? null);
    await files.rename(part, path);
  } catch (error) {
    for (const one of [part, `${path}.before.part`])
      if ((await files.look(one).catch(() => null)) === "file")
        await files.removeFile(one).catch(() => undefined);
    throw error;
  }
  // The file has its new content: what comes now must not turn that into a failure.
  await files.sync(dirname(path)).catch(() => undefined);
  if (earlier !== null && earlier.revision >= KEPT)
    await files.removeFile(keptPath(path, earlier.revision - KEPT)).catch(() => undefined);
}

/**
 * Goes back to the content of an earlier revision, which is then no longer kept. Resolves to whether there is one. Rejects
 * as {@link replaceStock} does.
 *
 * @param now what was read.
 * @param check looks at the earlier content, and throws where it must not be gone back to.
 */
export async function restoreStock(
  at: StockPlace,
  now: Revision,
  check: (text: string) => void,
): Promise<boolean> {
  const { files, path } = at;
  const kept = keptPath(path, now.revision - 1);
  if ((await files.look(kept)) !== "file") return false;
  check(exactText(await files.read(kept)));
  await requireUnchanged(at, now.text);
  await files.rename(kept, path);
  await files.sync(dirname(path)).catch(() => undefined);
  return true;
}

/** The text of a file, a byte order mark included, so that it can be written again byte for byte. */
export function exactText(bytes: Uint8Array): string {
  return new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
}

function keptPath(path: string, revision: number): string {
  return `${path}.before-${revision}`;
}

/** Writes a file anew, and waits until it is on the disk. */
async function writeWhole(files: Files, path: string, text: string): Promise<void> {
  if ((await files.look(path)) === "file") await files.removeFile(path);
  await files.write(path, text);
  await files.sync(path);
}

/** Editors and programs that carry files between machines know of no lock. */
async function requireUnchanged({ files, path, place }: StockPlace, text: string | null): Promise<void> {
  const found = await files.read(path).catch((error: unknown) => {
    if (systemCode(error) === "ENOENT") return null;
    throw error;
  });
  if ((found === null ? null : exactText(found)) === text) return;
  const message =
    "the file was changed while it was worked on, so nothing was done. Look at it, then try again.";
  throw new FaultsFound([{ code: "changed-meanwhile", place, message }]);
}
