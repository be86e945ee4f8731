import type { Packing } from "@sheetwright/packing";
import { findLeftovers } from "../totals/find-leftovers.js";
import type { GrainWish } from "./grain-wish.js";

/** What leftovers are judged by: the sheets of a problem, and the design of each by its id. */
export type SheetDesigns = Pick<GrainWish, "problem" | "designs">;

/** Whether the largest leftover worth keeping, by area, is of every design at least as large as it was. */
export function keepsOffcuts(
  sheets: SheetDesigns,
  now: Pick<Packing, "layouts">,
  before: Pick<Packing, "layouts">,
): boolean {
  return [...new Set(sheets.designs.values())].every(
    (design) => largestKept(sheets, now, design) >= largestKept(sheets, before, design),
  );
}

function largestKept(
  { problem, designs }: SheetDesigns,
  packing: Pick<Packing, "layouts">,
  design: string,
): number {
  const left = findLeftovers(problem, packing, (sheet) => designs.get(sheet) === design);
  // The largest come first.
  const kept = left.find(({ keep }) => keep);
  return kept === undefined ? 0 : kept.width * kept.height;
}
