import { inches, type Ticks } from "@sheetwright/measure";
import type {
  CutNode,
  Kind,
  Layout,
  Packing,
  PieceLeaf,
  Problem,
  Share,
  Sheet,
  Split,
} from "@sheetwright/packing";

/** A problem with an answer made by hand. */
export interface Plan {
  readonly problem: Problem;
  readonly packing: Packing;
}

/** Inches as ticks, short for plans made by hand. */
export const inch = inches;

export function kind(id: string, width: Ticks, height: Ticks, name?: string): Kind {
  return { id, quantity: 1, forms: [{ width, height }], name };
}

export function piece(...shares: readonly (Partial<Share> & { readonly kind: string })[]): PieceLeaf {
  return {
    type: "piece",
    shares: shares.map((share) => ({ form: 0, turned: false, count: 1, ...share })),
  };
}

export const offcut: CutNode = { type: "offcut" };
export const waste: CutNode = { type: "waste" };

/** Parts of the given sizes, one kerf apart, and what is left of the extent as a last part. */
export function split(
  axis: "x" | "y",
  extent: Ticks,
  parts: readonly (readonly [Ticks, CutNode])[],
  rest: CutNode = offcut,
  kerf = 0,
): CutNode {
  const taken = parts.reduce((sum, [size]) => sum + size, 0) + kerf * Math.max(0, parts.length - 1);
  const left = extent - taken;
  if (left < 0) throw new RangeError(`${taken} ticks of parts in an extent of ${extent}.`);
  if (left === 0 && parts.length === 1) return parts[0]?.[1] ?? rest;
  const all = parts.map(([size, node]) => ({ size, node }));
  if (left > kerf) all.push({ size: left - kerf, node: rest });
  return { type: "split", axis, parts: all } satisfies Split;
}

/** The same part several times. */
export function repeat(count: number, size: Ticks, node: CutNode): readonly (readonly [Ticks, CutNode])[] {
  return Array.from({ length: count }, () => [size, node] as const);
}

/** A plan from its parts; quantities and totals are counted from the layouts where a drawing does not need them. */
export function plan(
  kinds: readonly Kind[],
  sheets: readonly Sheet[],
  layouts: readonly Layout[],
  more: Partial<Problem> = {},
): Plan {
  const problem: Problem = { kinds, sheets, mode: "guillotine", aim: "all", ...more };
  const packing: Packing = {
    version: 1,
    mode: problem.mode,
    aim: problem.aim,
    outcome: "complete",
    layouts,
    placed: [],
    missing: [],
    sheets: layouts.reduce((sum, { run }) => sum + run, 0),
    cost: "0",
    value: "0",
    bound: { aim: "all", cost: "0", sheets: 0, certificate: { type: "weights", sheets: [] } },
    proven: false,
    search: { effort: "quick", seed: 1, lp: "none", starts: 0, steps: 0, work: 0, ended: "finished" },
  };
  return { problem, packing };
}
