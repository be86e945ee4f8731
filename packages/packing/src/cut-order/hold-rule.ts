/**
 * Which cuts of a level keep the number of holds that are too narrow as small as it can be.
 *
 * As long as a group of neighbours stays together whose total width can be held, everything else comes off while that
 * group is held. Where a single part is wide enough, no cut is too narrow; else the smallest such group counts, and the
 * cuts among its members are too narrow whatever one does. Work: once in the number of parts.
 */

/** What is left to cut of a level: the parts from `first` to `last`, and whether the remainder is still there. */
export interface Rest {
  readonly first: number;
  readonly last: number;
  readonly untrimmed: boolean;
}

/** The widths of a level, and what follows from them for holding. */
export interface HoldRule {
  /** The narrowest width that can be held. */
  readonly narrowest: number;
  /** Parts in the smallest group that can be held; 0 where not even all of them together can. */
  readonly least: number;
  /** For each part, the first such group that starts at it or later; past the end where there is none. */
  readonly nextGroup: readonly number[];
  /** For each first part, the fewest narrow holds while the remainder is still there; empty without a remainder. */
  readonly fewestUntrimmed: readonly number[];
}

function fewestTrimmed(rule: Omit<HoldRule, "fewestUntrimmed">, first: number, last: number): number {
  const count = last - first + 1;
  if (rule.least === 0 || count <= rule.least) return count - 1;
  // Without such a group there are more, and how many does not matter: no best order comes here.
  return rule.nextGroup[first]! + rule.least - 1 <= last ? rule.least - 1 : Number.POSITIVE_INFINITY;
}

/** The fewest holds that are too narrow among the cuts that are left to make on a level. */
export function fewestNarrowHolds(rule: HoldRule, { first, last, untrimmed }: Rest): number {
  return untrimmed ? rule.fewestUntrimmed[first]! : fewestTrimmed(rule, first, last);
}

/** Works out the rule for parts of these sizes that start at these places. */
export function findHoldRule(
  sizes: readonly number[],
  starts: readonly number[],
  remainder: number,
  narrowest: number,
): HoldRule {
  const n = sizes.length;
  const width = (from: number, to: number): number => starts[to]! + sizes[to]! - starts[from]!;
  // Two pointers: for each start the nearest end that makes the group wide enough.
  const ends: number[] = [];
  let least = 0;
  let end = 0;
  for (let start = 0; start < n; start++) {
    end = Math.max(end, start);
    while (end < n && width(start, end) < narrowest) end += 1;
    ends.push(end);
    if (end < n && (least === 0 || end - start + 1 < least)) least = end - start + 1;
  }
  const nextGroup: number[] = new Array(n);
  let next = n;
  for (let start = n - 1; start >= 0; start--) {
    if (ends[start]! < n && ends[start]! - start + 1 === least) next = start;
    nextGroup[start] = next;
  }
  const rule = { narrowest, least, nextGroup };
  const fewestUntrimmed: number[] = [];
  if (remainder > 0) {
    const narrow = (held: number): number => (held < narrowest ? 1 : 0);
    for (let first = n - 1; first >= 0; first--) {
      const trimNow = narrow(width(first, n - 1)) + fewestTrimmed(rule, first, n - 1);
      const cutFirst =
        first === n - 1
          ? Number.POSITIVE_INFINITY
          : Math.min(narrow(sizes[first]!), narrow(width(first + 1, n - 1) + remainder)) +
            fewestUntrimmed[first + 1]!;
      fewestUntrimmed[first] = Math.min(trimNow, cutFirst);
    }
  }
  return { ...rule, fewestUntrimmed };
}
