/**
 * Bounds for edge-to-edge cuts by prices of kinds, as {@link Certificate} has them, by column generation: for one kind of
 * sheet and the aim `all` (for `fill` see fill-price-bound.ts).
 *
 * Prices come from the linear program of patterns (pattern-program.ts) with patterns of unlimited copies, so that the
 * best pattern is found exactly (guillotine-value.ts); as an upper limit of what a sheet carries that holds for patterns
 * of wanted copies as well. The program starts from the patterns of greedy covers, and prices are drawn towards the best
 * ones so far (P. Wentges, Weighted Dantzig-Wolfe decomposition for linear mixed-integer programming, International
 * Transactions in Operational Research 4 (1997)), which come from the weights of the bound to be raised. It ends once it
 * is raised or that is out of reach.
 */
import type { Bound, KindPrice } from "../model.js";
import type { CompiledKind, CompiledProblem, CompiledSheet } from "../search/compiled-problem.js";
import { exactPriceBound, weightShares } from "./exact-bound.js";
import { type GuillotineTable, guillotineTable } from "./guillotine-value.js";
import { NOISE, newProgram, type WorkLeft } from "./pattern-program.js";

/** Greedy covers to start from, and the share of the work after which no further one is begun. */
const COVERS = 3;
const COVER_SHARE = 0.25;
/** Evaluations of a sheet, beside those of one cover, that are worth starting for. */
const LEAST_ROUNDS = 30;
/** How far prices are drawn towards the best ones so far, and where drawing them ends after misses. */
const DRAWN = 0.8;
const LEAST_DRAWN = 0.3;
/** What making prices whole may cost, in sheets. */
const MARGIN = 1e-4;
const LARGEST_PRICE = 1_000_000;
/** Pivots with known patterns between two new ones. */
const MOST_PIVOTS = 300;

/** A better bound than `best`, or undefined where none is found with the work that is left. */
export function priceBound(
  problem: CompiledProblem,
  kinds: readonly CompiledKind[],
  sheet: CompiledSheet,
  best: Bound,
  work: WorkLeft,
): Bound | undefined {
  if (best.aim !== "all" || best.sheets === null || best.certificate.type !== "weights") return undefined;
  const [weights] = best.certificate.sheets;
  if (weights === undefined || work.left <= 0 || !isEdgeToEdge(problem, kinds)) return undefined;
  const table = guillotineTable(problem, kinds, sheet, work.left / (LEAST_ROUNDS + best.sheets));
  if (table === undefined) return undefined;
  const shares = weightShares(problem, weights);
  const known = Float64Array.from(kinds, (kind) => Math.max(NOISE, shares[kind.index] as number));
  return raise(problem, kinds, sheet, table, known, best.sheets, work);
}

/** Whether prices hold: edge-to-edge cuts, and no pieces out of other pieces. */
export function isEdgeToEdge(problem: CompiledProblem, kinds: readonly CompiledKind[]): boolean {
  const hasWindows = kinds.some((kind) => kind.lays.some((lays) => lays.some((lay) => lay.hidden)));
  return problem.source.mode !== "stopped" && !hasWindows;
}

