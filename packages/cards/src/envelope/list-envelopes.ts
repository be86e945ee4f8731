import { type EnvelopeSize, envelopeSizes, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import { type EnvelopeRoom, type EnvelopeVerdict, envelopeRoom } from "./envelope-room.js";

/** A named envelope, and how a card goes in it. Its sides are ticks, the short one first. */
export interface EnvelopeFit extends Size, EnvelopeRoom {
  readonly id: string;
  readonly name: string;
}

const VERDICTS: readonly EnvelopeVerdict[] = ["easy", "snug", "too-small"];

/**
 * All US and ISO envelopes for a closed card, best first: those it goes in easily before those that are snug, each by the
 * area they leave over; at the end those that are too small, by how much they lack. Equal ones stand in the order of the
 * tables, US first. Sides and thickness are ticks; the unit says whose rule is gone by.
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
        VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict) ||
        (a.verdict === "too-small" ? lacking(a) - lacking(b) : 0) ||
        a.width * a.height - b.width * b.height,
    );
}

function envelopeFit(
  card: Size,
  { id, name, width, height }: EnvelopeSize,
  setting: { readonly thickness: Ticks; readonly unit: Unit },
): EnvelopeFit {
  return { id, name, width, height, ...envelopeRoom(card, { width, height }, setting) };
}
