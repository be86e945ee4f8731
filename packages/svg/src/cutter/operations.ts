/**
 * What a group of a cutter file is for: labels and tops drawn with a pen, scores, stitches, cuts, and marks to measure. In
 * working order.
 */
export type CutterOperation = "mark" | "score" | "stitch" | "cut" | "check";

/** All of them in working order. */
export const OPERATIONS: readonly CutterOperation[] = ["mark", "score", "stitch", "cut", "check"];

/** Line colours from the palette of Okabe & Ito (2008), assigned by us. */
export const OPERATION_COLOURS: Readonly<Record<CutterOperation, string>> = {
  mark: "#0072B2",
  score: "#009E73",
  stitch: "#D55E00",
  cut: "#000000",
  check: "#0072B2",
};

export const CHECK_TITLE = "Check: measure 100 mm, 4 in and the 50 mm square; neither draw nor cut";

/** What one user unit of a cutter file is. Readers that ignore the size of a document take it for one of the others. */
export type CutterUnit = "mm" | "1/96 in" | "1/72 in";

export const UNITS_PER_MM: Readonly<Record<CutterUnit, number>> = {
  mm: 1,
  "1/96 in": 96 / 25.4,
  "1/72 in": 72 / 25.4,
};

/** Throws a RangeError unless an option has one of its words. */
export function requireKnown(option: string, found: string, known: readonly string[]): void {
  if (known.includes(found)) return;
  throw new RangeError(`${option}: expected one of ${known.join(", ")}; found ${JSON.stringify(found)}.`);
}

/** Throws a RangeError for a width of lines that makes no sense. */
export function requireLineWidth(lineWidth: number): void {
  if (lineWidth > 0 && lineWidth < 100) return;
  throw new RangeError(`lineWidth: expected millimetres over 0 and under 100, found ${lineWidth}.`);
}
