/**
 * Proves a bound again from its certificate: of weights as follows, or of prices (guillotine-value.ts).
 *
 * The certificate gives each sheet two dual-feasible functions u, v and a capacity W. On that sheet a piece of w x h
 * with a kerf of k weighs W u(w + k) v(h + k) / (U V), and a kind weighs the least over the sheets, forms and turns
 * that it may be cut by. Where there are several pairs u, v, a piece weighs the mean over them: with each alone no
 * layout carries more than W, so with their mean none does.
 *
 * Where another piece may come out of its hidden part of a x b, a piece weighs W u(a + k) v(b + k) / (U V) less: that
 * is the most that the pieces in a window can weigh, since the functions with parameters are superadditive
 * (u(x) + u(y) <= u(x + y)). Fitted ones need not be, so no window may be of use on a sheet that has them.
 */

import type { Size } from "../model.js";
import { readDualFeasible, type Weighing } from "./dual-feasible.js";
import { type Report, shown } from "./finding.js";
import { readFitted } from "./fitted-function.js";
import { mostGuillotineValue } from "./guillotine-value.js";
import {
  type Carrier,
  fewestCarriers,
  greatestCommonDivisor,
  type Load,
  leastCost,
  mostValue,
} from "./prove-bound.js";
import type { KindFacts, ProblemFacts, SheetFacts } from "./read-problem.js";
import { type Fields, readFields, readList, readText, readWhole, readWord } from "./read-value.js";
import { isWindowOfUse, waysToLie } from "./ways-to-lie.js";

/** What a certificate proves. */
export interface Proven {
  /** The least cost with the aim `all`; `null` where the stock cannot give every piece. */
  readonly cost: bigint | null;
  /** The fewest sheets with the aim `all`; `null` like the cost. */
  readonly sheets: bigint | null;
  /** The most value with the aim `fill`; `null` where no limit is proven. */
  readonly value: bigint | null;
  /** Whether the stock cannot give every copy that must be there. */
  readonly isShort: boolean;
}

/** Reads a certificate and gives what it proves; whatever is wrong with it is reported. */
export function checkCertificate(facts: ProblemFacts, value: unknown, report: Report): Proven | undefined {
  const path = "bound.certificate";
  const fields = readFields<"type" | "sheets" | "prices" | "kind">(report, value, path);
  const type = fields && readWord(report, fields.type, `${path}.type`, ["weights", "prices", "no-fit"]);
  if (fields === undefined || type === undefined) return undefined;
  if (type === "weights") return proveByWeights(facts, fields.sheets, `${path}.sheets`, report);
  return type === "prices"
    ? proveByPrices(facts, fields.prices, path, report)
    : proveByNoFit(facts, fields.kind, `${path}.kind`, report);
}

function proveByNoFit(facts: ProblemFacts, value: unknown, path: string, report: Report): Proven | undefined {
  const id = readText(report, value, path);
  if (id === undefined) return undefined;
  const kind = facts.kinds.get(id);
  if (kind === undefined) {
    const message = `${path} is ${shown(id)}, but the problem has no such kind. Name one of the problem's kinds.`;
    report("unknown-kind", path, message, id);
    return undefined;
  }
  const sheet = [...facts.sheets.values()].find((sheet) => waysToLie(kind, sheet).length > 0);
  if (sheet !== undefined || kind.quantity === 0n) {
    const reason = sheet === undefined ? "none of it is wanted" : `it fits sheet ${shown(sheet.id)}`;
    const message = `${path} says that kind ${shown(id)} fits no sheet, but ${reason}. Give weights as the certificate.`;
    report("certificate-fits", path, message, sheet?.id);
    return undefined;
  }
  return { cost: null, sheets: null, value: null, isShort: kind.required > 0n };
}

/** A dual-feasible function along each axis. */
interface WeighingPair {
  readonly x: Weighing;
  readonly y: Weighing;
}

interface WeighedSheet {
  readonly sheet: SheetFacts;
  readonly pairs: readonly WeighingPair[];
  readonly capacity: bigint;
}

