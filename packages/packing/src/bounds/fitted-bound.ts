/**
 * Bounds by functions fitted to the very pieces (`fitted`), for one kind of sheet and the aim `all`.
 *
 * With the function along one axis fixed, the best one along the other solves a linear program ({@link rowValues}); so
 * both are improved in turn, from the functions of good pairs with parameters. On a square sheet where every piece may
 * also lie the other way, the same pair with its axes exchanged counts as much, so that a piece weighs alike both ways.
 *
 * Sources: S. P. Fekete and J. Schepers (2004) as in model.ts; G. Belov, V. M. Kartak, H. Rohling and G. Scheithauer,
 * One-dimensional relaxations and LP bounds for orthogonal packing, International Transactions in Operational Research
 * 16 (2009). The bound found is a local optimum and holds for any way of cutting.
 */
import type { Bound, DualFeasible, FittedValue, FunctionPair, SheetWeights } from "../model.js";
import type { CompiledKind, CompiledProblem, CompiledSheet } from "../search/compiled-problem.js";
import { dualFeasibleCapacity, dualFeasibleValue, type PlainFunction } from "./dual-feasible-value.js";
import { exactBound } from "./exact-bound.js";
import type { WorkLeft } from "./pattern-program.js";
import { newRow, type Row, type RowGroup } from "./row-of-pieces.js";
import { rowValues } from "./row-values.js";

/** A pair of functions with parameters to start from. */
export interface PlainPair {
  readonly x: PlainFunction;
  readonly y: PlainFunction;
}

/** With less work than this only what mostly helps is tried. */
const DOUBTFUL_WORK = 5_000_000;
/** Turns from one axis to the other for one start. */
const MOST_ROUNDS = 4;
/** A start is left when the first fitted function falls so many sheets short of the bound to be raised. */
const FAR = 0.45;
/** With more options a linear program takes longer than is left for it. */
const MOST_OPTIONS = 800;
/** What making values whole may cost, in sheets. */
const MARGIN = 1e-3;
/** Denominators tried to make values whole; the last one rounds down. */
const DENOMINATORS = [2, 3, 4, 6, 8, 12, 24, 60, 840, 100_000];

