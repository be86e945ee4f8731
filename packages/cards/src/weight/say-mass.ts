import { GRAMS_PER_OUNCE, type Unit } from "@sheetwright/measure";
import { decimal } from "../thickness/say-thickness.js";

/**
 * Says what something weighs in ounces and grams, those of the project's trade first; rounded to a hundredth of an ounce and
 * a tenth of a gram.
 *
 * @example
 * sayMass(11.032, "in") // => "0.39 oz (11.0 g)"
 * sayMass(11.032, "mm") // => "11.0 g (0.39 oz)"
 */
export function sayMass(grams: number, unit: Unit): string {
  const metric = `${decimal(Math.round(10 * grams), 1)} g`;
  const ounces = `${decimal(Math.round((100 * grams) / GRAMS_PER_OUNCE), 2)} oz`;
  return unit === "in" ? `${ounces} (${metric})` : `${metric} (${ounces})`;
}
