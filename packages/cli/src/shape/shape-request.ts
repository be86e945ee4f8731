import { millimetres, TICKS_PER_INCH, type Ticks, type Unit } from "@sheetwright/measure";
import { outlineOf, type Shape, ShapeError } from "@sheetwright/shapes";
import { type Fault, quote } from "../fault.js";
import { readLength } from "../pieces/read-length.js";
import { faultsOfRest, freeWords, ONE_NAME } from "../request/free-words.js";
import { suggestOption, type WrittenOptions } from "../request/plan-options.js";
import { listed } from "../words/listed.js";
import { readShape, shapeFault } from "./read-parameters.js";
import {
  addShapeOptions,
  SHAPE_OPTION_KEYS,
  SHAPE_OPTIONS,
  type ShapeOptionKey,
  shapeOptionName,
} from "./shape-options.js";

/** What `sheetwright shape` is asked. */
export interface ShapeRequest {
  /** `list`: the catalogue; a shape of it; or a file of the maker's own. */
  readonly what:
    | { readonly kind: "list" }
    | { readonly kind: "shape"; readonly shape: Shape }
    | { readonly kind: "file"; readonly file: string };
  readonly grow: Ticks;
  /** `null` without stitches. */
  readonly stitched: { readonly inset: Ticks; readonly marks: "dashes" | "holes" } | null;
  readonly out: string | null;
  readonly lines: boolean;
  readonly rulers: boolean;
  readonly unit: Unit;
  readonly json: boolean;
  readonly force: boolean;
}

/** Options that say what a shape is, and so have no meaning with others. */
const OF_SHAPE: readonly ShapeOptionKey[] = ["size", "set", "window", "windowSize", "windowSet"];
const OF_DRAWING: readonly ShapeOptionKey[] = ["grow", "stitched", "marks", "lines", "rulers"];

/**
 * Reads what is asked of a shape and collects every fault; without any, the request is there.
 *
 * @param rest what stands on the command line beside known options: the name of the shape, and faults.
 */
export function readShapeRequest(
  written: WrittenOptions,
  rest: readonly string[],
): { readonly request: ShapeRequest | null; readonly faults: readonly Fault[] } {
  const found: Fault[] = [];
  const report = (option: string, code: string, message: string): void => {
    found.push({ code, place: { option }, message });
  };
  const value = (key: ShapeOptionKey): string | undefined => {
    const given = written[key];
    if (given === undefined || given === true) return undefined;
    if (given.length > 1)
      report(
        shapeOptionName(key),
        "option-twice",
        `given ${given.length} times, expected once. Keep one of them.`,
      );
    return given[0];
  };
  const oneOf = <T extends string>(key: ShapeOptionKey, allowed: readonly T[], fallback: T): T => {
    const text = value(key);
    const word = text === undefined ? fallback : allowed.find((one) => one === text.trim().toLowerCase());
    if (word === undefined)
      report(
        shapeOptionName(key),
        "not-one-of",
        `found ${quote(text ?? "")}, expected ${listed(allowed, "or")}.`,
      );
    return word ?? fallback;
  };
  const all = (key: ShapeOptionKey): readonly string[] => {
    const given = written[key];
    return given === undefined || given === true ? [] : given;
  };
  const isGiven = (key: ShapeOptionKey): boolean => written[key] !== undefined;

  const [name] = freeWords(rest).words;
  const others = rest.filter((_, index) => index !== rest.indexOf(name ?? ""));
  found.push(
    ...faultsOfRest(others, {
      suggest: (option) => suggestOption(option, addShapeOptions),
      help: `One shape is made at a time. ${ONE_NAME}`,
    }),
  );

  const unit = oneOf<Unit>("unit", ["in", "mm"], "in");
  const isList = written.list === true;
  const isFile = name !== undefined && /\.svg$/i.test(name);
  const withoutMeaning = (keys: readonly ShapeOptionKey[], reason: string): void => {
    for (const key of keys.filter(isGiven))
      report(shapeOptionName(key), "no-meaning", `this has no meaning ${reason}. Leave it out.`);
  };

  let what: ShapeRequest["what"] | null = null;
  if (isList) {
    what = { kind: "list" };
    withoutMeaning([...OF_SHAPE, ...OF_DRAWING], "with --list");
    if (name !== undefined)
      report(
        quote(name),
        "extra-word",
        "no shape is expected with --list, which tells of all. Leave one of them out.",
      );
  } else if (isFile) {
    what = { kind: "file", file: name };
    withoutMeaning(OF_SHAPE, "for a file, which is taken at its own size");
  } else if (name === undefined) {
    report(
      "sheetwright shape",
      "option-missing",
      "the name of the shape is missing. Give it, such as sheetwright shape heart --size 3in; --list names them all.",
    );
  } else {
    const shape = shapeOf(name, unit, { value, all, isGiven, report });
    if (shape !== null) what = { kind: "shape", shape };
  }

  const grow = readGrow(value("grow"), unit, report);
  const marks = oneOf("marks", ["dashes", "holes"] as const, "dashes");
  if (isGiven("marks") && !isGiven("stitched") && !isList)
    report("--marks", "no-meaning", "this has no meaning without --stitched. Give that too.");
  const inset = readInset(value("stitched"), unit, report);
  const out = readOut(value("out"), isGiven("out"), report);
  for (const key of ["lines", "rulers", "force"] as const)
    if (written[key] === true && out === null && !isList)
      report(
        shapeOptionName(key),
        "no-meaning",
        "this has no meaning without --out, the file. Give that too.",
      );

  const order = (fault: Fault): number => {
    const { place } = fault;
    return "option" in place
      ? SHAPE_OPTION_KEYS.findIndex((key) => shapeOptionName(key) === place.option)
      : -1;
  };
  const faults = [...found].sort((a, b) => order(a) - order(b));
  if (what === null || faults.length > 0) return { request: null, faults };
  return {
    faults,
    request: {
      what,
      grow,
      stitched: isGiven("stitched") ? { inset, marks } : null,
      out,
      lines: written.lines === true,
      rulers: written.rulers === true,
      unit,
      json: written.json === true,
      force: written.force === true,
    },
  };
}

