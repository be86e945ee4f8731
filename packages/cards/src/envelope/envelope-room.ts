// Whether a card goes in an envelope. What counts is the clearance: the envelope less the card, the short sides and the long
// sides apart, so that it does not matter how either stands. Three steps:
//
//     easy       1/4 in (6 mm) both ways; in a square envelope 1/2 in (12 mm), which is what is recommended for it
//     snug       less, and it still goes in
//     too small  less than 1/8 in (3 mm) one way, in a square envelope than 1/4 in (6 mm); or less than the card is thick
//
// Sources: 1/4 in in general, and 1/4 to 1/2 in for square envelopes, are published US envelope size charts; 1/8 in is what
// makers leave an A2 card, the narrowest in use (common practice, no source). A thick card needs its thickness more both
// ways (common practice, no source); since the 1/4 in is meant for ordinary cards, only what is thicker than 1/16 in (1.5 mm)
// counts for it. A card as thick as the clearance is held by the pocket all round, so a thicker one does not go in.
//
// Easy has no upper end, but a card that has more than 1 1/2 in (40 mm) to spare one way slides about and turns in its
// envelope: it lies loose, easy or snug. The 1 1/2 in is the most that the trade leaves in a usual envelope, a card of
// 4 1/4 x 4 1/4 in in A2 (common practice, no source). What is thicker than 1/16 in takes up of it as of the 1/4 in.

import { inches, millimetres, type Size, type Ticks, type Unit } from "@sheetwright/measure";

/** How a card goes in an envelope. */
export type EnvelopeVerdict = "easy" | "snug" | "too-small";

/** How much room a card has in an envelope. */
export interface EnvelopeRoom {
  readonly verdict: EnvelopeVerdict;
  /** Whether it goes in, but slides about in there: one way it has more than {@link looseOver}. */
  readonly isLoose: boolean;
  /** The envelope less the card by their short and by their long sides; negative where the card is larger. */
  readonly clearance: { readonly short: Ticks; readonly long: Ticks };
  /** The clearance both ways from which on it goes in easily. */
  readonly easyFrom: Ticks;
  /** The clearance both ways from which on it goes in at all. */
  readonly leastFrom: Ticks;
  /** The clearance one way over which it lies loose. */
  readonly looseOver: Ticks;
}

interface Rule {
  readonly easy: Ticks;
  readonly least: Ticks;
}

interface Rules {
  readonly oblong: Rule;
  readonly square: Rule;
  readonly flat: Ticks;
  readonly loose: Ticks;
}

const RULES: Readonly<Record<Unit, Rules>> = {
  in: {
    oblong: { easy: inches(1 / 4), least: inches(1 / 8) },
    square: { easy: inches(1 / 2), least: inches(1 / 4) },
    flat: inches(1 / 16),
    loose: inches(1.5),
  },
  mm: {
    oblong: { easy: millimetres(6), least: millimetres(3) },
    square: { easy: millimetres(12), least: millimetres(6) },
    flat: millimetres(1.5),
    loose: millimetres(40),
  },
};

/**
 * Whether a closed card goes in an envelope, by the rule of the trade in inches or in millimetres. Sides and thickness are
 * ticks; how card and envelope stand is of no matter.
 *
 * @example
 * const inch = 40640;
 * const card = { width: 5 * inch, height: 7 * inch };
 * const a7 = { width: 5.25 * inch, height: 7.25 * inch };
 * envelopeRoom(card, a7, { thickness: 0.05 * inch, unit: "in" }).verdict // => "easy"
 * envelopeRoom(card, a7, { thickness: 0.125 * inch, unit: "in" }).verdict // => "snug"
 * envelopeRoom(card, a7, { thickness: 0.375 * inch, unit: "in" }).verdict // => "too-small"
 * envelopeRoom({ width: 2 * inch, height: 4 * inch }, a7, { thickness: 0, unit: "in" }).isLoose // => true
 */
export function envelopeRoom(
  card: Size,
  envelope: Size,
  { thickness, unit }: { readonly thickness: Ticks; readonly unit: Unit },
): EnvelopeRoom {
  const clearance = {
    short: Math.min(envelope.width, envelope.height) - Math.min(card.width, card.height),
    long: Math.max(envelope.width, envelope.height) - Math.max(card.width, card.height),
  };
  const { oblong, square, flat, loose } = RULES[unit];
  const rule = envelope.width === envelope.height ? square : oblong;
  const raised = Math.max(0, thickness - flat);
  const easyFrom = rule.easy + raised;
  const looseOver = loose + raised;
  const leastFrom = Math.max(rule.least, thickness);
  const narrowest = Math.min(clearance.short, clearance.long);
  const verdict = narrowest < leastFrom ? "too-small" : narrowest < easyFrom ? "snug" : "easy";
  const isLoose = verdict !== "too-small" && Math.max(clearance.short, clearance.long) > looseOver;
  return { verdict, isLoose, clearance, easyFrom, leastFrom, looseOver };
}
