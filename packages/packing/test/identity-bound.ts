/**
 * The bound by area, found another way than the verifier does. Where sheets count in part, by the dual of the knapsack, a
 * price of weight that is tried at each of its breakpoints: strong duality of linear programming makes both equal.
 */
import type {
  Bound,
  Certificate,
  DualFeasible,
  Form,
  KindPrice,
  Problem,
  Sheet,
  SheetWeights,
} from "../src/model.js";

/** A dual-feasible function as the bound uses it. */
export interface Measure {
  /** Value of an extent with its kerf, of a piece of a kind. */
  readonly u: (extent: bigint, kind: string) => bigint;
  readonly capacity: bigint;
}

interface Fraction {
  readonly n: bigint;
  readonly d: bigint;
}

const isLess = (a: Fraction, b: Fraction): boolean => a.n * b.d < b.n * a.d;
const positivePart = (n: bigint): bigint => (n > 0n ? n : 0n);

function divisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : divisor(b, a % b);
}

export function usableSize(sheet: Sheet): { readonly width: number; readonly height: number } {
  const { left = 0, right = 0, top = 0, bottom = 0 } = sheet.trim ?? {};
  return { width: sheet.width - left - right, height: sheet.height - top - bottom };
}

/** Width and height of a form on a sheet, as they may lie and fit there, with the size of the hidden part. */
export function lies(form: Form, sheet: Sheet): readonly (readonly [number, number, number, number])[] {
  const use = form.sheets?.find((entry) => entry.sheet === sheet.id);
  if (form.sheets !== undefined && use === undefined) return [];
  const turns = use?.turns ?? form.turns ?? "both";
  const usable = usableSize(sheet);
  const { width: a = 0, height: b = 0 } = form.hidden ?? {};
  const list: (readonly [number, number, number, number])[] = [];
  if (turns !== "turned") list.push([form.width, form.height, a, b]);
  if (turns !== "upright") list.push([form.height, form.width, b, a]);
  return list.filter(([w, h]) => w <= usable.width && h <= usable.height);
}

/** Sheets that some wanted kind can be cut from. */
export function usefulSheets(problem: Problem): readonly Sheet[] {
  const wanted = problem.kinds.filter((kind) => kind.quantity !== 0);
  return problem.sheets.filter((sheet) =>
    wanted.some((kind) => kind.forms.some((form) => lies(form, sheet).length > 0)),
  );
}

/** Weights by kind on one scale on which all of them are whole. */
function weights(problem: Problem, entries: readonly SheetWeights[], measureOf: MeasureOf) {
  const kerf = problem.kerf ?? 0;
  const wanted = problem.kinds.filter((kind) => kind.quantity !== 0);
  const goesInto = (a: number, b: number) =>
    wanted.some((kind) =>
      kind.forms.some((f) => (f.width <= a && f.height <= b) || (f.width <= b && f.height <= a)),
    );
  const measured = entries.map((entry) => {
    const sheet = problem.sheets.find((sheet) => sheet.id === entry.sheet);
    if (sheet === undefined) throw new RangeError("No such sheet.");
    const usable = usableSize(sheet);
    const pairs = [entry, ...(entry.besides ?? [])].map((pair) => {
      const x = measureOf(pair.x, BigInt(usable.width + kerf), problem);
      const y = measureOf(pair.y, BigInt(usable.height + kerf), problem);
      return { x, y, full: x.capacity * y.capacity };
    });
    return { entry, sheet, pairs };
  });
  const scale = measured
    .flatMap(({ pairs }) => pairs.map(({ full }) => full * BigInt(pairs.length)))
    .reduce((all, full) => (all / divisor(all, full)) * full, 1n);
  const lightest = new Map<string, bigint>();
  for (const { entry, sheet, pairs } of measured) {
    for (const kind of wanted) {
      const shareOf = (w: number, h: number) =>
        pairs
          .map(
            ({ x, y, full }) =>
              (x.u(BigInt(w + kerf), kind.id) * y.u(BigInt(h + kerf), kind.id) * scale) / full,
          )
          .reduce((sum, share) => sum + share, 0n) / BigInt(pairs.length);
      for (const [w, h, a, b] of kind.forms.flatMap((form) => lies(form, sheet))) {
        const net = shareOf(w, h) - (a > 0 && goesInto(a, b) ? shareOf(a, b) : 0n);
        const weight = BigInt(entry.capacity) * net;
        const known = lightest.get(kind.id);
        if (known === undefined || weight < known) lightest.set(kind.id, weight);
      }
    }
  }
  return { lightest, scale };
}

/** Gives a function for extents up to `extent`. */
export type MeasureOf = (f: DualFeasible, extent: bigint, problem: Problem) => Measure;

const byIdentity: MeasureOf = (_f, extent) => ({ u: (x) => x, capacity: extent });

interface Carrier {
  readonly capacity: bigint;
  readonly stock: bigint | null;
  readonly cost: bigint;
}

