import type { Design, Project } from "@sheetwright/cards";
import { withBags } from "../kits/with-bags.js";
import { commonDivisor } from "../totals/common-divisor.js";
import type { SetCard } from "./set-count.js";

/** Most copies of a card that a project may ask for. */
const MOST_COPIES = 100_000;

/** What a set of a project holds, and how many of it there may be. */
export interface SetOfCards {
  readonly cards: readonly SetCard[];
  /** Sets that the project asks for. */
  readonly wanted: number;
  /** No project may ask for more. */
  readonly limit: number;
}

/**
 * What one set of a project holds: of each card as many copies as come to one of equal shares for guests, so that a card
 * with twice the copies is there twice. Cards without copies for guests belong to no set; where none has any, all copies
 * count. Of kits a set is what a bag makes, and there are as many as bags.
 */
export function setOfCards({ cards, kits }: Project): SetOfCards {
  const hasGuests = cards.some(({ copiesFor }) => copiesFor.guests > 0);
  const countOf = ({ copies, copiesFor }: Design): number =>
    hasGuests && kits === undefined ? copiesFor.guests : copies;
  const shares = cards.reduce((all, one) => commonDivisor(all, countOf(one)), 0);
  const wanted = kits?.bags ?? shares;
  const own = cards
    .filter((one) => countOf(one) > 0)
    .map((one) => ({ card: one.number, name: one.name, copies: countOf(one) / wanted }));
  const most = Math.max(...own.map(({ copies }) => copies));
  return { cards: own, wanted, limit: Math.floor(MOST_COPIES / most) };
}

/**
 * A project with just so many sets, a whole number from 1, and neither samples nor spares: what the plans of a
 * {@link SetCount} are of.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: Harbour cards
 * copies: { guests: 12, samples: 1 }
 * papers: { night: { cardstock: us-letter } }
 * cards:
 *   - { name: Harbour, format: us-a2, base: night }
 *   - { name: Place card, format: us-a2, base: night, copies: { guests: 24, samples: 1 } }
 * `);
 * withSets(project, 3).cards.map(({ copies }) => copies) // => [3, 6]
 */
export function withSets(project: Project, sets: number): Project {
  const each = new Map(setOfCards(project).cards.map(({ card, copies }) => [card, copies]));
  const ofBags = withBags(project, sets);
  return {
    ...ofBags,
    cards: project.cards.flatMap((card): Design[] => {
      const copies = sets * (each.get(card.number) ?? 0);
      return copies === 0 ? [] : [{ ...card, copies, copiesFor: { guests: copies, samples: 0 } }];
    }),
  };
}
