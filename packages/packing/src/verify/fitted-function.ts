/**
 * Functions whose values are fitted to the very pieces that are wanted (`fitted`).
 *
 * Such a function is a conservative scale (S. P. Fekete and J. Schepers, A general framework for bounds for
 * higher-dimensional orthogonal packing problems, Mathematical Methods of Operations Research 60 (2004)): its capacity is
 * the most that the values of wanted copies sum to whose extents, with a kerf each, fit a row. Why products of two may
 * be summed over a sheet: pieces that one horizontal line crosses stand in a row, so their u sum to at most U. Their
 * heights are intervals, so with u(piece) colours for each piece U colours are enough to give no two pieces on one line
 * the same; the pieces of one colour lie one below the other, and their v sum to at most V. Each copy counts once in
 * both, so no row needs more copies of a kind than are wanted.
 *
 * The most of a row is found by dynamic programming over the pairs (extent, value) that no other pair beats in both.
 */

import type { Weighing } from "./dual-feasible.js";
import { type Report, shown } from "./finding.js";
import type { ProblemFacts } from "./read-problem.js";
import { readFields, readList, readText, readWhole } from "./read-value.js";

/** With values up to this one in rows up to that long, sums of a row stay exact. */
const largestValue = 1_000_000;
const longestRow = 0x1_0000_0000n;

/** So many pairs are looked at for one function. */
const mostPairs = 20_000_000;

/** Reads the values of a `fitted` function for rows of `extent`, a kerf included; reports what is wrong with them. */
export function readFitted(
  facts: ProblemFacts,
  report: Report,
  value: unknown,
  path: string,
  extent: bigint,
): Weighing | undefined {
  const list = readList(report, value, path);
  if (list === undefined) return undefined;
  const kerf = facts.kerf;
  const byKind = new Map<string, Map<number, number>>();
  for (const [index, entry] of list.entries()) {
    const here = `${path}[${index}]`;
    const fields = readFields<"kind" | "extent" | "value">(report, entry, here);
    const kind = fields && readText(report, fields.kind, `${here}.kind`);
    const own = fields && readWhole(report, fields.extent, `${here}.extent`, 1);
    const worth = fields && readWhole(report, fields.value, `${here}.value`, 1);
    if (kind === undefined || own === undefined || worth === undefined) return undefined;
    if (!facts.kinds.has(kind)) {
      const message = `${here}.kind is ${shown(kind)}, but the problem has no such kind. Name one of the problem's kinds.`;
      report("unknown-kind", `${here}.kind`, message, kind);
      return undefined;
    }
    if (worth > largestValue) {
      const message = `${here}.value is ${worth}; values up to ${largestValue} are summed. Scale them down.`;
      report("out-of-range", `${here}.value`, message, worth, largestValue);
      return undefined;
    }
    const known = byKind.get(kind) ?? new Map<number, number>();
    if (known.has(own + kerf)) {
      const message =
        `${here} gives kind ${shown(kind)} a value for the extent ${own}, like an earlier entry. ` +
        "Give one value for each extent.";
      report("not-dual-feasible", here, message, own);
      return undefined;
    }
    known.set(own + kerf, worth);
    byKind.set(kind, known);
  }
  const capacity = extent > longestRow ? undefined : mostOfRow(facts, byKind, Number(extent));
  if (capacity === undefined) {
    const message = `${path} needs too long a calculation to prove its capacity. Give fewer or smaller values.`;
    report("certificate-too-large", path, message, list.length);
    return undefined;
  }
  if (capacity === 0) {
    const message = `${path} gives nothing that fits a row a value, so it proves nothing. Give some piece a value.`;
    report("not-dual-feasible", path, message, list.length);
    return undefined;
  }
  const weigh = (x: bigint, kind: string): bigint => BigInt(byKind.get(kind)?.get(Number(x)) ?? 0);
  return { weigh, capacity: BigInt(capacity) };
}

/** Pairs by rising extent and rising value. */
interface Front {
  readonly extents: readonly number[];
  readonly values: readonly number[];
}

/** The most that values sum to in one row, or `undefined` where that takes too long to find. */
function mostOfRow(
  facts: ProblemFacts,
  byKind: ReadonlyMap<string, ReadonlyMap<number, number>>,
  room: number,
): number | undefined {
  let front: Front = { extents: [0], values: [0] };
  let looked = 0;
  for (const [id, options] of byKind) {
    const fitting = [...options].filter(([extent]) => extent <= room);
    if (fitting.length === 0) continue;
    const limit = Math.floor(room / Math.min(...fitting.map(([extent]) => extent)));
    const quantity = facts.kinds.get(id)?.quantity ?? null;
    const copies = quantity !== null && quantity < BigInt(limit) ? Number(quantity) : limit;
    for (const lot of lotsOf(copies, fitting.length)) {
      let next = front;
      for (const [extent, value] of fitting) next = merge(next, front, extent * lot, value * lot, room);
      looked += next.extents.length * (1 + fitting.length);
      if (looked > mostPairs) return undefined;
      front = next;
    }
  }
  return front.values.at(-1);
}

/** Lots whose sums are all numbers of copies: 1, 2, 4 ... where copies are alike, else one by one. */
function* lotsOf(copies: number, options: number): Generator<number> {
  let rest = copies;
  for (let lot = 1; rest > 0; lot = options > 1 ? 1 : lot * 2) {
    yield Math.min(lot, rest);
    rest -= lot;
  }
}

/** The best pairs of `a`, and of `b` with one more extent and value. */
function merge(a: Front, b: Front, extent: number, value: number, room: number): Front {
  const extents: number[] = [];
  const values: number[] = [];
  let [i, j] = [0, 0];
  for (;;) {
    const nextA = a.extents[i] ?? Number.POSITIVE_INFINITY;
    const nextB = (b.extents[j] ?? Number.POSITIVE_INFINITY) + extent;
    const next = Math.min(nextA, nextB);
    if (next > room) break;
    let best = 0;
    if (nextA === next) best = a.values[i++] ?? 0;
    if (nextB === next) best = Math.max(best, (b.values[j++] ?? 0) + value);
    if (values.length > 0 && best <= (values.at(-1) ?? 0)) continue;
    extents.push(next);
    values.push(best);
  }
  return { extents, values };
}
