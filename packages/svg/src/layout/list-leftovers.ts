import type { Rectangle, Size } from "@sheetwright/packing";

/** Offcuts of one size. */
interface ListedOffcuts {
  readonly number: number;
  readonly size: Size;
  /** Places on one sheet. */
  readonly places: number;
}

/** The list of offcuts, largest first, and for each offcut (in the order given) its entry. */
export interface OffcutList {
  readonly entries: readonly ListedOffcuts[];
  readonly entryOf: readonly ListedOffcuts[];
}

/** Groups offcuts by size as they lie; their numbers go on after `numbersTaken`. */
export function listOffcuts(offcuts: readonly Rectangle[], numbersTaken: number): OffcutList {
  const groups = new Map<string, { readonly size: Size; places: number }>();
  const keyOf = ({ width, height }: Size) => `${width} ${height}`;
  for (const { width, height } of offcuts) {
    const group = groups.get(keyOf({ width, height }));
    if (group === undefined) groups.set(keyOf({ width, height }), { size: { width, height }, places: 1 });
    else group.places += 1;
  }
  const area = ({ width, height }: Size) => BigInt(width) * BigInt(height);
  const entries = [...groups.values()]
    .sort((a, b) => {
      const difference = area(b.size) - area(a.size);
      return difference === 0n ? b.size.width - a.size.width : difference > 0n ? 1 : -1;
    })
    .map(({ size, places }, index) => ({ number: numbersTaken + index + 1, size, places }));
  const bySize = new Map(entries.map((entry) => [keyOf(entry.size), entry]));
  return { entries, entryOf: offcuts.map((offcut) => bySize.get(keyOf(offcut)) as ListedOffcuts) };
}
