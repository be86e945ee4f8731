import { TICKS_PER_INCH, type Ticks } from "./ticks.js";
import { requireUnit, type Unit } from "./unit.js";

/** How a length is printed. */
export interface FormatOptions {
  readonly unit: Unit;
  /** Whether the unit follows; `'"'` prints inches with the inch mark, and mm as mm. Default true. */
  readonly mark?: boolean | '"';
  /** Whether a value off the grid of 1/64 in or 0.01 mm is marked with a leading `~`. Default true. */
  readonly approximate?: boolean;
}

const TICKS_PER_64TH = TICKS_PER_INCH / 64;
const TICKS_PER_HUNDREDTH_MM = 16;

/**
 * Prints a length as the trade writes it: inches with a reduced fraction to 1/64 (`8 1/2 in`, `3/8 in`), or
 * mm with at most two decimals (`215.9 mm`). A value on that grid reads back the same with `parseLength`;
 * off it the nearest is printed, marked `~`. Uses no locale. Throws a RangeError where the ticks are not an
 * integer.
 *
 * @example
 * formatLength(inches(8.5), { unit: "in" }) // => "8 1/2 in"
 * formatLength(inches(8.5), { unit: "mm" }) // => "215.9 mm"
 * formatLength(inches(0.375), { unit: "in", mark: false }) // => "3/8"
 * formatLength(inches(0.375), { unit: "in", mark: '"' }) // => "3/8\""
 * formatLength(millimetres(100), { unit: "in" }) // => "~3 15/16 in"
 * formatLength(millimetres(100), { unit: "in", approximate: false }) // => "3 15/16 in"
 */
export function formatLength(ticks: Ticks, options: FormatOptions): string {
  const { unit, mark = true } = options;
  const number = formatNumber(ticks, options);
  if (mark === false) return number;
  return mark === '"' && unit === "in" ? `${number}"` : `${number} ${unit}`;
}

/**
 * Prints the number of a length without its unit.
 *
 * @internal
 */
export function formatNumber(ticks: Ticks, { unit, approximate = true }: FormatOptions): string {
  requireUnit(unit);
  if (!Number.isSafeInteger(ticks)) throw new RangeError(`Expected whole ticks, found ${ticks}.`);
  const step = unit === "in" ? TICKS_PER_64TH : TICKS_PER_HUNDREDTH_MM;
  const size = Math.abs(ticks);
  const rest = size % step;
  const steps = (size - rest) / step + (2 * rest >= step ? 1 : 0);
  const digits = unit === "in" ? tradeFraction(steps) : decimal(steps);
  return (approximate && rest !== 0 ? "~" : "") + (ticks < 0 && steps > 0 ? "-" : "") + digits;
}

function tradeFraction(sixtyFourths: number): string {
  const whole = Math.floor(sixtyFourths / 64);
  let numerator = sixtyFourths % 64;
  if (numerator === 0) return String(whole);
  let denominator = 64;
  while (numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  return whole === 0 ? `${numerator}/${denominator}` : `${whole} ${numerator}/${denominator}`;
}

function decimal(hundredths: number): string {
  const whole = Math.floor(hundredths / 100);
  const rest = hundredths % 100;
  if (rest === 0) return String(whole);
  return `${whole}.${rest < 10 ? "0" : ""}${rest % 10 === 0 ? rest / 10 : rest}`;
}
