/**
 * The values for the pieces of a row that weigh most for a demand, such that no row carries more than 1:
 *
 *     most sum d(i) u(i)   where   sum a(i) u(i) <= 1 for every row of pieces a,   u >= 0.
 *
 * Its dual is the fractional one-dimensional cutting stock problem, solved by column generation (P. C. Gilmore and R. E.
 * Gomory, A linear programming approach to the cutting-stock problem, Operations Research 9 (1961)) with a revised
 * simplex in floating point. At any time the prices divided by the best row are values as wanted, with a total that
 * bounds from below (A. A. Farley, A note on bounding a class of linear programming problems, including cutting stock
 * problems, Operations Research 38 (1990)), so it may stop early. Nothing here proves anything: whoever uses the values
 * makes them whole and finds their capacity exactly.
 */
import type { Row } from "./row-of-pieces.js";

/** Work that may still be done, in elementary steps; it may fall below 0 by one round. */
export interface WorkLeft {
  left: number;
}

/** Values by option, and the weight of the demand by them. */
export interface RowValues {
  readonly values: Float64Array;
  readonly total: number;
}

/** Rounding noise of prices and sums. */
const NOISE = 1e-9;
/** Prices are carried on from pivot to pivot so often before they are reckoned afresh. */
const FRESH = 50;
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
  const size = wanted.length;
  const inverse = new Float64Array(size * size);
  const amounts = new Float64Array(size);
  const costs = new Float64Array(size).fill(1);
  wanted.forEach((option, i) => {
    inverse[i * size + i] = 1 / (alone[option] as number);
    amounts[i] = (demand[option] as number) / (alone[option] as number);
  });
  const prices = new Float64Array(size);
  const values = new Float64Array(row.options);
  const chosen = new Float64Array(row.options);
  const column = new Float64Array(size);
  const direction = new Float64Array(size);
  let best: RowValues = { values: new Float64Array(row.options), total: 0 };
  for (let round = 0; ; round++) {
    let above = 0;
    for (let i = 0; i < size; i++) above += (costs[i] as number) * (amounts[i] as number);
    if (round % FRESH === 0) {
      pricesOf(inverse, costs, prices);
      work.left -= size * size;
    }
    let surplus = -1;
    for (let j = 0; j < size; j++) {
      if (
        (prices[j] as number) < -NOISE &&
        (surplus < 0 || (prices[j] as number) < (prices[surplus] as number))
      )
        surplus = j;
    }
    column.fill(0);
    if (surplus >= 0) {
      column[surplus] = -1;
    } else {
      wanted.forEach((option, j) => {
        values[option] = Math.max(0, prices[j] as number);
      });
      chosen.fill(0);
      const most = row.most(values, chosen);
      work.left -= row.work;
      let total = 0;
      for (const option of wanted) total += (demand[option] as number) * (values[option] as number);
      total /= most;
      if (total > best.total) best = { values: values.map((value) => value / most), total };
      if (most <= 1 + NOISE || best.total >= above * (1 - CLOSE)) return best;
      if (best.total > enough || work.left <= 0) return best;
      wanted.forEach((option, j) => {
        column[j] = chosen[option] as number;
      });
    }
    const leaving = pivotRow(inverse, amounts, column, direction);
    if (leaving < 0 || work.left <= 0) return best;
    work.left -= size * pivot(inverse, amounts, direction, leaving);
    const cost = surplus >= 0 ? 0 : 1;
    costs[leaving] = cost;
    let saved = cost;
    for (let j = 0; j < size; j++) saved -= (prices[j] as number) * (column[j] as number);
    for (let j = 0; j < size; j++) {
      prices[j] = (prices[j] as number) + saved * (inverse[leaving * size + j] as number);
    }
  }
}

/** Prices of the rows: the costs of the basis times its inverse. */
function pricesOf(inverse: Float64Array, costs: Float64Array, prices: Float64Array): void {
  const size = costs.length;
  prices.fill(0);
  for (let i = 0; i < size; i++) {
    if (costs[i] === 0) continue;
    for (let j = 0; j < size; j++) prices[j] = (prices[j] as number) + (inverse[i * size + j] as number);
  }
}

/** Expresses the entering column in the basis, and finds which row leaves it first; -1 for none. */
function pivotRow(
  inverse: Float64Array,
  amounts: Float64Array,
  column: Float64Array,
  direction: Float64Array,
): number {
  const size = amounts.length;
  direction.fill(0);
  for (let j = 0; j < size; j++) {
    const entry = column[j] as number;
    if (entry === 0) continue;
    for (let i = 0; i < size; i++) {
      direction[i] = (direction[i] as number) + (inverse[i * size + j] as number) * entry;
    }
  }
  let leaving = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < size; i++) {
    const step = direction[i] as number;
    if (step <= NOISE) continue;
    const ratio = (amounts[i] as number) / step;
    if (ratio < least - NOISE || (ratio < least + NOISE && step > (direction[leaving] as number))) {
      least = ratio;
      leaving = i;
    }
  }
  return leaving;
}

/** Exchanges a row of the basis, and gives how many rows changed. */
function pivot(
  inverse: Float64Array,
  amounts: Float64Array,
  direction: Float64Array,
  leaving: number,
): number {
  let changed = 1;
  const size = amounts.length;
  const base = leaving * size;
  const by = direction[leaving] as number;
  for (let j = 0; j < size; j++) inverse[base + j] = (inverse[base + j] as number) / by;
  amounts[leaving] = (amounts[leaving] as number) / by;
  for (let i = 0; i < size; i++) {
    const step = direction[i] as number;
    if (i === leaving || step === 0) continue;
    changed++;
    for (let j = 0; j < size; j++) {
      inverse[i * size + j] = (inverse[i * size + j] as number) - step * (inverse[base + j] as number);
    }
    amounts[i] = Math.max(0, (amounts[i] as number) - step * (amounts[leaving] as number));
  }
  return changed;
}