interface Reading {
  readonly value: (key: ShapeOptionKey) => string | undefined;
  readonly all: (key: ShapeOptionKey) => readonly string[];
  readonly isGiven: (key: ShapeOptionKey) => boolean;
  readonly report: (option: string, code: string, message: string) => void;
}

function shapeOf(name: string, unit: Unit, { value, all, isGiven, report }: Reading): Shape | null {
  const needed = (key: "size" | "windowSize"): string | null => {
    const text = value(key);
    if (text !== undefined && text.trim() !== "" && !text.startsWith("--")) return text;
    const { flags, example } = SHAPE_OPTIONS[key];
    const wrong = text === undefined ? "missing" : `found ${quote(text)} where its value should be`;
    report(
      shapeOptionName(key),
      "option-missing",
      `${wrong}. Give ${flags}, such as ${shapeOptionName(key)} ${example}.`,
    );
    return null;
  };
  // A shape that is not known has no size that could be missing.
  const size = needed("size");
  const named = { name: "sheetwright shape", size: "--size", set: "--set" };
  const outer = readShape(
    { name, size: size ?? "1in", set: all("set") },
    named,
    unit,
    size === null ? without(report, "--size") : report,
  );
  const windowName = value("window");
  if (windowName === undefined) {
    for (const key of ["windowSize", "windowSet"] as const)
      if (isGiven(key))
        report(
          shapeOptionName(key),
          "no-meaning",
          "this has no meaning without --window, the name of a shape.",
        );
    return size === null ? null : outer;
  }
  const windowSize = needed("windowSize");
  const ofWindow = { name: "--window", size: "--window-size", set: "--window-set" };
  const window = readShape(
    { name: windowName, size: windowSize ?? "1in", set: all("windowSet") },
    ofWindow,
    unit,
    windowSize === null ? without(report, "--window-size") : report,
  );
  if (outer === null || window === null || size === null || windowSize === null) return null;
  const frame: Shape = { shape: "frame", outer, window, leastBridge: LEAST_BRIDGE };
  try {
    outlineOf(frame);
    return frame;
  } catch (error) {
    if (!(error instanceof ShapeError)) throw error;
    report(
      "--window-size",
      "no-such-shape",
      error.problem.key === "window"
        ? "the window does not fit into the shape. Use a smaller window or a larger shape."
        : shapeFault(error, unit),
    );
    return null;
  }
}

/** Thin frames are warned of; nothing but what is no frame at all is refused: 0.01 mm. */
const LEAST_BRIDGE: Ticks = 16;

/** Faults of a size that stands in for a missing one are none. */
function without(report: Reading["report"], option: string): Reading["report"] {
  return (place, code, message) => {
    if (place !== option) report(place, code, message);
  };
}

function readGrow(text: string | undefined, unit: Unit, report: Reading["report"]): Ticks {
  if (text === undefined) return 0;
  const isIn = /^\s*[-−]/.test(text);
  const read = readLength(isIn ? text.replace(/[-−]/, "") : text, { unit, allowZero: false });
  if ("ticks" in read) return isIn ? -read.ticks : read.ticks;
  report("--grow", read.code, read.message);
  return 0;
}

function readInset(text: string | undefined, unit: Unit, report: Reading["report"]): Ticks {
  const usual = unit === "in" ? TICKS_PER_INCH / 8 : millimetres(3);
  if (text === undefined) return usual;
  const read = readLength(text, { unit, allowZero: false });
  if ("ticks" in read) return read.ticks;
  report("--stitched", read.code, read.message);
  return usual;
}

function readOut(text: string | undefined, isGiven: boolean, report: Reading["report"]): string | null {
  if (!isGiven || text === undefined) return null;
  if (text.trim() === "" || text.startsWith("--")) {
    report(
      "--out",
      "option-missing",
      `found ${quote(text)} where its value should be. Give --out <file>, such as --out heart.svg.`,
    );
    return null;
  }
  if (!/\.svg$/i.test(text)) {
    report(
      "--out",
      "not-a-drawing",
      `${quote(text)} is no drawing by its name, expected one that ends in .svg. Write ${quote(`${text.replace(/\.[a-z0-9]{1,4}$/i, "")}.svg`)}.`,
    );
    return null;
  }
  return text;
}
