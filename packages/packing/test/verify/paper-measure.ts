/**
 * The dual-feasible functions as their papers write them, for shares x of a whole from 0 to 1, in fractions.
 * Sources: S. P. Fekete and J. Schepers, New classes of fast lower bounds for bin packing problems, Mathematical
 * Programming 91 (2001), u^(k) and U^(epsilon); J. Carlier, F. Clautiaux and A. Moukrim, New reduction procedures and
 * lower bounds for the two-dimensional bin packing problem with fixed orientation, Computers & Operations Research 34
 * (2007), the discrete function with the parameter k (here `at`).
 *
 * Fitted functions by their definition: every choice of wanted copies that fits the row.
 */
import type { DualFeasible, FittedValue, Problem } from "../../src/model.js";
import type { Measure } from "../identity-bound.js";

/** A function on 0..`extent`, with no check of its parameter. */
export function paperMeasure(f: DualFeasible, extent: bigint, problem?: Problem): Measure {
  if (f.family === "fitted") {
    if (problem === undefined) throw new TypeError("A fitted function needs its problem.");
    return fittedMeasure(f.values, Number(extent), problem);
  }
  if (f.family === "identity") return { u: (x) => x, capacity: extent };
  if (f.family === "threshold") {
    // U(x) = 1 for x > 1 - e, 0 for x < e, else x.
    const at = BigInt(f.at);
    return {
      capacity: extent,
      u: (x) => {
        if (x + at > extent) return extent;
        return x < at ? 0n : x;
      },
    };
  }
  if (f.family === "rounding") {
    // u(x) = x where (k + 1) x is whole, else floor((k + 1) x) / k; both over a common k C.
    const k = BigInt(f.k);
    return {
      capacity: k * extent,
      u: (x) => {
        let floor = 0n;
        while ((floor + 1n) * extent <= (k + 1n) * x) floor += 1n;
        return floor * extent === (k + 1n) * x ? x * k : floor * extent;
      },
    };
  }
  const at = BigInt(f.at);
  const steps = (x: bigint) => x / at;
  return {
    capacity: 2n * steps(extent),
    u: (x) => {
      if (x + x > extent) return 2n * (steps(extent) - steps(extent - x));
      return x + x === extent ? steps(extent) : 2n * steps(x);
    },
  };
}

/** Copy by copy over every rest of the row: a copy takes one of its extents or stays out. */
function fittedMeasure(values: readonly FittedValue[], room: number, problem: Problem): Measure {
  const kerf = problem.kerf ?? 0;
  let most = Array.from({ length: room + 1 }, () => 0);
  for (const { id, quantity } of problem.kinds) {
    const options = values.filter(({ kind }) => kind === id);
    const shortest = Math.min(...options.map(({ extent }) => extent + kerf));
    for (let copy = 0; copy < (quantity ?? room) && (copy + 1) * shortest <= room; copy += 1) {
      most = most.map((out, rest) =>
        options.reduce((best, { extent, value }) => {
          const before = most[rest - extent - kerf];
          return before === undefined ? best : Math.max(best, before + value);
        }, out),
      );
    }
  }
  const u = (x: bigint, kind: string) =>
    BigInt(values.find((own) => own.kind === kind && BigInt(own.extent + kerf) === x)?.value ?? 0);
  return { u, capacity: BigInt(most[room] ?? 0) };
}
