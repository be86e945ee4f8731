import {
  formatLength,
  formatSize,
  type Ticks,
  tryParseLength,
  tryParseSize,
  type Unit,
} from "@sheetwright/measure";
import {
  type CatalogueEntry,
  catalogue,
  type NominalSize,
  outlineOf,
  type ParameterEntry,
  type Shape,
  ShapeError,
  type ShapeName,
  shapeOfSize,
} from "@sheetwright/shapes";
import { Option } from "commander";
import { quote } from "../fault.js";
import { readLength } from "../pieces/read-length.js";
import { suggestOption } from "../request/plan-options.js";
import { listed } from "../words/listed.js";

/** Where a value of a shape was written, of the outer shape or of its window. */
export interface ShapeOptionNames {
  readonly name: string;
  readonly size: string;
  readonly set: string;
}

/** What was written of a shape. */
export interface WrittenShape {
  readonly name: string;
  readonly size: string;
  readonly set: readonly string[];
}

/** Notes a fault of an option. */
export type Report = (option: string, code: string, message: string) => void;

/** Parameters that make up the size, which has an option of its own. */
const SIZES: readonly string[] = ["diameter", "side", "width", "height"];

/** The shapes that a name and a size make; a frame is any of them with a window. */
const NAMED = catalogue.filter(({ id }) => id !== "frame");

/** Names that makers use for shapes of the catalogue. */
const OTHER_NAMES: Readonly<Record<string, string>> = {
  disc: "circle",
  round: "circle",
  ellipse: "oval",
  triangle: "polygon --set sides=3",
  pentagon: "polygon --set sides=5",
  hexagon: "polygon --set sides=6",
  octagon: "polygon --set sides=8",
  flower: "scalloped-circle --set count=5",
  scallop: "scalloped-circle",
  semicircle: "half-circle",
  teardrop: "drop",
  label: "tag",
  ticket: "rectangle --set corners=ticket",
  frame: "circle --size 3 --window circle --window-size 2",
};

/** Reads a shape; `null`, with the faults noted, where it is none. */
export function readShape(
  written: WrittenShape,
  names: ShapeOptionNames,
  unit: Unit,
  report: Report,
): Shape | null {
  const entry = NAMED.find(({ id }) => id === kebab(written.name));
  if (entry === undefined) {
    report(names.name, "unknown-shape", unknownShape(written.name));
    return null;
  }
  const size = readNominalSize(written.size, unit);
  if (typeof size === "string") report(names.size, "not-a-size", size);
  const options = readOptions(entry, written.set, names.set, unit, report);
  if (typeof size === "string" || options === null) return null;
  try {
    const shape = shapeOfSize(entry.id as Exclude<ShapeName, "frame">, size, options as never) as Shape;
    outlineOf(shape);
    return shape;
  } catch (error) {
    if (!(error instanceof ShapeError)) throw error;
    const isSize = SIZES.includes(error.problem.key) || error.problem.key === "size";
    report(isSize ? names.size : names.set, "no-such-shape", shapeFault(error, unit));
    return null;
  }
}

/** What is wrong with a shape, its lengths in the unit. */
export function shapeFault({ problem }: ShapeError, unit: Unit): string {
  const { shape, key, found, expected, help } = problem;
  const isCount = ["count", "points", "sides"].includes(key);
  const told =
    typeof found === "number" && !isCount ? formatLength(found, { unit }) : inUnit(String(found), unit);
  return `${kebab(key)} ${told} makes no ${shape}, expected ${inUnit(expected, unit)}. ${inUnit(help, unit)}`;
}

/** A text of the library, which counts in ticks, with lengths in the unit. */
function inUnit(text: string, unit: Unit): string {
  const say = (ticks: string) => formatLength(Number(ticks), { unit });
  return text
    .replace(
      /a whole number of ticks from (\d+)(?: ticks \([^)]*\))? to /g,
      (_, low: string) => `from ${say(low)} to `,
    )
    .replace(/(\d+) x (\d+) ticks/g, (_, width: string, height: string) =>
      formatSize(Number(width), Number(height), { unit }),
    )
    .replace(/(\d+) ticks(?: \([^)]*\))?/g, (_, ticks: string) => say(ticks));
}

function unknownShape(name: string): string {
  const other = OTHER_NAMES[kebab(name)];
  if (other !== undefined) return `${quote(name)} is not a name of the catalogue. Write ${other}.`;
  const meant = nearest(
    kebab(name),
    NAMED.map(({ id }) => id),
  );
  const hint = meant === undefined ? "" : ` Did you mean ${meant}?`;
  return `${quote(name)} is not a shape.${hint} sheetwright shape --list names them all; a file of your own ends in .svg.`;
}

