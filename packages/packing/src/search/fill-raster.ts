/**
 * The most valuable guillotine layouts of all parts whose sides are raster points, copies unlimited, by dynamic
 * programming from small parts to large ones: the best value of a part is that of the best piece that fits it, of a
 * smaller part, or of two parts beside each other. With a limit on what a part may fall short of the best density, only
 * the few good parts are looked at, and the result still is exact where a layout within the limit is found.
 *
 * Each part starts as soon as its first good division is known and hands its value on to what it can be put beside:
 *
 *     row of height h:   (x1, h) + (x2, h)  ->  the first point from x1 + x2, h
 *     column of width w: (w, y1) + (w, y2)  ->  w, the first point from y1 + y2
 *
 * Only parts worth more than the narrower ones of their row (the lower ones of their column) take part.
 *
 * The limit: with the best density d of any piece (value by area, kerf added), a part w x h falls short by d w h - value,
 * which is at least 0. A layout falls short by the sum of its parts and of its waste, so parts of a good layout are good.
 *
 * Sources: P. Gilmore, R. Gomory, The theory and computation of knapsack functions, Operations Research 14 (1966); limit on
 * the waste of a part: P. Wang, Two algorithms for constrained two-dimensional cutting stock problems, Operations Research
 * 31 (1983); only parts that no smaller one equals: M. Russo, A. Sforza, C. Sterle, An exact dynamic programming algorithm
 * for large-scale unconstrained two-dimensional guillotine cutting problems, Computers & Operations Research 50 (2014).
 *
 * Work: pairs of good parts in a row or a column, at most points x points x points. Memory: 8 bytes a pair of points.
 */
import type { PointFinder } from "./raster-points.js";

/** A piece as it lies, kerf added. */
export interface RasterPiece {
  readonly width: number;
  readonly height: number;
  readonly value: number;
}

/** Sides that parts may have, kerf added. */
export interface Raster {
  readonly x: PointFinder;
  readonly y: PointFinder;
}

/** How a part is cut. Indices of points; the first part of a division has the point `at`. */
type Division =
  | { readonly type: "none" }
  | { readonly type: "piece"; readonly piece: number }
  | { readonly type: "cut"; readonly axis: "x" | "y"; readonly at: number };

/** The best values of good parts. */
export interface FilledRaster {
  /** Of the whole, or undefined where every layout falls short by more than the limit. */
  readonly value: number | undefined;
  /** Of the part with its lower right corner at two points, as far as it is good. */
  readonly valueAt: (x: number, y: number) => number;
  /** How a part with its lower right corner at two points is cut best; asked from the whole on. */
  readonly divide: (x: number, y: number) => Division;
}

/** Work left to do; counted down while a raster is filled. */
export interface StepBudget {
  steps: number;
}

/** Steps between two pauses: about a millisecond. */
const STEPS_PER_PAUSE = 100_000;

/**
 * Share of what the whole could be worth that stays far above the rounding errors of a shortfall: three operations on
 * doubles, each off by at most 2^-53 of a number that is no larger. Here 2^-44.
 */
const ROUNDING = 1 / 0x1000_0000_0000;

/** The largest value by area, rounded so that no piece is worth more. */
export function bestDensity(pieces: readonly RasterPiece[]): number {
  let best = 0;
  for (const { width, height, value } of pieces) best = Math.max(best, value / (width * height));
  // The area, the quotient and this product are each rounded by at most half of this.
  return best * (1 + 2 * Number.EPSILON);
}

/**
 * Fills a raster; parts may fall short of the best density by `limit`. Yields after fixed amounts of work. Undefined where
 * the budget does not last; it is then used up.
 */