/** The bound that weights prove. It throws where nothing limits the value. */
export function boundOf(problem: Problem, entries: readonly SheetWeights[], measureOf = byIdentity): Bound {
  const { lightest, scale } = weights(problem, entries, measureOf);
  const carriers = entries.map((entry): Carrier => {
    const sheet = problem.sheets.find((sheet) => sheet.id === entry.sheet) as Sheet;
    return carrierOf(sheet, BigInt(entry.capacity) * scale);
  });
  return boundFrom(problem, lightest, carriers, { type: "weights", sheets: entries });
}

/** The bound that prices prove where sheets carry what `capacityOf` says. It throws where nothing limits the value. */
export function boundOfPrices(
  problem: Problem,
  prices: readonly KindPrice[],
  capacityOf: (sheet: Sheet) => number,
): Bound {
  const fitting = problem.kinds.filter(
    (kind) =>
      kind.quantity !== 0 &&
      problem.sheets.some((sheet) => kind.forms.some((form) => lies(form, sheet).length > 0)),
  );
  const priceOf = (id: string) => BigInt(prices.find(({ kind }) => kind === id)?.price ?? 0);
  const lightest = new Map(fitting.map(({ id }) => [id, priceOf(id)]));
  const carriers = problem.sheets
    .map((sheet) => carrierOf(sheet, BigInt(capacityOf(sheet))))
    .filter(({ capacity }) => capacity > 0n);
  return boundFrom(problem, lightest, carriers, { type: "prices", prices });
}

function carrierOf(sheet: Sheet, capacity: bigint): Carrier {
  const stock = sheet.stock ?? null;
  return { capacity, stock: stock === null ? null : BigInt(stock), cost: costOf(sheet) };
}

function boundFrom(
  problem: Problem,
  lightest: ReadonlyMap<string, bigint>,
  carriers: readonly Carrier[],
  certificate: Certificate,
): Bound {
  const total = carriers.some(({ stock }) => stock === null)
    ? null
    : carriers.reduce((all, { capacity, stock }) => all + capacity * (stock ?? 0n), 0n);
  if (problem.aim === "fill") {
    return { aim: "fill", value: String(mostValue(problem, lightest, total)), certificate };
  }
  const wanted = problem.kinds.filter((kind) => (kind.quantity ?? 0) > 0);
  const demand = wanted.reduce(
    (sum, kind) => sum + BigInt(kind.quantity ?? 0) * (lightest.get(kind.id) ?? 0n),
    0n,
  );
  if (wanted.some((kind) => !lightest.has(kind.id)) || (total !== null && total < demand)) {
    return { aim: "all", cost: null, sheets: null, certificate };
  }
  const cost = leastCostOfWhole(carriers, demand) ?? leastCost(problem, carriers, demand);
  return {
    aim: "all",
    cost: String(cost),
    sheets: demand === 0n ? 0 : fewest(carriers, demand),
    certificate,
  };
}

/** Whether weights prove that the stock cannot give the copies that must be there at least. */
export function isStockShort(
  problem: Problem,
  entries: readonly SheetWeights[],
  measureOf = byIdentity,
): boolean {
  const { lightest, scale } = weights(problem, entries, measureOf);
  const required = (kind: Problem["kinds"][number]) =>
    BigInt((problem.aim === "all" ? kind.quantity : kind.least) ?? 0);
  if (problem.kinds.some((kind) => required(kind) > 0n && !lightest.has(kind.id))) return true;
  const demand = problem.kinds.reduce(
    (sum, kind) => sum + required(kind) * (lightest.get(kind.id) ?? 0n),
    0n,
  );
  let room = 0n;
  for (const entry of entries) {
    const stock = problem.sheets.find(({ id }) => id === entry.sheet)?.stock ?? null;
    if (stock === null) return false;
    room += BigInt(entry.capacity) * scale * BigInt(stock);
  }
  return demand > room;
}

/**
 * The least cost of whole sheets: of each sheet but the last every number, the choices that carry more first, and of those
 * only what costs less than all that carry as much. `null` where a sheet makes more than 4,000 of them.
 */
