import type { Offcut } from "@sheetwright/cards";
import type { Size } from "@sheetwright/measure";

/** Offcuts counted by their size, to take from and to add to. */
export interface OffcutCounts {
  readonly countOf: (size: Size) => number;
  /** Adds as many of a size; takes them where the number is below 0, and never below none. */
  readonly add: (size: Size, count: number) => void;
  /** Each size that there is, the largest first; of two of the same area the wider. */
  readonly all: () => readonly Offcut[];
}

/** Counts offcuts by size. A size and the same one turned are two: their grain runs differently. */
export function offcutCounts(offcuts: readonly Offcut[] = []): OffcutCounts {
  const counts = new Map<string, Offcut>();
  const keyOf = ({ width, height }: Size): string => `${width} x ${height}`;
  const add: OffcutCounts["add"] = ({ width, height }, more) => {
    const key = keyOf({ width, height });
    const count = Math.max(0, (counts.get(key)?.count ?? 0) + more);
    counts.set(key, { width, height, count });
  };
  for (const { count, ...size } of offcuts) add(size, count);
  const area = ({ width, height }: Size): number => width * height;
  return {
    countOf: (size) => counts.get(keyOf(size))?.count ?? 0,
    add,
    all: () =>
      [...counts.values()]
        .filter(({ count }) => count > 0)
        .sort((a, b) => area(b) - area(a) || b.width - a.width),
  };
}
