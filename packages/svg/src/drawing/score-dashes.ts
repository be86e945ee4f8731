/**
 * How scores are told apart: a dash pattern for each way the paper folds. Real segments, as all lines of dashes here.
 *
 *     mountain, scored on the outside   ----  ----  ----
 *     valley, scored on the inside      -  -  -  -  -  -
 *     both                              ----  -  ----  -
 */

import type { FoldDirection } from "@sheetwright/planner";
import { type Dash, dashLine } from "./dash-line.js";

/** Dash and gap of a mountain score, in millimetres; the other patterns are made to go with it. */
export interface ScoreDash {
  readonly dash: number;
  readonly gap: number;
}

/** Of a printed sheet. */
export const SHEET_DASH: ScoreDash = { dash: 2.6, gap: 1.3 };

/** The short dashes of a valley, and the one between two long ones, as a share of a long dash. */
const SHORT = 0.3;

/** Divides a line into the dashes that tell which way it folds, in order, from 0 to its length. */
export function scoreDashes(length: number, folds: FoldDirection, { dash, gap }: ScoreDash): readonly Dash[] {
  const short = SHORT * dash;
  if (folds === "mountain") return dashLine(length, dash, gap);
  if (folds === "valley") return dashLine(length, short, 0.8 * gap);
  const long = dashLine(length, dash, 2 * gap + short);
  return long.flatMap(([from, to], i): readonly Dash[] => {
    const next = long[i + 1];
    if (next === undefined) return [[from, to]];
    const between = next[0] - to;
    const half = (between * short) / (2 * gap + short) / 2;
    const middle = to + between / 2;
    return [
      [from, to],
      [middle - half, middle + half],
    ];
  });
}
