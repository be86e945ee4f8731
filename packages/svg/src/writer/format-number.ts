/** Numbers from here on would lose their third decimal in a double; no drawing needs them. */
const LARGEST = 1e9;

/**
 * Writes a number for a drawing: rounded to three decimals, with a dot, without exponent, trailing zeros or a minus
 * before zero. Throws a RangeError for a value that is not finite or reaches a thousand million.
 *
 * @example
 * formatNumber(215.9) // => "215.9"
 * formatNumber(-0.0004) // => "0"
 */
export function formatNumber(value: number): string {
  if (!(Math.abs(value) < LARGEST)) {
    throw new RangeError(`Expected a finite number under ${LARGEST} for a drawing, found ${value}.`);
  }
  const thousandths = Math.round(Math.abs(value) * 1000);
  if (thousandths === 0) return "0";
  const whole = Math.floor(thousandths / 1000);
  const decimals = String(thousandths % 1000)
    .padStart(3, "0")
    .replace(/0+$/, "");
  return `${value < 0 ? "-" : ""}${whole}${decimals === "" ? "" : `.${decimals}`}`;
}
