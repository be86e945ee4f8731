import { newProgram, type WorkLeft } from "../bounds/pattern-program.js";
import type { Pattern, PatternRows } from "./pattern.js";

/** Every pattern found so far, each once. */
export interface PatternPool {
  readonly patterns: readonly Pattern[];
  /** Adds a pattern, where no equal one is there; true where it was new. */
  readonly add: (pattern: Pattern) => boolean;
}

/** How often patterns are used, in fractions. */
export interface PatternUse {
  /** Times by pattern, in the order of the pool; patterns that are not used are left out. */
  readonly uses: readonly { readonly pattern: Pattern; readonly times: number }[];
  /** What a piece of each row, and one more of each limited sheet, is worth; from 0. */
  readonly prices: Float64Array;
  /** What the patterns cost, with what stands in for pieces that none covers. */
  readonly cost: number;
}

/** Pivots at most for one program. */
const MOST_PIVOTS = 20_000;
/** Prices within this share of a sheet's cost are rounding noise. */
const TINY = 1e-7;

export function newPool(): PatternPool {
  const patterns: Pattern[] = [];
  const known = new Set<string>();
  return {
    patterns,
    add: (pattern) => {
      const key = `${pattern.sheet.index}:${pattern.column.join(",")}`;
      if (known.has(key)) return false;
      known.add(key);
      patterns.push(pattern);
      return true;
    },
  };
}

/** The worth of a pattern by prices, less what it costs; above 0 it makes a program cheaper. */
export function gainOf({ sheet, column }: Pattern, prices: Float64Array): number {
  let sum = -sheet.cost;
  for (let row = 0; row < column.length; row++) sum += (column[row] as number) * (prices[row] as number);
  return sum;
}

/** A program of patterns that is solved again as the pool grows. */
export interface PoolProgram {
  /** Takes in new patterns of the pool as far as they make it cheaper. */
  readonly solve: () => PatternUse;
}

/**
 * The cheapest use of patterns that covers a demand by row of a kind, within the sheets there are by row of a sheet. What
 * cannot be covered is bought piece by piece, dearer than by any sheet.
 * @param costOf what a pattern counts for (default: the cost of its sheet); asked once a pattern, in the order of the pool.
 */
export function poolProgram(
  rows: PatternRows,
  pool: PatternPool,
  demand: Float64Array,
  stock: Float64Array,
  work: WorkLeft,
  costOf: (pattern: Pattern) => number = ({ sheet }) => sheet.cost,
): PoolProgram {
  const kinds = rows.kinds.length;
  const active = [...demand.keys()].filter((row) => (demand[row] as number) > 0);
  const covers = active.length;
  const wanted = Float64Array.from(active, (row) => demand[row] as number);
  let dearest = 1;
  for (const { sheet } of pool.patterns) dearest = Math.max(dearest, sheet.cost);
  const bought = 4 * dearest;
  const program = newProgram(wanted, new Float64Array(covers).fill(1), work, bought, stock);
  const columnOf = ({ column }: Pattern): Float64Array => {
    const own = new Float64Array(covers + stock.length);
    for (let i = 0; i < covers; i++) own[i] = column[active[i] as number] as number;
    for (let i = 0; i < stock.length; i++) own[covers + i] = column[kinds + i] as number;
    return own;
  };
  const columns: Float64Array[] = [];
  const costs: number[] = [];
  // Where sheets run out, buying a piece may pay again after patterns had taken its place.
  for (let i = 0; i < covers; i++) {
    const alone = new Float64Array(covers + stock.length);
    alone[i] = 1;
    columns.push(alone);
    costs.push(bought);
  }
  const tiny = TINY * dearest;
  const prices = new Float64Array(rows.size);
  const solve = (): PatternUse => {
    const { patterns } = pool;
    for (let i = columns.length - covers; i < patterns.length; i++) {
      columns.push(columnOf(patterns[i] as Pattern));
      costs.push(costOf(patterns[i] as Pattern));
    }
    for (let pivots = 0; pivots < MOST_PIVOTS && work.left > 0; pivots++) {
      if (program.enterSurplus()) continue;
      let most = tiny;
      let entering = -1;
      for (let i = 0; i < columns.length; i++) {
        const column = columns[i] as Float64Array;
        let gain = -(costs[i] as number);
        for (let j = 0; j < column.length; j++) gain += (column[j] as number) * (program.prices[j] as number);
        if (gain <= most) continue;
        most = gain;
        entering = i;
      }
      work.left -= columns.length * (covers + stock.length);
      if (entering < 0) break;
      if (!program.enter(columns[entering] as Float64Array, costs[entering] as number, entering - covers))
        break;
    }
    prices.fill(0);
    active.forEach((row, i) => {
      prices[row] = Math.max(0, program.prices[i] as number);
    });
    for (let i = 0; i < stock.length; i++)
      prices[kinds + i] = Math.max(0, program.prices[covers + i] as number);
    const uses = program
      .uses()
      .filter(({ number, times }) => number >= 0 && times > 0)
      .sort((a, b) => a.number - b.number)
      .map(({ number, times }) => ({ pattern: patterns[number] as Pattern, times }));
    return { uses, prices: prices.slice(), cost: program.above() };
  };
  return { solve };
}
