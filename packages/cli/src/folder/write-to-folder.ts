import { resolve } from "node:path";
import { type Fault, FaultsFound, quote } from "../fault.js";
import { type Io, systemCode } from "../io.js";
import { systemErrorWords } from "../words/system-error.js";
import { findConflicts } from "./find-conflicts.js";
import { type NewFile, replaceFiles } from "./replace-files.js";
import { surveyFolder } from "./survey-folder.js";

/** A folder that a plan is written to. */
export interface Destination {
  /** The folder's path, as given. */
  readonly out: string;
  /** Whether files that are not ours may be replaced. */
  readonly force: boolean;
}

/** Says why files of these names must not be written there. */
export async function folderFaults(
  { out, force }: Destination,
  names: readonly string[],
  io: Io,
): Promise<readonly Fault[]> {
  try {
    return findConflicts(await surveyFolder(io.files, resolve(io.cwd, out)), out, names, force);
  } catch (error) {
    return [notWritable(error, out)];
  }
}

/**
 * Writes all files or none, and removes those of an earlier plan that this one has no use for. Resolves to what to say of
 * it; rejects with {@link FaultsFound} where they cannot be written.
 */
export async function writeToFolder(
  destination: Destination,
  files: readonly NewFile[],
  io: Io,
): Promise<readonly string[]> {
  const { out } = destination;
  const names = files.map((file) => file.name);
  const faults = await folderFaults(destination, names, io);
  if (faults.length > 0) throw new FaultsFound(faults);
  try {
    const folder = resolve(io.cwd, out);
    const survey = await surveyFolder(io.files, folder);
    const stale = [...survey.own].filter((name) => !names.includes(name)).sort();
    await replaceFiles(io.files, folder, files, stale);
    const kept = [...survey.changed].filter((name) => !names.includes(name)).sort();
    return kept.map((name) => `${name} is of an earlier plan; it was changed since, so it was left there.`);
  } catch (error) {
    throw new FaultsFound([notWritable(error, out)], { cause: error });
  }
}

/** Gives the fault for an error of the operating system; throws any other. */
function notWritable(error: unknown, out: string): Fault {
  const code = systemCode(error);
  if (code === undefined) throw error;
  const message = `${quote(out)} cannot be written to: ${systemErrorWords(code)}. What was there before is unchanged.`;
  return { code: "not-writable", place: { option: "--out" }, message };
}
