import type { Choice, Ribbon, Seam } from "../project.js";
import type { Written } from "./check-structure.js";
import { colourSaid } from "./colour-words.js";
import { readColour } from "./colours.js";
import { isExcused } from "./is-excused.js";
import { type ChoiceReading, readChoice } from "./read-choice.js";
import type { WrittenLayer } from "./read-layers.js";
import { readLength } from "./read-measures.js";
import { LONGEST_NAME } from "./read-paper-design.js";
import { readText } from "./reading.js";
import { listWords } from "./say-value.js";
import { pathTo } from "./value-path.js";

/** What of the keys of a seam a join has as well. */
export type WrittenSeamKeys = Exclude<NonNullable<WrittenLayer["seam"]>, string>;

const NO_CHOICE: Choice = { faces: [], text: "" };

/** Quiet colours of ribbons and tapes that name none. Our own choice. */
const RIBBON_TINTS = ["#c98f6b", "#8fa3c4", "#b4727e", "#8db08f", "#b79fc9", "#cdb46a"] as const;

/** Reads what is done about seams. */
export function readSeam(
  seam: WrittenLayer["seam"],
  path: string,
  reading: ChoiceReading,
): Seam | "bare" | null {
  if (seam === undefined) return null;
  if (typeof seam === "string") return seam;
  if (Object.keys(seam).length === 0) {
    const expected = "bare, or { cover: cream, width: 1/2 }";
    const message = `The seam has no keys. Write ${expected}, or leave it out.`;
    reading.faults.report({ code: "missing", path, found: seam, expected, message });
  }
  return readSeamKeys(seam, path, reading);
}

/** Reads the keys that say what is done about seams. */
export function readSeamKeys(keys: WrittenSeamKeys, path: string, reading: ChoiceReading): Seam {
  const at = (key: keyof WrittenSeamKeys) => pathTo(path, key);
  const gap = readLength(keys.gap, at("gap"), reading, { allowZero: true });
  const width = readLength(keys.width, at("width"), reading);
  const colour = readColour(keys.colour, at("colour"), reading);
  const named = (["cover", "ribbon", "tape", "bare"] as const).filter((key) => key in keys);
  const [kind, other] = named;
  if (kind !== undefined && other !== undefined) {
    const message = `A seam is covered by one thing or left bare, and here are ${kind} and ${other}. Leave one of the two out.`;
    reading.faults.report({
      code: "contradiction",
      path: at(other),
      found: other,
      expected: "one of cover, ribbon, tape and bare",
      message,
    });
  }
  const covers = kind !== undefined && kind !== "bare";
  if (covers && !("width" in keys) && !isExcused("width", path, keys, reading.faults)) {
    const expected = "a length, such as 1/8, 8 1/2 or 3 mm";
    const message = `The key "width" is missing. Write ${expected}: how wide the ${kind} is.`;
    reading.faults.report({ code: "missing", path: at("width"), expected, message });
  }
  if (!covers) refuse("width", "is the width of what covers the seam, and nothing does", keys, path, reading);
  if (kind !== "ribbon" && kind !== "tape")
    refuse("colour", "is the colour of a ribbon or a tape, and here is none", keys, path, reading);
  return {
    cover:
      kind === undefined || kind === "bare"
        ? (kind ?? null)
        : kind === "cover"
          ? (readChoice(keys.cover, at("cover"), reading) ?? NO_CHOICE)
          : readRibbon(kind, keys[kind], colour, at(kind), reading),
    width: width ?? (covers ? 1 : 0),
    ...(gap === null || gap === 0 ? {} : { gap }),
  };
}

function readRibbon(
  kind: Ribbon["kind"],
  value: Written<string | number | boolean> | undefined,
  colour: string | null,
  path: string,
  reading: ChoiceReading,
): Ribbon {
  const name = readText(value, path, reading, LONGEST_NAME) ?? kind;
  let sum = 0;
  for (const letter of name) sum += letter.codePointAt(0) ?? 0;
  const tint = RIBBON_TINTS[sum % RIBBON_TINTS.length] ?? RIBBON_TINTS[0];
  return { kind, name, colour: colour ?? colourSaid(name) ?? tint };
}

function refuse(
  key: "width" | "colour",
  why: string,
  keys: WrittenSeamKeys,
  path: string,
  { faults }: ChoiceReading,
): void {
  if (!(key in keys)) return;
  const others = listWords(key === "width" ? ["cover", "ribbon", "tape"] : ["ribbon", "tape"], "or");
  faults.report({
    code: "contradiction",
    path: pathTo(path, key),
    found: keys[key],
    expected: `no ${key}`,
    message: `The key ${key} ${why}. Leave it out, or name the ${others}.`,
  });
}
