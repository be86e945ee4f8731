import type { Card, NoPaper, Piece } from "@sheetwright/cards";
import type { PaperGroup, Plan } from "../plan-model.js";

/** How many copies of each card every piece is planned for: of each of its pieces at least so many, one a copy. */
export function completeCopies(
  cards: readonly Card[],
  pieces: readonly Piece[],
  groups: readonly Pick<PaperGroup, "packing">[],
  noPaper: readonly NoPaper[],
): Plan["complete"] {
  const placed = new Map(groups.flatMap(({ packing }) => packing.placed.map((one) => [one.kind, one.count])));
  for (const { piece } of noPaper) placed.set(piece, 0);
  return cards.map(({ number: card, copies: wanted }) => {
    const counts = pieces.filter((piece) => piece.card === card).map(({ id }) => placed.get(id) ?? 0);
    return { card, wanted, complete: Math.min(wanted, ...counts) };
  });
}
