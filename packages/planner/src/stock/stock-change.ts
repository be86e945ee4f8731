import type { Offcut } from "@sheetwright/cards";
import type { Size } from "@sheetwright/measure";
import type { Plan } from "../plan-model.js";
import { isWorthKeeping } from "../totals/find-leftovers.js";
import { type LayoutProgress, overlap, progressParts } from "./layout-progress.js";
import { type OffcutCounts, offcutCounts } from "./offcut-counts.js";

/** What cutting takes from a stock, and what comes back, of one design. */
export interface StockChange {
  readonly design: string;
  /** The size of a whole sheet as the plan has it. */
  readonly sheet: Size;
  /** Whole sheets taken, spoiled ones among them. */
  readonly sheets: number;
  /** Offcuts taken, spoiled ones among them. */
  readonly taken: readonly Offcut[];
  /** Leftovers worth keeping. */
  readonly left: readonly Offcut[];
}

/**
 * What a stock loses and gains by what was done of a plan, design by design in the order of the plan; designs that nothing
 * was cut from are absent. A leftover comes back where the project's smallest offcut says so, or where it reaches a size
 * that is worth keeping besides, such as strips of 1/2 x 12 in, either way round. Throws a RangeError for what is not in
 * the plan.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: One card
 * papers: { night: { cardstock: us-letter, count: 5 } }
 * cards: [{ name: Plain, size: 8 x 8, fold: flat, base: night, copies: 2 }]
 * `);
 * const found = plan(project);
 * const [night] = stockChange(found, wholePlan(found));
 * [night.sheets, night.taken] // => [2, []]
 * night.left // => [{ width: 345440, height: 121920, count: 2 }]
 */
export function stockChange(
  plan: Pick<Plan, "groups" | "papers">,
  done: readonly LayoutProgress[],
  alsoKeep?: Size,
): readonly StockChange[] {
  const changes = new Map<string, { sheets: number; taken: OffcutCounts; left: OffcutCounts }>();
  for (const { progress, group, layout, sheet, design, isOffcut, places } of progressParts(plan, done)) {
    const { from, to, spoiled } = progress;
    const number = to - from + spoiled;
    if (number === 0) continue;
    const change = changes.get(design) ?? { sheets: 0, taken: offcutCounts(), left: offcutCounts() };
    changes.set(design, change);
    if (isOffcut) change.taken.add(sheet, number);
    else change.sheets += number;
    for (const { width, height, node } of places) {
      const size = { width, height };
      const isKept =
        isWorthKeeping(size, group.problem.smallestOffcut) ||
        (alsoKeep !== undefined && isWorthKeeping(size, alsoKeep));
      // What is left of a sheet that goes out whole is the guest's.
      if (!isKept || group.bags !== undefined) continue;
      const yields = node.type === "piece" ? node.shares.reduce((sum, { count }) => sum + count, 0) : 0;
      change.left.add(size, overlap(from, to, yields, layout.run, layout.run));
    }
  }
  return plan.papers.flatMap(({ sheet, designs }) =>
    designs.flatMap(({ id: design }): StockChange[] => {
      const change = changes.get(design);
      if (change === undefined) return [];
      const { sheets, taken, left } = change;
      const { width, height } = sheet;
      return [{ design, sheet: { width, height }, sheets, taken: taken.all(), left: left.all() }];
    }),
  );
}
