import { formatLength, formatSize, type Unit } from "@sheetwright/measure";
import type { FormMarks } from "@sheetwright/planner";
import { spaced, unbroken } from "../text/break-lines.js";
import { listed } from "./score-in-words.js";

type Die = NonNullable<FormMarks["die"]>;

/** A die with the shape that it cuts: the words that tell of it. */
export type DieInWords = Pick<Die, "name" | "cut"> & Partial<Die>;

/**
 * What cuts a piece to its shape, with what it cuts: `the die star, 3 x 3 in`, `the die disc, 3 in across, stitched; then
 * cut straight, 1 1/2 in off the bottom`, `a cutting machine or scissors, a heart, 3 x 2 3/4 in`.
 * A line breaks between words that belong together only where it must.
 */
export function dieInWords({ name, cut, shape, across, stitches, trim }: DieInWords, unit: Unit): string {
  const by =
    name === null ? "a cutting machine or scissors" : unbroken(`the die ${name.replace(/\s+/g, " ")}`);
  const what = name === null && shape !== undefined ? `, ${unbroken(withArticle(shape))}` : "";
  const size =
    across === undefined
      ? unbroken(formatSize(cut.width, cut.height, { unit }))
      : unbroken(`${formatLength(across, { unit })} across`);
  const isStitched = stitches !== undefined && stitches.dashes.length + stitches.holes.length > 0;
  const then = trimInWords(trim, unit);
  return `${by}${what}, ${size}${isStitched ? ", stitched" : ""}${then === "" ? "" : `; ${then}`}`;
}

/**
 * What cuts a piece to its shape, with what it cuts, for texts that break their own lines.
 *
 * @example
 * dieInPlainWords({ name: "disc", cut: { width: 121920, height: 121920 }, across: 121920 }, "in")
 * // => "the die disc, 3 in across"
 */
export function dieInPlainWords(die: DieInWords, unit: Unit): string {
  return spaced(dieInWords(die, unit));
}

/** What is cut straight off a shape: `then cut straight, 1 1/2 in off the bottom`; nothing where nothing is. */
function trimInWords(trim: Die["trim"], unit: Unit): string {
  if (trim === undefined) return "";
  const off = (["top", "right", "bottom", "left"] as const)
    .filter((side) => trim[side] > 0)
    .map((side) => unbroken(`${formatLength(trim[side], { unit })} off the ${side}`));
  return off.length === 0 ? "" : `then cut straight, ${listed(off)}`;
}

function withArticle(shape: string): string {
  const words = shape.replaceAll("-", " ");
  return `${/^[aeiou]/.test(words) ? "an" : "a"} ${words}`;
}

/**
 * Where the shapes of a strip are cut along it: `the first 1/4 in from the end and each further one 2 in on`; nothing where there
 * is one.
 */
export function stripInWords(shapesAt: FormMarks["shapesAt"] | null, unit: Unit): string {
  const [first, second] = shapesAt ?? [];
  if (first === undefined || second === undefined) return "";
  const side = second.x === first.x ? "y" : "x";
  const say = (ticks: number) => unbroken(formatLength(ticks, { unit }));
  return `the first ${say(first[side])} from the end and each further one ${say(second[side] - first[side])} on`;
}

/** Common practice, no source. */
export const DIE_HOW =
  "Lay the die on the die blank with its cutting edge to the paper, in the middle, and stack the plates in the order that " +
  "the machine wants. Keep fingers, hair and sleeves away from the rollers while it runs, lift the shape out with a tool " +
  "and not along the edge of the die; the instructions of the machine and the die come first.";

/** Common practice, no source. */
export const STRIP_HOW =
  "A strip may be longer than the plates: feed it along its long side, cut one shape after another from one end, and move " +
  "it on between two passes, with the same margin between two shapes as at the ends.";
