import { formatLength, formatSize, type Ticks, type Unit } from "@sheetwright/measure";
import {
  boxOf,
  catalogue,
  type NominalSize,
  outlineOf,
  type ParameterEntry,
  resized,
  type Shape,
  ShapeError,
  type ShapeName,
  sizeOf,
} from "@sheetwright/shapes";
import type { Written } from "./check-structure.js";
import { readLength, readPlainSize } from "./read-measures.js";
import type { Reading } from "./reading.js";
import { listWords, sayValue } from "./say-value.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

type WrittenLayer = Written<NonNullable<ProjectFile["cards"][number]["front"]>[number]>;

/** A shape as it is written: its name, or keys. */
export type WrittenShape = WrittenLayer["shape"];

/** A shape without its size. */
export interface ReadShape {
  readonly kind: ShapeName;
  /** Its own parameters, by their names in the catalogue. */
  readonly options: Readonly<Record<string, number | string>>;
  /** What makes a frame of it. */
  readonly window: Shape | null;
  /** Where it stands in the file. */
  readonly path: string;
}

/** Keys of the file that the catalogue calls otherwise. */
const CALLED: Readonly<Record<string, string>> = { scallops: "count", "hole-from-top": "holeFromTop" };
const SIZE_KEYS = ["diameter", "side", "width", "height"];

/** Reads a shape without its size; `null` where its fault is told. */
export function readShape(written: WrittenShape, path: string, reading: Reading): ReadShape | null {
  if (written === undefined) return null;
  const keys = typeof written === "string" ? { kind: written } : written;
  const { kind } = keys;
  if (kind === undefined) return null;
  const options: Record<string, number | string> = {};
  for (const [key, value] of Object.entries(keys)) {
    if (key === "kind" || key === "window" || value === undefined) continue;
    const at = pathTo(path, key);
    const entry = parameterOf(kind, key);
    if (entry === undefined) {
      reportForeign(kind, key, value, at, reading);
      continue;
    }
    const read =
      entry.kind === "length"
        ? readLength(value as string | number, at, reading, { allowZero: true })
        : (value as string | number);
    if (read !== null) options[CALLED[key] ?? key] = read;
  }
  for (const key of requiredOf(kind)) {
    if (key in keys) continue;
    const expected = `how many ${key} it has, such as ${key}: 6`;
    const message = `A ${kind} needs ${key}. Write shape: { kind: ${kind}, ${key}: 6 }.`;
    reading.faults.report({ code: "missing", path: pathTo(path, key), expected, message });
  }
  const window = readWindow(keys.window, pathTo(path, "window"), reading);
  return reading.faults.isSound(path) ? { kind, options, window, path } : null;
}

function readWindow(
  window: Exclude<WrittenShape, string | undefined>["window"],
  path: string,
  reading: Reading,
): Shape | null {
  if (window === undefined) return null;
  const shape = readShape(window.shape, pathTo(path, "shape"), reading);
  if (shape === null) return null;
  const sizePath = pathTo(path, "size");
  const size = readShapeSize(window.size, shape.kind, sizePath, reading);
  return size === null ? null : shapeIn(shape, size, sizePath, reading);
}

function parameterOf(kind: ShapeName, key: string): ParameterEntry | undefined {
  const called = CALLED[key] ?? key;
  if (SIZE_KEYS.includes(called)) return undefined;
  return catalogue.find(({ id }) => id === kind)?.parameters.find((one) => one.key === called);
}

function requiredOf(kind: ShapeName): readonly string[] {
  const { parameters } = catalogue.find(({ id }) => id === kind) ?? { parameters: [] };
  return parameters.flatMap(({ key, default: preset }) =>
    preset === "required" && !SIZE_KEYS.includes(key) ? [key] : [],
  );
}

function reportForeign(
  kind: ShapeName,
  key: string,
  found: unknown,
  path: string,
  { faults }: Reading,
): void {
  const takers = catalogue.filter(({ id }) => parameterOf(id, key) !== undefined).map(({ id }) => id);
  const message = `"${key}" does not go with the shape ${kind}: it belongs to ${listWords(takers, "or")}. Leave it out, or change kind.`;
  faults.report({ code: "contradiction", path, found, expected: `no ${key}`, message });
}

/** Shapes whose size is one length. */
function isRound(kind: ShapeName): boolean {
  return [
    "circle",
    "square",
    "polygon",
    "star",
    "half-circle",
    "scalloped-circle",
    "scalloped-square",
  ].includes(kind);
}

/**
 * Reads how large a shape is, one length or width x height; of no known shape width x height. `null` where its fault is
 * told.
 */
