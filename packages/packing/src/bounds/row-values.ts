/**
 * The values for the pieces of a row that weigh most for a demand, such that no row carries more than 1:
 *
 *     most sum d(i) u(i)   where   sum a(i) u(i) <= 1 for every row of pieces a,   u >= 0.
 *
 * Its dual is the fractional one-dimensional cutting stock problem, solved by column generation (pattern-program.ts). At
 * any time the prices divided by the best row are values as wanted, with a total that bounds from below (A. A. Farley, A
 * note on bounding a class of linear programming problems, including cutting stock problems, Operations Research 38
 * (1990)), so it may stop early. Nothing here proves anything: whoever uses the values makes them whole and finds their
 * capacity exactly.
 */
import { NOISE, newProgram, type WorkLeft } from "./pattern-program.js";
import type { Row } from "./row-of-pieces.js";

/** Values by option, and the weight of the demand by them. */
interface RowValues {
  readonly values: Float64Array;
  readonly total: number;
}

/** The values are good enough when no others weigh more than this share above them. */
const CLOSE = 2e-3;

/**
 * Finds values for a demand by option; `alone` is how many pieces of an option a row holds at most, at least 1. Ends
 * early where the total passes `enough`.
 */
export function rowValues(
  row: Row,
  demand: Float64Array,
  alone: Float64Array,
  enough: number,
  work: WorkLeft,
): RowValues {
  const wanted: number[] = [];
  for (let option = 0; option < row.options; option++)
    if ((demand[option] as number) > NOISE) wanted.push(option);
  const ofWanted = (list: Float64Array) => Float64Array.from(wanted, (option) => list[option] as number);
  const program = newProgram(ofWanted(demand), ofWanted(alone), work);
  const values = new Float64Array(row.options);
  const chosen = new Float64Array(row.options);
  let best: RowValues = { values: new Float64Array(row.options), total: 0 };
  while (work.left > 0) {
    if (program.enterSurplus()) continue;
    wanted.forEach((option, j) => {
      values[option] = Math.max(0, program.prices[j] as number);
    });
    chosen.fill(0);
    const most = row.most(values, chosen);
    work.left -= row.work;
    let total = 0;
    for (const option of wanted) total += (demand[option] as number) * (values[option] as number);
    total /= most;
    if (total > best.total) best = { values: values.map((value) => value / most), total };
    const isBest = most <= 1 + NOISE || best.total >= program.above() * (1 - CLOSE);
    if (isBest || best.total > enough || !program.enter(ofWanted(chosen))) return best;
  }
  return best;
}
