import { type Packing, type Problem, placements, type Size } from "@sheetwright/packing";

/** Leftovers of one size. */
export interface Leftover extends Size {
  readonly count: number;
  /** True where it reaches the smallest size worth keeping. */
  readonly keep: boolean;
}

/** All leftovers of a packing by size, the largest first; trimmed-off edges are not among them. */
export function findLeftovers(problem: Problem, packing: Packing): readonly Leftover[] {
  const found = new Map<string, Leftover>();
  const add = ({ width, height }: Size, count: number): void => {
    const key = `${width} x ${height}`;
    const before = found.get(key)?.count ?? 0;
    const keep = isWorthKeeping({ width, height }, problem.smallestOffcut);
    found.set(key, { width, height, count: before + count, keep });
  };
  for (const layout of packing.layouts) {
    const sheet = problem.sheets.find((one) => one.id === layout.sheet);
    if (sheet === undefined)
      throw new RangeError(`The packing names the sheet "${layout.sheet}", which is not there.`);
    for (const place of placements(sheet, layout, problem.kerf)) {
      const taken =
        place.node.type === "piece" ? place.node.shares.reduce((sum, share) => sum + share.count, 0) : 0;
      if (taken < layout.run) add(place, layout.run - taken);
    }
  }
  const area = (size: Size): number => size.width * size.height;
  return [...found.values()].sort((a, b) => area(b) - area(a) || b.width - a.width);
}

function isWorthKeeping(size: Size, smallest: Size | undefined): boolean {
  if (smallest === undefined) return true;
  const [short, long] = sides(size);
  const [leastShort, leastLong] = sides(smallest);
  return short >= leastShort && long >= leastLong;
}

function sides({ width, height }: Size): readonly [number, number] {
  return [Math.min(width, height), Math.max(width, height)];
}