export function readShapeSize(
  written: number | string | undefined,
  kind: ShapeName | null,
  path: string,
  reading: Reading,
): NominalSize | null {
  if (written === undefined) return null;
  const isPair = typeof written === "string" && /[x×*]/i.test(written);
  if (kind === null || !isRound(kind)) {
    if (typeof written === "string" && (isPair || kind === null))
      return readPlainSize(written, path, reading);
    const what = kind === null ? "a layer or a die of no named shape" : withArticle(kind);
    const expected = "width x height, such as 3 x 4";
    const message = `Found ${sayValue(written)}: the size of ${what} is ${expected}.`;
    reading.faults.report({ code: "not-a-size", path, found: written, expected, message });
    return null;
  }
  if (!isPair) {
    const length = readLength(written, path, reading);
    return length === null ? null : { diameter: length };
  }
  const size = readPlainSize(written, path, reading);
  if (size === null || size.width === size.height) return size === null ? null : { diameter: size.width };
  const expected = "one length, such as 3";
  const other = kind === "square" ? "a rectangle" : kind === "circle" ? "an oval" : "another shape";
  const message = `The size of ${withArticle(kind)} is ${expected}, and here are two that differ: ${written}. Leave one out, or take ${other}.`;
  reading.faults.report({ code: "not-a-size", path, found: written, expected, message });
  return null;
}

/** `a star`, `an oval`. */
function withArticle(kind: ShapeName): string {
  return `${/^[aeiou]/.test(kind) ? "an" : "a"} ${kind}`;
}

/** A shape in a size; `null`, with the fault told, where its numbers make none. */
export function shapeIn(
  read: ReadShape,
  size: NominalSize,
  sizePath: string,
  reading: Reading,
): Shape | null {
  const { kind, options, window } = read;
  const outer = sized(kind, options, size);
  const shape: Shape = window === null ? outer : { shape: "frame", outer, window, leastBridge: LEAST_BRIDGE };
  return checkedShape(shape, read, sizePath, reading);
}

/** The same shape in another size: a frame keeps its width. */
export function shapeResized(
  shape: Shape,
  size: NominalSize,
  read: ReadShape,
  sizePath: string,
  reading: Reading,
): Shape | null {
  return checkedShape(resized(shape, size), read, sizePath, reading);
}

/** Bridges that may tear are warned of by a check, so that nothing but the rounding is refused here: 0.01 mm. */
const LEAST_BRIDGE = 16;

function sized(kind: ShapeName, options: ReadShape["options"], size: NominalSize): Shape {
  const across = "diameter" in size ? size.diameter : size.width;
  const sides = kind.endsWith("square") ? { side: across } : "diameter" in size ? { diameter: across } : size;
  // The keys are those of the kind, since every option was looked up in the catalogue.
  return { shape: kind, ...sides, ...options } as unknown as Shape;
}

function checkedShape(
  shape: Shape,
  read: ReadShape,
  sizePath: string,
  { faults, unit }: Reading,
): Shape | null {
  try {
    boxOf(outlineOf(shape));
    return shape;
  } catch (error) {
    if (!(error instanceof ShapeError)) throw error;
    const { key, found, expected, help } = error.problem;
    const written = Object.keys(CALLED).find((name) => CALLED[name] === key) ?? key;
    const isSize = SIZE_KEYS.includes(key) || !(key in read.options || key === "window");
    const path = isSize ? sizePath : pathTo(read.path, written);
    const what = `${withArticle(read.kind)} of ${sayNominal(sizeOf(shape), unit)}`;
    const right = inUnit(expected, unit);
    const isCount = key === "count" || key === "points" || key === "sides";
    const said =
      typeof found === "number" && !isCount ? formatLength(found, { unit }) : inUnit(String(found), unit);
    const told = isSize && SIZE_KEYS.includes(key) ? key : written;
    const message =
      key === "window"
        ? `The window of ${what} does not lie within it. Make the window smaller, or the shape larger.`
        : `${capital(what)} cannot be made so: ${told} is ${said}, and should be ${right}. ${help}`;
    faults.report({ code: "contradiction", path, found: said, expected: right, message });
    return null;
  }
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Says a nominal size: `3 in`, `2 x 3 in`. */
export function sayNominal(size: NominalSize, unit: Unit): string {
  return "diameter" in size
    ? formatLength(size.diameter, { unit })
    : formatSize(size.width, size.height, { unit });
}

/** Says ticks in a text as lengths of a unit. */
function inUnit(text: string, unit: Unit): string {
  const say = (ticks: string) => formatLength(Number(ticks) as Ticks, { unit });
  return text
    .replace(
      /a whole number of ticks from (\d+)(?: ticks \([^)]*\))? to (\d+)(?: ticks \([^)]*\))?/g,
      (_, low, high) => `from ${say(low)} to ${say(high)}`,
    )
    .replace(/(\d+) x (\d+) ticks/g, (_, width, height) =>
      formatSize(Number(width), Number(height), { unit }),
    )
    .replace(/(\d+) ticks(?: \([^)]*\))?/g, (_, ticks) => say(ticks));
}
