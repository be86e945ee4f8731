import type { Project } from "@sheetwright/cards";

/**
 * A kit project with another number of bags, the sheets and rolls that go out whole on hand in all as before; a class stays as it is.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: Harbour kits
 * share: kits
 * copies: 4
 * papers: { night: { cardstock: us-letter, count: 1 } }
 * cards: [{ name: Harbour, format: us-a2, base: night }]
 * `);
 * const { kits, papers: [night] } = withBags(project, 2);
 * [kits.bags, night.bags, night.designs[0].count] // => [2, 2, 4]
 */
export function withBags(project: Project, bags: number): Project {
  if (project.kits === undefined) return project;
  const papers = project.papers.map((paper) => (paper.bags === undefined ? paper : { ...paper, bags }));
  const items = project.items?.map((item) => (item.bags === undefined ? item : { ...item, bags }));
  return { ...project, papers, ...(items === undefined ? {} : { items }), kits: { bags } };
}

/** The same project as a class: all papers and items in one pile. */
export function withoutBags({ kits: _, ...project }: Project): Project {
  const papers = project.papers.map(({ bags: __, ...paper }) => paper);
  const items = project.items?.map(({ bags: __, ...item }) => item);
  return { ...project, papers, ...(items === undefined ? {} : { items }) };
}
