import type { Size } from "@sheetwright/measure";
import { type EnvelopeMass, envelopeMass } from "../envelope/envelope-mass.js";
import { type EnvelopeRoom, envelopeRoom } from "../envelope/envelope-room.js";
import { type EnvelopeFit, listEnvelopes } from "../envelope/list-envelopes.js";
import { usualEnvelopes } from "../envelope/usual-envelopes.js";
import { expandProject } from "../expand/expand-project.js";
import type { Card, Expansion } from "../expansion.js";
import type { Design, Project } from "../project.js";
import { type CardThickness, cardThickness } from "../thickness/card-thickness.js";
import { closedSize } from "../thickness/folded-panels.js";
import { type CardMass, cardMass } from "../weight/card-mass.js";
import { type Basis, weaker } from "../weight/paper-measures.js";
import { stuffOf } from "../weight/sheet-stuff.js";

/** A finished card: how large, thick and heavy it is, and what it is mailed in. All plain data. */
export interface FinishedCard {
  readonly number: number;
  readonly name: string;
  /** The closed card, in ticks. */
  readonly closed: Size;
  readonly thickness: CardThickness;
  /** What it weighs, without and with its envelope. */
  readonly mass: CardMass & { readonly withEnvelope: { readonly grams: number; readonly basis: Basis } };
  readonly envelope: CardEnvelope;
  /** All named envelopes, best first. */
  readonly envelopes: readonly EnvelopeFit[];
}

/** The envelope of a card. */
export interface CardEnvelope extends Size, EnvelopeRoom {
  /** `null` for one of its own size. */
  readonly id: string | null;
  /** `null` for one of its own size. */
  readonly name: string | null;
  /** Who chose it: the maker, the trade for this size of card, or this program as the one that fits best. */
  readonly chosenBy: "maker" | "trade" | "best";
  /** Whether it is one that such a card usually goes in, whoever chose it. */
  readonly isUsual: boolean;
  /** What it weighs empty. */
  readonly mass: EnvelopeMass;
}

/**
 * How thick and heavy each card of a project is when it is finished, and which envelope takes it: the one that the maker
 * says, else the usual one of its format or size, else the named one that it fits best. Throws a ProjectError where the
 * project has faults.
 *
 * @example
 * const { project } = readProject(`
 * sheetwright: 1
 * title: One card
 * papers:
 *   night: { cardstock: us-letter, weight: 80 lb cover, thickness: 0.012 in }
 * cards:
 *   - { name: Rooftops, format: us-a2, base: night }
 * `);
 * const [{ thickness, mass, envelope }] = finishedCards(project);
 * [sayThickness(thickness.value, "in"), thickness.basis] // => ["0.024 in", "given"]
 * Math.round(1000 * mass.grams) / 1000 // => 6.525
 * [envelope.id, envelope.verdict, envelope.chosenBy] // => ["env-us-a2", "snug", "trade"]
 */
export function finishedCards(project: Project): readonly FinishedCard[] {
  return finishAll(project, expandProject(project));
}

/**
 * One card of a project as {@link finishedCards} gives it. Throws a RangeError where there is no such card.
 *
 * @example
 * const { project } = readProject(`
 * sheetwright: 1
 * title: One card
 * papers: { night: { cardstock: us-letter } }
 * cards: [{ name: Rooftops, format: us-a7, base: night, envelope: us-a8 }]
 * `);
 * finishedCard(project, 1).envelope.name // => "US A8 envelope"
 * finishedCard(project, 2) // throws RangeError: no card 2
 */
export function finishedCard(project: Project, number: number): FinishedCard {
  const found = finishedCards(project).find((card) => card.number === number);
  if (found === undefined) throw new RangeError(`number: there is no card ${number} in the project.`);
  return found;
}

/**
 * All cards of a project that is worked out already.
 *
 * @internal
 */
export function finishAll(project: Project, expansion: Expansion): readonly FinishedCard[] {
  const stuff = stuffOf(expansion);
  return expansion.cards.flatMap((card) => {
    const design = project.cards.find(({ number }) => number === card.number);
    return design === undefined ? [] : [finish(project, design, card, expansion, stuff)];
  });
}

function finish(
  { units }: Project,
  design: Design,
  card: Card,
  expansion: Expansion,
  stuff: ReturnType<typeof stuffOf>,
): FinishedCard {
  const { number, name, front, flats } = card;
  const [flat] = flats;
  // Only a fold of one's own may be larger than its front; the others close to it.
  const closed = flat === undefined || flat.fold !== "own" ? front : closedSize(flat);
  const thickness = cardThickness(card, design.extras, stuff);
  const mass = cardMass(card, design.extras, expansion, stuff);
  const setting = { thickness: thickness.value, unit: units };
  const envelopes = listEnvelopes(closed, setting);
  const envelope = chooseEnvelope(design, closed, envelopes, setting);
  const withEnvelope = {
    grams: mass.grams + envelope.mass.grams,
    basis: weaker(mass.basis, envelope.mass.basis),
  };
  return { number, name, closed, thickness, mass: { ...mass, withEnvelope }, envelope, envelopes };
}

function chooseEnvelope(
  { envelope: wish, format }: Design,
  closed: Size,
  all: readonly EnvelopeFit[],
  setting: Parameters<typeof envelopeRoom>[2],
): CardEnvelope {
  const usual = usualEnvelopes(format, closed).map(({ id }) => id);
  const weight = wish?.weight ?? null;
  const named = (id: string | null, chosenBy: CardEnvelope["chosenBy"]): CardEnvelope | null => {
    const fit = all.find((one) => one.id === id);
    if (fit === undefined) return null;
    return { ...fit, chosenBy, isUsual: usual.includes(fit.id), mass: envelopeMass(fit, weight) };
  };
  const wished = named(wish?.id ?? null, "maker");
  if (wished !== null) return wished;
  const size = wish?.size ?? null;
  if (size !== null) {
    const { width, height } = size;
    const room = envelopeRoom(closed, size, setting);
    const mass = envelopeMass(size, weight);
    return { id: null, name: null, width, height, ...room, chosenBy: "maker", isUsual: false, mass };
  }
  // Of several usual ones the first that takes it, else the first, which is then told to be too small.
  const takes = usual.find((id) => all.some((fit) => fit.id === id && fit.verdict !== "too-small"));
  const byTrade = named(takes ?? usual[0] ?? null, "trade");
  const best = byTrade ?? named(all[0]?.id ?? null, "best");
  if (best === null) throw new RangeError("Expected envelopes to choose from.");
  return best;
}
