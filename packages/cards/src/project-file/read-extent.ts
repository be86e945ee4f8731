import { inches, millimetres, type Ticks, type Unit } from "@sheetwright/measure";
import type { Along, Extent, Place, Sides } from "../project.js";
import type { RectangularLayer, WrittenLayer } from "./read-layers.js";
import { readLength, readPlainSize } from "./read-measures.js";
import type { Reading } from "./reading.js";
import { listWords } from "./say-value.js";
import { pathTo } from "./value-path.js";

/** The border of a layer that says nothing else: the classic border of the trade (common practice, no source). */
export const CLASSIC_BORDER: Readonly<Record<Unit, Ticks>> = { in: inches(1 / 8), mm: millimetres(3) };

/** Keys that say where a layer of its own size lies, by the axis. */
const AXES = { x: ["left", "right"], y: ["top", "bottom"] } as const;

/** Where the middle of a layer lies for each word of `line`. */
const LINES = {
  "left third": { axis: "x", third: 1 },
  "right third": { axis: "x", third: 2 },
  "upper third": { axis: "y", third: 1 },
  "lower third": { axis: "y", third: 2 },
} as const;

/** Reads how large a layer is: up to a border, or of a size of its own at a place. */
export function readExtent(layer: RectangularLayer, path: string, reading: Reading): Extent {
  const place = readPlace(layer, path, reading);
  const size = readPlainSize(layer.size, pathTo(path, "size"), reading);
  const border = readBorder(layer.border, pathTo(path, "border"), reading);
  if ("size" in layer && "border" in layer) {
    const message =
      "The layer has a border and a size, and either says how large it is. Leave one of the two out.";
    reading.faults.report({
      code: "contradiction",
      path: pathTo(path, "size"),
      found: layer.size,
      expected: "border or size",
      message,
    });
  }
  if (size !== null) return { by: "size", size, place };
  if (!("size" in layer))
    refusePlace(layer, ["left", "right", "top", "bottom", "line"], path, reading, PLACE_NEEDS_SIZE);
  return { by: "border", border };
}

const PLACE_NEEDS_SIZE =
  "says where a layer of its own size lies, and this one fills what carries it up to a border. Give it a size, or set the sides of the border.";

/** Reports keys of a place where they say nothing. */
export function refusePlace(
  layer: WrittenLayer,
  keys: readonly (keyof WrittenLayer)[],
  path: string,
  { faults }: Reading,
  why: string,
): void {
  for (const key of keys) {
    if (layer[key] === undefined) continue;
    faults.report({
      code: "contradiction",
      path: pathTo(path, key),
      found: layer[key],
      expected: `no ${key}`,
      message: `The key ${key} ${why}`,
    });
  }
}

/** Reads a border: one for all sides, a side each, or the whole difference in size. */
function readBorder(border: WrittenLayer["border"], path: string, reading: Reading): Sides {
  const read = (value: string | number | undefined, at: string) =>
    readLength(value, at, reading, { allowZero: true });
  if (border === undefined) return allSides(CLASSIC_BORDER[reading.unit]);
  if (typeof border !== "object") return allSides(read(border, path) ?? 0);
  const keys = Object.keys(border);
  if (keys.length === 0) {
    const message =
      "The border names no side. Write a length for all sides, such as border: 1/8, or sides, such as { top: 1/4 }.";
    reading.faults.report({ code: "missing", path, found: border, expected: "at least one side", message });
  }
  const total = read(border.total, pathTo(path, "total"));
  const sides = read(border.sides, pathTo(path, "sides")) ?? 0;
  const side = (key: keyof Sides) => read(border[key], pathTo(path, key)) ?? sides;
  const each = { left: side("left"), right: side("right"), top: side("top"), bottom: side("bottom") };
  if (!("total" in border)) return each;
  if (keys.length > 1) {
    const others = keys.filter((key) => key !== "total");
    const message = `total is the whole difference in size, half of it on each side, so it goes without ${listWords(others, "and")}. Leave one or the other out.`;
    reading.faults.report({
      code: "contradiction",
      path: pathTo(path, "total"),
      found: border.total,
      expected: "total alone",
      message,
    });
  }
  const half = Math.floor((total ?? 0) / 2);
  const rest = (total ?? 0) - half;
  return { left: half, right: rest, top: half, bottom: rest };
}

function allSides(border: Ticks): Sides {
  return { left: border, right: border, top: border, bottom: border };
}

/** Reads where a layer lies: a distance from one edge or a line on each axis, else the middle. */
export function readPlace(layer: WrittenLayer, path: string, reading: Reading): Place {
  const lines = readLines(layer.line, pathTo(path, "line"), reading);
  return {
    x: readAlong("x", layer, lines, path, reading),
    y: readAlong("y", layer, lines, path, reading),
  };
}

type Lines = Readonly<Partial<Record<"x" | "y", { readonly word: string; readonly third: 1 | 2 }>>>;

function readLines(line: WrittenLayer["line"], path: string, { faults }: Reading): Lines {
  const words = typeof line === "string" ? [line] : (line ?? []);
  const lines: { -readonly [Axis in keyof Lines]: Lines[Axis] } = {};
  for (const [index, word] of words.entries()) {
    if (word === undefined) continue;
    const { axis, third } = LINES[word];
    const other = lines[axis]?.word;
    if (other !== undefined) {
      const at = pathTo(path, index);
      const message =
        other === word
          ? `${word} stands here twice. Keep one.`
          : `The middle cannot lie on the ${other} and on the ${word}. Keep one, or one that runs the other way.`;
      faults.report({
        code: other === word ? "twice" : "contradiction",
        path: at,
        found: word,
        expected: "a line a direction",
        message,
      });
    }
    lines[axis] ??= { word, third };
  }
  return lines;
}

function readAlong(
  axis: "x" | "y",
  layer: WrittenLayer,
  lines: Lines,
  path: string,
  reading: Reading,
): Along {
  const [startKey, endKey] = AXES[axis];
  const read = (key: typeof startKey | typeof endKey) =>
    readLength(layer[key], pathTo(path, key), reading, { allowZero: true });
  const start = read(startKey);
  const end = read(endKey);
  const line = lines[axis];
  const given = [startKey, endKey].filter((key) => layer[key] !== undefined);
  const second = line === undefined ? given[1] : given[0];
  if (second !== undefined) {
    const first = line === undefined ? startKey : `line: ${line.word}`;
    const message = `The layer's place is given twice in one direction, by ${first} and by ${second}. Leave one of the two out.`;
    reading.faults.report({
      code: "contradiction",
      path: pathTo(path, line === undefined ? second : "line"),
      found: line?.word ?? layer[second],
      expected: `${startKey}, ${endKey} or a line`,
      message,
    });
  }
  if (line !== undefined) return { from: "third", third: line.third };
  if (start !== null) return { from: "start", distance: start };
  return end === null ? { from: "middle" } : { from: "end", distance: end };
}
