import { formatLength, formatSize, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import { type EnvelopeRoom, type EnvelopeVerdict, envelopeRoom } from "../envelope/envelope-room.js";
import type { Expansion } from "../expansion.js";
import { type FinishedCard, finishAll } from "../finished/finished-card.js";
import type { Design, Project } from "../project.js";
import { sayThickness } from "../thickness/say-thickness.js";
import type { Found } from "./finding.js";

/**
 * How much thicker a card may come out than reckoned: sheets of one weight differ by a tenth (caliper charts of the paper
 * trade); where even the weight is not known, a quarter (from memory).
 */
const THICKER_BY = { given: 0, estimated: 1 / 10, assumed: 1 / 4 } as const;

/** From this share of the clearance on, a card's thickness is near to what there is room for (from memory). */
const FULL = { parts: 3, of: 4 } as const;

const VERDICTS: readonly EnvelopeVerdict[] = ["easy", "snug", "too-small"];

/**
 * Finds cards that do not go in their envelope, only snugly or loosely, and those of which a thickness that is not sure decides it.
 *
 * @internal
 */
export function findOddEnvelopes(project: Project, expansion: Expansion): readonly Found[] {
  return finishAll(project, expansion).flatMap((card) => {
    const design = project.cards.find(({ number }) => number === card.number);
    return design === undefined ? [] : oddEnvelope(card, design, project.units);
  });
}

function oddEnvelope(card: FinishedCard, design: Design, unit: Unit): readonly Found[] {
  const { envelope, thickness, closed } = card;
  const path = design.envelope === null ? design.path : `${design.path}.envelope`;
  const room = (value: Ticks) => envelopeRoom(closed, envelope, { thickness: value, unit });
  if (envelope.verdict === "too-small") {
    return [{ code: "envelope-too-small", path, message: sayTooSmall(card, unit) }];
  }
  const flat = room(0);
  const isRaised = envelope.easyFrom > flat.easyFrom;
  // What the trade puts such a card in is told of only where the thickness is to blame, or is near to what there is room for.
  const narrowest = Math.min(envelope.clearance.short, envelope.clearance.long);
  const isTight = flat.verdict === "easy" || thickness.value * FULL.of >= narrowest * FULL.parts;
  const found: Found[] = [];
  if (envelope.verdict === "snug" && (!envelope.isUsual || (isRaised && isTight))) {
    found.push({ code: "envelope-snug", path, message: saySnug(card, isRaised, unit) });
  }
  // What nobody chose is only proposed, and a card without an envelope, such as a tag, has none that fits.
  if (envelope.isLoose && !envelope.isUsual && envelope.chosenBy === "maker") {
    found.push({ code: "envelope-loose", path, message: sayLoose(card, unit) });
  }
  const thicker = Math.ceil(thickness.value * (1 + THICKER_BY[thickness.basis]));
  const then = room(thicker).verdict;
  if (VERDICTS.indexOf(then) > VERDICTS.indexOf(envelope.verdict)) {
    const message =
      `${card.name} is ${sayThickness(thickness.value, unit)} thick where it is thickest, but that is ${thickness.basis}: at ` +
      `${sayThickness(thicker, unit)} ${nameOf(card, unit)} would be ${then === "snug" ? "snug" : "too small"}. ` +
      "Measure ten sheets of each of its papers in a stack, and write a tenth of it as their thickness.";
    found.push({ code: "thickness-estimated", path, message });
  }
  return found;
}

function sayTooSmall({ name, closed, envelope, thickness, ...card }: FinishedCard, unit: Unit): string {
  const { clearance, leastFrom } = envelope;
  const narrowest = Math.min(clearance.short, clearance.long);
  const say = (ticks: Ticks) => formatLength(ticks, { unit });
  const wanted =
    thickness.value === leastFrom ? "the card is thicker" : `${say(leastFrom)} is the least that it needs`;
  const why =
    narrowest < 0
      ? `it is ${say(-narrowest)} too large for it`
      : `that leaves ${narrowest === 0 ? "nothing" : say(narrowest)}, and ${wanted}`;
  return (
    `${name}, ${sizeOf(closed, unit)} and ${sayThickness(thickness.value, unit)} thick where it is thickest, does not go in ` +
    `${nameOf({ envelope }, unit)}: ${why}. ${sayBetter(card, unit)}`
  );
}

function saySnug(
  { name, closed, envelope, thickness, ...card }: FinishedCard,
  isRaised: boolean,
  unit: Unit,
): string {
  const { clearance, easyFrom } = envelope;
  const say = (ticks: Ticks) => formatLength(ticks, { unit });
  const narrowest = Math.min(clearance.short, clearance.long);
  const thick = isRaised ? ` for a card ${sayThickness(thickness.value, unit)} thick` : "";
  return (
    `${name}, ${sizeOf(closed, unit)}, goes in ${nameOf({ envelope }, unit)} only snugly: it leaves ${say(narrowest)}, and ` +
    `${say(easyFrom)} would be easy${thick}. ${sayBetter(card, unit)}`
  );
}

function sayLoose({ name, closed, envelope, ...card }: FinishedCard, unit: Unit): string {
  const say = (ticks: Ticks) => formatLength(ticks, { unit });
  const spare = ({ clearance }: EnvelopeRoom) => Math.max(clearance.short, clearance.long);
  const [best] = card.envelopes;
  const own = "give the size of one of your own, or take another size of card.";
  const better =
    best === undefined || (best.isLoose && spare(best) >= spare(envelope))
      ? `No named envelope fits it more closely: ${own}`
      : best.isLoose
        ? `Of the named envelopes ${nameOf({ envelope: best }, unit)} comes nearest, and leaves ${say(spare(best))}: ${own}`
        : sayBetter(card, unit);
  return (
    `${name}, ${sizeOf(closed, unit)}, lies loose in ${nameOf({ envelope }, unit)}: it leaves ${say(spare(envelope))} one ` +
    `way, and over ${say(envelope.looseOver)} a card slides about. ${better}`
  );
}

/** What would do: the best envelope, if there is one. */
function sayBetter({ envelopes }: Pick<FinishedCard, "envelopes">, unit: Unit): string {
  const [best] = envelopes;
  if (best === undefined || best.verdict === "too-small")
    return "No named envelope takes it: give the size of one of your own, or make the card smaller or thinner.";
  return `It goes ${best.isLoose ? "loosely" : best.verdict === "easy" ? "easily" : "snugly"} in ${nameOf({ envelope: best }, unit)}.`;
}

function nameOf(
  { envelope: { name, ...size } }: { readonly envelope: Size & { readonly name: string | null } },
  unit: Unit,
): string {
  return `${name === null ? "an envelope" : `the ${name}`} of ${sizeOf(size, unit)}`;
}

function sizeOf({ width, height }: Size, unit: Unit): string {
  return formatSize(width, height, { unit });
}
