import { type Expansion, expandProject, type Piece, type Project, unusedItems } from "@sheetwright/cards";
import type { PlanAsyncOptions } from "../plan.js";
import type { Plan } from "../plan-model.js";
import { stockOfProject } from "../stock/stock-of-project.js";
import { kindAreas, sumOf } from "../totals/areas.js";
import { percentOf } from "../totals/percent-of.js";
import type { Bonus, CardBonus, DesignLeft, ItemLeft, PanelBonus, PanelWish } from "./bonus.js";
import { mostCopies } from "./most-copies.js";
import { mostPanels } from "./most-panels.js";
import { projectAfter } from "./project-after.js";

/** How to look for what can be made besides. Each attempt has the effort `quick` unless it says otherwise. */
export interface BonusOptions extends PlanAsyncOptions {
  /** Panels that may be of use (default none). */
  readonly panels?: readonly PanelWish[] | undefined;
}

/**
 * How many more of each card, and of some panels, can be made from what a plan leaves: whole sheets and leftovers worth
 * keeping. Each is asked for by itself, so that the maker can choose one. A card counts only with all its pieces, over all
 * papers; counts are what the search found, each from packings that are proven right. Rejects with a RangeError where the
 * plan is not of the project.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: Two cards
 * papers: { night: { cardstock: us-letter, count: 3 }, cream: { cardstock: us-letter, count: 1 } }
 * cards:
 *   - { name: Plain, format: us-a2, base: night, copies: 2 }
 *   - { name: Matted, format: us-a2, base: night, copies: 1, front: [{ mat: cream, border: 1/4 }] }
 * `);
 * const panels = [{ name: "tag", width: 81280, height: 162560, wanted: 6, mayTurn: true }];
 * const found = await bonusOf(project, plan(project), { panels });
 * found.left.map(({ design, sheets }) => [design, sheets]) // => [["night", 1], ["cream", 0]]
 * found.cards.map(({ name, copies }) => [name, copies]) // => [["Plain", 3], ["Matted", 2]]
 */
export async function bonusOf(project: Project, plan: Plan, options: BonusOptions = {}): Promise<Bonus> {
  const { panels: wishes = [], effort = "quick", ...rest } = options;
  const own: PlanAsyncOptions = { ...rest, effort };
  const after = projectAfter(project, plan);
  const left = leftOf(after);
  const whole = areaOf(after);
  const expansion = expandProject({ ...after, cutAlready: [] });
  const { pieces } = expansion;
  let cancelled = false;

  const cards: { readonly area: bigint; readonly bonus: CardBonus }[] = [];
  for (const card of after.cards) {
    const { number, name } = card;
    const found = await mostCopies(after, card, piecesOf(pieces, number), own);
    cancelled ||= found.cancelled;
    const area = sumOf(
      (found.plan?.groups ?? []).flatMap(({ problem, packing }) => [...kindAreas(problem, packing).values()]),
    );
    const bonus = { card: number, name, copies: found.copies, percent: percentOf(area, whole) };
    cards.push({ area, bonus });
  }

  const panels: { readonly area: bigint; readonly one: bigint; readonly bonus: PanelBonus }[] = [];
  for (const { mayTurn, ...panel } of wishes) {
    const from: PanelBonus["from"][number][] = [];
    for (const paper of after.papers) {
      for (const design of paper.designs) {
        const found = await mostPanels(after, paper, design, { ...panel, mayTurn }, own);
        cancelled ||= found.cancelled;
        const name = left.find((one) => one.design === design.id)?.name ?? design.name;
        if (found.count > 0) from.push({ design: design.id, name, count: found.count });
      }
    }
    const count = from.reduce((sum, one) => sum + one.count, 0);
    const one = BigInt(panel.width) * BigInt(panel.height);
    const area = one * BigInt(count);
    const best = [...from].sort((a, b) => b.count - a.count);
    panels.push({
      area,
      one,
      bonus: { ...panel, count, from: best, percent: percentOf(area, whole) },
    });
  }

  return {
    title: project.title,
    units: project.units,
    left,
    itemsLeft: itemsLeftOf(after, expansion),
    asNeeded: project.papers.flatMap(({ designs }) =>
      designs.filter(({ count }) => count === null).map(({ id }) => id),
    ),
    cards: cards
      .sort((a, b) => b.bonus.copies - a.bonus.copies || byArea(b.area, a.area))
      .map(({ bonus }) => bonus),
    panels: panels.sort((a, b) => byArea(b.area, a.area) || byArea(b.one, a.one)).map(({ bonus }) => bonus),
    cancelled,
  };
}

function leftOf(after: Project): readonly DesignLeft[] {
  return stockOfProject(after)
    .map(({ design, name, sheets, offcuts }) => ({ design, name, sheets: sheets ?? 0, offcuts }))
    .filter(({ sheets, offcuts }) => sheets > 0 || offcuts.length > 0);
}

function itemsLeftOf(after: Project, expansion: Expansion): readonly ItemLeft[] {
  const idle = new Set(unusedItems(after, expansion).map(({ name }) => name));
  return (after.items ?? []).flatMap(({ name: item, length = null, count }) =>
    count === null || idle.has(item) ? [] : [{ item, length, count }],
  );
}

function areaOf({ papers }: Project): bigint {
  return sumOf(
    papers.flatMap(({ sheet, designs }) =>
      designs.flatMap(({ count, offcuts }) => [
        BigInt(count ?? 0) * BigInt(sheet.width) * BigInt(sheet.height),
        ...offcuts.map((one) => BigInt(one.count) * BigInt(one.width) * BigInt(one.height)),
      ]),
    ),
  );
}

function piecesOf(pieces: readonly Piece[], card: number): readonly Piece[] {
  return pieces.filter((piece) => piece.card === card);
}

function byArea(a: bigint, b: bigint): number {
  return a === b ? 0 : a < b ? -1 : 1;
}
