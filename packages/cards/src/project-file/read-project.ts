import { CUTTING_PRECISION, inches, type Unit } from "@sheetwright/measure";
import { isCoverWeight } from "../fold/is-cover-weight.js";
import type { Paper, Project } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { readShelfContents, type ShelfText } from "../shelf/read-shelf.js";
import { type ProjectShelf, takeFromShelf } from "../shelf/take-from-shelf.js";
import { checkGeometry } from "./check-geometry.js";
import { checkStructure, type Written } from "./check-structure.js";
import { type FaultList, type FilePlace, faultList } from "./fault-list.js";
import { withPlaces } from "./fault-places.js";
import { FORMAT_VERSION, MIGRATIONS, type Migration, migrate } from "./migrate.js";
import { readCards, readCopies } from "./read-cards.js";
import { choiceNames } from "./read-choice.js";
import { readDieMachine } from "./read-die-machine.js";
import { readDies } from "./read-dies.js";
import { readItems } from "./read-items.js";
import { readLength } from "./read-measures.js";
import { readPapers } from "./read-papers.js";
import { readRates } from "./read-rates.js";
import { readSilences } from "./read-silences.js";
import { readTrimmer } from "./read-trimmer.js";
import { readVersion } from "./read-version.js";
import { readYaml } from "./read-yaml.js";
import { type Reading, readText } from "./reading.js";
import { quote, sayValue } from "./say-value.js";
import type { ProjectFile } from "./schema/project-schema.js";

/** What becomes of the text of a project file. */
export interface ReadProject {
  /** The project with every default filled in; `null` where there are faults. */
  readonly project: Project | null;
  /** Every mistake of the file, in the order of its lines. */
  readonly faults: readonly ProjectFault[];
  /** Where a value stands in the text, or the nearest there is above it; `null` in a text that could not be read. */
  readonly placeOf: (path: string) => FilePlace | null;
  /** The version the file was written in, where that is an earlier one; else `null`. */
  readonly migratedFrom: number | null;
}

/** What is known of the text. */
export interface ReadProjectOptions {
  /** The name of the file. One that ends in `.json` has its faults told in terms of JSON; nothing else hangs on it. */
  readonly file?: string;
  /**
   * The shelf that the project names under `shelf` ({@link shelfOf} tells which): its text, and the name by which its faults
   * are told. Not looked at where the project names none.
   */
  readonly shelf?: ShelfText | undefined;
}

/** The longest title, and the coarsest precision. */
const LONGEST_TITLE = 120;
const COARSEST = inches(1);

/**
 * Reads a project file: YAML 1.2 or JSON, as text. Finds all its mistakes at once, each with the path, line and column of
 * the value, what was found, what was expected and what would help. Never throws on account of the text. The same text
 * gives the same project.
 *
 * @example
 * const text = `
 * sheetwright: 1
 * title: One card
 * papers:
 *   cream: { cardstock: us-letter }
 * cards:
 *   - { name: Plain, format: us-a2, base: cream }
 * `;
 * const { project, faults } = readProject(text);
 * faults // => []
 * project.cards[0].front // => { width: 4.25 * 40640, height: 5.5 * 40640 }
 * const [fault] = readProject(text.replace("us-a2", "us-a22")).faults;
 * [fault.path, fault.line, fault.suggestion] // => ["cards[0].format", 7, "us-a2"]
 */
export function readProject(text: string, options: ReadProjectOptions = {}): ReadProject {
  return readProjectOf(text, FORMAT_VERSION, MIGRATIONS, options);
}

/**
 * Reads a project file when the current version of the format is `current` and earlier ones come to it by `migrations`.
 *
 * @internal
 */
export function readProjectOf(
  text: string,
  current: number,
  migrations: ReadonlyMap<number, Migration>,
  { file = "", shelf: given }: ReadProjectOptions = {},
): ReadProject {
  const list = faultList();
  const yaml = readYaml(text, list, /\.json$/i.test(file) || text.trimStart().startsWith("{"));
  const { data } = yaml;
  let project: Project | null = null;
  let migratedFrom: number | null = null;
  let shelfFaults: readonly ProjectFault[] = [];
  if (isObject(data) && "sheetwright-shelf" in data && !("sheetwright" in data)) {
    reportShelf(data, list);
  } else if (isObject(data)) {
    const version = readVersion(data, current, list);
    if (version !== null) {
      if (version < current) migratedFrom = version;
      const present = { ...migrate(data, version, current, migrations), sheetwright: FORMAT_VERSION };
      const writtenAt = migratedFrom === null ? yaml.writtenAt : () => null;
      const { shelf, faults: told } = readOwnShelf(present, given, list);
      shelfFaults = told;
      const taken = takeFromShelf(present, shelf, writtenAt, list);
      project = readData(taken.data, list, taken.writtenAt, shelf !== "unread");
    }
  } else if (yaml.isReadable) {
    reportNoProject(data, list);
  }
  const faults = [...shelfFaults, ...withPlaces(list.faults(), yaml)];
  return { project: faults.length === 0 ? project : null, faults, placeOf: yaml.placeOf, migratedFrom };
}

