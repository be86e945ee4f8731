import { type Item, itemKey, type Paper, type Project, unusedItems } from "@sheetwright/cards";
import { costText, costUnits } from "../group/cost-units.js";
import type { PaperGroup, Plan } from "../plan-model.js";
import { groupBound } from "../totals/group-bound.js";
import { designAreas, designUses } from "./design-uses.js";
import { itemsPerBag, namedItemNeeds } from "./named-item-needs.js";
import type { DesignNeed, ItemNeed, NamedItemNeed, Need, PaperNeed } from "./need.js";

/**
 * What a project needs, from a plan of it with as many sheets as it takes ({@link asManyAsNeeded}). Sheets are the fewest that
 * were found; what is not on hand is rounded up to packs. Where several papers will do for a piece, the plan has chosen.
 *
 * @param project The project as it is, with what is on hand.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: Harbour cards
 * papers: { night: { cardstock: us-letter, count: 1, grain: long, pack: { sheets: 3, cost: 2.40 } } }
 * cards: [{ name: Harbour, format: us-a2, base: night, copies: 9 }]
 * `);
 * const { designs, papers, cost } = needOf(project, plan(asManyAsNeeded(project)));
 * designs.map(({ sheets, atLeast, onHand }) => [sheets, atLeast, onHand]) // => [[5, 5, 1]]
 * papers.map(({ packs, sheetsToBuy, packsToBuy }) => [packs, sheetsToBuy, packsToBuy]) // => [[2, 4, 2]]
 * cost // => "4.80"
 */
export function needOf(project: Project, plan: Plan): Need {
  const designs = designNeeds(project, plan);
  const papers = project.papers.flatMap((paper) => paperNeed(paper, designs));
  const namedItems = namedItemNeeds(project, plan);
  const costs = [...papers, ...namedItems].map(({ cost }) => cost);
  const cost = costs.every((one) => one !== null)
    ? costText(costs.reduce((sum, one) => sum + costUnits(one ?? "0"), 0n))
    : null;
  return {
    title: plan.title,
    units: plan.units,
    cards: plan.cards.map(({ number, name, copies }) => ({ card: number, name, copies })),
    ...(project.kits === undefined
      ? {}
      : { kits: bagNeeds(project.kits.bags, project, designs, namedItems) }),
    designs,
    papers,
    namedItems,
    cost,
    items: itemNeeds(plan.items),
    extras: extraNeeds(plan),
    unused: [...unusedPapers(project, plan), ...unusedItems(project, plan).map(({ name }) => name)],
    noPaper: plan.noPaper.map(({ label }) => label),
  };
}

function bagNeeds(
  bags: number,
  project: Project,
  designs: readonly DesignNeed[],
  namedItems: readonly NamedItemNeed[],
): NonNullable<Need["kits"]> {
  const { papers } = project;
  const whole = new Set(
    papers.filter((paper) => paper.bags !== undefined).flatMap((paper) => paper.designs.map(({ id }) => id)),
  );
  const perBag = designs
    .filter(({ design, sheets }) => whole.has(design) && sheets > 0)
    .map(({ design, name, sheets }) => ({ design, name, sheets: sheets / bags }));
  return { bags, perBag, itemsPerBag: itemsPerBag(bags, project, namedItems) };
}

function designNeeds(project: Project, plan: Plan): readonly DesignNeed[] {
  const use = new Map(plan.use.map((one) => [one.design, one]));
  const onHand = new Map(
    project.papers.flatMap(({ designs }) => designs.map(({ id, count }) => [id, count] as const)),
  );
  return project.papers.flatMap((paper) =>
    paper.designs.flatMap(({ id, name }): DesignNeed[] => {
      const group = plan.groups.find(({ designs }) => designs.includes(id));
      if (group === undefined) return [];
      return [
        {
          design: id,
          name: paper.material === "pad" ? `${paper.name}: ${name}` : paper.name,
          sheets: use.get(id)?.used ?? 0,
          offcuts: use.get(id)?.offcutsUsed ?? 0,
          together: group.designs,
          atLeast: fewestSheets(group) * (group.bags ?? 1),
          onHand: onHand.get(id) ?? null,
          ...designUses(designAreas(group, id, plan.pieces)),
        },
      ];
    }),
  );
}