function proveByWeights(
  facts: ProblemFacts,
  value: unknown,
  path: string,
  report: Report,
): Proven | undefined {
  const weighed = readWeights(facts, value, path, report);
  if (weighed === undefined) return undefined;
  const kinds = [...facts.kinds.values()].filter((kind) => kind.quantity !== 0n);
  // One scale on which every weight is whole: a common multiple of all U V, times the number of pairs.
  let scale = 1n;
  for (const { pairs } of weighed) {
    for (const { x, y } of pairs) {
      const product = x.capacity * y.capacity * BigInt(pairs.length);
      scale = (scale / greatestCommonDivisor([scale, product])) * product;
    }
  }
  const weights = kinds.map((kind) => weightOf(facts, kind, weighed, scale));
  const carriers = weighed.map(({ sheet, capacity }) => carrierOf(sheet, capacity * scale));
  return conclude(facts, kinds, weights, carriers);
}

const largestPrice = 1_000_000_000;

/** So many cuts are looked at to find what all sheets carry: about a second. */
const mostCuts = 400_000_000;

/**
 * Each kind counts its price, whatever it is cut from, and a sheet carries the most that edge-to-edge cuts get from it:
 * the bound follows as from weights.
 */
function proveByPrices(
  facts: ProblemFacts,
  value: unknown,
  path: string,
  report: Report,
): Proven | undefined {
  const kinds = [...facts.kinds.values()].filter((kind) => kind.quantity !== 0n);
  const sheets = [...facts.sheets.values()];
  const opened = kinds.find((kind) => sheets.some((sheet) => hasWindowOfUse(facts, kind, sheet)));
  if (facts.mode === "stopped" || opened !== undefined) {
    const reason =
      opened === undefined
        ? "cuts may stop inside the part"
        : `pieces may come out of windows in kind ${shown(opened.id)}`;
    const message = `${path} is of prices, which hold where all cuts go from edge to edge, but here ${reason}. Give weights.`;
    report("certificate-wrong-mode", path, message, facts.mode);
    return undefined;
  }
  const prices = readPrices(facts, value, `${path}.prices`, report);
  if (prices === undefined) return undefined;
  const priced = kinds.flatMap((kind) => {
    const price = prices.get(kind.id);
    return price === undefined ? [] : [{ kind, price }];
  });
  const carriers: Carrier[] = [];
  const cuts = { left: mostCuts };
  for (const sheet of sheets) {
    const most = mostGuillotineValue(priced, sheet, facts.kerf, cuts);
    if (most === undefined) {
      const message =
        `${path}.prices needs too long a calculation to prove what sheet ${shown(sheet.id)} carries. ` +
        "Give weights, or prices to fewer kinds.";
      report("certificate-too-large", `${path}.prices`, message, sheet.id);
      return undefined;
    }
    // What carries nothing is of no help.
    if (most > 0) carriers.push(carrierOf(sheet, BigInt(most)));
  }
  const weights = kinds.map((kind) =>
    sheets.some((sheet) => waysToLie(kind, sheet).length > 0) ? BigInt(prices.get(kind.id) ?? 0) : null,
  );
  return conclude(facts, kinds, weights, carriers);
}

function readPrices(
  facts: ProblemFacts,
  value: unknown,
  path: string,
  report: Report,
): ReadonlyMap<string, number> | undefined {
  const entries = readList(report, value, path);
  if (entries === undefined) return undefined;
  const prices = new Map<string, number>();
  for (const [index, entry] of entries.entries()) {
    const here = `${path}[${index}]`;
    const fields = readFields<"kind" | "price">(report, entry, here);
    const id = fields && readText(report, fields.kind, `${here}.kind`);
    const price = fields && readWhole(report, fields.price, `${here}.price`, 1);
    if (id === undefined || price === undefined) return undefined;
    if (!facts.kinds.has(id)) {
      const message = `${here}.kind is ${shown(id)}, but the problem has no such kind. Name one of the problem's kinds.`;
      report("unknown-kind", `${here}.kind`, message, id);
      return undefined;
    }
    if (price > largestPrice || prices.has(id)) {
      const [field, reason] = prices.has(id)
        ? ["kind", `${shown(id)}, like an earlier one. Give each kind one price`]
        : ["price", `${price}; prices up to ${largestPrice} are summed. Scale them down`];
      report(
        "out-of-range",
        `${here}.${field}`,
        `${here}.${field} is ${reason}.`,
        field === "kind" ? id : price,
      );
      return undefined;
    }
    prices.set(id, price);
  }
  return prices;
}

