import {
  type BundleItem,
  type Card,
  itemKey,
  type NamedCost,
  type Paper,
  type PaperDesign,
  type Project,
} from "@sheetwright/cards";
import type { Ticks } from "@sheetwright/measure";
import { costUnits } from "../group/cost-units.js";
import type { Plan } from "../plan-model.js";
import { kindAreas } from "../totals/areas.js";
import type { PricePart } from "./price.js";

/** A part of the cost before it is shared out: its cost in hundredths of the currency, and the weight of each card in it. */
export interface WeighedPart extends Omit<PricePart, "cost" | "shares"> {
  readonly cost: bigint;
  readonly weights: Weights;
}

type Weights = ReadonlyMap<Card["number"], bigint>;
type Copies = ReadonlyMap<Card["number"], number>;

/** Parts, and the names of what is used without a cost. */
export interface PriceParts {
  readonly parts: readonly WeighedPart[];
  readonly unknown: readonly string[];
}

/** Ribbon is sold by the yard or the metre. */
const YARD: Ticks = 36 * 40_640;
const METRE: Ticks = 1_600_000;
const UNITS_PER_HUNDREDTH = 100n;
/** Minutes are told with up to four decimals, and sixty of them make an hour. */
const MINUTE = 10_000;

/** All that a plan's copies take, with what it costs where that is given. */
export function priceParts(project: Project, plan: Plan, copies: Copies): PriceParts {
  const found = [
    papersOf(plan),
    envelopesOf(project, copies),
    extrasOf(project, copies),
    ribbonsOf(project, plan, copies),
    consumablesOf(project, copies),
    workOf(project, copies),
  ];
  return {
    parts: found.flatMap(({ parts }) => parts),
    unknown: [...new Set(found.flatMap(({ unknown }) => unknown))],
  };
}

function papersOf(plan: Plan): PriceParts {
  const parts: WeighedPart[] = [];
  const unknown: string[] = [];
  for (const paper of plan.papers) {
    for (const design of paper.designs) {
      const used = plan.use.find((one) => one.design === design.id)?.used ?? 0;
      if (used === 0) continue;
      const name = paper.material === "pad" ? `${paper.name}: ${design.name}` : paper.name;
      const sold = priceOfSheets(paper, design);
      if (sold === null) unknown.push(name);
      else {
        const cost = costFor(used, sold);
        parts.push({
          kind: "paper",
          name,
          quantity: used,
          ...sold,
          cost,
          weights: areasByCard(plan, design.id),
        });
      }
    }
  }
  return { parts, unknown };
}

/** The cost of a sheet, or else that of a pack by its sheets; of a pad's pack by those of all designs. */
function priceOfSheets({ pack, designs }: Paper, { cost }: PaperDesign): Sold | null {
  if (cost !== null) return { each: cost, per: 1 };
  if (pack === undefined || pack.cost === null) return null;
  return { each: pack.cost, per: pack.sheets * designs.length };
}

/** The area of each card's pieces from the sheets and offcuts of a design. */
function areasByCard(plan: Plan, design: string): Weights {
  const cardOf = new Map(plan.pieces.map(({ id, card }) => [id, card]));
  const weights = new Map<Card["number"], bigint>();
  for (const { problem, packing, sheets, strips = [] } of plan.groups) {
    const own = new Set(sheets.filter((one) => one.design === design).map(({ sheet }) => sheet));
    if (own.size === 0) continue;
    const pieceOf = new Map(strips.map(({ kind, piece }) => [kind, piece]));
    for (const [kind, area] of kindAreas(problem, packing, (sheet) => own.has(sheet))) {
      const card = cardOf.get(pieceOf.get(kind) ?? kind);
      if (card === undefined)
        throw new RangeError(`The packing names the piece "${kind}", which is not there.`);
      weights.set(card, (weights.get(card) ?? 0n) + area);
    }
  }
  return weights;
}

function envelopesOf({ cards }: Project, copies: Copies): PriceParts {
  return counted(
    "envelopes",
    cards.flatMap(({ number, name, envelope }) =>
      envelope === null
        ? []
        : [
            {
              card: number,
              name: `envelope of ${name}`,
              count: copies.get(number) ?? 0,
              cost: envelope.cost,
            },
          ],
    ),
  );
}

/** What an extra costs is said of it in the card, or else of the item on hand. */
function extrasOf({ cards, items = [] }: Project, copies: Copies): PriceParts {
  const prices = new Map(items.map((item) => [itemKey(item.name), priceOfItem(item)]));
  return counted(
    "extras",
    cards.flatMap(({ number, extras }) =>
      extras.map(({ name, count, cost }) => ({
        card: number,
        name,
        count: count * (copies.get(number) ?? 0),
        ...(cost === undefined ? prices.get(itemKey(name)) : { cost }),
      })),
    ),
  );
}

