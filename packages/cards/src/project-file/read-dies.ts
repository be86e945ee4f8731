import { inches, millimetres, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import type { Written } from "./check-structure.js";
import { nearestWord } from "./nearest-word.js";
import type { ChoiceReading } from "./read-choice.js";
import { readLength, readPlainSize } from "./read-measures.js";
import type { Reading } from "./reading.js";
import { listWords, quote } from "./say-value.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

/** A die by its name. */
export interface ReadDie {
  readonly name: string;
  /** The shape that it cuts: the width and height of its outline. */
  readonly cut: Size;
  /** The rectangle of paper that it cuts from. */
  readonly blank: Size;
}

/** What a die blank has more on each side: common practice, no source. */
const MARGIN: Readonly<Record<Unit, Ticks>> = { in: inches(1 / 4), mm: millimetres(6) };

/** No die has a wider one. */
const WIDEST_MARGIN = inches(6);

/** Reads the dies; one that could not be read is `null`, and its faults are told. */
export function readDies(
  dies: Written<ProjectFile["dies"]>,
  reading: Reading,
): ReadonlyMap<string, ReadDie | null> {
  return new Map(
    Object.entries(dies ?? {}).map(([name, die]) => [
      name,
      readDie(name, die, pathTo("dies", name), reading),
    ]),
  );
}

function readDie(
  name: string,
  die: Written<NonNullable<ProjectFile["dies"]>[string]> | undefined,
  path: string,
  reading: Reading,
): ReadDie | null {
  if (die === undefined) return null;
  const { faults, unit } = reading;
  if (typeof die === "string") {
    const cut = readPlainSize(die, path, reading);
    return cut === null ? null : { name, cut, blank: grown(cut, MARGIN[unit]) };
  }
  const cut = readPlainSize(die.size, pathTo(path, "size"), reading);
  const blank = readPlainSize(die.blank, pathTo(path, "blank"), reading);
  const range = { allowZero: true, longest: WIDEST_MARGIN };
  const given = readLength(die.margin, pathTo(path, "margin"), reading, range);
  if (!faults.isSound(path)) return null;
  const margin = given ?? MARGIN[unit];
  if (cut === null && blank === null) {
    const expected = "size: 3 x 3, the shape that it cuts, or blank: 3 1/2 x 3 1/2";
    const message = `This die has neither a size nor a blank. Write ${expected}.`;
    faults.report({ code: "missing", path, expected, message });
    return null;
  }
  if (cut !== null && blank !== null) {
    if (given !== null) {
      const message =
        "Size and blank say how much the die blank has more on each side. Leave margin out, or one of the two.";
      const at = pathTo(path, "margin");
      faults.report({ code: "contradiction", path: at, found: die.margin, expected: "no margin", message });
      return null;
    }
    if (cut.width <= blank.width && cut.height <= blank.height) return { name, cut, blank };
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
  if (cut !== null) return { name, cut, blank: grown(cut, margin) };
  const whole = blank as Size;
  const left = grown(whole, -margin);
  if (left.width > 0 && left.height > 0) return { name, cut: left, blank: whole };
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

function grown({ width, height }: Size, margin: Ticks): Size {
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
