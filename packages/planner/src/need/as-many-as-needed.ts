import type { Project } from "@sheetwright/cards";

/**
 * The project with as many sheets of every paper and as much of every item as it takes, and the spare copies among the copies: what is planned to say
 * what it needs. Offcuts from earlier stay, since they save sheets.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: Harbour cards
 * copies: { guests: 8, spares: 2 }
 * papers: { night: { cardstock: us-letter, count: 1 } }
 * cards: [{ name: Harbour, format: us-a2, base: night }]
 * `);
 * const { papers: [night], cards: [harbour] } = asManyAsNeeded(project);
 * [night.designs[0].count, harbour.copies] // => [null, 10]
 */
export function asManyAsNeeded(project: Project): Project {
  return {
    ...project,
    papers: project.papers.map((paper) => ({
      ...paper,
      designs: paper.designs.map((design) => ({ ...design, count: null })),
    })),
    ...(project.items === undefined
      ? {}
      : { items: project.items.map((item) => ({ ...item, count: null })) }),
    cards: project.cards.map((card) => {
      const { guests, samples, spares = 0 } = card.copiesFor;
      const copiesFor = { guests: guests + spares, samples };
      return { ...card, copies: card.copies + spares, copiesFor };
    }),
  };
}
