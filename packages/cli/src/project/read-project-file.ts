import { type Project, type ProjectFault, readProject } from "@sheetwright/cards";
import type { Fault, Place } from "../fault.js";
import type { Io } from "../io.js";
import { readText } from "../text/read-text.js";
import { readShelfFile } from "./read-shelf-file.js";

/** A project file as it was read. */
export interface ReadProjectFile {
  /** `null` where there are faults. */
  readonly project: Project | null;
  readonly faults: readonly Fault[];
  /** Where a value of the project stands in the file. */
  readonly placeOf: (path: string) => Place;
  /** What to say besides, such as that the file is of an earlier version. */
  readonly notes: readonly string[];
}

const TEXT_HELP = "Save the file as UTF-8, or make sure that this is the project.";

/**
 * Reads a project file, and the shelf file that it names, and finds every mistake in them.
 *
 * @param file the file's path as it was given.
 * @param command the command that was given it, for the place of a fault where it cannot be read at all.
 */
export async function readProjectFile(file: string, command: string, io: Io): Promise<ReadProjectFile> {
  const text = await readText(file, { place: { option: command }, help: TEXT_HELP }, io);
  if (typeof text !== "string") {
    return { project: null, faults: [text], placeOf: (path) => ({ file, path }), notes: [] };
  }
  const shelf = await readShelfFile(file, text, io);
  const unread = shelf !== null && "code" in shelf ? shelf : null;
  const given = shelf !== null && "text" in shelf ? { shelf } : {};
  const { project, faults, placeOf, migratedFrom } = readProject(text, { file, ...given });
  const notes =
    migratedFrom === null
      ? []
      : [
          `${file} is of version ${migratedFrom} of the project file; it was read as that. Nothing in it was changed.`,
        ];
  return {
    project,
    faults: faults.map((fault) =>
      unread !== null && fault.path === "shelf" ? unreadShelf(unread, fault, file) : faultOf(fault, file),
    ),
    placeOf: (path) => {
      const found = placeOf(path);
      return { file, path, ...(found === null ? {} : found) };
    },
    notes,
  };
}

/** Why the shelf could not be read, told at the place where the project names it. */
function unreadShelf(unread: Fault, fault: ProjectFault, file: string): Fault {
  const ofProject = "path" in unread.place && unread.place.file === file;
  return ofProject ? { ...unread, place: faultOf(fault, file).place } : unread;
}

/** A fault of the project, or of its shelf, in the words of the command. */
export function faultOf(fault: ProjectFault, project: string): Fault {
  const { file = project, code, path, line, column, found, expected, message, suggestion } = fault;
  return {
    code,
    place: {
      file,
      ...(line === null ? {} : { line }),
      ...(column === null ? {} : { column }),
      path,
    },
    message,
    found,
    expected,
    ...(suggestion === null ? {} : { suggestion }),
  };
}
