import { type EnvelopeSize, envelopeSizes, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import { type EnvelopeRoom, envelopeRoom } from "./envelope-room.js";

/** A named envelope, and how a card goes in it. Its sides are ticks, the short one first. */
export interface EnvelopeFit extends Size, EnvelopeRoom {
  readonly id: string;
  readonly name: string;
}

/**
 * All US and ISO envelopes for a closed card, best first: those it goes in easily, those that are snug, and those in which it
 * lies loose; of each those of the project's own trade first (US in inches, ISO in millimetres), then the least paper, of the
 * loose ones what leaves least one way. At the end those that are too small, by how much they lack. Sides and thickness are ticks; the unit says whose rule is gone by.
 *
 * @example
 * const inch = 40640;
 * const card = { width: 4.25 * inch, height: 5.5 * inch };
 * const all = listEnvelopes(card, { thickness: 0.05 * inch, unit: "in" });
 * all[0].id // => "env-us-a6"
 * all.find(({ id }) => id === "env-us-a2").verdict // => "snug"
 * all.at(-1).verdict // => "too-small"
 */
export function listEnvelopes(
  card: Size,
  { thickness, unit }: { readonly thickness: Ticks; readonly unit: Unit },
): readonly EnvelopeFit[] {
  const lacking = ({ clearance, leastFrom }: EnvelopeRoom) =>
    leastFrom - Math.min(clearance.short, clearance.long);
  // The sort is stable, so equal ones keep the order of the tables.
  return envelopeSizes
    .map((envelope) => envelopeFit(card, envelope, { thickness, unit }))
    .sort(
      (a, b) =>
        rankOf(a) - rankOf(b) ||
        (a.verdict === "too-small" ? lacking(a) - lacking(b) : isForeign(a, unit) - isForeign(b, unit)) ||
        (a.isLoose ? widest(a) - widest(b) : 0) ||
        a.width * a.height - b.width * b.height,
    );
}

function rankOf({ verdict, isLoose }: EnvelopeRoom): number {
  if (verdict === "too-small") return 3;
  if (isLoose) return 2;
  return verdict === "snug" ? 1 : 0;
}

function widest({ clearance }: EnvelopeRoom): Ticks {
  return Math.max(clearance.short, clearance.long);
}

/** 1 for an envelope of the other trade, which is harder to buy where the project is made. */
function isForeign({ id }: Pick<EnvelopeSize, "id">, unit: Unit): number {
  return id.startsWith(unit === "in" ? "env-us-" : "env-iso-") ? 0 : 1;
}

function envelopeFit(
  card: Size,
  { id, name, width, height }: EnvelopeSize,
  setting: { readonly thickness: Ticks; readonly unit: Unit },
): EnvelopeFit {
  return { id, name, width, height, ...envelopeRoom(card, { width, height }, setting) };
}
