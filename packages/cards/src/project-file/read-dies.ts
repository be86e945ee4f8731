import { inches, millimetres, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import { boxOf, type NominalSize, outlineOf, type Shape, sizeOf } from "@sheetwright/shapes";
import type { DieSize, Stitched } from "../project.js";
import type { Written } from "./check-structure.js";
import { nearestWord } from "./nearest-word.js";
import type { ChoiceReading } from "./read-choice.js";
import { WIDEST_MARGIN } from "./read-die-machine.js";
import { readLength, readPlainSize } from "./read-measures.js";
import { type ReadShape, readShape, readShapeSize, sayNominal, shapeIn, shapeResized } from "./read-shape.js";
import { readStitched } from "./read-stitched.js";
import type { Reading } from "./reading.js";
import { listWords, quote } from "./say-value.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

/** A die by its name. */
export interface ReadDie {
  readonly name: string;
  /** Its sizes, in the order of the file; never empty. */
  readonly sizes: readonly DieSize[];
}

type WrittenDie = Written<NonNullable<ProjectFile["dies"]>[string]>;
type WrittenKeys = Exclude<WrittenDie, string>;

/** What each die of a set is larger than the one before: common practice, no source. */
const STEP: Readonly<Record<Unit, Ticks>> = { in: inches(1 / 4), mm: millimetres(6) };

/** The most sizes of one die. */
const MOST_SIZES = 100;

/** Reads the dies; one that could not be read is `null`, and its faults are told. */
export function readDies(
  dies: Written<ProjectFile["dies"]>,
  margin: Ticks,
  reading: Reading,
): ReadonlyMap<string, ReadDie | null> {
  return new Map(
    Object.entries(dies ?? {}).map(([name, die]) => [
      name,
      die === undefined ? null : readDie(name, die, margin, pathTo("dies", name), reading),
    ]),
  );
}

function readDie(
  name: string,
  die: WrittenDie,
  margin: Ticks,
  path: string,
  reading: Reading,
): ReadDie | null {
  if (typeof die === "string") {
    const cut = readPlainSize(die, path, reading);
    return cut === null ? null : { name, sizes: [{ cut, blank: grown(cut, margin) }] };
  }
  const shape = readShape(die.shape, pathTo(path, "shape"), reading);
  const stitched = readStitched(die.stitched, "die", pathTo(path, "stitched"), reading);
  if (stitched !== null && die.shape === undefined) {
    const message =
      "Where the stitches of this die lie follows from its shape. Give it one, such as shape: circle.";
    const expected = "a shape, such as shape: circle";
    reading.faults.report({ code: "missing", path: pathTo(path, "shape"), expected, message });
  }
  if (!reading.faults.isSound(path)) return null;
  const sizes =
    die.sizes === undefined
      ? readOneSize(die, shape, margin, path, reading)
      : readSet(die, shape, margin, path, reading);
  if (sizes === null) return null;
  return { name, sizes: sizes.map((size) => (stitched === null ? size : { ...size, stitched })) };
}

/** The sizes of a set, each with the same margin. */
function readSet(
  die: WrittenKeys,
  shape: ReadShape | null,
  usual: Ticks,
  path: string,
  reading: Reading,
): readonly DieSize[] | null {
  const { faults } = reading;
  for (const key of ["size", "blank"] as const) {
    if (die[key] === undefined) continue;
    const why = key === "size" ? "sizes lists all that it has" : "a set has a blank for each of its sizes";
    const instead = key === "size" ? "Leave one of the two out." : "Give it a margin instead.";
    const at = pathTo(path, key);
    const message = `${key} does not go with sizes: ${why}. ${instead}`;
    faults.report({ code: "contradiction", path: at, found: die[key], expected: `no ${key}`, message });
  }
  const at = pathTo(path, "sizes");
  const given = readLength(die.margin, pathTo(path, "margin"), reading, {
    allowZero: true,
    longest: WIDEST_MARGIN,
  });
  const nominal = readNominalSizes(die.sizes, shape, at, reading);
  if (!faults.isSound(path) || nominal === null) return null;
  const margin = given ?? usual;
  const sizes: DieSize[] = [];
  let smallest: Shape | null = null;
  for (const { size, path: sizePath } of nominal) {
    let one: Shape | null = null;
    if (shape !== null) {
      one =
        smallest === null
          ? shapeIn(shape, size, sizePath, reading)
          : shapeResized(smallest, size, shape, sizePath, reading);
      if (one === null) return null;
      smallest ??= one;
    }
    const cut = cutOf(one, size);
    sizes.push({ ...(one === null ? {} : { shape: one }), cut, blank: grown(cut, margin) });
  }
  return sizes;
}

interface NominalAt {
  readonly size: NominalSize;
  readonly path: string;
}

/** The sizes that a set has, the smallest first. */
function readNominalSizes(
  written: WrittenKeys["sizes"],
  shape: ReadShape | null,
  path: string,
  reading: Reading,
): readonly NominalAt[] | null {
  const kind = shape?.kind ?? null;
  if (written === undefined) return null;
  if (isList(written)) {
    const all = written.flatMap((one, index): readonly NominalAt[] => {
      const at = pathTo(path, index);
      const size = readShapeSize(one, kind, at, reading);
      return size === null ? [] : [{ size, path: at }];
    });
    const sorted = [...all].sort((a, b) => areaOf(a.size) - areaOf(b.size));
    for (const [index, { size, path: at }] of sorted.entries()) {
      const before = sorted[index - 1];
      if (before === undefined || !isSameSize(before.size, size)) continue;
      const said = sayNominal(size, reading.unit);
      const message = `The size ${said} is here twice. Leave one out.`;
      reading.faults.report({ code: "twice", path: at, found: said, expected: "each size once", message });
    }
    return sorted.length === 0 ? null : sorted;
  }
  const from = readShapeSize(written.from, kind, pathTo(path, "from"), reading);
  const to = readShapeSize(written.to, kind, pathTo(path, "to"), reading);
  const step = readLength(written.step, pathTo(path, "step"), reading) ?? STEP[reading.unit];
  if (from === null || to === null || !reading.faults.isSound(path)) return null;
  const [first, last] = [sidesOf(from), sidesOf(to)];
  const wider = last.width - first.width;
  const isRight = wider >= 0 && wider === last.height - first.height && wider % step === 0;
  const count = wider / step + 1;
  if (!isRight || count > MOST_SIZES) {
    const { unit } = reading;
    const said = `from ${sayNominal(from, unit)} to ${sayNominal(to, unit)} by ${sayNominal({ diameter: step }, unit)}`;
    const expected =
      count > MOST_SIZES && isRight
        ? `at most ${MOST_SIZES} sizes`
        : "a largest size that is some whole steps larger than the smallest, both ways";
    const message = `Found sizes ${said}, expected ${expected}. Change to, or list the sizes one by one.`;
    reading.faults.report({
      code: "contradiction",
      path: pathTo(path, "to"),
      found: said,
      expected,
      message,
    });
    return null;
  }
  return Array.from({ length: count }, (_, index) => {
    const more = index * step;
    const size: NominalSize =
      "diameter" in from
        ? { diameter: from.diameter + more }
        : { width: from.width + more, height: from.height + more };
    return { size, path: pathTo(path, index === 0 ? "from" : "to") };
  });
}

function isList<Item>(value: readonly Item[] | object): value is readonly Item[] {
  return Array.isArray(value);
}

function sidesOf(size: NominalSize): Size {
  return "diameter" in size ? { width: size.diameter, height: size.diameter } : size;
}

function areaOf(size: NominalSize): number {
  const { width, height } = sidesOf(size);
  return width * height;
}

function isSameSize(one: NominalSize, other: NominalSize): boolean {
  const [a, b] = [sidesOf(one), sidesOf(other)];
  return a.width === b.width && a.height === b.height;
}

/** The box of what is cut. */
function cutOf(shape: Shape | null, size: NominalSize): Size {
  if (shape === null) return sidesOf(size);
  const { width, height } = boxOf(outlineOf(shape));
  return { width, height };
}

/** A die of one size: with size and blank nothing is reckoned; else one follows from the other by the margin. */
function readOneSize(
  die: WrittenKeys,
  shape: ReadShape | null,
  usual: Ticks,
  path: string,
  reading: Reading,
): readonly DieSize[] | null {
  const { faults } = reading;
  const sizePath = pathTo(path, "size");
  const nominal = readShapeSize(die.size, shape?.kind ?? null, sizePath, reading);
  const blank = readPlainSize(die.blank, pathTo(path, "blank"), reading);
  const range = { allowZero: true, longest: WIDEST_MARGIN };
  const given = readLength(die.margin, pathTo(path, "margin"), reading, range);
  if (!faults.isSound(path)) return null;
  const margin = given ?? usual;
  if (nominal === null && (blank === null || shape !== null)) {
    const expected =
      shape === null
        ? "size: 3 x 3, the shape that it cuts, or blank: 3 1/2 x 3 1/2"
        : "size: 3 or sizes: { from: 1, to: 4, step: 1/4 }";
    const message =
      shape === null
        ? `This die has neither a size nor a blank. Write ${expected}.`
        : `This die has a shape and no size. Write ${expected}; for what is not as wide as high, size: 2 x 3.`;
    faults.report({ code: "missing", path, expected, message });
    return null;
  }
  const one = shape === null || nominal === null ? null : shapeIn(shape, nominal, sizePath, reading);
  if (shape !== null && one === null) return null;
  const cut = nominal === null ? null : cutOf(one, nominal);
  const own = one === null ? {} : { shape: one };
  if (cut !== null && blank !== null) {
    if (given !== null) {
      const message =
        "Size and blank say how much the die blank has more on each side. Leave margin out, or one of the two.";
      const at = pathTo(path, "margin");
      faults.report({ code: "contradiction", path: at, found: die.margin, expected: "no margin", message });
      return null;
    }
    if (cut.width <= blank.width && cut.height <= blank.height) return [{ ...own, cut, blank }];
    const message =
      "The die blank is smaller than the shape that is cut from it. Is width x height the other way round?";
    const at = pathTo(path, "blank");
    faults.report({
      code: "too-large",
      path: at,
      found: die.blank,
      expected: `at least ${die.size}`,
      message,
    });
    return null;
  }
  if (cut !== null) return [{ ...own, cut, blank: grown(cut, margin) }];
  const whole = blank as Size;
  const left = grown(whole, -margin);
  if (left.width > 0 && left.height > 0) return [{ cut: left, blank: whole }];
  const message =
    "Nothing is left of this die blank inside its margin. Give the size of the shape as well, or a smaller margin.";
  const at = pathTo(path, "blank");
  faults.report({
    code: "part-vanishes",
    path: at,
    found: die.blank,
    expected: "more than its margin",
    message,
  });
  return null;
}

/** A size with so much more on each side. */
export function grown({ width, height }: Size, margin: Ticks): Size {
  return { width: width + 2 * margin, height: height + 2 * margin };
}

/** Finds the die that a layer names; `null` where there is none, or its fault is told elsewhere. */
export function readDieName(
  die: string | number | undefined,
  path: string,
  { faults, dies, writtenAt }: ChoiceReading,
): ReadDie | null {
  // Where it is not clear which dies there are, any name may be that of one.
  if (die === undefined || dies === null) return null;
  const name = typeof die === "string" ? die.trim() : (writtenAt(path) ?? String(die));
  const found = dies.get(name);
  if (found !== undefined) return found;
  const names = [...dies.keys()];
  const suggestion = nearestWord(name, names);
  const meant = suggestion === null ? "" : ` Did you mean ${suggestion}?`;
  const help =
    names.length === 0
      ? "There is none: name it under dies, with the size of what it cuts, such as star: 3 x 3."
      : names.length === 1
        ? `The only die is ${names[0]}.`
        : `The dies are ${listWords(names, "and")}.`;
  faults.report({
    code: "not-a-word",
    path,
    found: die,
    expected: names.length === 0 ? "a die named under dies" : `one of ${listWords(names, "or")}`,
    message: `No die is called ${quote(name)}.${meant} ${help}`,
    suggestion,
  });
  return null;
}

/** The size of a die that a layer asks for; `null` where its fault is told. */
export function readDieSize(
  { name, sizes }: ReadDie,
  written: number | string | undefined,
  path: string,
  reading: Reading,
): DieSize | null {
  const { faults, unit } = reading;
  const [only, ...others] = sizes;
  if (only === undefined) return null;
  const said = sizes.map((size) => sayNominal(nominalOf(size), unit));
  // A long list is told by its ends.
  const all =
    said.length > 6 ? `${said.length} sizes from ${said[0]} to ${said.at(-1)}` : listWords(said, "and");
  if (written === undefined) {
    if (others.length === 0) return only;
    const expected = `one of ${said.length > 6 ? "" : "the sizes "}${all}`;
    const message = `The die ${name} has several sizes, and here it is not said which. Write size: with ${expected}.`;
    faults.report({ code: "missing", path, expected, message });
    return null;
  }
  const kind = only.shape === undefined ? null : outerKind(only.shape);
  const wanted = readShapeSize(written, kind, path, reading);
  if (wanted === null) return null;
  const found = sizes.find((size) => isSameSize(nominalOf(size), wanted));
  if (found !== undefined) return found;
  const near = [...sizes].sort((a, b) => differenceOf(a, wanted) - differenceOf(b, wanted))[0];
  const nearest = sayNominal(nominalOf(near ?? only), unit);
  const suggestion = nearest.replace(/ (in|mm)$/, "");
  const help =
    others.length === 0
      ? `it cuts ${all}. Leave size out, or write that.`
      : `it comes in ${all}. The nearest is ${nearest}.`;
  faults.report({
    code: "not-a-size",
    path,
    found: written,
    expected: said.length > 6 ? `one of ${all}` : listWords(said, "or"),
    message: `There is no die ${name} of ${sayNominal(wanted, unit)}: ${help}`,
    suggestion,
  });
  return null;
}

/** What a size of a die is called by. */
export function nominalOf({ shape, cut }: Pick<DieSize, "shape" | "cut">): NominalSize {
  return shape === undefined ? cut : sizeOf(shape);
}

function differenceOf(size: DieSize, wanted: NominalSize): number {
  return Math.abs(areaOf(nominalOf(size)) - areaOf(wanted));
}

function outerKind(shape: Shape): Exclude<Shape["shape"], "frame"> {
  return shape.shape === "frame" ? outerKind(shape.outer) : shape.shape;
}

/** A size of a shape that no die cuts; `null` where its fault is told. */
export function sizeOfShape(
  shape: ReadShape,
  written: number | string | undefined,
  margin: Ticks,
  path: string,
  reading: Reading,
): Pick<DieSize, "shape" | "cut" | "blank"> | null {
  const nominal = readShapeSize(written, shape.kind, path, reading);
  const one = nominal === null ? null : shapeIn(shape, nominal, path, reading);
  if (one === null || nominal === null) return null;
  const cut = cutOf(one, nominal);
  return { shape: one, cut, blank: grown(cut, margin) };
}

/** The same size with stitches instead of its own. */
export function stitchedAs(size: DieSize, stitched: Stitched | null): DieSize {
  return stitched === null ? size : { ...size, stitched };
}
