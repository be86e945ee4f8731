import type { DualFeasible } from "../model.js";
import type { CompiledKind, CompiledProblem, CompiledSheet } from "../search/compiled-problem.js";
import { dualFeasibleCapacity, dualFeasibleValue } from "./dual-feasible-value.js";
import { newRow, type RowGroup } from "./row-of-pieces.js";

/** A dual-feasible function along one axis of a sheet. */
export interface AxisFunction {
  /** The most that the values of one row sum to; positive. */
  readonly capacity: number;
  /** Value of a piece by its kind and its extent along the axis, without a kerf. */
  readonly valueOf: (kind: CompiledKind, extent: number) => number;
}

/** A function as it stands on one sheet; undefined where the capacity of a fitted one is out of reach or 0. */
export function axisFunction(
  problem: CompiledProblem,
  sheet: CompiledSheet,
  axis: "width" | "height",
  f: DualFeasible,
): AxisFunction | undefined {
  const room = sheet[axis] + problem.kerf;
  if (f.family !== "fitted") {
    return {
      capacity: dualFeasibleCapacity(f, room),
      valueOf: (_kind, extent) => dualFeasibleValue(f, extent + problem.kerf, room),
    };
  }
  const byKind = new Map<string, Map<number, number>>();
  for (const { kind, extent, value } of f.values) {
    const own = byKind.get(kind) ?? new Map<number, number>();
    byKind.set(kind, own.set(extent, value));
  }
  const values: number[] = [];
  const groups = problem.kinds.flatMap((kind): readonly RowGroup[] => {
    const own = byKind.get(kind.id);
    if (own === undefined) return [];
    values.push(...own.values());
    return [{ extents: [...own.keys()].map((extent) => extent + problem.kerf), copies: kind.quantity }];
  });
  const row = newRow(groups, room);
  const capacity = row?.most(Float64Array.from(values)) ?? 0;
  if (capacity <= 0) return undefined;
  return { capacity, valueOf: (kind, extent) => byKind.get(kind.id)?.get(extent) ?? 0 };
}
