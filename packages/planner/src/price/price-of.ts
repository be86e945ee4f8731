import type { Card, Design, Project } from "@sheetwright/cards";
import { costText, costUnits } from "../group/cost-units.js";
import type { Plan } from "../plan-model.js";
import { percentOf } from "../totals/percent-of.js";
import type { CardPrice, GuestPrice, Price, PriceKind, PricePart } from "./price.js";
import { priceParts, type WeighedPart } from "./price-parts.js";
import { shareOut } from "./share-out.js";

/** Units of a cost in a hundredth of the currency. */
const UNITS_PER_HUNDREDTH = 100n;

const KINDS: readonly PriceKind[] = ["paper", "envelopes", "extras", "ribbons", "consumables", "work"];

/**
 * What the copies and spares of a plan cost, part by part and card by card. Each card bears its share of the sheets of each
 * paper by the area of its pieces, so waste is shared alike; offcuts from earlier cost nothing, and it is left to chance
 * whose pieces lie on them, so that they count like all others. All money is in whole hundredths of the currency: each part
 * of the cost, a copy, a guest and a price are rounded up, and shares add up to their part exactly. Guests are those of the
 * project, and the plan may be of it with as many sheets as it takes. A plan of everything is asked for: a RangeError where
 * some piece is missing.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: Two cards
 * copies: { guests: 4, samples: 1 }
 * papers: { night: { cardstock: us-letter, cost: 0.35 } }
 * rates: { currency: $, consumables: { adhesive: 0.10 }, price-factor: 2 }
 * cards:
 *   - { name: Large, format: us-a7, base: night }
 *   - { name: Small, format: us-a2, base: night, envelope: { name: us-a2, cost: 0.20 } }
 * `);
 * const { total, cards: [large, small], guest } = priceOf(project, plan(project));
 * // Five and three sheets; the pieces have 70 and 46.75 square inches.
 * [large.costs.paper, small.costs.paper] // => ["1.68", "1.12"]
 * [large.total, small.total, total] // => ["2.18", "2.62", "4.80"]
 * [small.copy, small.price] // => ["0.53", "1.05"]
 * guest // => { guests: 4, cost: "1.20", price: "2.40" }
 */
export function priceOf(project: Project, plan: Plan): Price {
  if (plan.enough !== "yes")
    throw new RangeError("Expected a plan of every piece, found one that lacks some.");
  const { rates } = project;
  const factor = rates?.priceFactor ?? null;
  const copies = new Map(
    plan.complete.map(({ card, complete, spares }) => [card, complete + (spares?.made ?? 0)]),
  );
  const { parts: weighed, unknown } = priceParts(project, plan, copies);
  const order = plan.cards.map(({ number }) => number);
  const shared = weighed.map((part) => shareOfPart(part, order));
  const cards = plan.cards.map((card) => cardPrice(card, copies.get(card.number) ?? 0, shared, factor));
  const total = weighed.reduce((sum, { cost }) => sum + cost, 0n);
  const guests = project.cards.reduce((most, card) => Math.max(most, guestsOf(card, project)), 0);
  return {
    title: plan.title,
    units: plan.units,
    currency: rates?.currency ?? null,
    parts: shared.map(({ part }) => part),
    cards,
    total: sumText(total),
    unknown,
    factor,
    guest: guests === 0 ? null : guestPrice(total, guests, factor),
  };
}

interface SharedPart {
  readonly part: PricePart;
  readonly shares: ReadonlyMap<Card["number"], bigint>;
}

function shareOfPart({ weights, cost, ...part }: WeighedPart, order: readonly Card["number"][]): SharedPart {
  const entries = order
    .map((card) => [card, weights.get(card) ?? 0n] as const)
    .filter(([, weight]) => weight > 0n);
  const amounts = shareOut(
    cost,
    entries.map(([, weight]) => weight),
  );
  const whole = entries.reduce((sum, [, weight]) => sum + weight, 0n);
  return {
    part: {
      ...part,
      cost: sumText(cost),
      shares: entries.map(([card, weight], index) => ({
        card,
        percent: percentOf(weight, whole),
        cost: sumText(amounts[index] ?? 0n),
      })),
    },
    shares: new Map(entries.map(([card], index) => [card, amounts[index] ?? 0n])),
  };
}

function cardPrice(
  { number, name }: Card,
  copies: number,
  shared: readonly SharedPart[],
  factor: string | null,
): CardPrice {
  const sumOf = (kind: PriceKind | null): bigint =>
    shared
      .filter(({ part }) => kind === null || part.kind === kind)
      .reduce((sum, { shares }) => sum + (shares.get(number) ?? 0n), 0n);
  const total = sumOf(null);
  const costs = Object.fromEntries(KINDS.map((kind) => [kind, sumText(sumOf(kind))]));
  return {
    card: number,
    name,
    copies,
    costs: costs as Record<PriceKind, string>,
    total: sumText(total),
    copy: dividedUp(total, BigInt(copies)),
    price: priceText(total, copies, factor),
  };
}

/** Guests that a card is made for; with kits each has a bag, that may make several copies. */
function guestsOf({ copies, copiesFor: { guests } }: Design, { kits }: Project): number {
  return kits === undefined ? guests : Math.floor((guests * kits.bags) / copies);
}

function guestPrice(total: bigint, guests: number, factor: string | null): GuestPrice {
  return { guests, cost: dividedUp(total, BigInt(guests)), price: priceText(total, guests, factor) };
}

/** Hundredths as decimal text. */
function sumText(hundredths: bigint): string {
  return costText(hundredths * UNITS_PER_HUNDREDTH);
}

/** Hundredths by a number, rounded up to whole ones. */
function dividedUp(hundredths: bigint, by: bigint): string {
  return sumText(by === 0n ? 0n : (hundredths + by - 1n) / by);
}

function priceText(total: bigint, by: number, factor: string | null): string | null {
  if (factor === null) return null;
  return dividedUp(total * costUnits(factor), BigInt(by) * costUnits("1"));
}
