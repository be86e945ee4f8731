/**
 * Bounds on any packing, most of them however it is cut: the continuous bound, the bounds by pairs of dual-feasible functions over
 * the two axes and by means of two such pairs, on one or several kinds of sheets with limited stock, and the bounds by
 * functions fitted to the pieces (fitted-bound.ts). Where all cuts go from edge to edge, also by prices (price-bound.ts).
 *
 * A pair of functions gives every piece a weight so that no sheet carries more than a known weight; see
 * {@link SheetWeights}. Pairs are first compared in floating point (which decides only how good the bound is, never
 * whether it holds), the best few then evaluated exactly.
 *
 * Sources as in dual-feasible-value.ts. Work: pairs x ways to lie, held near {@link PAIR_WORK}, then
 * {@link FITTED_WORK} and {@link PRICE_WORK}.
 */
import type { Bound, Effort, SheetWeights } from "../model.js";
import type { CompiledKind, CompiledProblem, CompiledSheet } from "../search/compiled-problem.js";
import { dualFeasibleCapacity, dualFeasibleValue, type PlainFunction } from "./dual-feasible-value.js";
import { exactBound } from "./exact-bound.js";
import { fillPriceBound } from "./fill-price-bound.js";
import { fittedBound, type PlainPair } from "./fitted-bound.js";
import { priceBound } from "./price-bound.js";
import { sizesPriceBound } from "./sizes-price-bound.js";
import { someSheetsCapacities } from "./some-sheets-capacities.js";

/** Products evaluated at most; a million take two or three milliseconds. */
const PAIR_WORK: Readonly<Record<Effort, number>> = {
  quick: 1_000_000,
  standard: 3_000_000,
  thorough: 10_000_000,
};
const MOST_FUNCTIONS = 160;
/** However little the work is, so many are looked at along each axis. */
const LEAST_FUNCTIONS = 6;
/** Share of the work for weights by which only some sheets count; where it is too little they are left out. */
const SOME_SHARE = 1 / 4;
const EXACT_TRIES = 4;
/** Extents looked at for parameters, evenly spread. */
const MOST_EXTENTS = 1_000;
/** Pairs kept of each ranking, for means of two and as starts of fitted functions. */
const MOST_PAIRS = 12;
/** Elementary steps for fitted functions; a million take one or two milliseconds. */
const FITTED_WORK: Readonly<Record<Effort, number>> = {
  quick: 2_000_000,
  standard: 12_000_000,
  thorough: 80_000_000,
};

/** Elementary steps for prices with edge-to-edge cuts and the aim `all`. */
const PRICE_WORK: Readonly<Record<Effort, number>> = {
  quick: 0,
  standard: 60_000_000,
  thorough: 400_000_000,
};
/** Elementary steps for prices with the aim `fill`. */
const VALUE_WORK: Readonly<Record<Effort, number>> = {
  quick: 10_000_000,
  standard: 150_000_000,
  thorough: 500_000_000,
};

/** The best bound found, with its certificate. The problem must be sound. */
export function lowerBound(problem: CompiledProblem, effort: Effort = "quick"): Bound {
  const [first, ...others] = lowerBounds(problem, effort);
  return others.at(-1) ?? (first as Bound);
}

/**
 * The bound by functions with parameters, and then, where it is asked for, the best one by all other ways too, which take
 * a multiple of the time. The problem must be sound.
 */
export function* lowerBounds(problem: CompiledProblem, effort: Effort): Generator<Bound, void, void> {
  const wanted = problem.kinds.filter((kind) => kind.quantity > 0);
  if (problem.source.aim === "all") {
    const unfit = wanted.find((kind) => !kind.fits);
    if (unfit) {
      yield { aim: "all", cost: null, sheets: null, certificate: { type: "no-fit", kind: unfit.id } };
      return;
    }
  }
  const fitting = wanted.filter((kind) => kind.fits);
  const sheets = problem.sheets.filter((sheet) => fitting.some((kind) => kind.lays[sheet.index]?.length));
  const { weights, pairs } = candidates(problem, fitting, sheets, PAIR_WORK[effort]);
  // The first one has a weight for every kind, and holds without limits.
  let best = exactBound(problem, weights[0] ?? []) as Bound;
  for (const others of weights.slice(1)) {
    const bound = exactBound(problem, others);
    if (bound && isBetter(bound, best)) best = bound;
  }
  yield best;
  if (best.aim === "fill") {
    const bound = fillPriceBound(problem, fitting, sheets, { left: VALUE_WORK[effort] });
    if (bound && isBetter(bound, best)) yield bound;
    return;
  }
  const [only] = sheets;
  if (only === undefined) return;
  if (sheets.length > 1) {
    const bound = sizesPriceBound(problem, fitting, sheets, best, { left: PRICE_WORK[effort] });
    if (bound && isBetter(bound, best)) yield bound;
    return;
  }
  best = fittedBound(problem, fitting, only, pairs, best, { left: FITTED_WORK[effort] }) ?? best;
  yield priceBound(problem, fitting, only, best, { left: PRICE_WORK[effort] }) ?? best;
}

