import { type CardSize, cardSizes, findNamedSize, nearestNames, tryParseSize } from "@sheetwright/measure";
import { sayNamed, writeNamed } from "./read-measures.js";
import type { Reading } from "./reading.js";
import { listWords, quote } from "./say-value.js";

/** Reads the name of a card size, and says what a name is that is none. */
export function readFormat(value: string | undefined, path: string, reading: Reading): CardSize | null {
  if (value === undefined) return null;
  const card = findNamedSize(value, "card");
  if (card !== undefined) return card;
  const [suggestion, help] = sayMeant(value, reading);
  reading.faults.report({
    code: "unknown-format",
    path,
    found: value,
    expected: "the name of a card size, such as us-a2 or us-a7",
    message: help,
    suggestion,
  });
  return null;
}

function sayMeant(value: string, { unit }: Reading): readonly [string | null, string] {
  const other = findNamedSize(value);
  if (other?.kind === "envelope") {
    const cards = cardSizes.filter(({ envelopes }) => envelopes.includes(other.id));
    const goesIn = listWords(cards.map(nameAndSize), "or");
    const help =
      cards.length === 0 ? "Name the card that goes in it, or give a size." : `What goes in it is ${goesIn}.`;
    return [cards[0]?.id ?? null, `${sayNamed(other)}, and a card is needed here. ${help}`];
  }
  if (other !== undefined) {
    const alike = cardSizes.filter((card) => card.width === other.width && card.height === other.height);
    const near = alike.length > 0 ? alike : nearCards(bare(value));
    const help = near.length === 0 ? "Name a card, such as us-a2, or give a size." : askFor(near);
    return [near[0]?.id ?? null, `${sayNamed(other)}, and a card is needed here. ${help}`];
  }
  const size = tryParseSize(value, { unit });
  if (size.ok) {
    const alike = cardSizes.filter(
      ({ width, height }) =>
        (width === size.width && height === size.height) || (width === size.height && height === size.width),
    );
    const named =
      alike.length === 0
        ? ""
        : ` That of ${listWords(
            alike.map(({ id }) => id),
            "or",
          )} has a name.`;
    return [
      `size: ${value.trim()}`,
      `${quote(value)} is a size, and format takes a name.${named} Write size: ${value.trim()}.`,
    ];
  }
  const near = nearCards(value);
  const rest = nearestNames(value).flatMap((name) => {
    const found = findNamedSize(name);
    return found === undefined || found.kind === "card" ? [] : [sayNamed(found)];
  });
  const notes = near.length > 0 && rest.length > 0 ? ` ${listWords(rest, "and")}.` : "";
  const help =
    near.length === 0
      ? "Name one such as us-a2 or us-a7, or give a size, such as size: 5 x 7."
      : askFor(near);
  return [near[0]?.id ?? null, `${quote(value)} is not the name of a card size. ${help}${notes}`];
}

function nearCards(text: string): readonly CardSize[] {
  return nearestNames(text, { kind: "card" }).flatMap((name) => findNamedSize(name, "card") ?? []);
}

/** A name without what it starts with: `a7` of `iso-a7`. */
function bare(name: string): string {
  return name.trim().replace(/^[^\s_-]+[\s_-]+/, "");
}

function askFor(cards: readonly CardSize[]): string {
  return `Did you mean ${listWords(cards.map(nameAndSize), "or")}?`;
}

function nameAndSize(card: CardSize): string {
  return `${card.id} (card ${writeNamed(card)})`;
}
