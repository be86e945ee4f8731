/**
 * Bounds for edge-to-edge cuts by prices of kinds, with several sizes of sheets, their costs and what there is of them; for the
 * aim `all`. One size has a way of its own (price-bound.ts).
 *
 * The linear program of patterns (pattern-program.ts) has a row for each kind and one for each size that may run short. Its
 * prices ask each sheet for its best pattern of unlimited copies (guillotine-value.ts), and what all sheets carry at most by
 * these prices gives a bound at any time (A. Farley, A note on bounding a class of linear programming problems, including
 * cutting stock problems, Operations Research 38 (1990)). The best prices are made whole in the end, and what each sheet
 * carries by those is found anew, so nothing here depends on rounding.
 *
 * Work: rounds x the work of all sheets' tables; where these are too large, nothing is tried.
 */
import type { Bound, KindPrice } from "../model.js";
import type { CompiledKind, CompiledProblem, CompiledSheet } from "../search/compiled-problem.js";
import { exactPriceBound } from "./exact-bound.js";
import { type GuillotineTable, guillotineTable } from "./guillotine-value.js";
import { newProgram, type WorkLeft } from "./pattern-program.js";
import { isEdgeToEdge } from "./price-bound.js";

/** Rounds over all sheets that are worth starting for. */
const LEAST_ROUNDS = 40;
const LARGEST_PRICE = 1_000_000;
/** Pivots with known patterns between two rounds. */
const MOST_PIVOTS = 300;
/** Shares of the dearest sheet's cost that are rounding noise. */
const TINY = 1e-7;
/** What stands in for pieces without a pattern costs so many times the dearest sheet. */
const STAND_IN = 4;

/** A sheet with its table. */
interface Valued {
  readonly sheet: CompiledSheet;
  readonly table: GuillotineTable;
}

/** The bound by the best prices found, or undefined where there are none. It need not be better than `best`. */
export function sizesPriceBound(
  problem: CompiledProblem,
  kinds: readonly CompiledKind[],
  sheets: readonly CompiledSheet[],
  best: Bound,
  work: WorkLeft,
): Bound | undefined {
  if (best.aim !== "all" || best.cost === null || work.left <= 0 || !isEdgeToEdge(problem, kinds)) {
    return undefined;
  }
  const useful = sheets.filter(({ stock }) => stock > 0);
  const valued = valuedSheets(problem, kinds, useful, work.left / (LEAST_ROUNDS * useful.length));
  if (valued === undefined) return undefined;
  const prices = bestPrices(kinds, valued, Number(best.cost), work);
  return prices && wholeBound(problem, kinds, useful, prices, valued);
}

function valuedSheets(
  problem: CompiledProblem,
  kinds: readonly CompiledKind[],
  sheets: readonly CompiledSheet[],
  mostWork: number,
): readonly Valued[] | undefined {
  const valued: Valued[] = [];
  for (const sheet of sheets) {
    const table = guillotineTable(problem, kinds, sheet, mostWork);
    if (table === undefined) return undefined;
    valued.push({ sheet, table });
  }
  return valued;
}