function isBetter(a: Bound, b: Bound): boolean {
  if (a.aim === "fill" || b.aim === "fill")
    return a.aim === "fill" && b.aim === "fill" && BigInt(a.value) < BigInt(b.value);
  if (a.cost === null || b.cost === null) return a.cost === null && b.cost !== null;
  const costs = BigInt(a.cost) - BigInt(b.cost);
  return costs === 0n ? (a.sheets ?? 0) > (b.sheets ?? 0) : costs > 0n;
}

interface Candidates {
  /** The continuous bound first, then the best pairs and means of two by their value in floating point. */
  readonly weights: readonly (readonly SheetWeights[])[];
  /** The best pairs, as starts of fitted functions. */
  readonly pairs: readonly PlainPair[];
}

function candidates(
  problem: CompiledProblem,
  kinds: readonly CompiledKind[],
  sheets: readonly CompiledSheet[],
  pairWork: number,
): Candidates {
  const areas = sheets.map((sheet) => sheet.width * sheet.height);
  const costs = sheets.map((sheet) => sheet.cost);
  const capacities = sheets.length <= 1 ? [[1]] : costs.every((cost) => cost > 0) ? [costs, areas] : [areas];
  const weights = (first: PlainPair, besides: PlainPair | undefined, capacity: readonly number[]) =>
    sheets.map((sheet, i): SheetWeights => {
      const onSheet = ({ x, y }: PlainPair): PlainPair => ({
        x: onExtent(x, sheet.width + problem.kerf),
        y: onExtent(y, sheet.height + problem.kerf),
      });
      return {
        sheet: sheet.id,
        ...onSheet(first),
        ...(besides ? { besides: [onSheet(besides)] } : {}),
        capacity: capacity[i] ?? 1,
      };
    });
  const found: (readonly SheetWeights[])[] = [];
  const starts: PlainPair[] = [];
  for (const capacity of sheets.length === 0 ? [] : capacities) {
    const table = weighPairs(problem, kinds, sheets, capacity, pairWork);
    for (const { first, besides } of table.best) found.push(weights(first, besides, capacity));
    starts.push(...table.pairs);
  }
  const some = problem.source.aim === "all" ? someSheetsCapacities(kinds, sheets, areas) : [];
  const ways = kinds.reduce((sum, kind) => sum + kind.lays.reduce((own, lays) => own + lays.length, 0), 0);
  const each = (pairWork * SOME_SHARE) / some.length;
  for (const capacity of each >= LEAST_FUNCTIONS * LEAST_FUNCTIONS * ways ? some : []) {
    const table = weighPairs(problem, kinds, sheets, capacity, each);
    for (const { first, besides } of table.best.slice(0, 1)) found.push(weights(first, besides, capacity));
  }
  const area = { x: { family: "identity" }, y: { family: "identity" } } as const;
  const plain = capacities.map((capacity) => weights(area, undefined, capacity));
  return { weights: [...plain, ...found], pairs: [...starts, area] };
}

