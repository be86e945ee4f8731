/**
 * The most that values of pieces in one row sum to: a knapsack in which each group (the copies of a kind) offers one or
 * more extents, and no group gives more pieces than it has copies.
 *
 * Dynamic programming over the sums of extents that can be reached at all, so the unit of length does not matter. Work of
 * one evaluation: sums x copies x extents of a group. Whole values up to 2^53 in sum are exact.
 */

/** The copies of a kind, and the extents that each may take; kerf included. */
export interface RowGroup {
  readonly extents: readonly number[];
  /** Infinity where there is no limit. */
  readonly copies: number;
}

/** A row, ready to be filled again and again with other values. Options are numbered through all groups. */
export interface Row {
  readonly options: number;
  /** Sums looked at by one evaluation. */
  readonly work: number;
  /** The most that values, by option, sum to; counts the options chosen into `chosen` where that is given. */
  readonly most: (values: Float64Array, chosen?: Float64Array) => number;
}

/** More sums of extents than these are too many to go through again and again. */
const MOST_SUMS = 2_000;
const MOST_COPIES = 1_000;

/** Prepares a row of at most `room`; undefined where too many sums of extents or copies would have to be looked at. */
export function newRow(groups: readonly RowGroup[], room: number): Row | undefined {
  const copies = groups.map((group) => mostCopies(group, room));
  const lots = copies.reduce((sum, count) => sum + count, 0);
  if (lots > MOST_COPIES) return undefined;
  const sums = reachableSums(groups, room, MOST_SUMS);
  if (sums === undefined) return undefined;
  const width = sums.length;
  const extents = groups.flatMap((group) => group.extents);
  // By option and sum: the largest sum that leaves room for the option below it, or -1.
  const below = new Int16Array(extents.length * width);
  extents.forEach((extent, option) => {
    let at = -1;
    for (let s = 0; s < width; s++) {
      while (at + 1 < width && (sums[at + 1] as number) + extent <= (sums[s] as number)) at++;
      below[option * width + s] = at;
    }
  });
  // By option: the first sum with room for it.
  const starts = extents.map((extent) => {
    const start = sums.findIndex((sum) => sum >= extent);
    return start < 0 ? width : start;
  });
  const best = new Float64Array(width);
  const before = new Float64Array(width);
  const choices = new Int16Array(lots * width);
  const most = (values: Float64Array, chosen?: Float64Array): number => {
    best.fill(0);
    choices.fill(-1);
    let lot = 0;
    let first = 0;
    groups.forEach((group, g) => {
      const end = first + group.extents.length;
      for (let copy = 0; copy < (copies[g] as number); copy++, lot++) {
        // Options of one copy exclude each other: each starts from the sums before it.
        if (end > first + 1) before.set(best);
        for (let option = first; option < end; option++) {
          const value = values[option] as number;
          if (value <= 0) continue;
          const from = end > first + 1 ? before : best;
          const at = option * width;
          for (let s = width - 1; s >= (starts[option] as number); s--) {
            const other = (from[below[at + s] as number] as number) + value;
            if (other > (best[s] as number)) {
              best[s] = other;
              choices[lot * width + s] = option;
            }
          }
        }
      }
      first = end;
    });
    if (chosen) {
      let s = width - 1;
      for (let back = lot - 1; back >= 0; back--) {
        const option = choices[back * width + s] as number;
        if (option < 0) continue;
        chosen[option] = (chosen[option] as number) + 1;
        s = below[option * width + s] as number;
      }
    }
    return best[width - 1] as number;
  };
  const work = groups.reduce(
    (sum, group, g) => sum + (copies[g] as number) * group.extents.length * width,
    0,
  );
  return { options: extents.length, work, most };
}

function mostCopies(group: RowGroup, room: number): number {
  return Math.min(group.copies, Math.floor(room / Math.min(Number.POSITIVE_INFINITY, ...group.extents)));
}

/** The sums up to `room` that the copies can reach, rising from 0; undefined where there are more than `most`. */
export function reachableSums(
  groups: readonly RowGroup[],
  room: number,
  most: number,
): readonly number[] | undefined {
  let sums: number[] = [0];
  for (const group of groups) {
    for (let copy = 0; copy < mostCopies(group, room); copy++) {
      const before = sums;
      for (const extent of group.extents) sums = union(sums, before, extent, room);
      if (sums.length > most) return undefined;
      if (sums.length === before.length) break;
    }
  }
  return sums;
}

/** The numbers of `a` and those of `b` raised by `extent`, up to `room`, each once. */
function union(a: readonly number[], b: readonly number[], extent: number, room: number): number[] {
  const list: number[] = [];
  let [i, j] = [0, 0];
  for (;;) {
    const nextA = a[i] ?? Number.POSITIVE_INFINITY;
    const nextB = (b[j] ?? Number.POSITIVE_INFINITY) + extent;
    const next = Math.min(nextA, nextB);
    if (next > room) return list;
    if (nextA === next) i++;
    if (nextB === next) j++;
    list.push(next);
  }
}
