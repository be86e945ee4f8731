import { type FormatOptions, formatNumber } from "./format-length.js";
import type { Ticks } from "./ticks.js";

/**
 * Prints a size, width first: `8 1/2 x 11 in`, `210 x 297 mm`. Each of the two follows the rules of
 * `formatLength`, and `parseSize` reads the text back.
 *
 * @example
 * formatSize(inches(8.5), inches(11), { unit: "in" }) // => "8 1/2 x 11 in"
 * formatSize(inches(8.5), inches(11), { unit: "in", mark: '"' }) // => "8 1/2\" x 11\""
 * formatSize(millimetres(210), millimetres(297), { unit: "mm" }) // => "210 x 297 mm"
 */
export function formatSize(width: Ticks, height: Ticks, options: FormatOptions): string {
  const { unit, mark = true } = options;
  const inchMark = mark === '"' && unit === "in" ? '"' : "";
  const sides = `${formatNumber(width, options)}${inchMark} x ${formatNumber(height, options)}${inchMark}`;
  return mark === false || inchMark !== "" ? sides : `${sides} ${unit}`;
}
