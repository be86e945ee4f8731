import type { CopiesFor, Expansion } from "@sheetwright/cards";
import { placements } from "@sheetwright/packing";
import type { Plan } from "./plan-model.js";

/**
 * The cards as a plan cuts them: of a base that may be folded either way only the flats that are really cut remain, of the
 * card and of its piece alike, and the spare copies are those that are made. For pictures and measurements that go with the plan. A base that is not in the plan keeps all.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: One card
 * copies: 2
 * papers: { night: { cardstock: us-letter, count: 1, grain: long } }
 * cards: [{ name: Plain, format: us-a2, fold: either, base: night }]
 * `);
 * const planned = plan(project, { effort: "quick" });
 * planned.cards[0].flats.map(({ fold }) => fold) // => ["side", "top"]
 * cardsAsCut(planned).cards[0].flats.map(({ fold }) => fold) // => ["side"]
 */
export function cardsAsCut({
  title,
  units,
  papers,
  cards,
  pieces,
  items,
  groups,
  complete,
}: Plan): Expansion {
  const cut = new Map<string, Set<number>>();
  for (const { packing, problem } of groups) {
    const known = new Map(problem.sheets.map((sheet) => [sheet.id, sheet]));
    for (const layout of packing.layouts) {
      for (const { node } of placements(known.get(layout.sheet)!, layout, problem.kerf)) {
        if (node.type !== "piece") continue;
        for (const { kind, form } of node.shares) {
          const forms = cut.get(kind);
          if (forms === undefined) cut.set(kind, new Set([form]));
          else forms.add(form);
        }
      }
    }
  }
  // A card's flats and its base's forms have the same order.
  const kept = <T>(piece: string, all: readonly T[]): readonly T[] => {
    const forms = cut.get(piece);
    return forms === undefined ? all : all.filter((_, form) => forms.has(form));
  };
  return {
    title,
    units,
    papers,
    cards: cards.map((card) => ({
      ...card,
      copiesFor: withMade(card.copiesFor, complete.find((one) => one.card === card.number)?.spares?.made),
      flats: kept(card.base, card.flats),
    })),
    pieces: pieces.map((piece) => ({ ...piece, forms: kept(piece.id, piece.forms) })),
    items,
  };
}

/** What the copies are for, with the spares that are made in place of those wished for. */
function withMade({ spares: _, ...asked }: CopiesFor, made = 0): CopiesFor {
  return made === 0 ? asked : { ...asked, spares: made };
}
