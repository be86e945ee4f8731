/** What only the trade knows, in sentences: how the sheet lies, where to score, which edge is the top. */

import { formatLength, formatSize, type Unit } from "@sheetwright/measure";
import type { Size } from "@sheetwright/packing";
import type { SheetMarks } from "@sheetwright/planner";
import { hasScores, hasSlits, type ListedMarks } from "../layout/list-trade-marks.js";
import { unbroken } from "../text/break-lines.js";
import { DIE_HOW, dieInWords, STRIP_HOW, stripInWords } from "../wording/die-in-words.js";
import { listed, scoresInWords } from "../wording/score-in-words.js";
import { slitsInWords } from "../wording/slit-in-words.js";

/**
 * Says which way the grain runs and how to lay the sheet down; nothing without marks. That the grain is not known, or not
 * there, is said only where something is folded.
 */
export function sheetSentences(
  marks: SheetMarks | null,
  sheet: Size,
  isFolded: boolean,
  unit: Unit,
): readonly string[] {
  if (marks === null) return [];
  const long = (length: number) => unbroken(formatLength(length, { unit }));
  // The bend test as paper merchants and handbooks of bookbinding describe it.
  const unknown = "Grain unknown. Bend test: paper bends more easily when the bend runs along its grain.";
  const assumed = marks.grainIsAssumed === true ? " (assumed: try the bend test)" : "";
  const grain: Readonly<Record<SheetMarks["grain"], readonly string[]>> = {
    width: [`Grain along the width, ${long(sheet.width)}${assumed}.`],
    height: [`Grain along the height, ${long(sheet.height)}${assumed}.`],
    unknown: isFolded ? [unknown] : [],
    none: isFolded ? ["Paper without grain."] : [],
  };
  const pattern: Readonly<Record<SheetMarks["pattern"], readonly string[]>> = {
    none: [],
    "two-way": ["Pattern in two directions: lay the sheet with its pattern upright, either way up."],
    "one-way": ["Pattern in one direction: lay the sheet with the top of its pattern up."],
  };
  return [...grain[marks.grain], ...pattern[marks.pattern]];
}

/** Says where to score each kind of piece; the edges are those of the piece as it lies on the sheet. */
export function scoreSentences(marks: readonly ListedMarks[], unit: Unit): readonly string[] {
  const scored = marks.filter(hasScores);
  if (scored.length === 0) return [];
  const sentences = scored.map(
    (entry) => `Score ${nameOf(entry, unit)} ${scoresInWords(entry, unit, "its")}.`,
  );
  // Common practice: the ridge that a score raises goes to the inside of the fold.
  return [...sentences, "Fold with the bump of the ridge inside."];
}

/** Says where to cut the slits of each kind of piece, with what, and what to mind. */
export function slitSentences(marks: readonly ListedMarks[], unit: Unit): readonly string[] {
  const slit = marks.filter(hasSlits);
  if (slit.length === 0) return [];
  return [
    ...slit.map((entry) => `Slit ${nameOf(entry, unit)} ${slitsInWords(entry.slits, unit, "its")}.`),
    SLIT_HOW,
  ];
}

/** Common practice, no source. */
const SLIT_HOW =
  "A slit starts and stops inside the piece, so no trimmer cuts it edge to edge: cut it with a craft knife along a metal " +
  "ruler, on a cutting mat, before you fold. Hold the ruler with your fingers well back from its edge, cut beside your " +
  "body and not towards it, take two light passes rather than a hard one, and cap the knife.";

/** Says which pieces a die cuts its shape from, from a strip where, and what to mind. */
export function dieSentences(marks: readonly ListedMarks[], unit: Unit): readonly string[] {
  const own = marks.filter(({ die }) => die !== null && die.name !== null);
  if (own.length === 0) return [];
  const isStrip = own.some(({ shapesAt }) => shapesAt !== null);
  return [...own.flatMap((entry) => shapeSentence(entry, unit)), DIE_HOW, ...(isStrip ? [STRIP_HOW] : [])];
}

/** Says which pieces a cutting machine or scissors cut their shape from. */
export function shapeSentences(marks: readonly ListedMarks[], unit: Unit): readonly string[] {
  return marks.filter(({ die }) => die?.name === null).flatMap((entry) => shapeSentence(entry, unit));
}

function shapeSentence(entry: ListedMarks, unit: Unit): readonly string[] {
  const { name, die, shapesAt } = entry;
  if (die === null) return [];
  if (shapesAt === null) return [`Cut each ${unbroken(name)} by ${dieInWords(die, unit)}.`];
  const words = dieInWords(die, unit);
  return [
    `Cut ${shapesAt.length} from each ${nameOf(entry, unit)}, ${stripInWords(shapesAt, unit)}, by ${words}.`,
  ];
}

/** Says which edge is the top of pieces whose pattern runs one way, and which pieces show the back of their paper. */
export function topSentences(marks: readonly ListedMarks[]): readonly string[] {
  const named = (holds: (entry: ListedMarks) => boolean) =>
    listed([...new Set(marks.filter(holds).map(({ name }) => unbroken(name)))]);
  const markOn = (edge: string, names: string) =>
    `The ${edge} edge as it lies is the top of the pattern; mark it on the side that will not show: ${names}.`;
  const atTop = named(({ tops }) => tops.includes("top"));
  const atRight = named(({ tops }) => tops.includes("right"));
  const backUp = named((entry) => entry.backUp);
  return [
    ...(atTop === "" ? [] : [markOn("top", atTop)]),
    ...(atRight === "" ? [] : [markOn("right", atRight)]),
    ...(backUp === "" ? [] : [`The printed back of the paper shows on the card (back up): ${backUp}.`]),
  ];
}

function nameOf({ name, size, severalForms }: ListedMarks, unit: Unit): string {
  if (!severalForms) return unbroken(name);
  return `${unbroken(name)} (${unbroken(formatSize(size.width, size.height, { unit }))})`;
}