function readNominalSize(text: string, unit: Unit): Ticks | NominalSize | string {
  const length = tryParseLength(text, { unit });
  if (length.ok) return length.ticks;
  const size = tryParseSize(text, { unit, kind: "card" });
  if (size.ok) return { width: size.width, height: size.height };
  const isPair = /\d\s*["a-z]*\s*[x×]\s*\d/i.test(text);
  const { expected, help } = isPair ? size.problem : length.problem;
  const code = isPair ? size.problem.code : length.problem.code;
  if (["negative", "zero", "too-long"].includes(code))
    return `${quote(text)} cannot be used: expected ${expected}. ${help}`;
  return `${quote(text)} is not a size, expected one length, such as 3in, or width x height, such as "2 x 3in".`;
}

function readOptions(
  entry: CatalogueEntry,
  set: readonly string[],
  option: string,
  unit: Unit,
  report: Report,
): Readonly<Record<string, number | string>> | null {
  const free = entry.parameters.filter(({ key }) => !SIZES.includes(key));
  const options: Record<string, number | string> = {};
  let isWhole = true;
  const fault = (code: string, message: string): void => {
    isWhole = false;
    report(option, code, message);
  };
  for (const text of set) {
    const [, key = "", value = ""] = /^\s*([^=]*?)\s*=\s*(.*?)\s*$/.exec(text) ?? [];
    const parameter = free.find((one) => kebab(one.key) === kebab(key));
    if (key === "") {
      fault(
        "not-a-parameter",
        `${quote(text)} is no parameter, expected a key and a value, such as points=6.`,
      );
    } else if (parameter === undefined) {
      fault("unknown-parameter", unknownParameter(key, entry, free));
    } else if (Object.hasOwn(options, parameter.key)) {
      fault("option-twice", `${kebab(key)} is set twice, expected once. Keep one of them.`);
    } else {
      const read = readParameter(parameter, value, unit);
      if ("message" in read) fault(read.code, `${kebab(key)}: ${read.message}`);
      else options[parameter.key] = read.value;
    }
  }
  for (const { key, default: usual, range } of free) {
    if (usual === "required" && isWhole && !Object.hasOwn(options, key))
      fault(
        "option-missing",
        `${withArticle(entry)} needs its ${kebab(key)}: ${range}. Give ${option} ${kebab(key)}=6.`,
      );
  }
  return isWhole ? options : null;
}

function unknownParameter(key: string, entry: CatalogueEntry, free: readonly ParameterEntry[]): string {
  if (SIZES.includes(kebab(key))) return `${quote(key)} is told by the size. Leave it out.`;
  if (free.length === 0)
    return `${withArticle(entry)} has no parameters but its size. Leave ${quote(key)} out.`;
  const keys = free.map((one) => kebab(one.key));
  const meant = nearest(kebab(key), keys);
  const hint = meant === undefined ? "" : ` Did you mean ${meant}?`;
  return `${quote(key)} is no parameter of ${withArticle(entry)}, expected ${listed(keys, "or")}.${hint}`;
}

function readParameter(
  { kind, words = [] }: ParameterEntry,
  text: string,
  unit: Unit,
): { readonly value: number | string } | { readonly code: string; readonly message: string } {
  if (kind === "word") {
    const word = words.find((one) => one === text.toLowerCase());
    if (word !== undefined) return { value: word };
    return { code: "not-one-of", message: `found ${quote(text)}, expected ${listed(words, "or")}.` };
  }
  if (kind === "count") {
    if (/^\d{1,6}$/.test(text)) return { value: Number(text) };
    return { code: "not-a-number", message: `found ${quote(text)}, expected a whole number, such as 6.` };
  }
  const read = readLength(text, { unit, allowZero: true });
  return "ticks" in read ? { value: read.ticks } : read;
}

function withArticle({ id }: Pick<CatalogueEntry, "id">): string {
  return `${/^[aeiou]/.test(id) ? "an" : "a"} ${id}`;
}

/** `leastBridge` and `Least bridge` as `least-bridge`. */
export function kebab(text: string): string {
  return text
    .trim()
    .replace(/([a-z])([A-Z])/g, "$1-$2")
    .replace(/[\s_]+/g, "-")
    .toLowerCase();
}

/** The one of some names that was probably meant. */
function nearest(name: string, names: readonly string[]): string | undefined {
  if (!/^[a-z-]{1,40}$/.test(name)) return undefined;
  const found = suggestOption(`--${name}`, (command) => {
    for (const each of names) command.addOption(new Option(`--${each}`));
    return command;
  });
  return found?.slice(2);
}
