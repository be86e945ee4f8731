/**
 * Dual-feasible functions in exact integers.
 *
 * A function u on the whole extents 0..C is dual-feasible with capacity U when any extents that sum to at most C have
 * values that sum to at most U. With u along x and v along y, pieces that lie apart in a C x D rectangle then have
 * products u(width) v(height) that sum to at most U V.
 * Sources: S. P. Fekete and J. Schepers, New classes of fast lower bounds for bin packing problems, Mathematical
 * Programming 91 (2001); J. Carlier, F. Clautiaux and A. Moukrim, New reduction procedures and lower bounds for the
 * two-dimensional bin packing problem with fixed orientation, Computers & Operations Research 34 (2007).
 */

import { type Report, shown } from "./finding.js";
import { readFields, readWhole, readWord } from "./read-value.js";

/** A dual-feasible function and the most that its values of one row can sum to. */
export interface Weighing {
  /** Value of an extent, a kerf included, of a piece of the kind with this id. */
  readonly weigh: (extent: bigint, kind: string) => bigint;
  readonly capacity: bigint;
}

/**
 * Reads a function for the extents 0..`extent`. Parameters for which it is not known to be dual-feasible are reported
 * as `not-dual-feasible`, and so is an unknown family.
 */
export function readDualFeasible(
  report: Report,
  value: unknown,
  path: string,
  extent: bigint,
): Weighing | undefined {
  const fields = readFields<"family" | "at" | "k">(report, value, path);
  if (fields === undefined) return undefined;
  const families = ["identity", "threshold", "rounding", "step"] as const;
  const family = readWord(asNotDualFeasible(report), fields.family, `${path}.family`, families);
  if (family === undefined) return undefined;
  if (family === "identity") return { weigh: (x) => x, capacity: extent };
  const name = family === "rounding" ? "k" : "at";
  const parameter = readWhole(asNotDualFeasible(report), fields[name], `${path}.${name}`, 1);
  if (parameter === undefined) return undefined;
  if (family === "rounding") return rounding(BigInt(parameter), extent);
  if (2n * BigInt(parameter) > extent) {
    const message =
      `${path}.at is ${parameter}, more than half of the extent, ${extent} with one kerf; the family ` +
      `${shown(family)} is dual-feasible up to half. Take a smaller one.`;
    report("not-dual-feasible", `${path}.at`, message, parameter, extent / 2n);
    return undefined;
  }
  return family === "threshold" ? threshold(BigInt(parameter), extent) : step(BigInt(parameter), extent);
}

/** Whatever is wrong with a parameter makes the function unfit; one that is absent is merely missing. */
function asNotDualFeasible(report: Report): Report {
  return (code, path, message, found, expected) =>
    report(code === "missing-value" ? code : "not-dual-feasible", path, message, found, expected);
}

/** Fekete & Schepers 2001, their U with a threshold: what is small counts nothing, what leaves only small counts all. */
function threshold(at: bigint, extent: bigint): Weighing {
  const weigh = (x: bigint) => (x > extent - at ? extent : x < at ? 0n : x);
  return { weigh, capacity: extent };
}

/** Fekete & Schepers 2001, their u with the parameter k, times k C to stay whole. */
function rounding(k: bigint, extent: bigint): Weighing {
  const weigh = (x: bigint) => {
    const scaled = (k + 1n) * x;
    return scaled % extent === 0n ? k * x : (scaled / extent) * extent;
  };
  return { weigh, capacity: k * extent };
}

/** Carlier, Clautiaux & Moukrim 2007: counts steps of `at` from below, and from above past the half. */
function step(at: bigint, extent: bigint): Weighing {
  const weigh = (x: bigint) => {
    if (2n * x < extent) return 2n * (x / at);
    if (2n * x === extent) return extent / at;
    return 2n * (extent / at - (extent - x) / at);
  };
  return { weigh, capacity: 2n * (extent / at) };
}
