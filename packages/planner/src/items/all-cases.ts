import type { Ticks } from "@sheetwright/measure";
import type { LengthCount } from "./cut-rolls.js";

/** Most cases that are gone through: the product of the counts, each with one more for none. */
const MOST_CASES = 20_000;

/** Rolls that are cut alike: how many of each length, in the order of the lengths. */
export interface Pattern {
  readonly rolls: number;
  readonly counts: readonly number[];
}

/** Whether all cases of so many lengths are few enough to be gone through. */
export function hasFewCases(wanted: readonly LengthCount[]): boolean {
  return wanted.reduce((cases, { count }) => Math.min(cases * (count + 1), MOST_CASES + 1), 1) <= MOST_CASES;
}

/**
 * The fewest rolls by going through every number of each length: the best for some lengths is the best for all but one of
 * them, and that one either on what is left of its last roll or on a roll of its own. For few cases only.
 */
export function allCases(wanted: readonly LengthCount[], roll: Ticks): readonly Pattern[] {
  const steps: number[] = [];
  let cases = 1;
  for (const { count } of wanted) {
    steps.push(cases);
    cases *= count + 1;
  }
  // Typed arrays that are filled on the way: rolls, what is left of the last, and the length that was added last.
  const rolls = new Int32Array(cases);
  const left = new Int32Array(cases);
  const added = new Int16Array(cases);
  for (let one = 1; one < cases; one += 1) {
    rolls[one] = cases;
    for (const [i, { length, count }] of wanted.entries()) {
      const step = steps[i]!;
      if (Math.floor(one / step) % (count + 1) === 0) continue;
      const before = one - step;
      const isOnLast = left[before]! >= length;
      const needed = rolls[before]! + (isOnLast ? 0 : 1);
      const free = (isOnLast ? left[before]! : roll) - length;
      if (needed > rolls[one]! || (needed === rolls[one]! && free <= left[one]!)) continue;
      rolls[one] = needed;
      left[one] = free;
      added[one] = i;
    }
  }
  const single: number[][] = [];
  for (let one = cases - 1; one > 0; ) {
    const i = added[one]!;
    const before = one - steps[i]!;
    const number = rolls[one]! - 1;
    single[number] ??= wanted.map(() => 0);
    single[number][i]! += 1;
    one = before;
  }
  return together(single.map((counts) => ({ rolls: 1, counts })));
}

/** The same rolls, those that are cut alike told once. */
export function together(patterns: readonly Pattern[]): readonly Pattern[] {
  const alike = new Map<string, Pattern>();
  for (const { rolls, counts } of patterns) {
    const key = counts.join(" ");
    alike.set(key, { counts, rolls: (alike.get(key)?.rolls ?? 0) + rolls });
  }
  return [...alike.values()];
}