/** Reads the shelf that the project names, with the faults of that file. */
function readOwnShelf(
  { shelf: named }: Readonly<Record<string, unknown>>,
  given: ShelfText | undefined,
  faults: FaultList,
): { readonly shelf: ProjectShelf; readonly faults: readonly ProjectFault[] } {
  if (named === undefined) return { shelf: "none", faults: [] };
  if (typeof named !== "string") return { shelf: "unread", faults: [] };
  if (given === undefined) {
    const message = `The project takes from the shelf ${quote(named)}, and its text was not given.`;
    const expected = "the text of the shelf file";
    faults.report({ code: "missing", path: "shelf", found: named, expected, message });
    return { shelf: "unread", faults: [] };
  }
  const { contents, faults: own } = readShelfContents(given);
  return { shelf: contents ?? "unread", faults: own };
}

/**
 * The name of the shelf file that the text of a project asks for, as it stands there: a path told from the project's own
 * file. `null` where it asks for none, or could not be read. Never throws.
 *
 * @example
 * shelfOf("{ sheetwright: 1, title: One, shelf: my-shelf.yaml }") // => "my-shelf.yaml"
 * shelfOf("{ sheetwright: 1, title: One }") // => null
 */
export function shelfOf(text: string): string | null {
  const { data } = readYaml(text, faultList(), false);
  return isObject(data) && typeof data.shelf === "string" ? data.shelf : null;
}

function reportShelf(data: Readonly<Record<string, unknown>>, faults: FaultList): void {
  const path = "sheetwright-shelf";
  const message =
    "This is a shelf, and a project is wanted: a file that begins with sheetwright: 1. A project names its shelf under the key shelf.";
  faults.report({ code: "version", path, found: data[path], expected: "sheetwright: 1", message });
}

function isObject(data: unknown): data is Readonly<Record<string, unknown>> {
  return typeof data === "object" && data !== null && !Array.isArray(data);
}

function reportNoProject(data: unknown, faults: FaultList): void {
  if (data === undefined) return;
  const expected = "a project: sheetwright: 1, title, papers and cards";
  const found = data === null ? "holds nothing" : `holds ${sayValue(data)} and no keys`;
  const message = `The file ${found}. Write ${expected}, each on a line of its own.`;
  faults.report({ code: data === null ? "missing" : "wrong-type", path: "", found: data, expected, message });
}

/** Reads data of the current version; what it gives holds only if there are no faults. */
function readData(
  data: unknown,
  faults: FaultList,
  writtenAt: Reading["writtenAt"],
  isShelfKnown: boolean,
): Project | null {
  const file = checkStructure(data, faults);
  if (file === undefined) return null;
  const unit = readUnit(file, faults);
  const reading: Reading = { faults, unit: unit ?? "in", writtenAt };
  const precision = readLength(file.precision, "precision", reading, { longest: COARSEST });
  const copies = readCopies(file.copies, "copies", reading);
  const trimmer = readTrimmer(file.trimmer, reading);
  // Where it cannot be told which of the two is meant, nothing is said of keys that go with one.
  const isKits = file.share === "kits" || !faults.isSound("share");
  const kits = isKits ? { bags: copies.guests + copies.samples } : null;
  const { papers, unclear } = readPapers(file.papers, trimmer.longestCut, kits, reading);
  const names = choiceNames(papers, papers.length + unclear.size === 0 ? null : unclear);
  const dieMachine = readDieMachine(file["die-machine"], reading);
  const blanks = { margin: dieMachine.margin, precision: precision ?? CUTTING_PRECISION[reading.unit] };
  const dies = isShelfKnown && faults.isSound("dies") ? readDies(file.dies, blanks, reading) : null;
  const rates = readRates(file.rates, reading);
  const items = readItems(file.items, kits, reading);
  const cards = readCards(file.cards, copies, {
    ...reading,
    names,
    covers: coversOf(papers),
    dies,
    blanks,
  });
  const project: Project = {
    title: readText(file.title, "title", reading, LONGEST_TITLE) ?? "",
    units: reading.unit,
    precision: precision ?? (faults.isSound("precision") ? CUTTING_PRECISION[reading.unit] : 1),
    trimmer,
    ...(file["die-machine"] === undefined ? {} : { dieMachine }),
    papers,
    ...(kits === null ? {} : { kits }),
    cards,
    ...(items === null ? {} : { items }),
    ...(rates === null ? {} : { rates }),
    silences: readSilences(file.silence, { data: file, cards }, reading),
  };
  if (unit !== null) checkGeometry(project, faults);
  return project;
}

/** The faces of papers of cover weight. */
function coversOf(papers: readonly Paper[]): ReadonlySet<string> {
  const designs = papers.filter(isCoverWeight).flatMap((paper) => paper.designs);
  return new Set(designs.flatMap(({ front, back }) => (back === null ? [front.id] : [front.id, back.id])));
}

/** The unit of the project, or the one that was probably meant; `null` where that is not clear. */
function readUnit({ units }: Written<ProjectFile>, faults: FaultList): Unit | null {
  if (units !== undefined) return units;
  const fault = faults.faults().find(({ path }) => path === "units");
  if (fault === undefined) return "in";
  return fault.suggestion === "in" || fault.suggestion === "mm" ? fault.suggestion : null;
}