function carrierOf(sheet: SheetFacts, capacity: bigint): Carrier {
  return { capacity, stock: sheet.stock, cost: sheet.cost };
}

/** What follows from weights of kinds and what sheets carry; a weight of `null` says that a kind fits no sheet. */
function conclude(
  facts: ProblemFacts,
  kinds: readonly KindFacts[],
  weights: readonly (bigint | null)[],
  carriers: readonly Carrier[],
): Proven {
  let demand = 0n;
  let lacksRoom = false;
  const loads: Load[] = [];
  for (const [index, kind] of kinds.entries()) {
    const weight = weights[index] ?? null;
    if (weight === null) {
      lacksRoom ||= kind.required > 0n;
      continue;
    }
    demand += kind.required * weight;
    loads.push({ weight, quantity: kind.quantity, value: kind.value });
  }
  const unit = greatestCommonDivisor([...facts.sheets.values()].map((sheet) => sheet.cost));
  const sheets = lacksRoom ? null : fewestCarriers(carriers, demand);
  return {
    cost: lacksRoom ? null : leastCost(carriers, demand, unit),
    sheets,
    value: mostValue(loads, totalCapacity(carriers)),
    isShort: sheets === null,
  };
}

function totalCapacity(
  carriers: readonly { readonly capacity: bigint; readonly stock: bigint | null }[],
): bigint | null {
  let total = 0n;
  for (const { capacity, stock } of carriers) {
    if (stock === null) return null;
    total += capacity * stock;
  }
  return total;
}

/** Reads exactly one entry for each sheet that a wanted kind can be cut from. */
function readWeights(
  facts: ProblemFacts,
  value: unknown,
  path: string,
  report: Report,
): readonly WeighedSheet[] | undefined {
  const entries = readList(report, value, path);
  if (entries === undefined) return undefined;
  const wanted = [...facts.kinds.values()].filter((kind) => kind.quantity !== 0n);
  const useful = new Set<string>();
  for (const sheet of facts.sheets.values()) {
    if (wanted.some((kind) => waysToLie(kind, sheet).length > 0)) useful.add(sheet.id);
  }
  const weighed = new Map<string, WeighedSheet | undefined>();
  for (const [index, entry] of entries.entries()) {
    const here = `${path}[${index}]`;
    const fields = readFields<"sheet" | "x" | "y" | "besides" | "capacity">(report, entry, here);
    const id = fields && readText(report, fields.sheet, `${here}.sheet`);
    if (fields === undefined || id === undefined) return undefined;
    const sheet = facts.sheets.get(id);
    if (sheet === undefined || !useful.has(id)) {
      const reason = sheet === undefined ? "the problem has no such sheet" : "no kind that is wanted fits it";
      const message = `${here}.sheet is ${shown(id)}, but ${reason}. Leave the entry out.`;
      report("certificate-sheet-extra", `${here}.sheet`, message, id);
      return undefined;
    }
    if (weighed.has(id)) {
      const message = `${here}.sheet is ${shown(id)}, like an earlier entry. Give one entry a sheet.`;
      report("certificate-sheet-twice", `${here}.sheet`, message, id);
      return undefined;
    }
    weighed.set(id, readSheetWeights(facts, sheet, fields, here, report));
  }
  for (const id of useful) {
    if (weighed.has(id)) continue;
    const message = `${path} has no entry for sheet ${shown(id)}, which pieces can be cut from. Add one.`;
    report("certificate-sheet-missing", path, message, undefined, id);
    return undefined;
  }
  const whole = [...weighed.values()].filter((entry) => entry !== undefined);
  return whole.length === weighed.size ? whole : undefined;
}

