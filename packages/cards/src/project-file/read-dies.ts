import { inches, millimetres, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import { boxOf, type NominalSize, outlineOf, type Shape } from "@sheetwright/shapes";
import type { DieSize } from "../project.js";
import type { Written } from "./check-structure.js";
import { WIDEST_MARGIN } from "./read-die-machine.js";
import { readLength, readPlainSize } from "./read-measures.js";
import { type ReadShape, readShape, readShapeSize, sayNominal, shapeIn, shapeResized } from "./read-shape.js";
import { readStitched } from "./read-stitched.js";
import type { Reading } from "./reading.js";
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
  usual: BlankRule,
  reading: Reading,
): ReadonlyMap<string, ReadDie | null> {
  return new Map(
    Object.entries(dies ?? {}).map(([name, die]) => [
      name,
      die === undefined ? null : readDie(name, die, usual, pathTo("dies", name), reading),
    ]),
  );
}

function readDie(
  name: string,
  die: WrittenDie,
  usual: BlankRule,
  path: string,
  reading: Reading,
): ReadDie | null {
  if (typeof die === "string") {
    const cut = readPlainSize(die, path, reading);
    return cut === null ? null : { name, sizes: [{ cut, blank: grown(cut, usual.margin) }] };
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
      ? readOneSize(die, shape, usual, path, reading)
      : readSet(die, shape, usual, path, reading);
  if (sizes === null) return null;
  return { name, sizes: sizes.map((size) => (stitched === null ? size : { ...size, stitched })) };
}

/** The sizes of a set, each with the same margin. */
function readSet(
  die: WrittenKeys,
  shape: ReadShape | null,
  usual: BlankRule,
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
  const margin = given ?? usual.margin;
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
    sizes.push(
      one === null
        ? { cut, blank: grown(cut, margin) }
        : { shape: one, cut, blank: blankOf(cut, { ...usual, margin }) },
    );
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

/** Width times height of what a size says. */
export function areaOf(size: NominalSize): number {
  const { width, height } = sidesOf(size);
  return width * height;
}

/** Whether two sizes say the same. */
export function isSameSize(one: NominalSize, other: NominalSize): boolean {
  const [a, b] = [sidesOf(one), sidesOf(other)];
  return a.width === b.width && a.height === b.height;
}

/** The box of what is cut. */
export function cutOf(shape: Shape | null, size: NominalSize): Size {
  if (shape === null) return sidesOf(size);
  const { width, height } = boxOf(outlineOf(shape));
  return { width, height };
}

/** A die of one size: with size and blank nothing is reckoned; else one follows from the other by the margin. */
function readOneSize(
  die: WrittenKeys,
  shape: ReadShape | null,
  usual: BlankRule,
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
  const margin = given ?? usual.margin;
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
  if (cut !== null) {
    const reckoned = one === null ? grown(cut, margin) : blankOf(cut, { ...usual, margin });
    return [{ ...own, cut, blank: reckoned }];
  }
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

/** How large a die blank is that nobody gives the size of. */
export interface BlankRule {
  /** What it has more on each side than its shape. */
  readonly margin: Ticks;
  /** What it is rounded up to, so that it can be cut by marks: boxes of stars and polygons seldom fall on them. */
  readonly precision: Ticks;
}

/** The die blank of what is cut. */
export function blankOf(cut: Size, { margin, precision }: BlankRule): Size {
  const { width, height } = grown(cut, margin);
  const roundedUp = (length: Ticks) => Math.ceil(length / precision) * precision;
  return { width: roundedUp(width), height: roundedUp(height) };
}

/** A size with so much more on each side. */
function grown({ width, height }: Size, margin: Ticks): Size {
  return { width: width + 2 * margin, height: height + 2 * margin };
}
