import { itemKey } from "@sheetwright/cards";
import { formatLength } from "@sheetwright/measure";
import type { Card, Item, Join, Plan } from "@sheetwright/planner";
import type { ItemSummary } from "../project-plan/project-plan-summary.js";
import { counted } from "./counted.js";
import { isItemShort, itemUseOf, rollCutsInWords } from "./item-use-in-words.js";
import { nameWithKind } from "./name-with-kind.js";
import { wrapped } from "./wrapped.js";

/**
 * Writes what is used by its length, each ribbon and tape with what all copies take of it; nothing where there is none.
 *
 * @param made how many copies of a card are made.
 * @param named the items that the project names.
 */
export function writeItems(
  plan: Pick<Plan, "items" | "units" | "itemUse">,
  made: (card: Card["number"]) => number,
  named: readonly ItemSummary[] = [],
): readonly string[] {
  const { items, units } = plan;
  const say = (ticks: number) => formatLength(ticks, { unit: units });
  const keyOf = ({ kind, name, width }: Item) => `${kind} ${width} ${itemKey(name)}`;
  const lines = [...new Set(items.map(keyOf))].flatMap((key) => {
    const own = items.filter((item) => keyOf(item) === key);
    const [first] = own;
    if (first === undefined) return [];
    const all = own.reduce((sum, { card, length }) => sum + made(card) * length, 0);
    return [
      ...wrapped(`${nameWithKind(first)}, ${say(first.width)} wide: ${say(all)} in all`, "  "),
      ...own.map(({ label, card, length }) => `  ${label}: ${made(card)} of ${say(length)}`),
      ...cutsOf(first, plan, named).flatMap((line) => wrapped(`  ${line}`, "    ")),
    ];
  });
  return lines.length === 0 ? [] : ["RIBBONS AND TAPES", "", ...lines, ""];
}

/** How the rolls on hand are cut; nothing where the project does not name the item. */
function cutsOf(
  { name }: Item,
  plan: Pick<Plan, "units" | "itemUse">,
  named: readonly ItemSummary[],
): readonly string[] {
  const use = itemUseOf(name, plan);
  const roll = named.find(({ item }) => item === use?.item)?.roll ?? null;
  if (use === undefined || roll === null) return [];
  const whom = use.bags === undefined ? "" : `in each of ${counted(use.bags, "bag")} `;
  const what = isItemShort(use) ? "for the complete copies " : "";
  return rollCutsInWords(use, roll, plan.units).map((words) => `${whom}${what}${words}`);
}

/**
 * Writes which layers are larger than their paper, and how each is made up; nothing where there are none.
 */
export function writeJoins({
  cards,
  pieces,
  units,
}: Pick<Plan, "cards" | "pieces" | "units">): readonly string[] {
  const labels = new Map(pieces.map(({ id, label }) => [id, label]));
  const lines = cards.flatMap(({ joins }) =>
    joins.filter(({ by }) => by !== "whole").flatMap((join) => wrapped(sayJoin(join, labels, units), "  ")),
  );
  return lines.length === 0 ? [] : ["LARGER THAN THEIR PAPER", "", ...lines, ""];
}

function sayJoin(
  { purpose, by, extent, gives, along, pieces }: Join,
  labels: ReadonlyMap<string, string>,
  unit: Plan["units"],
): string {
  const say = (ticks: number) => formatLength(ticks, { unit });
  const all = pieces.map((id) => labels.get(id) ?? id);
  const side = along === "height" ? "high" : "wide";
  const paper = `A ${purpose} ${say(extent)} ${side}, of which its paper gives ${say(gives)}`;
  if (by === "hide") return `${paper}: ${all.join("")} is cut short below another layer.`;
  return `${paper}: made up of ${all.slice(0, -1).join(", ")} and ${all.at(-1) ?? ""}.`;
}