/** The best pairs, and means of two of them, for given capacities of the sheets. */
function weighPairs(
  problem: CompiledProblem,
  kinds: readonly CompiledKind[],
  sheets: readonly CompiledSheet[],
  capacity: readonly number[],
  pairWork: number,
): {
  readonly best: readonly { readonly first: PlainPair; readonly besides: PlainPair | undefined }[];
  readonly pairs: readonly PlainPair[];
} {
  const entries = kinds.flatMap((kind) =>
    sheets.flatMap((sheet, s) => (kind.lays[sheet.index] ?? []).map((lay) => ({ kind, s, lay }))),
  );
  const functions = Math.max(
    LEAST_FUNCTIONS,
    Math.min(MOST_FUNCTIONS, Math.floor(Math.sqrt(pairWork / entries.length))),
  );
  const xs = recipes(
    entries.map((entry) => entry.lay.width + problem.kerf),
    sheets.map((s) => s.width + problem.kerf),
    functions,
  );
  const ys = recipes(
    entries.map((entry) => entry.lay.height + problem.kerf),
    sheets.map((s) => s.height + problem.kerf),
    functions,
  );
  const table = (
    list: readonly PlainFunction[],
    axis: "width" | "height",
    of: "lay" | "hidden",
  ): Float64Array => {
    const values = new Float64Array(list.length * entries.length);
    list.forEach((f, r) => {
      entries.forEach(({ s, lay }, e) => {
        const size = of === "lay" ? lay : lay.hidden;
        if (size === undefined) return;
        const extent = (sheets[s]?.[axis] ?? 0) + problem.kerf;
        const own = onExtent(f, extent);
        const share =
          dualFeasibleValue(own, size[axis] + problem.kerf, extent) / dualFeasibleCapacity(own, extent);
        values[r * entries.length + e] = axis === "width" ? share * (capacity[s] ?? 1) : share;
      });
    });
    return values;
  };
  const across = table(xs, "width", "lay");
  const down = table(ys, "height", "lay");
  const hidden = entries.some((entry) => entry.lay.hidden !== undefined);
  const acrossHidden = hidden ? table(xs, "width", "hidden") : undefined;
  const downHidden = hidden ? table(ys, "height", "hidden") : undefined;
  const merit = meritOf(problem, kinds, sheets, capacity);
  const firstEntry = [0];
  for (const kind of kinds) {
    const ways = sheets.reduce((sum, sheet) => sum + (kind.lays[sheet.index]?.length ?? 0), 0);
    firstEntry.push((firstEntry.at(-1) ?? 0) + ways);
  }
  const loads = new Float64Array(kinds.length);
  const means = new Float64Array(kinds.length);
  const byLeast: Pair[] = [];
  const byMean: Pair[] = [];
  const hasWays = entries.length > kinds.length;
  for (let x = 0; x < xs.length; x++) {
    for (let y = 0; y < ys.length; y++) {
      const xAt = x * entries.length;
      const yAt = y * entries.length;
      for (let k = 0; k < kinds.length; k++) {
        const start = firstEntry[k] as number;
        const end = firstEntry[k + 1] as number;
        let least = Number.POSITIVE_INFINITY;
        let sum = 0;
        for (let e = start; e < end; e++) {
          let load = (across[xAt + e] as number) * (down[yAt + e] as number);
          if (acrossHidden && downHidden) {
            load -= (acrossHidden[xAt + e] as number) * (downHidden[yAt + e] as number);
          }
          if (load < least) least = load;
          sum += load;
        }
        loads[k] = least;
        means[k] = sum / (end - start);
      }
      keepBest(byLeast, { merit: merit(loads), x, y }, MOST_PAIRS);
      if (hasWays) keepBest(byMean, { merit: merit(means), x, y }, MOST_PAIRS);
    }
  }
  const pairs = [...byMean, ...byLeast].filter(
    (pair, i, all) => all.findIndex((other) => other.x === pair.x && other.y === pair.y) === i,
  );
  const mixtures: Mixture[] = [];
  for (const pair of byLeast) keepBest(mixtures, { ...pair, pair, besides: undefined }, EXACT_TRIES);
  const weighOf = ({ x, y }: Pair, e: number): number => {
    const [xAt, yAt] = [x * entries.length + e, y * entries.length + e];
    const window = acrossHidden && downHidden ? (acrossHidden[xAt] ?? 0) * (downHidden[yAt] ?? 0) : 0;
    return (across[xAt] as number) * (down[yAt] as number) - window;
  };
  const mixable = hasWays ? pairs.slice(0, Math.floor(Math.sqrt(pairWork / entries.length))) : [];
  for (const [i, pair] of mixable.entries()) {
    for (const besides of pairs.slice(0, i)) {
      for (let k = 0; k < kinds.length; k++) {
        let least = Number.POSITIVE_INFINITY;
        for (let e = firstEntry[k] as number; e < (firstEntry[k + 1] as number); e++) {
          least = Math.min(least, weighOf(pair, e) + weighOf(besides, e));
        }
        loads[k] = least / 2;
      }
      keepBest(mixtures, { merit: merit(loads), pair, besides }, EXACT_TRIES);
    }
  }
  const functionsOf = (pair: Pair): PlainPair => ({
    x: xs[pair.x] as PlainFunction,
    y: ys[pair.y] as PlainFunction,
  });
  return {
    best: mixtures.map(({ pair, besides }) => ({
      first: functionsOf(pair),
      besides: besides && functionsOf(besides),
    })),
    pairs: pairs.map(functionsOf),
  };
}