/** The cost of one, or else that of a pack by what is in it; nothing where neither is known. */
function priceOfItem({ cost, pack }: BundleItem): Priced {
  if (cost !== undefined) return { cost };
  if (pack === undefined || pack.cost === null) return {};
  return { cost: pack.cost, per: pack.items };
}

/** What so many cost, one unless it says otherwise; not known where absent. */
interface Priced {
  readonly cost?: string | undefined;
  readonly per?: number | undefined;
}

/** A ribbon costs what the rates say of a yard or a metre of it, or else its length of a roll on hand. */
function ribbonsOf(project: Project, { items, complete }: Plan, copies: Copies): PriceParts {
  const { rates, units } = project;
  const known = new Map<string, Sold>();
  for (const item of project.items ?? []) {
    const { cost: each, per: rolls = 1 } = priceOfItem(item);
    if (each !== undefined && item.length !== undefined)
      known.set(itemKey(item.name), { each, per: rolls * item.length });
  }
  for (const { name, cost: each } of rates?.ribbons ?? [])
    known.set(itemKey(name), { each, per: units === "in" ? YARD : METRE });
  const wanted = new Map(complete.map((one) => [one.card, one.wanted]));
  const parts = new Map<string, { sold: Sold; name: string; length: number; weights: Map<number, bigint> }>();
  const unknown: string[] = [];
  for (const { name, card, length, quantity } of items) {
    const sold = known.get(itemKey(name));
    if (sold === undefined) {
      unknown.push(name);
      continue;
    }
    const spares = (copies.get(card) ?? 0) - (wanted.get(card) ?? 0);
    const all = length * (quantity + spares);
    const part = parts.get(itemKey(name)) ?? { sold, name, length: 0, weights: new Map<number, bigint>() };
    part.length += all;
    part.weights.set(card, (part.weights.get(card) ?? 0n) + BigInt(all));
    parts.set(itemKey(name), part);
  }
  return {
    parts: [...parts.values()].map(({ sold, name, length, weights }) => ({
      kind: "ribbons",
      name,
      quantity: length,
      ...sold,
      cost: costFor(length, sold),
      weights,
    })),
    unknown,
  };
}

function consumablesOf({ rates }: Project, copies: Copies): PriceParts {
  const parts = (rates?.consumables ?? []).map(({ name, cost: each }: NamedCost): WeighedPart => {
    const quantity = sumOf(copies);
    return {
      kind: "consumables",
      name,
      quantity,
      each,
      per: 1,
      cost: costFor(quantity, { each, per: 1 }),
      weights: byCopies(copies),
    };
  });
  return { parts, unknown: [] };
}

function workOf({ rates }: Project, copies: Copies): PriceParts {
  const minutesPerCard = rates?.minutesPerCard ?? null;
  const hour = rates?.hour ?? null;
  if (minutesPerCard === null) return { parts: [], unknown: [] };
  if (hour === null) return { parts: [], unknown: ["work"] };
  const quantity = Number(costUnits(minutesPerCard) * BigInt(sumOf(copies)));
  const sold = { each: hour, per: 60 * MINUTE };
  const cost = costFor(quantity, sold);
  return {
    parts: [{ kind: "work", name: "work", quantity, ...sold, cost, weights: byCopies(copies) }],
    unknown: [],
  };
}

type Sold = Pick<PricePart, "each" | "per">;

/** What a quantity costs in hundredths, rounded up. */
function costFor(quantity: number, { each, per }: Sold): bigint {
  const step = BigInt(per) * UNITS_PER_HUNDREDTH;
  return (BigInt(quantity) * costUnits(each) + step - 1n) / step;
}

/** Things that are counted: those of one name and cost together. */
function counted(
  kind: "envelopes" | "extras",
  things: readonly ({
    readonly card: Card["number"];
    readonly name: string;
    readonly count: number;
  } & Priced)[],
): PriceParts {
  const parts = new Map<
    string,
    { name: string; each: string; per: number; quantity: number; weights: Map<number, bigint> }
  >();
  const unknown: string[] = [];
  for (const { card, name, count, cost: each, per = 1 } of things) {
    if (count === 0) continue;
    if (each === undefined) {
      unknown.push(name);
      continue;
    }
    const key = JSON.stringify([name, each, per]);
    const part = parts.get(key) ?? { name, each, per, quantity: 0, weights: new Map<number, bigint>() };
    part.quantity += count;
    part.weights.set(card, (part.weights.get(card) ?? 0n) + BigInt(count));
    parts.set(key, part);
  }
  return {
    parts: [...parts.values()].map((part) => ({
      ...part,
      kind,
      cost: costFor(part.quantity, part),
    })),
    unknown,
  };
}

function sumOf(copies: Copies): number {
  return [...copies.values()].reduce((sum, count) => sum + count, 0);
}

function byCopies(copies: Copies): Weights {
  return new Map([...copies].map(([card, count]) => [card, BigInt(count)]));
}
