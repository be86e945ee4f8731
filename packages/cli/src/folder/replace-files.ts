import { dirname, join } from "node:path";
import type { Files } from "../io.js";
import { PLAN_FILE, WORK_FOLDER } from "./survey-folder.js";

/** A file to be written. */
export interface NewFile {
  readonly name: string;
  readonly content: string;
}

/**
 * Writes all of these files to a folder, and removes the stale ones, or changes nothing at all: every file is complete in
 * a work folder beside its place before the first is moved, the ones it replaces are set aside, and where a step fails
 * every step before it is undone. The plan comes last, so that a run broken off by a power cut leaves the old plan, whose
 * list no longer fits: the next run then says so and overwrites nothing.
 *
 * Rejects with the error of the step that failed.
 */
export async function replaceFiles(
  files: Files,
  folder: string,
  written: readonly NewFile[],
  stale: readonly string[],
): Promise<void> {
  const undo: (() => Promise<void>)[] = [];
  const work = join(folder, WORK_FOLDER);
  const fresh = join(work, "new");
  const old = join(work, "old");
  try {
    await makeFolders(files, folder, undo);
    if ((await files.look(work)) === "folder") await clearWork(files, work);
    for (const path of [work, fresh, old]) {
      await files.makeFolder(path);
      undo.push(() => files.removeFolder(path));
    }
    for (const { name, content } of written) {
      const path = join(fresh, name);
      // Noted before the write: one that fails half-way, on a full disk say, leaves a file as well.
      undo.push(async () => {
        if ((await files.look(path)) !== null) await files.removeFile(path);
      });
      await files.write(path, content);
    }
    const move = async (from: string, to: string): Promise<void> => {
      await files.rename(from, to);
      undo.push(() => files.rename(to, from));
    };
    const ordered = [...written].sort((a, b) => Number(a.name === PLAN_FILE) - Number(b.name === PLAN_FILE));
    for (const name of [...stale, ...ordered.map((file) => file.name)]) {
      const place = join(folder, name);
      if ((await files.look(place)) !== null) await move(place, join(old, name));
    }
    for (const { name } of ordered) await move(join(fresh, name), join(folder, name));
  } catch (error) {
    await undoAll(undo);
    throw error;
  }
  // All new files are in their places: what is left over of the work must not turn that into a failure.
  await clearWork(files, work).catch(() => undefined);
}

/** Makes a folder and those above it that are missing. */
async function makeFolders(files: Files, folder: string, undo: (() => Promise<void>)[]): Promise<void> {
  const missing: string[] = [];
  let path = folder;
  while ((await files.look(path)) === null && dirname(path) !== path) {
    missing.push(path);
    path = dirname(path);
  }
  for (const one of missing.reverse()) {
    await files.makeFolder(one);
    undo.push(() => files.removeFolder(one));
  }
}

/** Removes a work folder with the files in it, and nothing that a run does not put there. */
async function clearWork(files: Files, work: string): Promise<void> {
  for (const folder of [join(work, "new"), join(work, "old")]) {
    if ((await files.look(folder)) !== "folder") continue;
    for (const name of await files.list(folder)) await files.removeFile(join(folder, name));
    await files.removeFolder(folder);
  }
  await files.removeFolder(work);
}

/** Takes the steps back, the last one first. A step that cannot be taken back does not keep the others from it. */
async function undoAll(undo: readonly (() => Promise<void>)[]): Promise<void> {
  for (const step of [...undo].reverse()) await step().catch(() => undefined);
}
