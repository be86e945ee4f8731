import type { Paper } from "@sheetwright/cards";
import { type Packing, type Problem, placements, type Size } from "@sheetwright/packing";
import type { PaperGroup, PaperLeftover } from "../plan-model.js";

/** Leftovers of one size. */
export interface Leftover extends Size {
  readonly count: number;
  /** True where it reaches the smallest size worth keeping. */
  readonly keep: boolean;
}

/**
 * All leftovers of a packing by size, in the problem's unit, the largest first; places of a run that yield no piece are
 * among them, trimmed-off edges are not. With `isOf`, only those of some sheets. A RangeError where the packing names a
 * sheet that the problem does not have.
 *
 * @example
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 3, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "cream", width: 12, height: 7 }],
 *   mode: "guillotine",
 *   aim: "all",
 *   smallestOffcut: { width: 3, height: 3 },
 * };
 * const leaf = (type, size) => ({ size, node: { type } });
 * const mat = (count) => ({ size: 5, node: { type: "piece", shares: [{ kind: "mat", form: 0, turned: false, count }] } });
 * const tree = { type: "split", axis: "x", parts: [mat(2), mat(1), leaf("waste", 2)] };
 * const found = findLeftovers(problem, { layouts: [{ sheet: "cream", run: 2, tree }] });
 * found // => [{ width: 5, height: 7, count: 1, keep: true }, { width: 2, height: 7, count: 2, keep: false }]
 */
export function findLeftovers(
  problem: Problem,
  packing: Pick<Packing, "layouts">,
  isOf: (sheet: string) => boolean = () => true,
): readonly Leftover[] {
  const found = new Map<string, Leftover>();
  const add = ({ width, height }: Size, count: number): void => {
    const key = `${width} x ${height}`;
    const before = found.get(key)?.count ?? 0;
    const keep = isWorthKeeping({ width, height }, problem.smallestOffcut);
    found.set(key, { width, height, count: before + count, keep });
  };
  const sheets = new Map(problem.sheets.map((sheet) => [sheet.id, sheet]));
  for (const layout of packing.layouts) {
    if (!isOf(layout.sheet)) continue;
    const sheet = sheets.get(layout.sheet);
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

/** The leftovers of every design of a paper, in the order of the project; what an offcut leaves is of its design. */
export function paperLeftovers(
  papers: readonly Paper[],
  groups: readonly PaperGroup[],
): readonly PaperLeftover[] {
  return papers.flatMap(({ designs }) =>
    designs.flatMap(({ id: design }): PaperLeftover[] => {
      const group = groups.find((one) => one.designs.includes(design));
      if (group === undefined) return [];
      const sheets = new Set(group.sheets.filter((one) => one.design === design).map(({ sheet }) => sheet));
      const left = findLeftovers(group.problem, group.packing, (sheet) => sheets.has(sheet));
      return left.map((one) => ({ design, ...one, count: one.count * (group.bags ?? 1) }));
    }),
  );
}

/** Whether a leftover reaches the smallest size worth keeping, either way round; every one does where none is set. */
export function isWorthKeeping(size: Size, smallest: Size | undefined): boolean {
  if (smallest === undefined) return true;
  const [short, long] = sides(size);
  const [leastShort, leastLong] = sides(smallest);
  return short >= leastShort && long >= leastLong;
}

function sides({ width, height }: Size): readonly [number, number] {
  return [Math.min(width, height), Math.max(width, height)];
}
