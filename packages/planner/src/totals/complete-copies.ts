import type { Card, NoPaper, Piece } from "@sheetwright/cards";
import type { PaperGroup, Plan } from "../plan-model.js";
import { copiesCut } from "./copies-cut.js";

/** How many copies and spares of each card every piece is planned or cut already for: of each of its pieces so many, one a copy. */
export function completeCopies(
  cards: readonly Card[],
  pieces: readonly Piece[],
  groups: readonly Pick<PaperGroup, "packing" | "strips" | "bags">[],
  noPaper: readonly NoPaper[],
  spares: ReadonlyMap<Card["number"], number>,
): Plan["complete"] {
  const placed = new Map(copiesCut(groups));
  for (const { piece } of noPaper) placed.set(piece, 0);
  return cards.map(({ number: card, copies: wanted, copiesFor: { spares: wished } }) => {
    const counts = pieces
      .filter((piece) => piece.card === card)
      .map(({ id, cutAlready = 0 }) => (placed.get(id) ?? 0) + cutAlready);
    const complete = Math.min(wanted, ...counts);
    if (wished === undefined) return { card, wanted, complete };
    return { card, wanted, complete, spares: { wished, made: spares.get(card) ?? 0 } };
  });
}
