import type { Piece } from "@sheetwright/cards";
import type { Share } from "@sheetwright/packing";
import type { Plan } from "../plan-model.js";
import { type LayoutProgress, overlap, progressParts } from "./layout-progress.js";

/**
 * How many copies of each piece what was done of a plan gave, those in strips counted one by one; without zeros. Throws a
 * RangeError for what is not in the plan.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: One card
 * papers: { night: { cardstock: us-letter, count: 5 } }
 * cards: [{ name: Plain, size: 8 x 8, fold: flat, base: night, copies: 2 }]
 * `);
 * const found = plan(project);
 * [...piecesCut(found, [{ group: 0, layout: 0, from: 0, to: 1, spoiled: 0 }])] // => [["1a", 1]]
 */
export function piecesCut(
  plan: Pick<Plan, "groups">,
  done: readonly LayoutProgress[],
): ReadonlyMap<Piece["id"], number> {
  const counts = new Map<string, number>();
  for (const { progress, group, layout, places } of progressParts(plan, done)) {
    const { from, to } = progress;
    const order = new Map(group.problem.kinds.map(({ id }, index) => [id, index]));
    const strips = new Map((group.strips ?? []).map((strip) => [strip.kind, strip]));
    for (const { node } of places) {
      if (node.type !== "piece") continue;
      let start = 0;
      for (const { kind, count } of inOrder(node.shares, order)) {
        const strip = strips.get(kind);
        const cut = overlap(from, to, start, start + count, layout.run) * (strip?.holds ?? 1);
        start += count;
        const piece = strip?.piece ?? kind;
        if (cut > 0) counts.set(piece, (counts.get(piece) ?? 0) + cut);
      }
    }
  }
  return counts;
}

/** The shares of a place as its cut list names them: by kind, then by form and number. */
function inOrder(shares: readonly Share[], order: ReadonlyMap<string, number>): readonly Share[] {
  const kindOf = ({ kind }: Share): number => order.get(kind) ?? 0;
  return [...shares].sort((a, b) => kindOf(a) - kindOf(b) || a.form - b.form || a.count - b.count);
}