interface Ranked {
  /** Larger is better. */
  readonly merit: number;
}

interface Pair extends Ranked {
  readonly x: number;
  readonly y: number;
}

/** One pair, or the mean of two. */
interface Mixture extends Ranked {
  readonly pair: Pair;
  readonly besides: Pair | undefined;
}

/** Keeps the few best entries, earlier ones first among equals. */
function keepBest<Entry extends Ranked>(list: Entry[], entry: Entry, most: number): void {
  const last = list.at(-1);
  if (!Number.isFinite(entry.merit) || (list.length === most && last && entry.merit <= last.merit)) return;
  if (list.length === most) list.pop();
  let at = list.length;
  while (at > 0 && (list[at - 1] as Entry).merit < entry.merit) at--;
  list.splice(at, 0, entry);
}

/** How good a set of weights is; larger is better. Floating point, for comparison only. */
function meritOf(
  problem: CompiledProblem,
  kinds: readonly CompiledKind[],
  sheets: readonly CompiledSheet[],
  capacity: readonly number[],
): (loads: Float64Array) => number {
  if (problem.source.aim === "fill") {
    const room = sheets.reduce((sum, sheet, s) => sum + (capacity[s] ?? 1) * sheet.stock, 0);
    const order = kinds.map((_, k) => k).filter((k) => (kinds[k]?.value ?? 0) > 0);
    return (loads) => {
      const load = (k: number): number => loads[k] as number;
      const worth = (k: number): number => kinds[k]?.value ?? 0;
      order.sort((a, b) => worth(b) * load(a) - worth(a) * load(b) || a - b);
      let left = room;
      let value = 0;
      for (const k of order) {
        const quantity = kinds[k]?.quantity ?? 0;
        const most = load(k) === 0 ? quantity : Math.min(quantity, left / load(k));
        if (worth(k) > 0) value += worth(k) * most;
        left -= load(k) === 0 ? 0 : most * load(k);
      }
      return -value;
    };
  }
  const order = sheets
    .map((sheet, s) => ({
      price: sheet.cost / (capacity[s] ?? 1),
      room: (capacity[s] ?? 1) * sheet.stock,
      s,
    }))
    .sort((a, b) => a.price - b.price || a.s - b.s);
  return (loads) => {
    let demand = 0;
    for (let k = 0; k < kinds.length; k++) demand += (kinds[k]?.quantity ?? 0) * (loads[k] as number);
    let cost = 0;
    for (const { price, room } of order) {
      const taken = Math.min(room, demand);
      cost += taken * price;
      demand -= taken;
    }
    // Rounding noise must not pass for a shortage; a real one is confirmed exactly.
    return demand > 1e-9 ? Number.MAX_VALUE : cost;
  };
}

/** A function as it stands on one extent: parameters outside its range fall back to identity. */
function onExtent(f: PlainFunction, extent: number): PlainFunction {
  return (f.family === "threshold" || f.family === "step") && 2 * f.at > extent ? { family: "identity" } : f;
}

/** Functions worth trying for pieces of these extents: parameters at which the functions change their values. */
function recipes(
  extents: readonly number[],
  sheets: readonly number[],
  most: number,
): readonly PlainFunction[] {
  const half = Math.max(...sheets) / 2;
  const distinct = (values: readonly number[]): readonly number[] =>
    [...new Set(values)].filter((value) => value >= 1 && value <= half).sort((a, b) => a - b);
  // Of thousands of extents only a few parameters are taken in the end.
  const some = spread([...Float64Array.from(extents).sort()], MOST_EXTENTS);
  const complements = sheets.flatMap((sheet) => some.map((extent) => sheet - extent));
  const thresholds = distinct([...some, ...complements.map((rest) => rest + 1)]);
  const steps = distinct([...some, ...complements, ...some.map((extent) => Math.floor(extent / 2))]);
  const share = Math.floor((most - 1) / 5);
  const list: PlainFunction[] = [{ family: "identity" }];
  for (let k = 1; k <= Math.min(60, Math.max(2, share)); k++) list.push({ family: "rounding", k });
  for (const at of spread(thresholds, Math.max(2, 2 * share))) list.push({ family: "threshold", at });
  for (const at of spread(steps, Math.max(2, 2 * share))) list.push({ family: "step", at });
  return list;
}

/** At most `most` values of a list, evenly spread, both ends included. */
function spread(values: readonly number[], most: number): readonly number[] {
  if (values.length <= most) return values;
  return Array.from(
    { length: most },
    (_, i) => values[Math.floor((i * (values.length - 1)) / (most - 1))] as number,
  );
}