function readSheetWeights(
  facts: ProblemFacts,
  sheet: SheetFacts,
  fields: Fields<"x" | "y" | "besides" | "capacity">,
  path: string,
  report: Report,
): WeighedSheet | undefined {
  const besides = fields.besides === undefined ? [] : readList(report, fields.besides, `${path}.besides`);
  const first = readPair(facts, sheet, fields, path, report);
  const more = besides?.map((entry, index) => {
    const here = `${path}.besides[${index}]`;
    const fields = readFields<"x" | "y">(report, entry, here);
    return fields && readPair(facts, sheet, fields, here, report);
  });
  const capacity = readWhole(report, fields.capacity, `${path}.capacity`, 1);
  if (more === undefined || capacity === undefined) return undefined;
  const pairs = [first, ...more].filter((pair) => pair !== undefined);
  return pairs.length === more.length + 1 ? { sheet, pairs, capacity: BigInt(capacity) } : undefined;
}

function readPair(
  facts: ProblemFacts,
  sheet: SheetFacts,
  fields: Fields<"x" | "y">,
  path: string,
  report: Report,
): WeighingPair | undefined {
  // A piece takes one kerf with it, and so the sheet gets one more.
  const readAxis = (value: unknown, path: string, extent: number): Weighing | undefined =>
    isFitted(value)
      ? readFittedOn(facts, sheet, value, path, BigInt(extent) + BigInt(facts.kerf), report)
      : readDualFeasible(report, value, path, BigInt(extent) + BigInt(facts.kerf));
  const x = readAxis(fields.x, `${path}.x`, sheet.usable.width);
  const y = readAxis(fields.y, `${path}.y`, sheet.usable.height);
  return x && y && { x, y };
}

function isFitted(value: unknown): value is Fields<"values"> {
  return typeof value === "object" && value !== null && (value as Fields<"family">).family === "fitted";
}

function readFittedOn(
  facts: ProblemFacts,
  sheet: SheetFacts,
  value: Fields<"values">,
  path: string,
  extent: bigint,
  report: Report,
): Weighing | undefined {
  const kind = [...facts.kinds.values()].find(
    (kind) => kind.quantity !== 0n && hasWindowOfUse(facts, kind, sheet),
  );
  if (kind !== undefined) {
    const message =
      `${path} has fitted values, but on sheet ${shown(sheet.id)} pieces may come out of kind ${shown(kind.id)}, ` +
      "and so lie within another piece of the same row. Take a family that needs no values.";
    report("not-dual-feasible", path, message, kind.id);
    return undefined;
  }
  return readFitted(facts, report, value.values, `${path}.values`, extent);
}

function hasWindowOfUse(facts: ProblemFacts, kind: KindFacts, sheet: SheetFacts): boolean {
  return waysToLie(kind, sheet).some(({ hidden }) => hidden !== null && isWindowOfUse(facts, hidden));
}

/** The least that one copy weighs, times `scale`; `null` where it fits no sheet. */
function weightOf(
  facts: ProblemFacts,
  kind: KindFacts,
  weighed: readonly WeighedSheet[],
  scale: bigint,
): bigint | null {
  const kerf = BigInt(facts.kerf);
  let least: bigint | null = null;
  for (const { sheet, pairs, capacity } of weighed) {
    const weigh = ({ width, height }: Size) => {
      let weight = 0n;
      for (const { x, y } of pairs) {
        const unit = scale / (x.capacity * y.capacity * BigInt(pairs.length));
        weight += unit * x.weigh(BigInt(width) + kerf, kind.id) * y.weigh(BigInt(height) + kerf, kind.id);
      }
      return capacity * weight;
    };
    for (const way of waysToLie(kind, sheet)) {
      const window = way.hidden !== null && isWindowOfUse(facts, way.hidden) ? weigh(way.hidden) : 0n;
      const weight = weigh(way) - window;
      if (least === null || weight < least) least = weight;
    }
  }
  return least;
}
