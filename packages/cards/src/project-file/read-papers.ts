// The papers of a project. A paper is always given, with defaults where something in it was wrong, so that the cards that
// use it can be looked into; whether it is right tells the list of faults.

import { inches, type Size, type Ticks } from "@sheetwright/measure";
import type { Kits, Paper, PaperDesign } from "../project.js";
import { checkKind } from "./check-kind.js";
import type { Written } from "./check-structure.js";
import { colourGiver, type GiveColour } from "./colours.js";
import { readCost } from "./read-cost.js";
import { readHandOut } from "./read-hand-out.js";
import { readSheetSize } from "./read-measures.js";
import { LONGEST_NAME, readPaperDesign, type WrittenSheets } from "./read-paper-design.js";
import { readPaperThickness } from "./read-paper-thickness.js";
import { readTrim } from "./read-trim.js";
import { readWeight } from "./read-weight.js";
import { type Reading, readText } from "./reading.js";
import { PAPER_KINDS } from "./schema/paper-schema.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

type WrittenPaper = Written<ProjectFile["papers"][string]>;

/** The most papers of a project, and designs of a pad. */
const MOST_PAPERS = 200;
const MOST_DESIGNS = 100;

/** Stands in for a sheet whose size could not be read. */
const SOME_SHEET: Size = { width: inches(8.5), height: inches(11) };

/** The papers, and the keys of those whose kind or designs could not be read. */
export interface ReadPapers {
  readonly papers: readonly Paper[];
  readonly unclear: ReadonlySet<string>;
}

/** Reads all papers. `longestCut` is that of the trimmer, for squaring off; `kits` is `null` in a class. */
export function readPapers(
  papers: Written<ProjectFile["papers"]> | undefined,
  longestCut: Ticks | null,
  kits: Kits | null,
  reading: Reading,
): ReadPapers {
  const entries = Object.entries(papers ?? {});
  if (papers !== undefined) {
    checkNumber(entries.length, MOST_PAPERS, "papers", "paper", "cream: { cardstock: us-letter }", reading);
  }
  const giveColour = colourGiver(coloursNamed(entries.map(([, paper]) => paper)));
  const unclear = new Set<string>();
  for (const [id] of entries.slice(MOST_PAPERS)) unclear.add(id);
  const read = entries.slice(0, MOST_PAPERS).flatMap(([id, paper]) => {
    const path = pathTo("papers", id);
    checkKey(id, path, reading);
    const kind = paper === undefined ? null : materialOf(paper, path, reading);
    if (kind === null || (kind === "pad" && !isListed(paper?.designs))) unclear.add(id);
    return paper === undefined
      ? []
      : [readPaper(id, kind ?? "cardstock", paper, path, { ...reading, giveColour, longestCut, kits })];
  });
  return { papers: read, unclear };
}

/** The material of a paper that is written out. One that comes from the shelf was filled in before, or told to be missing. */
function materialOf(paper: WrittenPaper, path: string, { faults }: Reading): Paper["material"] | null {
  const kind = checkKind(paper, PAPER_KINDS, "paper", path, faults);
  return kind === "shelf" ? null : kind;
}

/** Whether the designs of a pad are all known. */
function isListed(designs: WrittenPaper["designs"]): boolean {
  return designs !== undefined && Object.keys(designs).length <= MOST_DESIGNS;
}

interface PaperReading extends Reading {
  readonly giveColour: GiveColour;
  readonly longestCut: Ticks | null;
  readonly kits: Kits | null;
}

function readPaper(
  id: string,
  material: Paper["material"],
  paper: WrittenPaper,
  path: string,
  reading: PaperReading,
): Paper {
  const at = (key: keyof WrittenPaper) => pathTo(path, key);
  const read = readSheetSize(paper[material], at(material), reading);
  const name = readText(paper.name, at("name"), reading, LONGEST_NAME) ?? id;
  const sheet = read === null ? SOME_SHEET : { width: read.width, height: read.height };
  const { bags, countsFor } = readHandOut(paper, path, reading.kits, reading);
  return {
    id,
    name,
    material,
    sheet,
    sheetName: read?.name ?? null,
    trim: readTrim(paper.trim, at("trim"), read, reading.longestCut, reading),
    ...readGrain(paper.grain, at("grain"), material, read, reading),
    weight: readWeight(readText(paper.weight, at("weight"), reading, LONGEST_NAME), at("weight"), reading),
    thickness: readPaperThickness(paper.thickness, at("thickness"), reading),
    ...readPack(paper.pack, at("pack"), reading),
    ...(bags === null ? {} : { bags }),
    designs: readDesigns(paper, path, { id, name, material, sheet: read }, reading).map((design) => ({
      ...design,
      count: design.count === null ? null : design.count * countsFor,
      offcuts: design.offcuts.map((offcut) => ({ ...offcut, count: offcut.count * countsFor })),
    })),
  };
}

