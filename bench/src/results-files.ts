/** Where a suite's results go. */
import { dirname, join, relative, resolve } from "node:path";
import { BenchFaults } from "./bench-fault.js";
import { type BenchIo, withFile } from "./bench-io.js";

/** Absolute paths of what a suite writes. */
export interface ResultsFiles {
  readonly table: string;
  readonly chart: string;
  readonly json: string;
}

/** What says where results go. */
interface Wanted {
  /** Paths as given. */
  readonly out: string | null;
  readonly json: string | null;
  /** Parts of the names that tell this run from one with defaults; empty for a run with defaults. */
  readonly differs: readonly string[];
}

/** Finds out before the long work whether its results have a place. Throws BenchFaults where they have none. */
export function prepareResults(suite: string, { out, json, differs }: Wanted, io: BenchIo): ResultsFiles {
  const folder = out === null ? io.results : resolve(io.cwd, out);
  const stem = join(folder, [suite, ...differs.map(fileNameOf)].join("_"));
  const jsonPath = json === null ? `${stem}.json` : resolve(io.cwd, json);
  withFile("--out", `${shownPath(folder, io)} cannot be made`, () => io.makeFolder(folder));
  if (io.look(dirname(jsonPath)) !== "folder") {
    throw new BenchFaults([
      { where: "--json", message: `there is no folder ${shownPath(dirname(jsonPath), io)}.` },
    ]);
  }
  if (io.look(jsonPath) === "folder") {
    throw new BenchFaults([
      { where: "--json", message: `${shownPath(jsonPath, io)} is a folder, expected a file.` },
    ]);
  }
  return { table: `${stem}.md`, chart: `${stem}.svg`, json: jsonPath };
}

/** Writes texts to their paths and says so. Throws BenchFaults where the operating system refuses. */
export function writeResults(
  documents: readonly (readonly [path: string, text: string])[],
  io: BenchIo,
): void {
  for (const [path, text] of documents) {
    withFile(shownPath(path, io), "cannot be written", () => io.write(path, text));
  }
  io.stderr.write(`Written: ${documents.map(([path]) => shownPath(path, io)).join(", ")}\n`);
}

/** A path as it reads from where the command was started. */
export function shownPath(path: string, io: BenchIo): string {
  return relative(io.cwd, path) || ".";
}

/** A part of a file name that every file system takes. */
function fileNameOf(text: string): string {
  const plain = text.replace(/[^A-Za-z0-9.]+/g, "-").replace(/^[-.]+|[-.]+$/g, "");
  return plain.slice(0, 60) || "list";
}
