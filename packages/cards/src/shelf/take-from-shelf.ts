/**
 * Puts what a project takes from its shelf in the place where the project names it, before the project is read: the data
 * are then those of a project with everything written in it. Keys of the project come before those of the shelf.
 */

import type { Unit } from "@sheetwright/measure";
import type { FaultList } from "../project-file/fault-list.js";
import { nearestWord } from "../project-file/nearest-word.js";
import type { Reading } from "../project-file/reading.js";
import { listWords, quote, sayValue } from "../project-file/say-value.js";
import { isWithin, pathTo } from "../project-file/value-path.js";
import { isPlain, type PlainData, type ShelfContents } from "./read-shelf.js";

/** The shelf of a project: what is on it; `none` where the project names none, `unread` where it could not be read. */
export type ProjectShelf = ShelfContents | "none" | "unread";

/** A project with what it takes from the shelf, and how its numbers and bare words were written. */
export interface TakenFromShelf {
  readonly data: PlainData;
  readonly writtenAt: Reading["writtenAt"];
}

/** Fills in what comes from the shelf. What is not on it is told, and left without a value. */
export function takeFromShelf(
  data: PlainData,
  shelf: ProjectShelf,
  writtenAt: Reading["writtenAt"],
  faults: FaultList,
): TakenFromShelf {
  const unit: Unit = data.units === "mm" ? "mm" : "in";
  const origins: { readonly to: string; readonly from: string }[] = [];
  const taking: Taking = { shelf, unit, faults, origins };
  const trimmer = takeTrimmer(data.trimmer, taking);
  const present = {
    ...data,
    ...(isPlain(data.papers) ? { papers: takePapers(data.papers, taking) } : {}),
    ...("trimmer" in data ? { trimmer } : {}),
    ...takeRest(data, taking),
  };
  return {
    data: present,
    writtenAt: (path) => {
      const own = writtenAt(path);
      const origin = origins.find(({ to }) => isWithin(path, to));
      if (own !== null || origin === undefined || typeof shelf === "string") return own;
      return shelf.writtenAt(origin.from + path.slice(origin.to.length));
    },
  };
}

interface Taking {
  readonly shelf: ProjectShelf;
  readonly unit: Unit;
  readonly faults: FaultList;
  /** Where in the shelf the values below a path of the project come from. Filled on the way. */
  readonly origins: { readonly to: string; readonly from: string }[];
}

function takePapers(papers: PlainData, taking: Taking): PlainData {
  return mapValues(papers, (paper, id) => {
    const path = pathTo("papers", id);
    if (paper === "shelf") return take("papers", id, {}, path, path, taking);
    if (!isPlain(paper) || !("shelf" in paper)) return paper;
    const { shelf: name, ...own } = paper;
    return take("papers", name, own, path, pathTo(path, "shelf"), taking);
  });
}

/** `shelf` alone is the trimmer of a shelf that has one. */
function takeTrimmer(trimmer: unknown, taking: Taking): unknown {
  const { shelf } = taking;
  const names = typeof shelf === "string" ? [] : Object.keys(shelf.trimmers);
  if (trimmer === "shelf" && names.length === 1)
    return take("trimmers", names[0], {}, "trimmer", "trimmer", taking);
  if (typeof trimmer === "string") return take("trimmers", trimmer, {}, "trimmer", "trimmer", taking);
  if (!isPlain(trimmer) || !("shelf" in trimmer)) return trimmer;
  const { shelf: name, ...own } = trimmer;
  return take("trimmers", name, own, "trimmer", pathTo("trimmer", "shelf"), taking);
}

const NOUNS = { papers: "paper", trimmers: "trimmer" } as const;

/** One thing of the shelf with the keys of the project before its own; `undefined` where it is not there. */
function take(
  section: keyof typeof NOUNS,
  name: unknown,
  own: PlainData,
  path: string,
  namePath: string,
  { shelf, unit, faults, origins }: Taking,
): PlainData | undefined {
  const noun = NOUNS[section];
  if (shelf === "unread") return undefined;
  if (shelf === "none") {
    const message = `This ${noun} is to come from a shelf, and the project names none. Write shelf: my-shelf.yaml, the name of its file, at the top of the project.`;
    const expected = `a ${noun} with its keys`;
    faults.report({ code: "missing", path: namePath, found: name, expected, message });
    return undefined;
  }
  const names = Object.keys(shelf[section]);
  const found = typeof name === "string" && Object.hasOwn(shelf[section], name) ? shelf[section][name] : null;
  if (!isPlain(found) || typeof name !== "string") {
    const suggestion = typeof name === "string" ? nearestWord(name, names) : null;
    const all =
      names.length === 0
        ? `There is no ${noun} on it.`
        : names.length === 1
          ? `Its only ${noun} is ${names[0]}.`
          : `Its ${section} are ${listWords(names, "and")}.`;
    const meant = suggestion === null ? "" : ` Did you mean ${suggestion}?`;
    const said = typeof name === "string" ? quote(name) : sayValue(name);
    faults.report({
      code: section === "papers" ? "unknown-paper" : "not-a-word",
      path: namePath,
      found: name,
      expected: names.length === 0 ? `a ${noun} with its keys` : `one of ${listWords(names, "or")}`,
      message: `${name === null ? "Nothing stands behind shelf." : `The shelf has no ${noun} ${said}.`}${meant} ${all}`,
      suggestion,
    });
    return undefined;
  }
  origins.push({ to: path, from: pathTo(section, name) });
  const measured = inUnit(found, shelf, unit, section === "papers" ? PAPER_LENGTHS : TRIMMER_LENGTHS);
  return { ...(measured as PlainData), ...own };
}

