/**
 * Cuts many of each length by what is best for a few: a part of what is wanted, of every length alike, is cut from the fewest
 * rolls ({@link allCases}), and that is repeated. Of the part the roll with most left is not taken, since that would be
 * wasted as often as the part is repeated: what it holds is wanted still. Then the same with what is left, until all of it is
 * few enough to be cut at once. It does not promise the fewest rolls. Effort: a few times that of all cases.
 */

import type { Ticks } from "@sheetwright/measure";
import { allCases, hasFewCases, type Pattern, together } from "./all-cases.js";
import type { LengthCount } from "./cut-rolls.js";

/** The rolls, by their patterns; a roll for each length where there are too many lengths for any part of them. */
export function cutInBlocks(wanted: readonly LengthCount[], roll: Ticks): readonly Pattern[] {
  let left = wanted;
  const found: Pattern[] = [];
  while (!hasFewCases(left)) {
    const times = timesOf(left);
    const part = partOf(left, times);
    if (!hasFewCases(part)) return together([...found, ...oneEach(left)]);
    const best = allCases(part, roll);
    for (const { rolls, counts } of withoutLoosest(best, wanted)) {
      found.push({ rolls: rolls * times, counts });
      left = left.map(({ length, count }, i) => ({ length, count: count - rolls * times * counts[i]! }));
    }
  }
  return together([...found, ...allCases(left, roll)]);
}

/** The fewest times that what is wanted is divided by for few cases to be left. */
function timesOf(wanted: readonly LengthCount[]): number {
  let [low, high] = [1, Math.max(...wanted.map(({ count }) => count))];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (hasFewCases(partOf(wanted, middle))) high = middle;
    else low = middle + 1;
  }
  return low;
}

function partOf(wanted: readonly LengthCount[], times: number): readonly LengthCount[] {
  return wanted.map(({ length, count }) => ({ length, count: Math.floor(count / times) }));
}

/** All rolls but one of those that are filled least; a single one stays. */
function withoutLoosest(patterns: readonly Pattern[], wanted: readonly LengthCount[]): readonly Pattern[] {
  if (patterns.length === 1 && patterns[0]?.rolls === 1) return patterns;
  const filled = ({ counts }: Pattern): number =>
    counts.reduce((sum, count, i) => sum + count * wanted[i]!.length, 0);
  const loosest = patterns.reduce((least, one) => (filled(one) < filled(least) ? one : least));
  return patterns
    .map((one) => (one === loosest ? { ...one, rolls: one.rolls - 1 } : one))
    .filter(({ rolls }) => rolls > 0);
}

/** Every length from a roll of its own. */
function oneEach(wanted: readonly LengthCount[]): readonly Pattern[] {
  return wanted.flatMap(({ count }, i) =>
    count === 0 ? [] : [{ rolls: count, counts: wanted.map((_, other) => (other === i ? 1 : 0)) }],
  );
}
