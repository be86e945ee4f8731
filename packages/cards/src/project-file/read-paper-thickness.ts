import { inches, type Ticks } from "@sheetwright/measure";
import { readLength } from "./read-measures.js";
import type { Reading } from "./reading.js";

/** No sheet is thicker. */
const THICKEST = inches(1);

/** Points as labels of cardstock give them, thousandths of an inch, also called mils. */
const POINTS = /^\s*(\d{1,3})\s*(?:pt|pts|points?|mils?)\.?\s*$/i;

/**
 * Reads how thick a sheet is. Points are refused with what they come to: on a label of cardstock 14 pt are 0.014 in (caliper
 * charts of the paper trade), but a point of type is 1/72 in.
 */
export function readPaperThickness(
  value: string | number | undefined,
  path: string,
  reading: Reading,
): Ticks | null {
  const points = POINTS.exec(String(value ?? ""))?.[1];
  if (points === undefined) return readLength(value, path, reading, { longest: THICKEST });
  const suggestion = `0.${points.padStart(3, "0")} in`;
  reading.faults.report({
    code: "not-a-length",
    path,
    found: value,
    expected: "a length in in, mm or cm",
    message: `"${value}" is not a length. On a label of cardstock 1 pt, or mil, is 0.001 in: write ${suggestion}.`,
    suggestion,
  });
  return null;
}
