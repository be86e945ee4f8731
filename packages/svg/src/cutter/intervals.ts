/** A stretch of a line, from the lower to the higher end. */
export type Interval = readonly [from: number, to: number];

/** Merges intervals that overlap or touch; the result is in order and none touches the next. */
export function mergeIntervals(intervals: readonly Interval[]): readonly Interval[] {
  const merged: Interval[] = [];
  for (const [from, to] of [...intervals].sort((a, b) => a[0] - b[0] || a[1] - b[1])) {
    const last = merged.at(-1);
    if (last === undefined || from > last[1]) merged.push([from, to]);
    else if (to > last[1]) merged[merged.length - 1] = [last[0], to];
  }
  return merged;
}

/** What is left of `intervals` without the stretches in `without`; pieces without length are dropped. */
export function subtractIntervals(
  intervals: readonly Interval[],
  without: readonly Interval[],
): readonly Interval[] {
  const holes = mergeIntervals(without);
  const left: Interval[] = [];
  for (const [from, to] of mergeIntervals(intervals)) {
    let start = from;
    for (const [holeFrom, holeTo] of holes) {
      if (holeTo <= start || holeFrom >= to) continue;
      if (holeFrom > start) left.push([start, holeFrom]);
      start = holeTo;
    }
    if (start < to) left.push([start, to]);
  }
  return left;
}

/** Whether an interval shares some length with any of the others. */
export function overlapsAny([from, to]: Interval, others: readonly Interval[]): boolean {
  return others.some((other) => from < other[1] && other[0] < to);
}
