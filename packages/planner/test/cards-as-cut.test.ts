import { readProject } from "@sheetwright/cards";
import { describe, expect, test } from "vitest";
import { cardsAsCut, plan } from "../src/index.js";

function planned(sheet: string, count: number, card = "format: us-a2, fold: either") {
  const { project } = readProject(`
sheetwright: 1
title: Either fold
copies: 4
papers: { night: { cardstock: ${sheet}, count: ${count}, grain: unknown } }
cards: [{ name: Plain, ${card}, base: night, front: [{ panel: night, size: 1 x 1 }] }]
`);
  if (project === null) throw new Error("The project has faults.");
  return plan(project, { effort: "quick" });
}

describe("the cards as a plan cuts them", () => {
  test("keep of two flats the one that fits the paper, in card and piece alike", () => {
    for (const [sheet, fold, size] of [
      ["9 x 6", "side", "8.5 x 5.5"],
      ["12 x 4 1/2", "top", "4.25 x 11"],
    ] as const) {
      const { cards, pieces } = cardsAsCut(planned(sheet, 5));
      expect(cards[0]?.flats.map((flat) => flat.fold)).toEqual([fold]);
      const sizes = pieces[0]?.forms.map(({ width, height }) => `${width / 40640} x ${height / 40640}`);
      expect(sizes).toEqual([size]);
    }
  });

  test("keep both where none is cut", () => {
    expect(cardsAsCut(planned("4 x 4", 5)).cards[0]?.flats).toHaveLength(2);
  });

  test("are otherwise those of the project worked out", () => {
    const whole = planned("us-letter", 5, "format: us-a2");
    const { title, units, papers, cards, pieces, items } = whole;
    expect(cardsAsCut(whole)).toEqual({ title, units, papers, cards, pieces, items });
  });

  test("have the spares that are made, not those that are wished for", () => {
    const sparesOf = (count: number) => {
      const text = `{ sheetwright: 1, title: One, copies: { guests: 3, spares: 4 },
        papers: { cream: { cardstock: us-letter, count: ${count} } },
        cards: [{ name: Plain, format: us-a2, base: cream }] }`;
      const { project } = readProject(text);
      if (project === null) throw new Error("The project has faults.");
      return cardsAsCut(plan(project, { effort: "quick" })).cards[0]?.copiesFor;
    };
    expect(sparesOf(3)).toEqual({ guests: 3, samples: 0, spares: 3 });
    expect(sparesOf(1)).toEqual({ guests: 3, samples: 0 });
  });
});
