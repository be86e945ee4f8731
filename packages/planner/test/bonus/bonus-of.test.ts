import { expandProject, type Project, readProject } from "@sheetwright/cards";
import { inches } from "@sheetwright/measure";
import { describe, expect, it } from "vitest";
import { bonusOf } from "../../src/bonus/bonus-of.js";
import { mostCopies } from "../../src/bonus/most-copies.js";
import { projectAfter } from "../../src/bonus/project-after.js";
import { plan } from "../../src/plan.js";
import { verifyPlan } from "../../src/verify/verify-plan.js";

function read(text: string): Project {
  const { project, faults } = readProject(text);
  if (project === null) throw new Error(faults.map(({ message }) => message).join("\n"));
  return project;
}

const quick = { effort: "quick" } as const;
const bonus = (text: string, options: Parameters<typeof bonusOf>[2] = {}) => {
  const project = read(text);
  return bonusOf(project, plan(project, quick), options);
};

const TWO = `
  sheetwright: 1
  title: Two cards
  papers:
    night: { cardstock: us-letter, count: 6, grain: long }
    cream: { cardstock: us-letter, count: 2 }
  cards:
    - { name: Plain, format: us-a2, base: night, copies: 2 }
    - { name: Matted, format: us-a2, base: night, copies: 2, front: [{ mat: cream, border: 1/8 }] }
`;

describe("what can be made from what a plan leaves", () => {
  it("is whole cards over all papers, the one of which most can be made first", async () => {
    const { left, cards } = await bonus(TWO);
    // Four bases are two of six sheets. Two mats of 4 x 5 1/4 in leave half a sheet of cream, and another sheet is left.
    expect(left.map(({ design, sheets }) => [design, sheets])).toEqual([
      ["night", 4],
      ["cream", 1],
    ]);
    // Eight bases from four sheets; six mats: four from a sheet, two from the half.
    expect(cards.map(({ name, copies }) => [name, copies])).toEqual([
      ["Plain", 8],
      ["Matted", 6],
    ]);
    // Eight flats of 8 1/2 x 5 1/2 in of all that is left: four and one sheets, and what is left of the cream cut into.
    expect(cards[0]?.percent).toBeGreaterThan(70);
  });

  it("puts the card that uses more paper first where as many copies of two can be made", async () => {
    const { cards } = await bonus(`
      sheetwright: 1
      title: Small and large
      papers: { night: { cardstock: us-letter, count: 2, grain: long } }
      cards:
        - { name: Small, size: 6 x 8, fold: flat, base: night }
        - { name: Large, size: 8 x 10, fold: flat, base: night, copies: 1 }
    `);
    // Both lie on a sheet each, and both sheets are used: there is nothing over.
    expect(cards.map(({ copies }) => copies)).toEqual([0, 0]);
    const more = await bonus(`
      sheetwright: 1
      title: Small and large
      papers: { night: { cardstock: us-letter, count: 5, grain: long } }
      cards:
        - { name: Small, size: 6 x 8, fold: flat, base: night }
        - { name: Large, size: 8 x 10, fold: flat, base: night, copies: 1 }
    `);
    expect(more.cards.map(({ name, copies }) => [name, copies])).toEqual([
      ["Large", 3],
      ["Small", 3],
    ]);
  });

  it("is told of panels by their papers, the one that uses most paper first", async () => {
    const panels = [
      { name: "tag", width: inches(2), height: inches(4), wanted: 3, mayTurn: true },
      { name: "half", width: inches(8.5), height: inches(5.5), wanted: 1, mayTurn: true },
      { name: "poster", width: inches(12), height: inches(12), wanted: 1, mayTurn: true },
    ];
    const found = await bonus(
      `
      sheetwright: 1
      title: One paper
      papers: { night: { cardstock: us-letter, count: 2, grain: long } }
      cards: [{ name: Plain, format: us-a2, base: night }]
    `,
      { panels },
    );
    // Half a sheet and a sheet are left: three halves use all of it; tags of 2 x 4 in come 10 from a sheet, 4 from a half.
    expect(found.panels.map(({ name, count, percent }) => [name, count, percent])).toEqual([
      ["half", 3, 100],
      ["tag", 10 + 4, 79.9],
      ["poster", 0, 0],
    ]);
    expect(found.panels[0]?.from).toEqual([{ design: "night", name: "night", count: 3 }]);
  });

  it("never turns a panel on patterned paper, nor one that may not be turned", async () => {
    const text = (pattern: string) => `
      sheetwright: 1
      title: One paper
      papers: { night: { cardstock: us-letter, count: 2, pattern: ${pattern} } }
      cards: [{ name: Plain, size: 8 1/2 x 11, fold: flat, base: night }]
    `;
    const panel = { name: "strip", width: inches(10), height: inches(1), wanted: 1 };
    const count = async (pattern: string, mayTurn: boolean) =>
      (await bonus(text(pattern), { panels: [{ ...panel, mayTurn }] })).panels[0]?.count;
    expect(await count("none", true)).toBe(8);
    expect(await count("none", false)).toBe(0);
    expect(await count("two-way", true)).toBe(0);
  });

  it("counts no sheets of what comes as needed, only its offcuts", async () => {
    const { left, asNeeded, cards } = await bonus(`
      sheetwright: 1
      title: As needed
      papers: { night: { cardstock: us-letter, grain: long } }
      cards: [{ name: Plain, format: us-a2, base: night, copies: 3 }]
    `);
    expect(asNeeded).toEqual(["night"]);
    expect(left).toMatchObject([{ design: "night", sheets: 0, offcuts: [{ count: 1 }] }]);
    expect(cards.map(({ copies }) => copies)).toEqual([1]);
  });

  it("is told with plans that prove right, and agrees with asking for every number of copies in turn", async () => {
    const project = read(TWO);
    const after = projectAfter(project, plan(project, quick));
    const { pieces } = expandProject(after);
    for (const card of after.cards) {
      const own = pieces.filter((piece) => piece.card === card.number);
      const found = await mostCopies(after, card, own, quick);
      const one = (copies: number): Project => ({
        ...after,
        cards: [{ ...card, copies, copiesFor: { guests: copies, samples: 0 } }],
      });
      expect(verifyPlan(one(found.copies), found.plan!)).toEqual([]);
      let most = 0;
      while (plan(one(most + 1), quick).enough === "yes") most += 1;
      expect(found.copies).toBe(most);
    }
  });

  it("says that it was ended early", async () => {
    const { cancelled } = await bonus(TWO, { signal: { aborted: true } });
    expect(cancelled).toBe(true);
  });
});