/** The dies that the project has not, and the rates and the die machine where it has none. */
function takeRest(data: PlainData, { shelf, unit, origins }: Taking): PlainData {
  if (typeof shelf === "string") return {};
  const { dies, dieMachine, rates } = shelf;
  const own = isPlain(data.dies) ? data.dies : {};
  const others = Object.entries(dies).filter(([name]) => !Object.hasOwn(own, name));
  for (const [name] of others) origins.push({ to: pathTo("dies", name), from: pathTo("dies", name) });
  const taken = Object.fromEntries(
    others.map(([name, die]) => [
      name,
      isPlain(die) ? inUnit(die, shelf, unit, DIE_LENGTHS) : withUnit(die, shelf.unit, unit),
    ]),
  );
  const takesRates = rates !== undefined && data.rates === undefined;
  if (takesRates) origins.push({ to: "rates", from: "rates" });
  const takesMachine = dieMachine !== undefined && data["die-machine"] === undefined;
  if (takesMachine) origins.push({ to: "die-machine", from: "die-machine" });
  const isMalformed = data.dies !== undefined && !isPlain(data.dies);
  return {
    ...(others.length === 0 || isMalformed ? {} : { dies: { ...taken, ...own } }),
    ...(takesMachine && isPlain(dieMachine)
      ? { "die-machine": inUnit(dieMachine, shelf, unit, MACHINE_LENGTHS) }
      : {}),
    ...(takesRates ? { rates } : {}),
  };
}

// What of each is a length or a size. All below such a key is, but for counts.
const TRIMMER_LENGTHS = ["kerf", "longest-cut", "narrowest-hold", "smallest-offcut"];
const DIE_LENGTHS = ["size", "sizes", "blank", "margin"];
const MACHINE_LENGTHS = ["platform", "margin", "narrowest-bridge"];
// Scallops, points and sides are counted; so are stitches to the inch.
const SHAPE_LENGTHS = ["size", "pitch", "depth", "radius", "rise", "notch", "cut", "hole", "hole-from-top"];
const STITCH_LENGTHS = ["inset", "dash", "gap"];
const PAPER_LENGTHS = ["cardstock", "paper", "glitter", "pad", "thickness", "trim", "offcuts"];

/** Data of the shelf with the unit behind every length that has none, where the project goes by another. */
function inUnit(data: PlainData, shelf: ShelfContents, unit: Unit, lengths: readonly string[]): unknown {
  if (shelf.unit === unit) return data;
  return mapValues(data, (value, key) => {
    if (lengths.includes(key)) return withUnit(value, shelf.unit, unit);
    if (key === "shape" || key === "window")
      return isPlain(value) ? inUnit(value, shelf, unit, SHAPE_LENGTHS) : value;
    if (key === "stitched")
      return isPlain(value) ? inUnit(value, shelf, unit, STITCH_LENGTHS) : withUnit(value, shelf.unit, unit);
    // The designs of a pad have offcuts of their own.
    if (key !== "designs" || !isPlain(value)) return value;
    return mapValues(value, (design) =>
      isPlain(design) ? inUnit(design, shelf, unit, ["offcuts"]) : design,
    );
  });
}

/** Digits, fractions and the sign between width and height; a name of a size or a length with a unit has other letters. */
const BARE_LENGTH = /^[\d\s.,/⁄½¼¾⅛⅜⅝⅞-]+(?:[x×*][\d\s.,/⁄½¼¾⅛⅜⅝⅞-]+)?$/i;

function withUnit(value: unknown, from: Unit, to: Unit): unknown {
  if (from === to) return value;
  if (typeof value === "number") return `${value} ${from}`;
  if (typeof value === "string") return BARE_LENGTH.test(value.trim()) ? `${value.trim()} ${from}` : value;
  if (Array.isArray(value)) return value.map((item) => withUnit(item, from, to));
  if (!isPlain(value)) return value;
  return mapValues(value, (inner, key) => (key === "count" ? inner : withUnit(inner, from, to)));
}

function mapValues(data: PlainData, change: (value: unknown, key: string) => unknown): PlainData {
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, change(value, key)]));
}
