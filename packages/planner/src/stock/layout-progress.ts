import { type Layout, type Placement, placements, type Sheet } from "@sheetwright/packing";
import type { PaperGroup, Plan } from "../plan-model.js";

/**
 * What was done of one layout since it was last told of. Sheets of a run are cut one after another: a place that yields
 * several kinds yields them in the order of the cut list, that of the problem's kinds, and is an offcut on the sheets that
 * remain.
 */
export interface LayoutProgress {
  /** Where the layout stands in the plan. */
  readonly group: number;
  readonly layout: number;
  /** Sheets of its run that were cut before; of papers that go out whole, of the runs of all bags, bag after bag. */
  readonly from: number;
  /** Sheets of its run that are cut now, those from before among them; at most the run. */
  readonly to: number;
  /** Sheets more that were spoiled: taken, and of no use. */
  readonly spoiled: number;
}

/** A layout that something was done of, with all that belongs to it. */
export interface ProgressPart {
  readonly progress: LayoutProgress;
  readonly group: PaperGroup;
  readonly layout: Layout;
  readonly sheet: Sheet;
  /** The design that the sheet is of, and whether it is an offcut of that. */
  readonly design: string;
  readonly isOffcut: boolean;
  readonly places: readonly Placement[];
}

/**
 * The whole of a plan as progress: every sheet of every layout cut, none spoiled.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: One card
 * papers: { night: { cardstock: us-letter, count: 5 } }
 * cards: [{ name: Plain, size: 8 x 8, fold: flat, base: night, copies: 2 }]
 * `);
 * const found = plan(project);
 * wholePlan(found) // => [{ group: 0, layout: 0, from: 0, to: 2, spoiled: 0 }]
 */
export function wholePlan({ groups }: Pick<Plan, "groups">): readonly LayoutProgress[] {
  return groups.flatMap(({ packing, bags = 1 }, group) =>
    packing.layouts.map(({ run }, layout) => ({ group, layout, from: 0, to: run * bags, spoiled: 0 })),
  );
}

/** Looks up what progress is of. Throws a RangeError for a layout that is not in the plan, or sheets that its run has not. */
export function progressParts(
  { groups }: Pick<Plan, "groups">,
  done: readonly LayoutProgress[],
): readonly ProgressPart[] {
  return done.map((progress): ProgressPart => {
    const { group: g, layout: l, from, to, spoiled } = progress;
    const group = groups[g];
    const layout = group?.packing.layouts[l];
    if (group === undefined || layout === undefined)
      throw new RangeError(`The plan has no layout ${l} in a group ${g}.`);
    const sheets = layout.run * (group.bags ?? 1);
    const isRight = [from, to, spoiled].every(Number.isSafeInteger) && from >= 0 && spoiled >= 0;
    if (!isRight || from > to || to > sheets)
      throw new RangeError(
        `Sheets ${from} to ${to} of a run of ${sheets} cannot be cut, ${spoiled} spoiled.`,
      );
    const sheet = group.problem.sheets.find(({ id }) => id === layout.sheet);
    const of = group.sheets.find((one) => one.sheet === layout.sheet);
    if (sheet === undefined || of === undefined)
      throw new RangeError(`The packing names the sheet "${layout.sheet}", which is not there.`);
    const places = placements(sheet, layout, group.problem.kerf);
    return { progress, group, layout, sheet, design: of.design, isOffcut: of.offcut !== null, places };
  });
}

/**
 * How many of the sheets from one to another, counted from 0 and the last excluded, lie between two places of a run. A run
 * that is done for several bags starts anew for each.
 */
export function overlap(from: number, to: number, start: number, end: number, run: number): number {
  const before = (sheets: number): number =>
    Math.floor(sheets / run) * (end - start) + Math.max(0, Math.min(sheets % run, end) - start);
  return before(to) - before(from);
}
