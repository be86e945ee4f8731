import { formatLength, LONGEST_LENGTH, TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import { ShapeError } from "./shape-error.js";

/** The smallest shape with parts to it: 1 mm. Below it, whole ticks would begin to show. */
const SMALLEST_SHAPE: Ticks = TICKS_PER_MM;

/** The smallest circle or rectangle: 0.01 mm. */
export const SMALLEST_LENGTH: Ticks = TICKS_PER_MM / 100;

/** What a parameter may be, and what to say where it is not. */
interface LengthRange {
  readonly shape: string;
  readonly key: string;
  /** Default: 0. */
  readonly least?: Ticks | undefined;
  /** Default: 10 m. */
  readonly most?: Ticks | undefined;
  /** Where the limit comes from, such as "half of the shorter side". */
  readonly because?: string | undefined;
  readonly help: string;
}

/**
 * Throws a ShapeError unless a length is a whole number of ticks in its range.
 *
 * @internal
 */
export function checkLength(
  value: Ticks,
  { shape, key, least = 0, most = LONGEST_LENGTH, because, help }: LengthRange,
): void {
  if (Number.isSafeInteger(value) && value >= least && value <= most) return;
  const reason = because === undefined ? "" : ` (${because})`;
  const expected = `a whole number of ticks from ${inWords(least)} to ${inWords(most)}${reason}`;
  throw new ShapeError({ shape, key, found: value, expected, help }, inWords(value));
}

/**
 * Throws a ShapeError unless a number of things is whole and in its range.
 *
 * @internal
 */
export function checkCount(
  value: number,
  range: {
    readonly shape: string;
    readonly key: string;
    readonly least: number;
    readonly most: number;
    readonly help: string;
  },
): void {
  const { shape, key, least, most, help } = range;
  if (Number.isSafeInteger(value) && value >= least && value <= most) return;
  throw new ShapeError({
    shape,
    key,
    found: value,
    expected: `a whole number from ${least} to ${most}`,
    help,
  });
}

/**
 * Throws a ShapeError unless a word is one of those that a parameter knows.
 *
 * @internal
 */
export function checkWord(shape: string, key: string, value: string, words: readonly string[]): void {
  if (words.includes(value)) return;
  const expected = words.map((word) => `"${word}"`).join(" or ");
  throw new ShapeError({ shape, key, found: value, expected, help: "Write one of these words." });
}

/**
 * Throws a ShapeError unless width and height are lengths that a shape with parts to it can have.
 *
 * @internal
 */
export function checkSides(
  shape: string,
  sides: Readonly<Record<string, Ticks>>,
  least: Ticks = SMALLEST_SHAPE,
): void {
  for (const [key, value] of Object.entries(sides)) {
    checkLength(value, { shape, key, least, help: "Give the outer size of the shape." });
  }
}

/** A length for those who count in ticks, and in mm beside it. */
function inWords(ticks: Ticks): string {
  if (!Number.isSafeInteger(ticks)) return String(ticks);
  return `${ticks} ticks (${formatLength(ticks, { unit: "mm", approximate: false })})`;
}
