/**
 * What a certificate of weights proves, in exact integers.
 *
 * Every kind has a weight, and no layout of sheet s carries more than its capacity W(s). So for all pieces the numbers
 * of sheets n(s) satisfy sum W(s) n(s) >= D, the weight of all that is wanted: the least cost over whole n(s) within the
 * stock is a lower bound (a covering knapsack), and so is the fewest sheets. It is found from all choices of sheets that
 * none other makes needless, one kind of sheet after the other; where one kind makes more than 4,000 choices, over real
 * n(s). From a given stock the copies x(i) satisfy sum pi(i) x(i) <= sum W(s) stock(s): the most value over real x(i)
 * within the quantities is an upper bound (a fractional knapsack). What is real is solved by taking the best ratio first
 * (G. B. Dantzig, Discrete-variable extremum problems, Operations Research 5 (1957)).
 */

/** A sheet that carries weight. */
export interface Carrier {
  readonly capacity: bigint;
  /** `null`: as many as needed. */
  readonly stock: bigint | null;
  readonly cost: bigint;
}

/** A kind that weighs. Its weight is on the same scale as the capacities. */
export interface Load {
  readonly weight: bigint;
  /** `null`: no limit. */
  readonly quantity: bigint | null;
  readonly value: bigint;
}

/** Beyond so many choices at one kind of carrier, covers are taken in parts. */
const mostChoices = 4_000n;

/** The least cost of carriers for a demand; `null` where the stock is too small. */
export function leastCost(carriers: readonly Carrier[], demand: bigint, unit: bigint): bigint | null {
  const inParts = leastCostInParts(carriers, demand, unit);
  return inParts === null ? null : (leastCostOfWhole(carriers, demand) ?? inParts);
}

/**
 * The least cost of whole carriers, or `null` where that takes too many choices. `most` holds, by what a choice of the
 * carriers so far costs, the most that it carries, for all costs at which more is carried than for less.
 */
function leastCostOfWhole(carriers: readonly Carrier[], demand: bigint): bigint | null {
  if (demand === 0n) return 0n;
  let most = new Map([[0n, 0n]]);
  for (const [index, { capacity, stock, cost }] of carriers.entries()) {
    const enough = ceilDivide(demand, capacity);
    if (index === carriers.length - 1) {
      const totals = [...most].flatMap(([spent, carried]) => {
        const needed = ceilDivide(demand - carried, capacity);
        return stock !== null && needed > stock ? [] : [spent + needed * cost];
      });
      return totals.sort(compare)[0] ?? null;
    }
    const limit = stock === null || stock > enough ? enough : stock;
    if (BigInt(most.size) * (limit + 1n) > mostChoices) return null;
    const raised = new Map<bigint, bigint>();
    for (const [spent, carried] of most) {
      for (let count = 0n; count <= limit; count += 1n) {
        const total = spent + count * cost;
        const weight = carried + count * capacity;
        const kept = weight > demand ? demand : weight;
        if (kept > (raised.get(total) ?? -1n)) raised.set(total, kept);
      }
    }
    let highest = -1n;
    most = new Map();
    for (const total of [...raised.keys()].sort(compare)) {
      const weight = raised.get(total) ?? 0n;
      if (weight > highest) most.set(total, weight);
      if (weight > highest) highest = weight;
    }
  }
  return null;
}

/** The least cost where parts of carriers count in part, rounded up to a multiple of `unit`. */
function leastCostInParts(carriers: readonly Carrier[], demand: bigint, unit: bigint): bigint | null {
  let rest = demand;
  let cost = 0n;
  for (const carrier of [...carriers].sort(byCostOfWeight)) {
    if (rest === 0n) break;
    if (carrier.stock !== null && carrier.stock * carrier.capacity < rest) {
      cost += carrier.stock * carrier.cost;
      rest -= carrier.stock * carrier.capacity;
      continue;
    }
    if (unit === 0n) return 0n;
    const numerator = cost * carrier.capacity + carrier.cost * rest;
    return ceilDivide(numerator, carrier.capacity * unit) * unit;
  }
  return rest === 0n ? cost : null;
}

/** The fewest carriers for a demand; `null` where the stock is too small. */
export function fewestCarriers(carriers: readonly Carrier[], demand: bigint): bigint | null {
  let rest = demand;
  let count = 0n;
  for (const { capacity, stock } of [...carriers].sort((a, b) => compare(b.capacity, a.capacity))) {
    if (rest <= 0n) break;
    const needed = ceilDivide(rest, capacity);
    const taken = stock !== null && stock < needed ? stock : needed;
    count += taken;
    rest -= taken * capacity;
  }
  return rest <= 0n ? count : null;
}

/**
 * The most value of loads that a capacity carries, rounded down. A capacity of `null` carries all. The answer is `null`
 * where value without limit cannot be excluded.
 */
export function mostValue(loads: readonly Load[], capacity: bigint | null): bigint | null {
  let rest = capacity;
  let value = 0n;
  for (const load of loads.filter((load) => load.value > 0n).sort(byValueOfWeight)) {
    if (load.weight === 0n || rest === null) {
      if (load.quantity === null) return null;
      value += load.quantity * load.value;
    } else if (load.quantity !== null && load.quantity * load.weight <= rest) {
      value += load.quantity * load.value;
      rest -= load.quantity * load.weight;
    } else {
      return value + (load.value * rest) / load.weight;
    }
  }
  return value;
}

function byCostOfWeight(a: Carrier, b: Carrier): number {
  return compare(a.cost * b.capacity, b.cost * a.capacity);
}

/** What weighs nothing comes first. */
function byValueOfWeight(a: Load, b: Load): number {
  return compare(b.value * a.weight, a.value * b.weight);
}

function compare(a: bigint, b: bigint): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Divides and rounds up; both from 0 on. */
function ceilDivide(numerator: bigint, divisor: bigint): bigint {
  return (numerator + divisor - 1n) / divisor;
}

/** Greatest common divisor; 0 of nothing and of zeros. */
export function greatestCommonDivisor(numbers: Iterable<bigint>): bigint {
  let divisor = 0n;
  for (const number of numbers) {
    let rest = number;
    while (rest !== 0n) [divisor, rest] = [rest, divisor % rest];
  }
  return divisor;
}
