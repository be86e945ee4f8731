// Weights of paper. In the US a grade of paper is weighed by 500 sheets of its basic size, in pounds; everywhere else by
// the square metre, in grams. The factor between the two follows from the basic size and the pound of 453.59237 g.

import { TICKS_PER_MM, type Ticks } from "../ticks.js";

/** A grade of paper of the US trade: its pounds weigh 500 sheets of a basic size of its own. */
export type PaperGrade = "bond" | "text" | "cover" | "bristol" | "index" | "tag";

/** A grade with its basic size. */
export interface PaperGradeSize {
  readonly id: PaperGrade;
  /** Other words on labels for the same grade. */
  readonly alsoCalled: readonly string[];
  /** Sides of the basic size in inches, the short one first. */
  readonly basicSize: readonly [short: number, long: number];
  readonly source: string;
}

const MANUALS = "paper-weight tables in printer manuals";
const MILLS = "paper-weight tables in printer manuals; basis-weight pages of paper mills and converters";

/**
 * The grades of US paper with their basic sizes.
 *
 * @example
 * paperGrades.map(({ id }) => id) // => ["bond", "text", "cover", "bristol", "index", "tag"]
 */
export const paperGrades: readonly PaperGradeSize[] = [
  { id: "bond", alsoCalled: ["writing", "ledger"], basicSize: [17, 22], source: MILLS },
  { id: "text", alsoCalled: ["book", "offset"], basicSize: [25, 38], source: MILLS },
  { id: "cover", alsoCalled: [], basicSize: [20, 26], source: MILLS },
  { id: "bristol", alsoCalled: [], basicSize: [22.5, 28.5], source: MANUALS },
  { id: "index", alsoCalled: [], basicSize: [25.5, 30.5], source: MANUALS },
  { id: "tag", alsoCalled: [], basicSize: [24, 36], source: MILLS },
];

const GRAMS_PER_POUND = 453.59237;
const SQUARE_METRES_PER_SQUARE_INCH = 0.00064516;
const SHEETS_WEIGHED = 500;
const TICKS_PER_METRE = 1000 * TICKS_PER_MM;

/**
 * The weight in g/m2 of a paper of so many pounds in its grade; not rounded. Throws a RangeError where the weight is no
 * number above 0.
 *
 * @example
 * Math.round(grammageOf(80, "cover")) // => 216
 * Math.round(grammageOf(110, "index")) // => 199
 * grammageOf(0, "cover") // throws RangeError: above 0
 */
export function grammageOf(pounds: number, grade: PaperGrade): number {
  requireAboveZero("pounds", pounds);
  return (pounds * GRAMS_PER_POUND) / (SHEETS_WEIGHED * basicAreaOf(grade) * SQUARE_METRES_PER_SQUARE_INCH);
}

/**
 * The pounds in its grade of a paper of so many g/m2; not rounded. Throws a RangeError where the weight is no number
 * above 0.
 *
 * @example
 * Math.round(poundsOf(216, "cover")) // => 80
 * poundsOf(-1, "cover") // throws RangeError: above 0
 */
export function poundsOf(grammage: number, grade: PaperGrade): number {
  requireAboveZero("grammage", grammage);
  return (grammage * SHEETS_WEIGHED * basicAreaOf(grade) * SQUARE_METRES_PER_SQUARE_INCH) / GRAMS_PER_POUND;
}

/**
 * What a rectangle of paper weighs, in grams: its sides in ticks, its weight in g/m2. Not rounded.
 *
 * @example
 * const base = massOf({ width: inches(5.5), height: inches(8.5) }, grammageOf(80, "cover"));
 * Math.round(1000 * base) / 1000 // => 6.525
 */
export function massOf(
  { width, height }: { readonly width: Ticks; readonly height: Ticks },
  grammage: number,
): number {
  return (width / TICKS_PER_METRE) * (height / TICKS_PER_METRE) * grammage;
}

/** Grams in an ounce (avoirdupois): a sixteenth of the pound. */
export const GRAMS_PER_OUNCE = GRAMS_PER_POUND / 16;

function basicAreaOf(grade: PaperGrade): number {
  const found = paperGrades.find(({ id }) => id === grade);
  if (found === undefined) {
    const known = paperGrades.map(({ id }) => id).join(", ");
    throw new RangeError(`grade: expected one of ${known}, found ${JSON.stringify(grade)}.`);
  }
  const [short, long] = found.basicSize;
  return short * long;
}

function requireAboveZero(what: string, value: number): void {
  if (Number.isFinite(value) && value > 0) return;
  throw new RangeError(`${what}: expected a number above 0, found ${value}.`);
}
