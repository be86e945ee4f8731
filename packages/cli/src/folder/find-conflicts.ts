import { join } from "node:path";
import type { Fault } from "../fault.js";
import { type FolderSurvey, WORK_FOLDER } from "./survey-folder.js";

/**
 * Says why files of these names must not be written to a folder. With `force`, files that are not ours are no reason;
 * whatever is no folder where one is needed always is.
 *
 * @param folder the folder's path as it was given, for the messages.
 */
export function findConflicts(
  survey: FolderSurvey,
  folder: string,
  names: readonly string[],
  force: boolean,
): readonly Fault[] {
  if (survey.what !== null && survey.what !== "folder") {
    const message = `${folder} is there already and is not a folder. Choose another folder.`;
    return [{ code: "not-a-folder", place: { option: "--out" }, message }];
  }
  const faults: Fault[] = [];
  const report = (name: string, code: string, message: string): void => {
    faults.push({ code, place: { file: join(folder, name) }, message });
  };
  for (const name of names.filter((one) => survey.blocked.has(one))) {
    report(name, "no-file", "a folder of this name is there already. Choose another --out, or move it away.");
  }
  if (force) return faults;
  if (survey.names.has(WORK_FOLDER)) {
    report(
      WORK_FOLDER,
      "interrupted",
      `an earlier run did not end, or another is at work. Its new files are in ${join(WORK_FOLDER, "new")}, ` +
        `the ones it was replacing in ${join(WORK_FOLDER, "old")}. Look whether you need any, then remove that folder ` +
        "or give --force.",
    );
  }
  for (const name of names) {
    if (!survey.names.has(name) || survey.own.has(name) || survey.blocked.has(name)) continue;
    if (survey.changed.has(name)) {
      report(
        name,
        "changed-since",
        "this file was changed after Sheetwright wrote it. Choose another --out, move the file away, or give --force " +
          "to replace it.",
      );
    } else {
      report(
        name,
        "not-ours",
        "a file of this name is there already, and nothing says that Sheetwright wrote it. Choose another --out, " +
          "move the file away, or give --force to replace it.",
      );
    }
  }
  return faults;
}
