/** Reads a folder of published instances: every `*.json` file with instances is a family. */
import { isUtf8 } from "node:buffer";
import { join, resolve } from "node:path";
import { type BenchFault, BenchFaults } from "../bench-fault.js";
import { type BenchIo, withFile } from "../bench-io.js";
import { shownPath } from "../results-files.js";
import type { Family } from "./family.js";
import { byPublication, missingData } from "./missing-data.js";
import { NOTHING_PUBLISHED, type PublishedResults, readPublishedResults } from "./published-results.js";
import { readFamily } from "./read-family.js";

/** What a folder holds. */
export interface ReadFamilies {
  /** In the order of the list of publications, or in the order they were asked for. */
  readonly families: readonly Family[];
  readonly published: PublishedResults;
}

/**
 * Reads the families of a folder. Throws BenchFaults where the folder or a file is missing or faulty.
 *
 * @param data the folder's path as it was given; `null` where none was.
 * @param wanted names of families; all where there are none.
 */
export function readFamilies(data: string | null, wanted: readonly string[], io: BenchIo): ReadFamilies {
  if (data === null) throw new BenchFaults([{ where: "--data", message: missingData("is missing") }]);
  const folder = resolve(io.cwd, data);
  if (io.look(folder) !== "folder") {
    throw new BenchFaults([{ where: "--data", message: missingData(`there is no folder ${data}`) }]);
  }
  const files = withFile(data, "cannot be read", () => io.list(folder)).filter((name) =>
    name.endsWith(".json"),
  );
  const faults: BenchFault[] = [];
  const families: Family[] = [];
  let published = NOTHING_PUBLISHED;
  for (const name of [...files].sort()) {
    const path = join(folder, name);
    const shown = shownPath(path, io);
    const document = readDocument(path, shown, io, faults);
    if (typeof document !== "object" || document === null) continue;
    if ("instances" in document) {
      const label = "family" in document ? document.family : undefined;
      if (wanted.length > 0 && !wanted.some((each) => each === label || `${each}.json` === name)) {
        // It is only named where a family is asked for that is not there.
        families.push({ name: String(label), question: "sheets", instances: [] });
        continue;
      }
      const read = readFamily(document, shown);
      if (!read.ok) faults.push(...read.faults);
      else families.push(read.family);
    } else if ("binSums" in document || "utilisation2VSBP_OG" in document) {
      const read = readPublishedResults(document, shown);
      if ("faults" in read) faults.push(...read.faults);
      else published = read;
    }
  }
  if (faults.length > 0) throw new BenchFaults(faults);
  if (families.length === 0) {
    throw new BenchFaults([{ where: "--data", message: missingData(`${data} holds no file of instances`) }]);
  }
  families.sort((a, b) => byPublication(a.name, b.name));
  const twice = families.find(({ name }, i) => families.findIndex((family) => family.name === name) < i);
  if (twice)
    throw new BenchFaults([
      { where: "--data", message: `two files of ${data} hold the family ${twice.name}. Keep one of them.` },
    ]);
  if (wanted.length === 0) return { families, published };
  const chosen = wanted.map((name) => families.find((family) => family.name === name) ?? name);
  const unknown = chosen.filter((family) => typeof family === "string");
  if (unknown.length > 0) {
    const known = families.map(({ name }) => name).join(", ");
    throw new BenchFaults(
      unknown.map((name) => ({ where: "--family", message: `found "${name}", expected one of ${known}.` })),
    );
  }
  return { families: chosen.filter((family) => typeof family !== "string"), published };
}

function readDocument(path: string, shown: string, io: BenchIo, faults: BenchFault[]): unknown {
  const bytes = withFile(shown, "cannot be read", () => io.read(path));
  if (!isUtf8(bytes)) {
    faults.push({ where: shown, message: "is not UTF-8 text." });
    return null;
  }
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    faults.push({ where: shown, message: `is no JSON: ${error.message}.` });
    return null;
  }
}
