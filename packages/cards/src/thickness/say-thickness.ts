import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks, type Unit } from "@sheetwright/measure";

/**
 * Says a thickness as the paper trade does: in thousandths of an inch, or in hundredths of a millimetre; rounded.
 *
 * @example
 * sayThickness(2032, "in") // => "0.050 in"
 * sayThickness(2032, "mm") // => "1.27 mm"
 */
export function sayThickness(ticks: Ticks, unit: Unit): string {
  const [parts, digits] =
    unit === "in" ? [(1000 * ticks) / TICKS_PER_INCH, 3] : [(100 * ticks) / TICKS_PER_MM, 2];
  return `${decimal(Math.round(parts), digits)} ${unit}`;
}

/**
 * Writes a whole number of tenths, hundredths or thousandths as a decimal.
 *
 * @internal
 */
export function decimal(parts: number, digits: number): string {
  const text = String(parts).padStart(digits + 1, "0");
  return `${text.slice(0, -digits)}.${text.slice(-digits)}`;
}
