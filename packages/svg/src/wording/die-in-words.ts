import { formatSize, type Unit } from "@sheetwright/measure";
import type { FormMarks } from "@sheetwright/planner";
import { unbroken } from "../text/break-lines.js";

/** What cuts a piece to its shape, with what it cuts: `the die star, 3 x 3 in`, `a cutting machine or scissors, 3 x 3 in`. */
export function dieInWords({ name, cut }: NonNullable<FormMarks["die"]>, unit: Unit): string {
  const words =
    name === null ? "a cutting machine or scissors" : unbroken(`the die ${name.replace(/\s+/g, " ")}`);
  return `${words}, ${unbroken(formatSize(cut.width, cut.height, { unit }))}`;
}

/** Common practice, no source. */
export const DIE_HOW =
  "Lay the die on the die blank with its cutting edge to the paper, in the middle, and stack the plates in the order that " +
  "the machine wants. Keep fingers, hair and sleeves away from the rollers while it runs, lift the shape out with a tool " +
  "and not along the edge of the die; the instructions of the machine and the die come first.";
