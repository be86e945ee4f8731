import type { Ticks } from "@sheetwright/measure";
import type { LengthCount } from "./cut-rolls.js";
import { largestFill } from "./largest-fill.js";

/** Finer steps prove nothing that coarser ones do not, in practice. */
const FINEST = 60;

/**
 * A number of rolls that no way of cutting can do with less of: the largest of these.
 * - what the lengths come to, by the most of a roll that some of them fill
 * - the same with lengths replaced by functions of which whatever fits a roll comes to at most one (dual feasible functions:
 *   Fekete and Schepers, New classes of fast lower bounds for bin packing problems, Mathematical Programming 91, 2001):
 *   for each part of a roll, lengths shorter than it are nothing and those that leave less than it are a whole roll; and for
 *   each k, lengths rounded down to k-ths of a roll after they are taken k + 1 times
 *
 * Exact in whole numbers. It may be less than what is possible.
 */
export function leastRolls(lengths: readonly LengthCount[], roll: Ticks): number {
  const sumOf = (weigh: (length: Ticks) => number): number =>
    lengths.reduce((sum, { length, count }) => sum + count * weigh(length), 0);
  if (sumOf(() => 1) === 0) return 0;
  const fill = largestFill(lengths, roll)?.filled ?? roll;
  let most = dividedUp(
    sumOf((length) => length),
    fill,
  );
  for (const { length: part } of lengths) {
    if (2 * part > roll) continue;
    const weight = (length: Ticks): number => (length > roll - part ? roll : length < part ? 0 : length);
    most = Math.max(most, dividedUp(sumOf(weight), roll));
  }
  for (let k = 1; k <= FINEST; k += 1) {
    // In parts of k * (k + 1) to a roll, so that both cases are whole.
    const weight = (length: Ticks): number => {
      const times = Math.floor(((k + 1) * length) / roll);
      return ((k + 1) * length) % roll === 0 ? times * k : times * (k + 1);
    };
    most = Math.max(most, dividedUp(sumOf(weight), k * (k + 1)));
  }
  return most;
}

function dividedUp(value: number, by: number): number {
  const rest = value % by;
  return (value - rest) / by + (rest > 0 ? 1 : 0);
}
