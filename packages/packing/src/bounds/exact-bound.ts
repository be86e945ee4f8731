import type { Bound, Certificate, FunctionPair, KindPrice, SheetWeights } from "../model.js";
import type { CompiledProblem, CompiledSheet } from "../search/compiled-problem.js";
import { type AxisFunction, axisFunction } from "./axis-function.js";
import { type Supply, wholeCover } from "./whole-cover.js";

/** A pair of functions on one sheet. */
interface Pair {
  readonly x: AxisFunction;
  readonly y: AxisFunction;
}

/** The weights of one sheet, ready to weigh. */
interface Weighed {
  readonly sheet: CompiledSheet;
  readonly pairs: readonly Pair[];
  readonly capacity: bigint;
}

/**
 * What a certificate of weights proves, in exact rational arithmetic: the weight of every kind, then the cheapest cover
 * of the demand (aim `all`) or the most valuable load (aim `fill`). Rules as in {@link Bound} and {@link SheetWeights}.
 * Undefined where the capacity of a fitted function is out of reach or 0.
 */
export function exactBound(problem: CompiledProblem, weights: readonly SheetWeights[]): Bound | undefined {
  const weighed = weighedBy(problem, weights);
  if (weighed === undefined) return undefined;
  const scale = scaleOf(weighed);
  const loads = kindLoads(problem, weighed, scale);
  return conclude(problem, supplies(weighed, scale), loads, { type: "weights", sheets: weights });
}

/**
 * What a certificate of prices proves: `capacities` holds the most that sheets are worth, by sheet index, for all that
 * any kind with a price fits.
 */
export function exactPriceBound(
  problem: CompiledProblem,
  prices: readonly KindPrice[],
  capacities: ReadonlyMap<number, number>,
): Bound {
  const byKind = new Map(prices.map(({ kind, price }) => [kind, BigInt(price)]));
  const loads = problem.kinds.map((kind) => (kind.fits ? (byKind.get(kind.id) ?? 0n) : undefined));
  const carriers = problem.sheets.flatMap((sheet): readonly Supply[] => {
    const capacity = BigInt(capacities.get(sheet.index) ?? 0);
    return capacity === 0n ? [] : [supplyOf(sheet, capacity)];
  });
  return conclude(problem, carriers, loads, { type: "prices", prices });
}

/** By kind: the share of a sheet that one copy weighs, in floating point; for one sheet with these weights. */
export function weightShares(problem: CompiledProblem, weights: SheetWeights): readonly number[] {
  const weighed = weighedBy(problem, [weights]) ?? [];
  const scale = scaleOf(weighed);
  const unit = Number(BigInt(weights.capacity) * scale);
  return kindLoads(problem, weighed, scale).map((load) => Number(load ?? 0n) / unit);
}

function conclude(
  problem: CompiledProblem,
  carriers: readonly Supply[],
  loads: readonly (bigint | undefined)[],
  certificate: Certificate,
): Bound {
  return problem.source.aim === "all"
    ? { aim: "all", ...leastCover(problem, carriers, loads), certificate }
    : { aim: "fill", value: mostValue(problem, carriers, loads), certificate };
}

function weighedBy(
  problem: CompiledProblem,
  weights: readonly SheetWeights[],
): readonly Weighed[] | undefined {
  const weighed: Weighed[] = [];
  for (const entry of weights) {
    const sheet = sheetOf(problem, entry.sheet);
    const pairs = [entry, ...(entry.besides ?? [])].map((pair) => pairOn(problem, sheet, pair));
    if (pairs.some((pair) => pair === undefined)) return undefined;
    weighed.push({ sheet, pairs: pairs as Pair[], capacity: BigInt(entry.capacity) });
  }
  return weighed;
}

/** A scale on which every weight is whole. */
function scaleOf(weighed: readonly Weighed[]): bigint {
  let scale = 1n;
  for (const { pairs } of weighed) {
    for (const pair of pairs) {
      const unit = unitOf(pair, pairs.length);
      scale = (scale / gcd(scale, unit)) * unit;
    }
  }
  return scale;
}

function pairOn(problem: CompiledProblem, sheet: CompiledSheet, pair: FunctionPair): Pair | undefined {
  const x = axisFunction(problem, sheet, "width", pair.x);
  const y = axisFunction(problem, sheet, "height", pair.y);
  return x && y && { x, y };
}

/** Greatest common divisor; gcd(0, b) = b. */
function gcd(a: bigint, b: bigint): bigint {
  let x = a;
  let y = b;
  while (y !== 0n) {
    const rest = x % y;
    x = y;
    y = rest;
  }
  return x;
}

function unitOf(pair: Pair, pairs: number): bigint {
  return BigInt(pair.x.capacity) * BigInt(pair.y.capacity) * BigInt(pairs);
}

function sheetOf(problem: CompiledProblem, id: string): CompiledSheet {
  const sheet = problem.sheets.find((entry) => entry.id === id);
  if (sheet === undefined) throw new RangeError(`No sheet has the id '${id}'.`);
  return sheet;
}

