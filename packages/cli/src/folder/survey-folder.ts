import { join } from "node:path";
import { z } from "zod";
import { type Files, systemCode } from "../io.js";
import { isSealed, sha256 } from "./seal.js";

/** The plan, and the list of all files written with it. */
export const PLAN_FILE = "plan.json";

/** Holds the new files until all are written, and the old ones until all are replaced. */
export const WORK_FOLDER = ".sheetwright-work";

/** What stands in a folder that is to be written to. */
export interface FolderSurvey {
  /** What the path is; `null` where there is nothing. */
  readonly what: "file" | "folder" | "other" | null;
  readonly names: ReadonlySet<string>;
  /** Of the names that a run may write, those that are no file, such as a folder; these are never replaced. */
  readonly blocked: ReadonlySet<string>;
  /** Files that an earlier run wrote and that nobody changed since. */
  readonly own: ReadonlySet<string>;
  /** Files that an earlier run wrote and that were changed since. */
  readonly changed: ReadonlySet<string>;
}

/** What a plan's files are called, in a regular expression; nothing else is ever written or removed. */
const SHEET = "sheet-([a-z][a-z0-9-]*-)?[1-9][0-9]*";
const CARD = "card-[1-9][0-9]*(-[a-z0-9-]+)?";
const WRITTEN_NAMES = new RegExp(
  `^(${SHEET}(-cutter)?\\.svg|${SHEET}\\.txt|${CARD}\\.(svg|txt)|cut-list\\.txt|plan\\.json)$`,
);

/** The little of a plan that tells which files are ours; any version has it. */
const fileList = z.object({
  sheetwright: z.enum(["plan", "project-plan"]),
  files: z.array(z.object({ name: z.string().regex(WRITTEN_NAMES), sha256: z.string() })),
});

/**
 * Finds out which files of a folder an earlier run wrote: the ones its plan lists, each as long as its content still has
 * the listed SHA-256. A plan that was changed vouches for nothing.
 */
export async function surveyFolder(files: Files, folder: string): Promise<FolderSurvey> {
  const what = await files.look(folder);
  const names = new Set(what === "folder" ? await files.list(folder) : []);
  const blocked = new Set<string>();
  for (const name of names) {
    if (!WRITTEN_NAMES.test(name)) continue;
    const found = await files.look(join(folder, name));
    if (found !== "file" && found !== null) blocked.add(name);
  }
  const own = new Set<string>();
  const changed = new Set<string>();
  const survey = { what, names, blocked, own, changed };
  if (!names.has(PLAN_FILE)) return survey;
  const plan = await readText(files, join(folder, PLAN_FILE));
  const listed = plan === null ? null : readFileList(plan);
  if (plan === null || listed === null) return survey;
  if (!isSealed(plan)) {
    changed.add(PLAN_FILE);
    return survey;
  }
  own.add(PLAN_FILE);
  for (const entry of listed) {
    if (!names.has(entry.name)) continue;
    const content = await readText(files, join(folder, entry.name));
    (content !== null && sha256(content) === entry.sha256 ? own : changed).add(entry.name);
  }
  return survey;
}

async function readText(files: Files, path: string): Promise<string | null> {
  try {
    return new TextDecoder("utf-8", { ignoreBOM: true }).decode(await files.read(path));
  } catch (error) {
    // A folder of that name, or a file that may not be read, is certainly not ours to replace.
    if (systemCode(error) !== undefined) return null;
    throw error;
  }
}

function readFileList(plan: string): readonly { readonly name: string; readonly sha256: string }[] | null {
  let value: unknown;
  try {
    value = JSON.parse(plan);
  } catch {
    return null;
  }
  const read = fileList.safeParse(value);
  return read.success ? read.data.files : null;
}