function readDesigns(
  paper: WrittenPaper,
  path: string,
  whole: {
    readonly id: string;
    readonly name: string;
    readonly material: Paper["material"];
    readonly sheet: Size | null;
  },
  reading: PaperReading,
): readonly PaperDesign[] {
  const { giveColour } = reading;
  if (whole.material !== "pad")
    return [readPaperDesign([{ value: paper, path }], { ...whole, giveColour }, reading)];
  const designsPath = pathTo(path, "designs");
  const entries = Object.entries(paper.designs ?? {});
  if (paper.designs !== undefined) {
    checkNumber(entries.length, MOST_DESIGNS, designsPath, "design", "{ dots: 6, comets: 6 }", reading);
  }
  return entries.slice(0, MOST_DESIGNS).map(([key, design]) => {
    const designPath = pathTo(designsPath, key);
    checkKey(key, designPath, reading);
    const own: WrittenSheets = typeof design === "object" ? design : { count: design };
    const groups = [
      { value: own, path: designPath },
      { value: paper, path },
    ];
    const place = {
      id: `${whole.id}.${key}`,
      name: key,
      material: whole.material,
      sheet: whole.sheet,
      giveColour,
    };
    return readPaperDesign(groups, place, reading);
  });
}

function readPack(pack: WrittenPaper["pack"], path: string, reading: Reading): Pick<Paper, "pack"> {
  if (pack === undefined) return {};
  if (typeof pack === "number") return { pack: { sheets: pack, cost: null } };
  return { pack: { sheets: pack.sheets ?? 1, cost: readCost(pack.cost, pathTo(path, "cost"), reading) } };
}

/** Boxed cardstock of these sizes is mostly grain long (paper-merchant pages and bookbinding handbooks). */
const MOSTLY_LONG: readonly Size[] = [
  { width: inches(8.5), height: inches(11) },
  { width: inches(11), height: inches(17) },
];

/** `long` and `short` are read on a sheet whose sides differ; on any other they say nothing. */
function readGrain(
  grain: WrittenPaper["grain"],
  path: string,
  material: Paper["material"],
  sheet: Size | null,
  { faults }: Reading,
): Pick<Paper, "grain" | "grainBasis"> {
  const unknown = { grain: "unknown", grainBasis: null } as const;
  if (grain === undefined && sheet !== null && material === "cardstock" && isMostlyLong(sheet))
    return { grain: longSide(sheet), grainBasis: "assumed" };
  if (grain === undefined || grain === "unknown") return unknown;
  if (grain !== "long" && grain !== "short") return { grain, grainBasis: "given" };
  if (sheet === null) return unknown;
  if (sheet.width === sheet.height) {
    const message = `The sheet is square, so it has no ${grain} side. Write width or height: the side that the grain runs along when the pattern is upright.`;
    faults.report({ code: "contradiction", path, found: grain, expected: "width or height", message });
    return unknown;
  }
  const long = longSide(sheet);
  const short = long === "width" ? "height" : "width";
  return { grain: grain === "long" ? long : short, grainBasis: "given" };
}

function isMostlyLong({ width, height }: Size): boolean {
  return MOSTLY_LONG.some(
    (sheet) => sheet.width === Math.min(width, height) && sheet.height === Math.max(width, height),
  );
}

function longSide({ width, height }: Size): "width" | "height" {
  return width > height ? "width" : "height";
}

function checkKey(key: string, path: string, { faults }: Reading): void {
  if (key !== "back") return;
  const message =
    "No paper or design can be called back: night.back means the back of night. Choose another key.";
  faults.report({ code: "not-a-word", path, found: key, expected: "another key than back", message });
}

function checkNumber(
  number: number,
  most: number,
  path: string,
  what: string,
  example: string,
  { faults }: Reading,
): void {
  if (number > most) {
    const message = `There are ${number} ${what}s, and ${most} are the most.`;
    faults.report({
      code: "too-many",
      path,
      found: number,
      expected: `at most ${most} ${what}s`,
      message,
    });
  }
  if (number > 0 || !faults.isSound(path)) return;
  const message = `There is no ${what} here. Name at least one, such as ${example}.`;
  faults.report({ code: "missing", path, found: {}, expected: `at least one ${what}`, message });
}

/** The colours that the file names itself, so that none is given to another paper. */
function coloursNamed(papers: readonly (WrittenPaper | undefined)[]): ReadonlySet<string> {
  const groups = papers.flatMap((paper) => [paper, ...Object.values(paper?.designs ?? {})]);
  const colours = groups.flatMap((group) =>
    typeof group === "object" ? [group.colour, group.back?.colour] : [],
  );
  return new Set(colours.flatMap((colour) => (typeof colour === "string" ? [colour.toLowerCase()] : [])));
}
