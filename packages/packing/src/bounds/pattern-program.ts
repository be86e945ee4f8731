/**
 * The linear program of patterns in floating point: the cheapest patterns, in fractions, that cover a demand, solved by a
 * revised simplex whose columns come in from outside (P. C. Gilmore and R. E. Gomory, A linear programming approach to the
 * cutting-stock problem, Operations Research 9 (1961)). Its prices say what a piece is worth. Further rows limit how often
 * patterns are used; a pattern has -1 in the row of its limit. Work of one column: rows x rows that change. Nothing here
 * proves anything.
 */

/** Work that may still be done, in elementary steps; it may fall below 0 by one round. */
export interface WorkLeft {
  left: number;
}

/** A program with a basis; it starts from one pattern for each row of the demand that holds nothing else. */
export interface PatternProgram {
  /** What one piece, or one more of a limit, is worth by the basis; may be negative. Changes as columns enter. */
  readonly prices: Float64Array;
  /** What the basis costs: the program's optimum is not more. */
  readonly above: () => number;
  /** How often the basis uses each pattern that it holds, by the pattern's number; first patterns are not listed. */
  readonly uses: () => readonly { readonly number: number; readonly times: number }[];
  /** Lets a pattern into the basis (cost 1, unless it is given); false where that is numerically impossible. */
  readonly enter: (pattern: Float64Array, cost?: number, number?: number) => boolean;
  /** Lets a surplus of the row with the lowest price in, where one is below 0; false where none is. */
  readonly enterSurplus: () => boolean;
}

/** Rounding noise of prices and sums. */
export const NOISE = 1e-9;
/** Prices are carried on from pivot to pivot so often before they are reckoned afresh. */
const FRESH = 50;

/** Stands for a column that is no pattern of the caller's. */
const NO_NUMBER = -1;

/**
 * Starts the program for a demand by row, all positive; `alone` is how many pieces of a row alone one pattern holds.
 * @param firstCost what such a pattern costs, whatever it is cut from.
 * @param limits by further row: how often patterns with -1 there may be used.
 */
export function newProgram(
  demand: Float64Array,
  alone: Float64Array,
  work: WorkLeft,
  firstCost = 1,
  limits: Float64Array = new Float64Array(0),
): PatternProgram {
  const covers = demand.length;
  const size = covers + limits.length;
  const inverse = new Float64Array(size * size);
  const amounts = new Float64Array(size);
  const costs = new Float64Array(size).fill(firstCost);
  const numbers = new Int32Array(size).fill(NO_NUMBER);
  for (let i = 0; i < size; i++) {
    // A limit that nothing uses is all surplus: minus the patterns is at least minus the limit.
    const own = i < covers ? (alone[i] as number) : -1;
    const needed = i < covers ? (demand[i] as number) : -(limits[i - covers] as number);
    inverse[i * size + i] = 1 / own;
    amounts[i] = needed / own;
    if (i >= covers) costs[i] = 0;
  }
  const prices = new Float64Array(size);
  const direction = new Float64Array(size);
  const surplus = new Float64Array(size);
  let pivots = 0;
  reckonPrices(inverse, costs, prices);
  const enter = (column: Float64Array, cost: number, number: number): boolean => {
    const leaving = leavingRow(inverse, amounts, column, direction);
    if (leaving < 0) return false;
    work.left -= size * pivot(inverse, amounts, direction, leaving);
    costs[leaving] = cost;
    numbers[leaving] = number;
    pivots++;
    if (pivots % FRESH === 0) {
      reckonPrices(inverse, costs, prices);
      work.left -= size * size;
      return true;
    }
    let saved = cost;
    for (let j = 0; j < size; j++) saved -= (prices[j] as number) * (column[j] as number);
    for (let j = 0; j < size; j++) {
      prices[j] = (prices[j] as number) + saved * (inverse[leaving * size + j] as number);
    }
    return true;
  };
  return {
    prices,
    above: () => amounts.reduce((sum, amount, i) => sum + (costs[i] as number) * amount, 0),
    uses: () =>
      [...numbers].flatMap((number, i) =>
        number === NO_NUMBER ? [] : [{ number, times: amounts[i] as number }],
      ),
    enter: (pattern, cost = 1, number = NO_NUMBER) => enter(pattern, cost, number),
    enterSurplus: () => {
      let lowest = -1;
      for (let j = 0; j < size; j++) {
        const price = prices[j] as number;
        if (price < -NOISE && (lowest < 0 || price < (prices[lowest] as number))) lowest = j;
      }
      if (lowest < 0) return false;
      surplus.fill(0);
      surplus[lowest] = -1;
      return enter(surplus, 0, NO_NUMBER);
    },
  };
}

/** Prices of the rows: the costs of the basis times its inverse. */
function reckonPrices(inverse: Float64Array, costs: Float64Array, prices: Float64Array): void {
  const size = costs.length;
  prices.fill(0);
  for (let i = 0; i < size; i++) {
    const cost = costs[i] as number;
    if (cost === 0) continue;
    for (let j = 0; j < size; j++)
      prices[j] = (prices[j] as number) + cost * (inverse[i * size + j] as number);
  }
}

/** Expresses the entering column in the basis, and finds which row leaves it first; -1 for none. */
function leavingRow(
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
  const size = amounts.length;
  const base = leaving * size;
  const by = direction[leaving] as number;
  let changed = 1;
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
