import { type BundleItem, itemKey, type Project, unusedItems } from "@sheetwright/cards";
import { costText, costUnits } from "../group/cost-units.js";
import type { Plan } from "../plan-model.js";
import type { NamedItemNeed, Need } from "./need.js";

/** What is needed of the items that a project names and some card uses, by a plan with as many as it takes. */
export function namedItemNeeds(project: Project, plan: Plan): readonly NamedItemNeed[] {
  const idle = new Set(unusedItems(project, plan).map(({ name }) => name));
  return (project.items ?? []).flatMap((item): readonly NamedItemNeed[] => {
    const use = plan.itemUse?.find((one) => one.item === item.name);
    if (use === undefined || idle.has(item.name)) return [];
    const { needed, atLeast } = use;
    const { count: onHand, length = null, pack } = item;
    const packItems = pack?.items ?? 1;
    const toBuy = Math.max(0, needed - (onHand ?? 0));
    const packsToBuy = Math.ceil(toBuy / packItems);
    return [
      {
        item: item.name,
        length,
        needed,
        atLeast,
        onHand,
        packItems,
        packs: Math.ceil(needed / packItems),
        packsToBuy,
        toBuy,
        cost: costOf(item, project, packsToBuy),
      },
    ];
  });
}

function costOf(item: BundleItem, { cards }: Project, packs: number): string | null {
  const { name, pack } = item;
  if (packs === 0) return costText(0n);
  const each = pack?.cost ?? null;
  if (each !== null) return costText(costUnits(each) * BigInt(packs));
  const extras = cards.flatMap((card) => card.extras.filter((one) => itemKey(one.name) === itemKey(name)));
  // What an extra costs may be said in a card alone.
  const cost = item.cost ?? extras.find((one) => one.cost !== undefined)?.cost;
  // One has a cost of its own; what of a pack is not needed costs as much.
  return cost === undefined ? null : costText(costUnits(cost) * BigInt(packs * (pack?.items ?? 1)));
}

/** Whole rolls, and what is counted singly, in each bag: so many that all bags make their copies. */
export function itemsPerBag(
  bags: number,
  { items = [] }: Project,
  needs: readonly NamedItemNeed[],
): NonNullable<Need["kits"]>["itemsPerBag"] {
  return needs.flatMap(({ item, length, needed }) => {
    const isCut = length !== null && items.find(({ name }) => name === item)?.bags === undefined;
    return isCut || needed === 0 ? [] : [{ item, length, count: needed / bags }];
  });
}