export function* fillRaster(
  raster: Raster,
  pieces: readonly RasterPiece[],
  density: number,
  limit: number,
  budget: StepBudget,
): Generator<void, FilledRaster | undefined, void> {
  const { x: findX, y: findY } = raster;
  const xs = findX.points;
  const ys = findY.points;
  const columns = xs.length;
  const rows = ys.length;
  const lastX = xs[columns - 1] as number;
  const lastY = ys[rows - 1] as number;
  const most = limit + density * lastX * lastY * ROUNDING;
  const words = (columns + 31) >> 5;
  // Flat arrays and mutation from here on. Column by column: the best value offered to a part so far.
  const offered = new Float64Array(columns * rows);
  // Row by row, one bit a column: parts to which something was offered.
  const hasOffer = new Int32Array(rows * words);
  for (const { width, height, value } of pieces) {
    if (value <= 0 || width > lastX || height > lastY) continue;
    const i = findX.atLeast(width);
    const j = findY.atLeast(height);
    if (value <= (offered[i * rows + j] as number)) continue;
    offered[i * rows + j] = value;
    hasOffer[j * words + (i >> 5)] = (hasOffer[j * words + (i >> 5)] as number) | (1 << (i & 31));
  }
  // Of each column: its best good part so far, whether that is still good in the present row, and all parts that rose.
  const below = new Float64Array(columns);
  const isAlive = new Int32Array(words);
  const risen: Risen[] = Array.from({ length: columns }, () => ({
    count: 0,
    rows: NO_ROWS,
    values: NO_VALUES,
  }));
  // The present row: offers within it, columns to look at, and the parts that rose.
  const inRow = new Float64Array(columns);
  const toDo = new Int32Array(words);
  const rowX = new Float64Array(columns);
  const rowValues = new Float64Array(columns);
  let left = budget.steps - columns - rows;
  let nextPause = left - STEPS_PER_PAUSE;
  for (let j = 1; j < rows; j++) {
    const h = ys[j] as number;
    const perWidth = density * h;
    let rowCount = 0;
    let best = 0;
    left -= words;
    for (let word = 0; word < words; word++) {
      toDo[word] = (hasOffer[j * words + word] as number) | (isAlive[word] as number);
    }
    for (let word = 0; word < words; word++) {
      while (toDo[word] !== 0) {
        const bits = toDo[word] as number;
        const bit = 31 - Math.clz32(bits & -bits);
        toDo[word] = bits & (bits - 1);
        const i = (word << 5) | bit;
        const x = xs[i] as number;
        const lower = below[i] as number;
        const value = Math.max(lower, best, offered[i * rows + j] as number, inRow[i] as number);
        inRow[i] = 0;
        left -= 4;
        if (perWidth * x - value > most) {
          isAlive[word] = (isAlive[word] as number) & ~(1 << bit);
          continue;
        }
        isAlive[word] = (isAlive[word] as number) | (1 << bit);
        if (value > best) {
          rowX[rowCount] = x;
          rowValues[rowCount++] = value;
          best = value;
          let k = 0;
          for (; k < rowCount; k++) {
            const sum = (rowX[k] as number) + x;
            if (sum > lastX) break;
            const together = (rowValues[k] as number) + value;
            const target = findX.atLeast(sum);
            if (perWidth * (xs[target] as number) - together > most) continue;
            if (together <= (inRow[target] as number)) continue;
            inRow[target] = together;
            toDo[target >> 5] = (toDo[target >> 5] as number) | (1 << (target & 31));
          }
          left -= k;
        }
        if (value > lower) {
          below[i] = value;
          const column = risen[i] as Risen;
          addRisen(column, j, value);
          const perHeight = density * x;
          let k = 0;
          for (; k < column.count; k++) {
            const sum = (ys[column.rows[k] as number] as number) + h;
            if (sum > lastY) break;
            const together = (column.values[k] as number) + value;
            const target = findY.atLeast(sum);
            if (perHeight * (ys[target] as number) - together > most) continue;
            const cell = i * rows + target;
            if (together <= (offered[cell] as number)) continue;
            offered[cell] = together;
            hasOffer[target * words + word] = (hasOffer[target * words + word] as number) | (1 << bit);
          }
          left -= k;
        }
        // A part is worth at least what a narrower one is.
        if (i + 1 < columns && perWidth * (xs[i + 1] as number) - best <= most) {
          toDo[(i + 1) >> 5] = (toDo[(i + 1) >> 5] as number) | (1 << ((i + 1) & 31));
        }
      }
    }
    if (left < 0) {
      budget.steps = 0;
      return undefined;
    }
    if (left < nextPause) {
      nextPause = left - STEPS_PER_PAUSE;
      yield;
    }
  }
  budget.steps = left;
  const whole = (isAlive[(columns - 1) >> 5] as number) & (1 << ((columns - 1) & 31));
  const valueAt = reader(risen);
  return {
    value: whole === 0 ? undefined : (below[columns - 1] as number),
    valueAt,
    divide: divider(raster, pieces, valueAt),
  };
}

/** The parts of a column that are worth more than the lower ones. */
interface Risen {
  count: number;
  rows: Int32Array;
  values: Float64Array;
}

const NO_ROWS = new Int32Array(0);
const NO_VALUES = new Float64Array(0);

function addRisen(column: Risen, row: number, value: number): void {
  if (column.count === column.rows.length) {
    const rows = new Int32Array(2 * column.count + 8);
    const values = new Float64Array(2 * column.count + 8);
    rows.set(column.rows);
    values.set(column.values);
    column.rows = rows;
    column.values = values;
  }
  column.rows[column.count] = row;
  column.values[column.count++] = value;
}

/** The best value of a part: that of the highest risen part of its column that is no higher than it. */
function reader(risen: readonly Risen[]): (x: number, y: number) => number {
  return (x, y) => {
    const column = risen[x] as Risen;
    let low = -1;
    let high = column.count - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((column.rows[middle] as number) <= y) low = middle;
      else high = middle - 1;
    }
    return low < 0 ? 0 : (column.values[low] as number);
  };
}

/** Reads the cuts back from the values: whatever gives the value of a part is a way to cut it. */
function divider(
  { x: findX, y: findY }: Raster,
  pieces: readonly RasterPiece[],
  valueAt: (x: number, y: number) => number,
): (x: number, y: number) => Division {
  const xs = findX.points;
  const ys = findY.points;
  return (x, y) => {
    const value = valueAt(x, y);
    if (value === 0) return { type: "none" };
    let i = x;
    let j = y;
    const w = xs[i] as number;
    const h = ys[j] as number;
    const piece = pieces.findIndex((entry) => entry.value === value && entry.width <= w && entry.height <= h);
    if (piece >= 0) return { type: "piece", piece };
    // The smallest part of this value: what it is short of the asked one becomes waste at its far sides.
    while (valueAt(i - 1, j) === value) i--;
    while (valueAt(i, j - 1) === value) j--;
    const width = xs[i] as number;
    const height = ys[j] as number;
    // From the middle, so that trees stay shallow.
    for (let at = findX.atMost(width / 2); at > 0; at--) {
      const rest = findX.atMost(width - (xs[at] as number));
      if (valueAt(at, j) + valueAt(rest, j) === value) return { type: "cut", axis: "x", at };
    }
    for (let at = findY.atMost(height / 2); at > 0; at--) {
      const rest = findY.atMost(height - (ys[at] as number));
      if (valueAt(i, at) + valueAt(i, rest) === value) return { type: "cut", axis: "y", at };
    }
    throw new RangeError(`No cut gives the value ${value} of the part ${w} x ${h}.`);
  };
}
