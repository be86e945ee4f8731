// What papers and tool must keep to. A project that was read from a file does; one that another tool made may not.

import { LONGEST_LENGTH, type Size } from "@sheetwright/measure";
import type { Paper, PaperDesign, Project, Sides, Trimmer } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { fault } from "./fault.js";

/** Most sheets of a design, or offcuts of one size: what packing can count. */
const MOST_SHEETS = 2_147_483_647;

/** A cost as decimal text, as packing can still add it up. */
const COST = /^\d{1,7}(?:\.\d{1,4})?$/;

const MATERIALS = ["cardstock", "glitter", "paper", "pad"] as const;
const GRAINS = ["width", "height", "none", "unknown"] as const;
const PATTERNS = ["none", "two-way", "one-way"] as const;
const CUTS = ["edge-to-edge", "strips"] as const;
const UNITS = ["in", "mm"] as const;

/**
 * Finds numbers out of their range and words that are not known in a project's units, trimmer and papers, and ids that are
 * there twice.
 *
 * @internal
 */
export function checkBundle({ units, trimmer, papers }: Project): readonly ProjectFault[] {
  const faults = [...word("units", units, UNITS), ...checkTrimmer(trimmer)];
  const paths = new Map<string, string>();
  for (const paper of papers) {
    const path = `papers.${paper.id}`;
    faults.push(...checkPaper(paper, path));
    for (const { id } of paper.designs) {
      const before = paths.get(id);
      if (before !== undefined) {
        const message = `Two papers have the id "${id}", so that nobody could tell which one is meant. Give each its own.`;
        faults.push(fault({ code: "twice", path, found: id, expected: "an id of its own", message }));
      }
      paths.set(id, path);
    }
  }
  return faults;
}

function checkTrimmer({
  cuts,
  kerf,
  longestCut,
  narrowestHold,
  smallestOffcut,
}: Trimmer): readonly ProjectFault[] {
  return [
    ...word("trimmer.cuts", cuts, CUTS),
    ...length("trimmer.kerf", kerf, 0),
    ...(longestCut === null ? [] : length("trimmer.longest-cut", longestCut, 1)),
    ...length("trimmer.narrowest-hold", narrowestHold, 0),
    ...size("trimmer.smallest-offcut", smallestOffcut),
  ];
}

function checkPaper(paper: Paper, path: string): readonly ProjectFault[] {
  const { material, sheet, trim, grain, thickness, designs } = paper;
  const faults = [
    ...word(path, material, MATERIALS),
    ...size(`${path}.${material}`, sheet),
    ...sides(`${path}.trim`, trim),
    ...word(`${path}.grain`, grain, GRAINS),
    ...(thickness === null ? [] : length(`${path}.thickness`, thickness, 1)),
    ...designs.flatMap((design) =>
      checkDesign(design, design.id === paper.id ? path : `papers.${design.id}`),
    ),
  ];
  if (designs.length === 0) {
    const message = `The paper "${paper.id}" has no design to be cut from. A plain paper has one of its own.`;
    faults.push(
      fault({ code: "missing", path: `${path}.designs`, found: "none", expected: "a design", message }),
    );
  }
  return faults;
}

function checkDesign({ count, cost, front, back, offcuts }: PaperDesign, path: string) {
  const faults = [
    ...(count === null ? [] : number(`${path}.count`, count)),
    ...word(`${path}.pattern`, front.pattern, PATTERNS),
    ...(back === null ? [] : word(`${path}.back.pattern`, back.pattern, PATTERNS)),
    ...offcuts.flatMap((offcut, index) => [
      ...size(`${path}.offcuts[${index}]`, offcut),
      ...number(`${path}.offcuts[${index}].count`, offcut.count),
    ]),
  ];
  if (cost !== null && !COST.test(cost)) {
    const expected = "a cost as decimal text with up to seven digits before and four behind the dot";
    const message = `Expected ${expected}, such as 0.35, found ${JSON.stringify(cost)}.`;
    faults.push(fault({ code: "not-a-count", path: `${path}.cost`, found: String(cost), expected, message }));
  }
  return faults;
}

function sides(path: string, { left, right, top, bottom }: Sides): readonly ProjectFault[] {
  return [left, right, top, bottom].flatMap((side) => length(path, side, 0)).slice(0, 1);
}

function size(path: string, { width, height }: Size): readonly ProjectFault[] {
  return [...length(path, width, 1), ...length(path, height, 1)].slice(0, 1);
}

function length(path: string, ticks: number, least: number): readonly ProjectFault[] {
  if (Number.isSafeInteger(ticks) && ticks >= least && ticks <= LONGEST_LENGTH) return [];
  const expected = `a whole number of ticks from ${least} to ${LONGEST_LENGTH}`;
  const message = `Expected a length as ${expected} of 1/1600 mm, found ${ticks}.`;
  return [fault({ code: "not-a-length", path, found: String(ticks), expected, message })];
}

function number(path: string, value: number): readonly ProjectFault[] {
  if (Number.isSafeInteger(value) && value >= 0 && value <= MOST_SHEETS) return [];
  const expected = `a whole number from 0 to ${MOST_SHEETS}`;
  const code = value > MOST_SHEETS ? "too-many" : "not-a-count";
  return [
    fault({ code, path, found: String(value), expected, message: `Expected ${expected}, found ${value}.` }),
  ];
}

function word(path: string, value: string, known: readonly string[]): readonly ProjectFault[] {
  if (known.includes(value)) return [];
  const expected = `one of ${known.join(", ")}`;
  const found = String(value);
  return [
    fault({ code: "not-a-word", path, found, expected, message: `Expected ${expected}, found "${found}".` }),
  ];
}