function raise(
  problem: CompiledProblem,
  kinds: readonly CompiledKind[],
  sheet: CompiledSheet,
  table: GuillotineTable,
  start: Float64Array,
  atLeast: number,
  work: WorkLeft,
): Bound | undefined {
  const size = kinds.length;
  const demand = Float64Array.from(kinds, (kind) => kind.quantity);
  const weigh = (values: Float64Array, counts: Float64Array): number => {
    let sum = 0;
    for (let k = 0; k < size; k++) sum += (values[k] as number) * (counts[k] as number);
    return sum;
  };
  let found: Bound | undefined;
  let target = atLeast;
  let best = start;
  let total = 0;
  /** Values a sheet by prices; keeps them where they weigh more than the best ones. */
  const evaluate = (prices: Float64Array): Float64Array => {
    const pattern = new Float64Array(size);
    const most = table.most(prices, pattern);
    work.left -= table.work;
    const weight = weigh(prices, demand) / most;
    if (weight > total) {
      total = weight;
      best = prices.map((price) => price / most);
    }
    return pattern;
  };
  /** Makes the best prices whole; true where they prove more. */
  const settle = (): boolean => {
    const factor = LARGEST_PRICE / best.reduce((most, price) => Math.max(most, price), 0);
    const whole = best.map((price) => Math.floor(price * factor));
    const prices = kinds.flatMap((kind, k): readonly KindPrice[] => {
      const price = whole[k] as number;
      return price > 0 ? [{ kind: kind.id, price }] : [];
    });
    work.left -= table.work;
    // Parts are looked at by the sums of priced kinds alone.
    const priced = kinds.filter((_, k) => (whole[k] as number) > 0);
    const own = priced.length === size ? table : guillotineTable(problem, priced, sheet, table.work);
    if (own === undefined) return false;
    const capacity = own.most(whole.filter((price) => price > 0));
    const bound = exactPriceBound(problem, prices, new Map([[sheet.index, capacity]]));
    if (bound.aim !== "all" || (bound.sheets !== null && bound.sheets <= target)) return false;
    found = bound;
    target = bound.sheets ?? Number.POSITIVE_INFINITY;
    return true;
  };
  const pool: Float64Array[] = [];
  const keep = (pattern: Float64Array): void => {
    pool.push(pattern);
    const wanted = pattern.map((count, k) => Math.min(count, demand[k] as number));
    if (wanted.some((count, k) => count !== pattern[k])) pool.push(wanted);
  };
  const alone = Float64Array.from(kinds, (kind) => {
    const across = sheet.width + problem.kerf;
    const down = sheet.height + problem.kerf;
    const most = (kind.lays[sheet.index] ?? []).map(
      ({ width, height }) =>
        Math.floor(across / (width + problem.kerf)) * Math.floor(down / (height + problem.kerf)),
    );
    return Math.max(1, ...most);
  });
  evaluate(start);
  const afterCovers = work.left * (1 - COVER_SHARE);
  for (let cover = 0; cover < COVERS && (cover === 0 || work.left > afterCovers); cover++) {
    const rest = demand.slice();
    while (rest.some((count) => count > 0) && work.left > 0) {
      // Other covers by prices that differ a little, always in the same way.
      const prices = start.map((price, k) =>
        (rest[k] as number) > 0 ? price * (1 + (cover * ((k * 37 + cover * 11) % 29)) / 200) : 0,
      );
      const pattern = new Float64Array(size);
      table.most(prices, pattern);
      work.left -= table.work;
      // As often as the rest has room for, at least once.
      let times = Number.POSITIVE_INFINITY;
      pattern.forEach((count, k) => {
        if (count > 0) times = Math.min(times, Math.floor((rest[k] as number) / count));
      });
      pattern.forEach((count, k) => {
        rest[k] = Math.max(0, (rest[k] as number) - count * Math.max(1, times));
      });
      keep(pattern);
    }
  }
  const program = newProgram(demand, alone, work);
  const usePool = (): void => {
    for (let pivots = 0; pivots < MOST_PIVOTS && work.left > 0; pivots++) {
      if (program.enterSurplus()) continue;
      let most = 1 + 1e-7;
      let entering: Float64Array | undefined;
      for (const pattern of pool) {
        const worth = weigh(program.prices, pattern);
        if (worth <= most) continue;
        most = worth;
        entering = pattern;
      }
      work.left -= pool.length * size;
      if (entering === undefined || !program.enter(entering)) return;
    }
  };
  usePool();
  while (work.left > 0 && program.above() > target + MARGIN) {
    let pattern: Float64Array | undefined;
    for (let drawn = DRAWN; work.left > 0; drawn = drawn > LEAST_DRAWN ? drawn / 2 : 0) {
      const prices = best.map(
        (price, k) => drawn * price + (1 - drawn) * Math.max(0, program.prices[k] as number),
      );
      const candidate = evaluate(prices);
      if (total > target + MARGIN && (!settle() || target === Number.POSITIVE_INFINITY)) return found;
      if (weigh(program.prices, candidate) > 1 + 1e-7) pattern = candidate;
      if (pattern !== undefined || drawn === 0) break;
    }
    if (pattern === undefined) break;
    keep(pattern);
    usePool();
  }
  return found;
}
