import { type NominalSize, type Shape, sizeOf } from "@sheetwright/shapes";
import type { DieSize, Stitched } from "../project.js";
import { nearestWord } from "./nearest-word.js";
import type { ChoiceReading } from "./read-choice.js";
import { areaOf, type BlankRule, blankOf, cutOf, isSameSize, type ReadDie } from "./read-dies.js";
import { type ReadShape, readShapeSize, sayNominal, shapeIn } from "./read-shape.js";
import type { Reading } from "./reading.js";
import { listWords, quote } from "./say-value.js";

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
function nominalOf({ shape, cut }: Pick<DieSize, "shape" | "cut">): NominalSize {
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
  rule: BlankRule,
  path: string,
  reading: Reading,
): Pick<DieSize, "shape" | "cut" | "blank"> | null {
  const nominal = readShapeSize(written, shape.kind, path, reading);
  const one = nominal === null ? null : shapeIn(shape, nominal, path, reading);
  if (one === null || nominal === null) return null;
  const cut = cutOf(one, nominal);
  return { shape: one, cut, blank: blankOf(cut, rule) };
}

/** The same size with stitches instead of its own. */
export function stitchedAs(size: DieSize, stitched: Stitched | null): DieSize {
  return stitched === null ? size : { ...size, stitched };
}