/** Prices by kind whose bound is the best in floating point; undefined where nothing can exceed `cost`. */
function bestPrices(
  kinds: readonly CompiledKind[],
  valued: readonly Valued[],
  cost: number,
  work: WorkLeft,
): Float64Array | undefined {
  const size = kinds.length;
  const demand = Float64Array.from(kinds, (kind) => kind.quantity);
  const copies = demand.reduce((sum, count) => sum + count, 0);
  const limited = valued.filter(({ sheet }) => sheet.stock < copies);
  const stock = Float64Array.from(limited, ({ sheet }) => sheet.stock);
  const dearest = valued.reduce((most, { sheet }) => Math.max(most, sheet.cost), 1);
  const tiny = TINY * dearest;
  const program = newProgram(demand, new Float64Array(size).fill(1), work, STAND_IN * dearest, stock);
  const pool: { readonly column: Float64Array; readonly cost: number }[] = [];
  const gain = ({ column, cost: own }: (typeof pool)[number]): number => {
    let sum = -own;
    for (let i = 0; i < column.length; i++) sum += (column[i] as number) * (program.prices[i] as number);
    return sum;
  };
  const usePool = (): void => {
    for (let pivots = 0; pivots < MOST_PIVOTS && work.left > 0; pivots++) {
      if (program.enterSurplus()) continue;
      let most = tiny;
      let entering: (typeof pool)[number] | undefined;
      for (const pattern of pool) {
        const own = gain(pattern);
        if (own <= most) continue;
        most = own;
        entering = pattern;
      }
      work.left -= pool.length * (size + stock.length);
      if (entering === undefined || !program.enter(entering.column, entering.cost)) return;
    }
  };
  let found: Float64Array | undefined;
  let highest = 0;
  /** Looks for patterns by prices; false where none makes the program cheaper. */
  const round = (prices: Float64Array): boolean => {
    let isNew = false;
    const carried = valued.map((entry) => {
      const column = new Float64Array(size + stock.length);
      const chosen = new Float64Array(size);
      const most = entry.table.most(prices, chosen);
      work.left -= entry.table.work;
      column.set(chosen);
      const limit = limited.indexOf(entry);
      if (limit >= 0) column[size + limit] = -1;
      const pattern = { column, cost: entry.sheet.cost };
      if (gain(pattern) > tiny) {
        pool.push(pattern);
        isNew = true;
      }
      return most;
    });
    const bound = cheapestCover(prices, demand, valued, carried);
    if (bound > highest) {
      highest = bound;
      found = prices;
    }
    return isNew;
  };
  round(Float64Array.from(kinds, (kind) => areaOf(kind)));
  usePool();
  while (work.left > 0 && program.above() > cost + tiny) {
    const prices = program.prices.slice(0, size).map((price) => Math.max(0, price));
    if (!round(prices)) break;
    usePool();
  }
  return found;
}

function areaOf({ lays }: CompiledKind): number {
  return Math.max(1, ...lays.flat().map(({ width, height }) => width * height));
}

/** What sheets cost at least that carry so much by prices, in fractions. */
function cheapestCover(
  prices: Float64Array,
  demand: Float64Array,
  valued: readonly Valued[],
  carried: readonly number[],
): number {
  let rest = prices.reduce((sum, price, k) => sum + price * (demand[k] as number), 0);
  let cost = 0;
  const byCost = valued
    .map(({ sheet }, i) => ({ sheet, most: carried[i] as number }))
    .filter(({ most }) => most > 0)
    .sort((a, b) => a.sheet.cost * b.most - b.sheet.cost * a.most);
  for (const { sheet, most } of byCost) {
    const times = Math.min(sheet.stock, rest / most);
    cost += times * sheet.cost;
    rest -= times * most;
    if (rest <= 0) break;
  }
  return cost;
}

/** Makes prices whole and finds anew what each sheet carries by them. */
function wholeBound(
  problem: CompiledProblem,
  kinds: readonly CompiledKind[],
  sheets: readonly CompiledSheet[],
  found: Float64Array,
  valued: readonly Valued[],
): Bound | undefined {
  const factor = LARGEST_PRICE / found.reduce((most, price) => Math.max(most, price), 0);
  const whole = found.map((price) => Math.floor(price * factor));
  const priced = kinds.filter((_, k) => (whole[k] as number) > 0);
  if (priced.length === 0) return undefined;
  const values = whole.filter((price) => price > 0);
  const work = valued.reduce((most, { table }) => Math.max(most, table.work), 0);
  // Parts are looked at by the sums of priced kinds alone.
  const own = priced.length === kinds.length ? valued : valuedSheets(problem, priced, sheets, work);
  if (own === undefined) return undefined;
  const capacities = new Map(own.map(({ sheet, table }) => [sheet.index, table.most(values)]));
  const prices = priced.map((kind, k): KindPrice => ({ kind: kind.id, price: values[k] as number }));
  return exactPriceBound(problem, prices, capacities);
}
