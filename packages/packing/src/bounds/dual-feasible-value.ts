import type { DualFeasible } from "../model.js";

/** A dual-feasible function of the extent alone. */
export type PlainFunction = Exclude<DualFeasible, { readonly family: "fitted" }>;

/**
 * Dual-feasible functions in whole numbers, as {@link DualFeasible} defines them. Every value is below 2^53 for extents
 * below 2^25: the largest is k x C of the rounding family, with k below 2^10 here.
 *
 * Sources: S. Fekete, J. Schepers, New classes of fast lower bounds for bin packing problems, Mathematical Programming
 * 91 (2001); J. Carlier, F. Clautiaux, A. Moukrim, New reduction procedures and lower bounds for the two-dimensional bin
 * packing problem with fixed orientation, Computers & Operations Research 34 (2007).
 */
export function dualFeasibleValue(f: PlainFunction, x: number, extent: number): number {
  switch (f.family) {
    case "identity":
      return x;
    case "threshold":
      return x > extent - f.at ? extent : x < f.at ? 0 : x;
    case "rounding": {
      const scaled = (f.k + 1) * x;
      return scaled % extent === 0 ? f.k * x : Math.floor(scaled / extent) * extent;
    }
    case "step": {
      const most = Math.floor(extent / f.at);
      if (2 * x < extent) return 2 * Math.floor(x / f.at);
      return 2 * x === extent ? most : 2 * (most - Math.floor((extent - x) / f.at));
    }
  }
}

/** The most that the values of extents can sum to, when the extents sum to at most `extent`. */
export function dualFeasibleCapacity(f: PlainFunction, extent: number): number {
  switch (f.family) {
    case "identity":
    case "threshold":
      return extent;
    case "rounding":
      return f.k * extent;
    case "step":
      return 2 * Math.floor(extent / f.at);
  }
}
