// What papers and tool must keep to. A project that was read from a file does; one that another tool made may not.

import type { Paper, PaperDesign, Project, Sides, Trimmer } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { checkDieMachine } from "./check-die-cut.js";
import { checkWeight } from "./check-finish.js";
import { checkCount, checkLength, checkSize } from "./check-values.js";
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
export function checkBundle({ units, trimmer, dieMachine, papers }: Project): readonly ProjectFault[] {
  const faults = [...word("units", units, UNITS), ...checkTrimmer(trimmer), ...checkDieMachine(dieMachine)];
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
    ...checkLength("trimmer.kerf", kerf, 0),
    ...(longestCut === null ? [] : checkLength("trimmer.longest-cut", longestCut, 1)),
    ...checkLength("trimmer.narrowest-hold", narrowestHold, 0),
    ...checkSize("trimmer.smallest-offcut", smallestOffcut),
  ];
}

function checkPaper(paper: Paper, path: string): readonly ProjectFault[] {
  const { material, sheet, trim, grain, grainBasis, weight, thickness, pack, designs } = paper;
  const faults = [
    ...word(path, material, MATERIALS),
    ...checkSize(`${path}.${material}`, sheet),
    ...sides(`${path}.trim`, trim),
    ...word(`${path}.grain`, grain, GRAINS),
    ...checkGrainBasis(grain, grainBasis, `${path}.grain`),
    ...(weight === null
      ? []
      : weight.unit === "lb"
        ? checkWeight(`${path}.weight`, weight.pounds, "pounds")
        : checkWeight(`${path}.weight`, weight.grammage, "g/m2")),
    ...(thickness === null ? [] : checkLength(`${path}.thickness`, thickness, 1)),
    ...(pack === undefined
      ? []
      : [
          ...checkCount(`${path}.pack.sheets`, pack.sheets, 1, MOST_SHEETS),
          ...checkCost(`${path}.pack.cost`, pack.cost),
        ]),
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
  return [
    ...(count === null ? [] : checkCount(`${path}.count`, count, 0, MOST_SHEETS)),
    ...word(`${path}.pattern`, front.pattern, PATTERNS),
    ...(back === null ? [] : word(`${path}.back.pattern`, back.pattern, PATTERNS)),
    ...offcuts.flatMap((offcut, index) => [
      ...checkSize(`${path}.offcuts[${index}]`, offcut),
      ...checkCount(`${path}.offcuts[${index}].count`, offcut.count, 0, MOST_SHEETS),
    ]),
    ...checkCost(`${path}.cost`, cost),
  ];
}

function checkCost(path: string, cost: string | null): readonly ProjectFault[] {
  if (cost === null || COST.test(cost)) return [];
  const expected = "a cost as decimal text with up to seven digits before and four behind the dot";
  const message = `Expected ${expected}, such as 0.35, found ${JSON.stringify(cost)}.`;
  return [fault({ code: "not-a-count", path, found: String(cost), expected, message })];
}

/** A grain that is known is known from somewhere. */
function checkGrainBasis(grain: string, basis: string | null, path: string): readonly ProjectFault[] {
  const expected = grain === "unknown" ? "no basis of an unknown grain" : "given or assumed";
  // A word that is not known is told as such.
  if (!GRAINS.some((known) => known === grain)) return [];
  if (grain === "unknown" ? basis === null : basis === "given" || basis === "assumed") return [];
  const found = String(basis);
  const message = `Where the grain (${grain}) is known from: expected ${expected}, found ${found}.`;
  return [fault({ code: "contradiction", path, found, expected, message })];
}

function sides(path: string, { left, right, top, bottom }: Sides): readonly ProjectFault[] {
  return [left, right, top, bottom].flatMap((side) => checkLength(path, side, 0)).slice(0, 1);
}

function word(path: string, value: string, known: readonly string[]): readonly ProjectFault[] {
  if (known.includes(value)) return [];
  const expected = `one of ${known.join(", ")}`;
  const found = String(value);
  return [
    fault({ code: "not-a-word", path, found, expected, message: `Expected ${expected}, found "${found}".` }),
  ];
}