/** A better bound than `best`, or undefined where none is found with the work that is left. */
export function fittedBound(
  problem: CompiledProblem,
  kinds: readonly CompiledKind[],
  sheet: CompiledSheet,
  starts: readonly PlainPair[],
  best: Bound,
  work: WorkLeft,
): Bound | undefined {
  if (best.aim !== "all" || best.sheets === null) return undefined;
  const lays = kinds.flatMap((kind) => (kind.lays[sheet.index] ?? []).map((lay) => ({ kind, ...lay })));
  if (lays.some((lay) => lay.hidden !== undefined)) return undefined;
  // A piece that may lie both ways weighs the lighter one, so without a mirrored pair little is gained.
  const hasTurns = lays.length > kinds.length;
  const isMirrored = hasTurns && sheet.width === sheet.height;
  if (hasTurns && !isMirrored && work.left < DOUBTFUL_WORK) return undefined;
  const x = axisOf(problem, kinds, sheet, "width");
  const y = axisOf(problem, kinds, sheet, "height");
  if (x === undefined || y === undefined || x.options.length + y.options.length > MOST_OPTIONS)
    return undefined;
  const entries = lays.map(({ kind, width, height }) => ({
    share: kind.quantity / (kind.lays[sheet.index]?.length ?? 1),
    x: x.options.findIndex((option) => option.kind === kind && option.extent === width),
    y: y.options.findIndex((option) => option.kind === kind && option.extent === height),
  }));
  const demandOf = (axis: "x" | "y", values: Float64Array): Float64Array => {
    const demand = new Float64Array((axis === "x" ? x : y).options.length);
    for (const entry of entries) {
      const value = values[axis === "x" ? entry.y : entry.x] as number;
      demand[entry[axis]] = (demand[entry[axis]] as number) + entry.share * value;
    }
    return demand;
  };
  const boundBy = (u: Float64Array, v: Float64Array, denominator: number): Bound | undefined => {
    const pair = { x: x.fittedTo(u, denominator), y: y.fittedTo(v, denominator) };
    const besides: readonly FunctionPair[] = [{ x: pair.y, y: pair.x }];
    const weights: SheetWeights = {
      sheet: sheet.id,
      ...pair,
      ...(isMirrored ? { besides } : {}),
      capacity: 1,
    };
    return exactBound(problem, [weights]);
  };
  let found: Bound | undefined;
  let least = best.sheets;
  /** Makes values whole in a few ways, and keeps what proves more. */
  const settle = (u: Float64Array, v: Float64Array): void => {
    for (const denominator of DENOMINATORS) {
      const bound = boundBy(u, v, denominator);
      work.left -= x.row.work + y.row.work;
      if (bound?.aim !== "all" || (bound.sheets !== null && bound.sheets <= least)) continue;
      found = bound;
      least = bound.sheets ?? Number.POSITIVE_INFINITY;
      return;
    }
  };
  for (const start of starts) {
    let v = y.valuesOf(start.y);
    let u: Float64Array = new Float64Array(0);
    let total = 0;
    for (let round = 0; round < MOST_ROUNDS && work.left > 0 && least < Number.POSITIVE_INFINITY; round++) {
      const before = total;
      const across = rowValues(x.row, demandOf("x", v), x.alone, least + MARGIN, work);
      u = across.values;
      if (across.total > least + MARGIN) settle(u, v);
      if (across.total < least - FAR || work.left <= 0) break;
      const down = rowValues(y.row, demandOf("y", u), y.alone, least + MARGIN, work);
      v = down.values;
      total = down.total;
      if (total > least + MARGIN) settle(u, v);
      if (total < before + MARGIN) break;
    }
    if (work.left <= 0 || least === Number.POSITIVE_INFINITY) break;
  }
  return found;
}

interface Axis {
  readonly row: Row;
  readonly options: readonly { readonly kind: CompiledKind; readonly extent: number }[];
  /** By option: pieces that a row holds at most. */
  readonly alone: Float64Array;
  readonly valuesOf: (f: PlainFunction) => Float64Array;
  readonly fittedTo: (values: Float64Array, denominator: number) => DualFeasible;
}

/** The rows along one axis: an option for each extent that a kind may have there. */
function axisOf(
  problem: CompiledProblem,
  kinds: readonly CompiledKind[],
  sheet: CompiledSheet,
  axis: "width" | "height",
): Axis | undefined {
  const room = sheet[axis] + problem.kerf;
  const groups = kinds.map((kind) => ({
    kind,
    extents: [...new Set((kind.lays[sheet.index] ?? []).map((lay) => lay[axis]))],
  }));
  const row = newRow(
    groups.map(
      ({ kind, extents }): RowGroup => ({
        extents: extents.map((extent) => extent + problem.kerf),
        copies: kind.quantity,
      }),
    ),
    room,
  );
  if (row === undefined) return undefined;
  const options = groups.flatMap(({ kind, extents }) => extents.map((extent) => ({ kind, extent })));
  return {
    row,
    options,
    alone: Float64Array.from(options, ({ kind, extent }) =>
      Math.min(kind.quantity, Math.floor(room / (extent + problem.kerf))),
    ),
    valuesOf: (f) => {
      const capacity = dualFeasibleCapacity(f, room);
      return Float64Array.from(
        options,
        ({ extent }) => dualFeasibleValue(f, extent + problem.kerf, room) / capacity,
      );
    },
    fittedTo: (values, denominator) => {
      const list: FittedValue[] = [];
      options.forEach(({ kind, extent }, option) => {
        const exact = (values[option] as number) * denominator;
        const value = denominator < 1000 ? Math.round(exact) : Math.floor(exact + 1e-6);
        if (value > 0) list.push({ kind: kind.id, extent, value });
      });
      return { family: "fitted", values: list };
    },
  };
}