/** By kind: the weight of one copy times `scale`, or undefined where it fits none of the sheets. */
function kindLoads(
  problem: CompiledProblem,
  weighed: readonly Weighed[],
  scale: bigint,
): readonly (bigint | undefined)[] {
  const units = weighed.map(({ pairs, capacity }) =>
    pairs.map((pair) => ({ ...pair, unit: (capacity * scale) / unitOf(pair, pairs.length) })),
  );
  return problem.kinds.map((kind) => {
    let least: bigint | undefined;
    for (const [index, { sheet }] of weighed.entries()) {
      const pairs = units[index] ?? [];
      const weight = (width: number, height: number): bigint => {
        let sum = 0n;
        for (const { x, y, unit } of pairs) {
          sum += unit * BigInt(x.valueOf(kind, width)) * BigInt(y.valueOf(kind, height));
        }
        return sum;
      };
      for (const lay of kind.lays[sheet.index] ?? []) {
        // What comes out of a window is carried twice, so its room is not counted for the piece round it.
        const window = lay.hidden ? weight(lay.hidden.width, lay.hidden.height) : 0n;
        const load = weight(lay.width, lay.height) - window;
        if (least === undefined || load < least) least = load;
      }
    }
    return least;
  });
}

function supplies(weighed: readonly Weighed[], scale: bigint): readonly Supply[] {
  return weighed.map(({ sheet, capacity }) => supplyOf(sheet, capacity * scale));
}

function supplyOf(sheet: CompiledSheet, capacity: bigint): Supply {
  return {
    capacity,
    cost: BigInt(sheet.cost),
    stock: Number.isFinite(sheet.stock) ? BigInt(sheet.stock) : undefined,
  };
}

function leastCover(
  problem: CompiledProblem,
  supply: readonly Supply[],
  loads: readonly (bigint | undefined)[],
): { readonly cost: string | null; readonly sheets: number | null } {
  let demand = 0n;
  problem.kinds.forEach((kind, i) => {
    demand += BigInt(kind.quantity) * (loads[i] ?? 0n);
  });
  const byCost = [...supply].sort((a, b) => compare(a.cost * b.capacity, b.cost * a.capacity));
  let rest = demand;
  let numerator = 0n;
  let denominator = 1n;
  for (const { capacity, cost, stock } of byCost) {
    if (rest === 0n) break;
    const whole = stock === undefined || stock * capacity >= rest ? undefined : stock;
    if (whole === undefined) {
      numerator = numerator * capacity + cost * rest * denominator;
      denominator *= capacity;
      rest = 0n;
    } else {
      numerator += cost * whole * denominator;
      rest -= whole * capacity;
    }
  }
  if (rest > 0n) return { cost: null, sheets: null };
  const step = problem.sheets.reduce((all, sheet) => gcd(all, BigInt(sheet.cost)), 0n);
  const inParts = step === 0n ? 0n : ceilDivide(numerator, denominator * step) * step;
  const cost = wholeCover(supply, demand) ?? inParts;
  let sheets = 0n;
  rest = demand;
  for (const { capacity, stock } of [...supply].sort((a, b) => compare(b.capacity, a.capacity))) {
    const wanted = ceilDivide(rest, capacity);
    const taken = stock === undefined || wanted < stock ? wanted : stock;
    sheets += taken;
    rest -= taken * capacity;
    if (rest <= 0n) break;
  }
  return { cost: cost.toString(), sheets: Number(sheets) };
}

function mostValue(
  problem: CompiledProblem,
  supply: readonly Supply[],
  loads: readonly (bigint | undefined)[],
): string {
  let room = 0n;
  for (const { capacity, stock } of supply) room += capacity * (stock ?? 0n);
  const wanted = problem.kinds
    .map((kind, i) => ({ kind, load: loads[i] }))
    // What is worth nothing would compare as equal to everything where it weighs nothing, too.
    .filter(({ kind }) => kind.value > 0)
    .filter((entry): entry is { kind: (typeof entry)["kind"]; load: bigint } => entry.load !== undefined)
    .sort((a, b) => compare(BigInt(b.kind.value) * a.load, BigInt(a.kind.value) * b.load));
  let value = 0n;
  for (const { kind, load } of wanted) {
    const worth = BigInt(kind.value);
    const quantity = Number.isFinite(kind.quantity) ? BigInt(kind.quantity) : undefined;
    if (load === 0n) {
      if (worth > 0n && quantity === undefined)
        throw new RangeError("Weightless kinds without limit prove nothing.");
      value += worth * (quantity ?? 0n);
      continue;
    }
    if (quantity !== undefined && quantity * load <= room) {
      value += worth * quantity;
      room -= quantity * load;
      continue;
    }
    // The last kind that finds room is taken in part; all whole terms are integers, so only this one is rounded.
    value += (worth * room) / load;
    break;
  }
  return value.toString();
}

function compare(a: bigint, b: bigint): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function ceilDivide(a: bigint, b: bigint): bigint {
  return a <= 0n ? 0n : (a + b - 1n) / b;
}
