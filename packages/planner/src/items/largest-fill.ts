import type { Ticks } from "@sheetwright/measure";
import { commonDivisor } from "../totals/common-divisor.js";
import type { LengthCount } from "./cut-rolls.js";

/** Most steps of work: lengths times the parts that a roll is counted in. */
const MOST_WORK = 2_000_000;

/** How much of a roll some of the lengths fill, and how many of each. */
export interface RollFill {
  readonly filled: Ticks;
  readonly counts: readonly number[];
}

/**
 * The most of a roll that some of the lengths fill, each as often as it is there: the sums that can be had, one length after
 * another (the bounded knapsack problem). Exact; `null` where a roll has too many parts to be gone through.
 */
export function largestFill(lengths: readonly LengthCount[], roll: Ticks): RollFill | null {
  const none = lengths.map(() => 0);
  const step = lengths.reduce((all, { length, count }) => (count > 0 ? commonDivisor(all, length) : all), 0);
  if (step === 0) return { filled: 0, counts: none };
  // Every sum is a multiple of the step, so that what a roll has beyond one is of no use.
  const parts = Math.floor(roll / step);
  if ((parts + 1) * lengths.length > MOST_WORK) return null;
  // Typed arrays that are filled on the way: the length that reaches a sum first, from 1, and how often it does.
  const by = new Int16Array(parts + 1);
  const often = new Int32Array(parts + 1);
  for (const [i, { length, count }] of lengths.entries()) {
    if (count === 0) continue;
    const size = length / step;
    often.fill(0);
    for (let sum = size; sum <= parts; sum += 1) {
      const before = sum - size;
      if (by[sum] !== 0 || (before > 0 && by[before] === 0) || often[before]! >= count) continue;
      by[sum] = i + 1;
      often[sum] = often[before]! + 1;
    }
  }
  let most = parts;
  while (most > 0 && by[most] === 0) most -= 1;
  const counts = [...none];
  for (let sum = most; sum > 0; ) {
    const i = by[sum]! - 1;
    counts[i]! += 1;
    sum -= lengths[i]!.length / step;
  }
  return { filled: most * step, counts };
}