function leastCostOfWhole(carriers: readonly Carrier[], demand: bigint): bigint | null {
  if (demand === 0n) return 0n;
  const needed = (rest: bigint, capacity: bigint) => (rest <= 0n ? 0n : (rest - 1n) / capacity + 1n);
  let choices: readonly { readonly open: bigint; readonly cost: bigint }[] = [{ open: demand, cost: 0n }];
  for (const { capacity, stock, cost } of carriers.slice(0, -1)) {
    const all = needed(demand, capacity);
    const most = Number(stock === null || all < stock ? all : stock);
    if (choices.length * (most + 1) > 4_000) return null;
    const tried = choices.flatMap((choice) =>
      Array.from({ length: most + 1 }, (_, n) => ({
        open: positivePart(choice.open - BigInt(n) * capacity),
        cost: choice.cost + BigInt(n) * cost,
      })),
    );
    tried.sort((a, b) => Number(a.open - b.open) || Number(a.cost - b.cost));
    let cheapest: bigint | null = null;
    choices = tried.filter((choice) => {
      const isCheaper = cheapest === null || choice.cost < cheapest;
      if (isCheaper) cheapest = choice.cost;
      return isCheaper;
    });
  }
  const last = carriers.at(-1);
  if (last === undefined) return null;
  const totals = choices.flatMap(({ open, cost }) => {
    const count = needed(open, last.capacity);
    return last.stock !== null && count > last.stock ? [] : [cost + count * last.cost];
  });
  return totals.reduce<bigint | null>((least, cost) => (least === null || cost < least ? cost : least), null);
}

/** The dual: the most that the demand can be charged for while no sheet costs less than it carries. */
function leastCost(problem: Problem, carriers: readonly Carrier[], demand: bigint): bigint {
  const prices = carriers.map(({ cost, capacity }): Fraction => ({ n: cost, d: capacity }));
  let cost: Fraction = { n: 0n, d: 1n };
  for (const price of prices) {
    if (carriers.some(({ stock }, s) => stock === null && isLess(prices[s] ?? price, price))) continue;
    const rent = carriers.reduce(
      (sum, { capacity, stock, cost }) =>
        sum + (stock ?? 0n) * positivePart(price.n * capacity - cost * price.d),
      0n,
    );
    const value = { n: price.n * demand - rent, d: price.d };
    if (isLess(cost, value)) cost = value;
  }
  const unit = problem.sheets.reduce((all, sheet) => divisor(all, costOf(sheet)), 0n);
  if (unit === 0n) return 0n;
  const multiple = cost.n / (cost.d * unit);
  return (multiple * unit * cost.d < cost.n ? multiple + 1n : multiple) * unit;
}

/** The least number whose roomiest sheets can carry the demand, by halving an interval. */
function fewest(carriers: readonly Carrier[], demand: bigint): number {
  const roomiest = [...carriers].sort((a, b) => Number(b.capacity - a.capacity));
  const carried = (count: bigint) => {
    let rest = count;
    let weight = 0n;
    for (const { capacity, stock } of roomiest) {
      const taken = stock !== null && stock < rest ? stock : rest;
      weight += taken * capacity;
      rest -= taken;
    }
    return weight;
  };
  let [tooFew, enough] = [-1n, 1n];
  while (carried(enough) < demand) enough *= 2n;
  while (enough - tooFew > 1n) {
    const middle = tooFew + (enough - tooFew) / 2n;
    if (carried(middle) < demand) tooFew = middle;
    else enough = middle;
  }
  return Number(enough);
}

/** The dual: the least that room and copies can be charged for while no copy is worth more than its charge. */
function mostValue(problem: Problem, lightest: ReadonlyMap<string, bigint>, total: bigint | null): bigint {
  const loads = problem.kinds.flatMap((kind) => {
    const load = lightest.get(kind.id);
    return load === undefined ? [] : [{ load, quantity: kind.quantity, value: worthOf(kind) }];
  });
  const breakpoints = loads.filter(({ load }) => load > 0n).map(({ load, value }) => ({ n: value, d: load }));
  let least: Fraction | null = null;
  for (const price of [{ n: 0n, d: 1n }, ...(total === null ? [] : breakpoints)]) {
    const gains = loads.map(({ load, value }) => positivePart(value * price.d - price.n * load));
    if (loads.some(({ quantity }, index) => quantity === null && (gains[index] ?? 0n) > 0n)) continue;
    const rent = loads.reduce(
      (sum, { quantity }, index) => sum + BigInt(quantity ?? 0) * (gains[index] ?? 0n),
      0n,
    );
    const value = { n: price.n * (total ?? 0n) + rent, d: price.d };
    if (least === null || isLess(value, least)) least = value;
  }
  if (least === null) throw new RangeError("Nothing limits the value.");
  return least.n / least.d;
}

export function costOf(sheet: Sheet): bigint {
  return sheet.cost === undefined ? BigInt(sheet.width) * BigInt(sheet.height) : BigInt(sheet.cost);
}

export function worthOf(kind: Problem["kinds"][number]): bigint {
  const form = kind.forms[0] as Form;
  return kind.value === undefined ? BigInt(form.width) * BigInt(form.height) : BigInt(kind.value);
}

/** One entry for each useful sheet, with identity functions and these capacities. */
export function identityWeights(
  problem: Problem,
  capacityOf: (sheet: Sheet) => number,
): readonly SheetWeights[] {
  return usefulSheets(problem).map((sheet) => ({
    sheet: sheet.id,
    x: { family: "identity" },
    y: { family: "identity" },
    capacity: capacityOf(sheet),
  }));
}