/**
 * No plan of a group takes fewer whole sheets, whatever it takes of offcuts. These cost nothing, so the cost that is proven is
 * one of whole sheets; where there are none, the number of sheets is proven by itself.
 */
function fewestSheets({ problem, sheets, ...group }: PaperGroup): number {
  const bound = groupBound(group);
  if (bound.aim !== "all" || bound.cost === null) return 0;
  const offcuts = new Set(sheets.filter(({ offcut }) => offcut !== null).map(({ sheet }) => sheet));
  const whole = problem.sheets.filter(({ id }) => !offcuts.has(id));
  const dearest = Math.max(1, ...whole.map(({ width, height, cost }) => cost ?? width * height));
  const byCost = (BigInt(bound.cost) + BigInt(dearest) - 1n) / BigInt(dearest);
  return Math.max(Number(byCost), whole.length === problem.sheets.length ? (bound.sheets ?? 0) : 0);
}

/** How a paper is bought; nothing where none of it is cut. A pack of a pad has sheets of each design. */
function paperNeed(paper: Paper, needs: readonly DesignNeed[]): readonly PaperNeed[] {
  const own = paper.designs.flatMap(({ id, cost }) => {
    const need = needs.find(({ design }) => design === id);
    return need === undefined ? [] : [{ need, cost }];
  });
  if (own.length === 0) return [];
  const packSheets = paper.pack?.sheets ?? 1;
  const missing = own.map(({ need, cost }) => ({
    count: Math.max(0, need.sheets - (need.onHand ?? 0)),
    cost,
  }));
  const packsOf = (counts: readonly number[]): number =>
    paper.pack === undefined
      ? counts.reduce((sum, count) => sum + count, 0)
      : Math.max(...counts.map((count) => Math.ceil(count / packSheets)));
  const packsToBuy = packsOf(missing.map(({ count }) => count));
  return [
    {
      paper: paper.id,
      name: paper.name,
      packSheets,
      packs: packsOf(own.map(({ need }) => need.sheets)),
      packsToBuy,
      sheetsToBuy: missing.reduce((sum, { count }) => sum + count, 0),
      cost: costOf(paper, packsToBuy, missing),
    },
  ];
}

function costOf(
  { pack }: Paper,
  packs: number,
  missing: readonly { readonly count: number; readonly cost: string | null }[],
): string | null {
  if (pack !== undefined && pack.cost !== null) return costText(costUnits(pack.cost) * BigInt(packs));
  // Sheets have a cost of their own; what of a pack is not needed costs as much.
  let sum = 0n;
  for (const { count, cost } of missing) {
    const bought = pack === undefined ? count : packs * pack.sheets;
    if (bought === 0) continue;
    if (cost === null) return null;
    sum += costUnits(cost) * BigInt(bought);
  }
  return costText(sum);
}

function itemNeeds(items: readonly Item[]): readonly ItemNeed[] {
  const needs = new Map<string, ItemNeed>();
  for (const { kind, name, width, length, quantity } of items) {
    const key = JSON.stringify([kind, itemKey(name), width]);
    const before = needs.get(key);
    needs.set(key, {
      kind,
      name: before?.name ?? name,
      width,
      count: (before?.count ?? 0) + quantity,
      length: (before?.length ?? 0) + length * quantity,
    });
  }
  return [...needs.values()];
}

function extraNeeds({ cards }: Plan): Need["extras"] {
  const needs = new Map<string, Need["extras"][number]>();
  for (const { copies, extras = [] } of cards) {
    for (const { name, count } of extras) {
      const before = needs.get(itemKey(name));
      needs.set(itemKey(name), {
        name: before?.name ?? name,
        count: (before?.count ?? 0) + count * copies,
      });
    }
  }
  return [...needs.values()];
}

/** Papers that no piece may be cut from; of a pad of which some design is used, the designs that are not. */
function unusedPapers({ papers }: Project, { pieces }: Plan): readonly string[] {
  const used = new Set(pieces.flatMap(({ faces }) => faces));
  return papers.flatMap(({ name, designs }) => {
    const idle = designs.filter(
      ({ front, back }) => !used.has(front.id) && (back === null || !used.has(back.id)),
    );
    if (idle.length === designs.length) return [name];
    return idle.map((design) => `${name}: ${design.name}`);
  });
}
