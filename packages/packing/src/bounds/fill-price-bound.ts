/**
 * Bounds of the aim `fill` for edge-to-edge cuts by prices below the values, where copies are limited.
 *
 * Whoever pays r(i) for each copy of kind i that the limit q(i) allows, cut or not, is left with a sheet from which copies
 * without limit are cut at v(i) - r(i) each. So no plan is worth more than
 *
 *     sum r(i) q(i)  +  the most that all sheets give at the prices v(i) - r(i)
 *
 * and the least of these is looked for by subgradients: what the best layout cuts too often becomes cheaper, what it cuts
 * less often than is allowed dearer. The certificate holds the prices alone; the bound that follows from them (the kinds by
 * value a price until the sheets are full, see {@link Bound}) is at least as good.
 *
 * Sources: N. Christofides, E. Hadjiconstantinou, An exact algorithm for orthogonal 2-D cutting problems using guillotine
 * cuts, European J. Operational Research 83 (1995), limits relaxed by multipliers; M. Held, P. Wolfe, H. Crowder,
 * Validation of subgradient optimization, Mathematical Programming 6 (1974), steps.
 */
import type { Bound, KindPrice } from "../model.js";
import type { CompiledKind, CompiledProblem, CompiledSheet } from "../search/compiled-problem.js";
import { unlimitedLayoutSteps } from "../search/unlimited-copies.js";
import { exactPriceBound } from "./exact-bound.js";
import { type GuillotineTable, guillotineTable } from "./guillotine-value.js";
import type { WorkLeft } from "./pattern-program.js";
import { isEdgeToEdge } from "./price-bound.js";
import { reducedValues } from "./reduced-values.js";

/** The dearest price as a whole number: prices are rounded by so small a share of it. */
const LARGEST_PRICE = 100_000_000;

/** What a step of a raster takes, in steps of a table. */
const STEPS_PER_RASTER_STEP = 12;

/** Layouts by reduced values that are worth starting for. */
const LEAST_ROUNDS = 24;

/** A sheet with its table of parts. */
interface TabledSheet {
  readonly sheet: CompiledSheet;
  readonly table: GuillotineTable;
}

/**
 * The best bound by prices, or undefined where sheets are too large for the work that is left.
 * @param work elementary steps; first it must do for one look at all parts of all sheets.
 */
export function fillPriceBound(
  problem: CompiledProblem,
  kinds: readonly CompiledKind[],
  sheets: readonly CompiledSheet[],
  work: WorkLeft,
): Bound | undefined {
  const worth = kinds.filter((kind) => kind.value > 0);
  if (!isEdgeToEdge(problem, kinds) || worth.length === 0) return undefined;
  const tables: TabledSheet[] = [];
  let once = 0;
  for (const sheet of sheets) {
    const table = guillotineTable(problem, worth, sheet, work.left - once);
    if (table === undefined) return undefined;
    once += table.work;
    tables.push({ sheet, table });
  }
  work.left -= once;
  const values = Float64Array.from(worth, (kind) => kind.value);
  const byValues = proofOf(problem, worth, tables, values);
  const limits = Float64Array.from(worth, (kind) => kind.quantity);
  const isTabled = work.left > (LEAST_ROUNDS + 1) * once;
  work.left -= once;
  const reducing = reducedValues(values, limits, function* (prices, chosen) {
    if (work.left <= 0) return undefined;
    let most = 0;
    for (const { sheet, table } of tables) {
      const own = new Float64Array(worth.length);
      const value = isTabled
        ? table.most(prices, own)
        : yield* mostByRaster(problem, worth, sheet, prices, own, work);
      if (value === undefined) return undefined;
      most += sheet.stock * value;
      own.forEach((count, k) => {
        chosen[k] = (chosen[k] as number) + sheet.stock * count;
      });
    }
    if (isTabled) work.left -= once;
    return most;
  });
  let step = reducing.next();
  while (!step.done) step = reducing.next();
  const reduced = step.value;
  if (reduced === undefined) return byValues;
  const bound = proofOf(problem, worth, tables, reduced);
  if (bound.aim !== "fill" || byValues.aim !== "fill") return byValues;
  return BigInt(bound.value) < BigInt(byValues.value) ? bound : byValues;
}

/** What prices prove, in whole numbers. */
function proofOf(
  problem: CompiledProblem,
  worth: readonly CompiledKind[],
  tables: readonly TabledSheet[],
  exact: Float64Array,
): Bound {
  const whole = wholePrices(exact, LARGEST_PRICE);
  // What has no limit would prove nothing at the price 0.
  worth.forEach((kind, k) => {
    if (!Number.isFinite(kind.quantity)) whole[k] = Math.max(1, whole[k] as number);
  });
  const priced = worth.filter((_, k) => (whole[k] as number) > 0);
  const capacities = new Map<number, number>();
  for (const { sheet, table } of tables) {
    // Parts are looked at by the sums of priced kinds alone.
    const own = priced.length === worth.length ? table : guillotineTable(problem, priced, sheet, table.work);
    capacities.set(sheet.index, own?.most(whole.filter((price) => price > 0)) ?? 0);
  }
  const prices = worth.flatMap((kind, k): readonly KindPrice[] => {
    const price = whole[k] as number;
    return price > 0 ? [{ kind: kind.id, price }] : [];
  });
  return exactPriceBound(problem, prices, capacities);
}

function wholePrices(exact: Float64Array, largest: number): Float64Array {
  const factor = largest / exact.reduce((most, price) => Math.max(most, price), 0);
  return exact.map((price) => Math.round(price * factor));
}

/** Like {@link GuillotineTable.most} on raster points, which are fewer; undefined where the work does not last. */
function* mostByRaster(
  problem: CompiledProblem,
  worth: readonly CompiledKind[],
  sheet: CompiledSheet,
  prices: Float64Array,
  chosen: Float64Array,
  work: WorkLeft,
): Generator<void, number | undefined, void> {
  const whole = wholePrices(prices, LARGEST_PRICE);
  const owners: number[] = [];
  const pieces = worth.flatMap((kind, k) =>
    (kind.lays[sheet.index] ?? []).map(({ width, height }) => {
      owners.push(k);
      return { width, height, value: whole[k] as number, leaf: { type: "waste" } as const };
    }),
  );
  const { width, height } = sheet;
  const most = work.left / STEPS_PER_RASTER_STEP;
  const { counts, exact, steps } = yield* unlimitedLayoutSteps(width, height, problem.kerf, pieces, most);
  work.left -= STEPS_PER_RASTER_STEP * steps;
  if (!exact) return undefined;
  let value = 0;
  counts.forEach((count, i) => {
    const k = owners[i] as number;
    chosen[k] = (chosen[k] as number) + count;
    value += count * (prices[k] as number);
  });
  return value;
}
