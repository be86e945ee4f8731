/**
 * How lengths are cut from rolls that are all alike, none joined: the cutting stock problem in one dimension.
 *
 * Lengths are first taken longest first, each roll filled as far as it goes. Where that is not proven least and the case is
 * small, all cases are gone through: the fewest rolls, and of equals the most left of the last one, for every number of each
 * length, each from those with one length less. In a large case rolls are filled instead one after another as full as they
 * can be with the longest length that is left among them; then a small part of what is wanted is cut from the fewest rolls and
 * that is repeated; and the best of the three is given. Patterns that repeat are found once, so the number of copies matters
 * little.
 *
 * It guarantees the fewest rolls in small cases, and says what is proven in all. It does not promise the fewest in large ones.
 * Whole numbers alone; effort: lengths times cases, or lengths times the steps of a roll for each pattern.
 */

import type { Ticks } from "@sheetwright/measure";
import { allCases, hasFewCases, type Pattern } from "./all-cases.js";
import { cutInBlocks } from "./cut-in-blocks.js";
import { largestFill } from "./largest-fill.js";
import { leastRolls } from "./least-rolls.js";

/** So many of one length. */
export interface LengthCount {
  readonly length: Ticks;
  readonly count: number;
}

/** Rolls that are cut alike, each into these lengths. */
export interface RollCut {
  readonly rolls: number;
  readonly lengths: readonly LengthCount[];
}

/** Rolls that are enough, and the fewest that can be. */
export interface CutRolls {
  readonly cuts: readonly RollCut[];
  readonly rolls: number;
  /** No way takes fewer; proven. */
  readonly atLeast: number;
}

/**
 * Cuts lengths from as few rolls as are found. Each length comes once in the list, and none is longer than a roll, else a
 * RangeError.
 */
export function cutRolls(lengths: readonly LengthCount[], roll: Ticks): CutRolls {
  const wanted = lengths.filter(({ count }) => count > 0).sort((a, b) => b.length - a.length);
  const tooLong = wanted.find(({ length }) => length > roll);
  if (tooLong !== undefined)
    throw new RangeError(`A length of ${tooLong.length} ticks is longer than a roll of ${roll}.`);
  const atLeast = leastRolls(wanted, roll);
  const first = patterns(wanted, (left) => longestFirst(left, wanted, roll));
  if (rollsOf(first) === atLeast) return told(first, wanted, atLeast);
  if (hasFewCases(wanted)) {
    const best = allCases(wanted, roll);
    return told(best, wanted, rollsOf(best));
  }
  const fullest = patterns(wanted, (left) => asFullAsCanBe(left, wanted, roll));
  // Of equals the one with fewer patterns comes first.
  const [best = first] = [first, fullest, cutInBlocks(wanted, roll)].sort((a, b) => rollsOf(a) - rollsOf(b));
  return told(best, wanted, atLeast);
}

/**
 * The same cuts without what is cut too much: of each length no more than is wanted.
 *
 * @param wanted no more of any length than the cuts give.
 */
export function trimCuts(cuts: readonly RollCut[], wanted: readonly LengthCount[]): readonly RollCut[] {
  const left = new Map(wanted.map(({ length, count }) => [length, count]));
  const trimmed: RollCut[] = [];
  for (const cut of cuts) {
    for (let rolls = cut.rolls; rolls > 0; ) {
      const lengths = cut.lengths
        .map(({ length, count }) => ({ length, count: Math.min(count, left.get(length) ?? 0) }))
        .filter(({ count }) => count > 0);
      if (lengths.length === 0) break;
      const alike = Math.min(
        rolls,
        ...lengths.map(({ length, count }) => Math.floor((left.get(length) ?? 0) / count)),
      );
      for (const { length, count } of lengths) left.set(length, (left.get(length) ?? 0) - alike * count);
      trimmed.push({ rolls: alike, lengths });
      rolls -= alike;
    }
  }
  return trimmed;
}

/** All rolls of some cuts. */
export function rollsOf(found: readonly Pick<RollCut, "rolls">[]): number {
  return found.reduce((sum, { rolls }) => sum + rolls, 0);
}

function told(found: readonly Pattern[], wanted: readonly LengthCount[], atLeast: number): CutRolls {
  const cuts = found.map(({ rolls, counts }) => ({
    rolls,
    lengths: counts.flatMap((count, i) => (count === 0 ? [] : [{ length: wanted[i]!.length, count }])),
  }));
  return { cuts, rolls: rollsOf(found), atLeast };
}

/** Fills rolls by a rule until nothing is left, each pattern as often as it goes. */
function patterns(
  wanted: readonly LengthCount[],
  fill: (left: readonly number[]) => readonly number[],
): readonly Pattern[] {
  const left = wanted.map(({ count }) => count);
  const found: Pattern[] = [];
  while (left.some((count) => count > 0)) {
    const counts = fill(left);
    const rolls = Math.min(
      ...counts.flatMap((count, i) => (count === 0 ? [] : [Math.floor(left[i]! / count)])),
    );
    counts.forEach((count, i) => {
      left[i]! -= rolls * count;
    });
    found.push({ rolls, counts });
  }
  return found;
}

function longestFirst(
  left: readonly number[],
  wanted: readonly LengthCount[],
  roll: Ticks,
): readonly number[] {
  let free = roll;
  return wanted.map(({ length }, i) => {
    const count = Math.min(left[i]!, Math.floor(free / length));
    free -= count * length;
    return count;
  });
}

/** The longest length that is left, and whatever fills the rest of the roll best. */
function asFullAsCanBe(
  left: readonly number[],
  wanted: readonly LengthCount[],
  roll: Ticks,
): readonly number[] {
  const longest = left.findIndex((count) => count > 0);
  const others = wanted.map(({ length }, i) => ({ length, count: left[i]! - (i === longest ? 1 : 0) }));
  const fill = largestFill(others, roll - wanted[longest]!.length);
  if (fill === null) return longestFirst(left, wanted, roll);
  return fill.counts.map((count, i) => count + (i === longest ? 1 : 0));
}
