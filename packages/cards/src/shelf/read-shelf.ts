import { CUTTING_PRECISION, type Unit } from "@sheetwright/measure";
import type { ProjectFault } from "../project-fault.js";
import { checkStructureOf } from "../project-file/check-structure.js";
import { type FaultList, type FilePlace, faultList } from "../project-file/fault-list.js";
import { withPlaces } from "../project-file/fault-places.js";
import { readDieMachine } from "../project-file/read-die-machine.js";
import { readDies } from "../project-file/read-dies.js";
import { readPapers } from "../project-file/read-papers.js";
import { readRates } from "../project-file/read-rates.js";
import { readTrimmer } from "../project-file/read-trimmer.js";
import { readYaml } from "../project-file/read-yaml.js";
import type { Reading } from "../project-file/reading.js";
import { sayValue } from "../project-file/say-value.js";
import { pathTo } from "../project-file/value-path.js";
import { shelfFile } from "./shelf-schema.js";

/** A shelf file by its name, for faults, and its text. */
export interface ShelfText {
  readonly file: string;
  readonly text: string;
}

/** What becomes of the text of a shelf file. */
export interface ReadShelf {
  /** Every mistake of the file, in the order of its lines, each with the name of the file. */
  readonly faults: readonly ProjectFault[];
  /** Where a value stands in the text, or the nearest there is above it; `null` in a text that could not be read. */
  readonly placeOf: (path: string) => FilePlace | null;
  /** The names of what is on the shelf, and whether it has rates; `null` where there are faults. */
  readonly holds: ShelfNames | null;
}

/** The names of what is on a shelf, in the order of the file. */
export interface ShelfNames {
  readonly papers: readonly string[];
  readonly trimmers: readonly string[];
  readonly dies: readonly string[];
  readonly rates: boolean;
}

/** A plain object, as it was written. */
export type PlainData = Readonly<Record<string, unknown>>;

/** What is on a shelf without faults, as it was written. */
export interface ShelfContents {
  readonly unit: Unit;
  readonly papers: PlainData;
  readonly trimmers: PlainData;
  readonly dieMachine: unknown;
  readonly dies: PlainData;
  readonly rates: unknown;
  readonly writtenAt: Reading["writtenAt"];
}

/**
 * Reads a shelf file: YAML 1.2 or JSON, as text. Finds all its mistakes at once, as {@link readProject} does for a project.
 * Never throws on account of the text.
 *
 * @example
 * const text = `
 * sheetwright-shelf: 1
 * papers: { cream: { cardstock: us-letter, count: 40, offcuts: [4 x 8 1/2] } }
 * dies: { star: 3 x 3 }
 * `;
 * const { faults, holds } = readShelf({ file: "my-shelf.yaml", text });
 * faults // => []
 * holds // => { papers: ["cream"], trimmers: [], dies: ["star"], rates: false }
 * const [fault] = readShelf({ file: "my-shelf.yaml", text: text.replace("3 x 3", "large") }).faults;
 * [fault.file, fault.path, fault.line] // => ["my-shelf.yaml", "dies.star", 4]
 */
export function readShelf(shelf: ShelfText): ReadShelf {
  const { faults, placeOf, holds } = readShelfContents(shelf);
  return { faults, placeOf, holds };
}

/**
 * Whether a text is meant as a shelf file and not as a project, by its first keys. Never throws.
 *
 * @example
 * isShelf("sheetwright-shelf: 1") // => true
 * isShelf("{ sheetwright: 1, title: One }") // => false
 */
export function isShelf(text: string): boolean {
  const { data } = readYaml(text, faultList(), false);
  return isPlain(data) && "sheetwright-shelf" in data && !("sheetwright" in data);
}

/**
 * Reads a shelf file with what is on it; `null` where it has faults.
 *
 * @internal
 */
export function readShelfContents({
  file,
  text,
}: ShelfText): ReadShelf & { readonly contents: ShelfContents | null } {
  const list = faultList();
  const yaml = readYaml(text, list, /\.json$/i.test(file) || text.trimStart().startsWith("{"));
  const read = yaml.isReadable ? readContents(yaml.data, yaml.writtenAt, list) : null;
  const faults = withPlaces(list.faults(), yaml).map((fault) => ({ ...fault, file }));
  const contents = faults.length === 0 ? read : null;
  return { faults, placeOf: yaml.placeOf, contents, holds: contents === null ? null : namesOf(contents) };
}

function readContents(
  data: unknown,
  writtenAt: Reading["writtenAt"],
  faults: FaultList,
): ShelfContents | null {
  if (!isPlain(data)) {
    const expected = "a shelf: sheetwright-shelf: 1, then papers, trimmers, dies or rates";
    const found =
      data === null || data === undefined ? "holds nothing" : `holds ${sayValue(data)} and no keys`;
    const message = `The file ${found}. Write ${expected}.`;
    faults.report({ code: "missing", path: "", found: data, expected, message });
    return null;
  }
  if ("sheetwright" in data && !("sheetwright-shelf" in data)) {
    const message =
      "This is a project, and a shelf is wanted: a file that begins with sheetwright-shelf: 1 and holds papers, trimmers, dies or rates.";
    const expected = "sheetwright-shelf: 1";
    faults.report({ code: "version", path: "sheetwright", found: data.sheetwright, expected, message });
    return null;
  }
  const whole = { ...data };
  const shelf = checkStructureOf(shelfFile, data, faults);
  if (shelf === undefined) return null;
  const unit = shelf.units ?? "in";
  const reading: Reading = { faults, unit, writtenAt };
  refuseShelfKeys(shelf.papers, reading);
  readPapers(shelf.papers, null, null, reading);
  for (const [name, trimmer] of Object.entries(shelf.trimmers ?? {}))
    readTrimmer(trimmer, reading, pathTo("trimmers", name));
  const { margin } = readDieMachine(shelf["die-machine"], reading);
  readDies(shelf.dies, { margin, precision: CUTTING_PRECISION[unit] }, reading);
  readRates(shelf.rates, reading);
  return {
    unit,
    papers: plainOr(whole.papers),
    trimmers: plainOr(whole.trimmers),
    dieMachine: whole["die-machine"],
    dies: plainOr(whole.dies),
    rates: whole.rates,
    writtenAt,
  };
}

function namesOf({ papers, trimmers, dies, rates }: ShelfContents): ShelfNames {
  const [ofPapers, ofTrimmers, ofDies] = [papers, trimmers, dies].map((section) => Object.keys(section));
  return {
    papers: ofPapers ?? [],
    trimmers: ofTrimmers ?? [],
    dies: ofDies ?? [],
    rates: rates !== undefined,
  };
}

/** A paper of a shelf is written out: it cannot come from a shelf itself. */
function refuseShelfKeys(papers: unknown, { faults }: Reading): void {
  for (const [id, paper] of Object.entries(plainOr(papers))) {
    if (!isPlain(paper) || paper.shelf === undefined) continue;
    const message =
      "A paper on the shelf is written out here, and cannot come from a shelf itself. Give it cardstock, paper, glitter or pad.";
    const path = pathTo(pathTo("papers", id), "shelf");
    faults.report({ code: "contradiction", path, found: paper.shelf, expected: "no key shelf", message });
  }
}

/** Whether something is an object of keys. */
export function isPlain(value: unknown): value is PlainData {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function plainOr(value: unknown): PlainData {
  return isPlain(value) ? value : {};
}
