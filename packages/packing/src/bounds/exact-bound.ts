import type { Bound, SheetWeights } from "../model.js";
import type { CompiledProblem } from "../search/compiled-problem.js";
import { dualFeasibleCapacity, dualFeasibleValue } from "./dual-feasible-value.js";

/**
 * What a certificate of weights proves, in exact rational arithmetic: the weight of every kind, then the cheapest cover
 * of the demand (aim `all`) or the most valuable load (aim `fill`). Rules as in {@link Bound} and {@link SheetWeights}.
 */
export function exactBound(problem: CompiledProblem, weights: readonly SheetWeights[]): Bound {
  const scale = weights.reduce((product, entry) => {
    const unit = unitOf(problem, entry);
    return (product / gcd(product, unit)) * unit;
  }, 1n);
  const loads = kindLoads(problem, weights, scale);
  const certificate = { type: "weights", sheets: weights } as const;
  return problem.source.aim === "all"
    ? { aim: "all", ...leastCover(problem, weights, loads, scale), certificate }
    : { aim: "fill", value: mostValue(problem, weights, loads, scale), certificate };
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

function unitOf(problem: CompiledProblem, entry: SheetWeights): bigint {
  const sheet = sheetOf(problem, entry.sheet);
  return (
    BigInt(dualFeasibleCapacity(entry.x, sheet.width + problem.kerf)) *
    BigInt(dualFeasibleCapacity(entry.y, sheet.height + problem.kerf))
  );
}

function sheetOf(problem: CompiledProblem, id: string): CompiledProblem["sheets"][number] {
  const sheet = problem.sheets.find((entry) => entry.id === id);
  if (sheet === undefined) throw new RangeError(`No sheet has the id '${id}'.`);
  return sheet;
}

/** By kind: the weight of one copy times `scale`, or undefined where it fits none of the sheets. */
function kindLoads(
  problem: CompiledProblem,
  weights: readonly SheetWeights[],
  scale: bigint,
): readonly (bigint | undefined)[] {
  return problem.kinds.map((kind) => {
    let least: bigint | undefined;
    for (const entry of weights) {
      const sheet = sheetOf(problem, entry.sheet);
      const factor = (BigInt(entry.capacity) * scale) / unitOf(problem, entry);
      for (const lay of kind.lays[sheet.index] ?? []) {
        const weight = (width: number, height: number): bigint => {
          const u = dualFeasibleValue(entry.x, width + problem.kerf, sheet.width + problem.kerf);
          const v = dualFeasibleValue(entry.y, height + problem.kerf, sheet.height + problem.kerf);
          return factor * BigInt(u) * BigInt(v);
        };
        // What comes out of a window is carried twice, so its room is not counted for the piece round it.
        const window = lay.hidden ? weight(lay.hidden.width, lay.hidden.height) : 0n;
        const load = weight(lay.width, lay.height) - window;
        if (least === undefined || load < least) least = load;
      }
    }
    return least;
  });
}

interface Supply {
  readonly capacity: bigint;
  readonly cost: bigint;
  /** Undefined where there is no limit. */
  readonly stock: bigint | undefined;
}

function supplies(
  problem: CompiledProblem,
  weights: readonly SheetWeights[],
  scale: bigint,
): readonly Supply[] {
  return weights.map((entry) => {
    const sheet = sheetOf(problem, entry.sheet);
    return {
      capacity: BigInt(entry.capacity) * scale,
      cost: BigInt(sheet.cost),
      stock: Number.isFinite(sheet.stock) ? BigInt(sheet.stock) : undefined,
    };
  });
}

function leastCover(
  problem: CompiledProblem,
  weights: readonly SheetWeights[],
  loads: readonly (bigint | undefined)[],
  scale: bigint,
): { readonly cost: string | null; readonly sheets: number | null } {
  let demand = 0n;
  problem.kinds.forEach((kind, i) => {
    demand += BigInt(kind.quantity) * (loads[i] ?? 0n);
  });
  const supply = supplies(problem, weights, scale);
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
  const cost = step === 0n ? 0n : ceilDivide(numerator, denominator * step) * step;
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
  weights: readonly SheetWeights[],
  loads: readonly (bigint | undefined)[],
  scale: bigint,
): string {
  let room = 0n;
  for (const { capacity, stock } of supplies(problem, weights, scale)) room += capacity * (stock ?? 0n);
  const wanted = problem.kinds
    .map((kind, i) => ({ kind, load: loads[i] }))
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
