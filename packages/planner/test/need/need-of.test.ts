import { type Project, readProject } from "@sheetwright/cards";
import { inches } from "@sheetwright/measure";
import { describe, expect, it } from "vitest";
import { compareSizes } from "../../src/compare/compare-sizes.js";
import { projectCases } from "../../src/compare/project-cases.js";
import { asManyAsNeeded } from "../../src/need/as-many-as-needed.js";
import type { Need } from "../../src/need/need.js";
import { needOf } from "../../src/need/need-of.js";
import { plan } from "../../src/plan.js";

function read(text: string): Project {
  const { project, faults } = readProject(text);
  if (project === null) throw new Error(faults.map(({ message }) => message).join("\n"));
  return project;
}

function needed(text: string): Need {
  const project = read(text);
  return needOf(project, plan(asManyAsNeeded(project), { effort: "quick" }));
}

const card = (more: string) => `cards: [{ name: Harbour, format: us-a2, base: night, ${more} }]`;

describe("what a project needs", () => {
  it("counts no offcut as a sheet, neither of those it takes nor of those that are proven", () => {
    const { designs } = needed(`
      sheetwright: 1
      title: Harbour cards
      papers: { night: { cardstock: us-letter, offcuts: [{ size: 8 1/2 x 5 1/2, count: 1 }] } }
      ${card("copies: 9")}
    `);
    // Two flats from a sheet and one from the offcut: 4 sheets for 9, and 3 give no more than 7.
    expect(designs[0]).toMatchObject({ sheets: 4, offcuts: 1, atLeast: 4 });
  });

  it("is the sheets for guests, samples and spares, whatever is on hand, rounded up to packs", () => {
    const { cards, designs, papers, cost } = needed(`
      sheetwright: 1
      title: Harbour cards
      copies: { guests: 12, samples: 1, spares: 2 }
      papers: { night: { cardstock: us-letter, count: 2, grain: long, pack: { sheets: 5, cost: 3.75 } } }
      ${card("front: []")}
    `);
    expect(cards).toEqual([{ card: 1, name: "Harbour", copies: 15 }]);
    // Two flats of 8 1/2 x 5 1/2 in from each letter sheet: 8 for 15, of which 2 are there; 6 make two packs of 5.
    expect(designs[0]).toMatchObject({ sheets: 8, atLeast: 8, onHand: 2, offcuts: 0 });
    expect(papers).toEqual([
      { paper: "night", name: "night", packSheets: 5, packs: 2, packsToBuy: 2, sheetsToBuy: 6, cost: "7.50" },
    ]);
    expect(cost).toBe("7.50");
  });

  it("buys pads by the design that runs out first, and sheets that are sold singly one by one", () => {
    const { papers, cost } = needed(`
      sheetwright: 1
      title: Stars
      copies: 10
      papers:
        night: { cardstock: us-letter, count: 20, cost: 0.35 }
        stars: { pad: 6 x 6, pack: { sheets: 6, cost: 9 }, designs: { dots: 6, comets: 0 } }
      ${card("front: [{ mat: stars.dots, border: 1/8 }, { panel: stars.comets, size: 2 x 2 }]")}
    `);
    // Ten mats of 4 x 5 1/4 in are ten sheets of 6 x 6 in, of which 6 are there; nine panels of 2 x 2 in come from one sheet.
    expect(
      papers.map(({ paper, packs, packsToBuy, sheetsToBuy, cost }) => [
        paper,
        packs,
        packsToBuy,
        sheetsToBuy,
        cost,
      ]),
    ).toEqual([
      ["night", 5, 0, 0, "0.00"],
      ["stars", 2, 1, 4 + 2, "9.00"],
    ]);
    expect(cost).toBe("9.00");
  });

  it("knows no cost where that of a paper to buy is not known", () => {
    const { papers, cost } = needed(`
      sheetwright: 1
      title: Two papers
      copies: 4
      papers: { night: { cardstock: us-letter, cost: 0.35 }, cream: { cardstock: us-letter } }
      ${card("front: [{ mat: cream, border: 1/8 }]")}
    `);
    expect(papers.map((paper) => paper.cost)).toEqual(["0.70", null]);
    expect(cost).toBeNull();
  });

  it("says in percent what each paper is used for, kept leftovers and waste among it", () => {
    const { designs } = needed(`
      sheetwright: 1
      title: One paper
      copies: 1
      papers: { night: { cardstock: us-letter } }
      ${card("front: [{ mat: night, border: 1/4 }]")}
    `);
    // Of 93.5 sq in the base takes 46.75 and the mat, 3 3/4 x 5 in, 18.75.
    const [night] = designs;
    expect(night?.uses).toEqual([
      { purpose: "base", percent: 50 },
      { purpose: "mat", percent: 20.1 },
    ]);
    expect((night?.keptPercent ?? 0) + (night?.wastePercent ?? 0)).toBeCloseTo(29.9, 5);
  });

  it("adds up ribbons, tapes and extras over all cards, and names what no card uses", () => {
    const { items, extras, unused } = needed(`
      sheetwright: 1
      title: Ribbons
      copies: 3
      papers:
        night: { cardstock: us-letter }
        cream: { cardstock: us-letter }
        stars: { pad: 6 x 6, designs: { dots: 6, comets: 6 } }
      cards:
        - name: One
          format: us-a2
          base: night
          front:
            - { mat: stars.dots, border: 1/8 }
            - { bands: [1, 1], border: 1/4, papers: [night, night], seam: { ribbon: red ribbon, width: 1/2 } }
          extras: [{ name: button, count: 2, thickness: 1/8 }]
        - name: Two
          format: us-a2
          base: night
          front: [{ bands: [1, 1], border: 1/4, papers: [night, night], seam: { ribbon: red ribbon, width: 1/2 } }]
          extras: [{ name: button, thickness: 1/8 }]
    `);
    expect(items).toHaveLength(1);
    expect(items[0]).toMatchObject({ kind: "ribbon", name: "red ribbon", width: inches(1 / 2), count: 6 });
    // They cover bands 3 1/2 and 3 3/4 in wide, with 1/2 in more at both ends.
    expect(items[0]!.length).toBe(3 * inches(3.5 + 1) + 3 * inches(3.75 + 1));
    expect(extras).toEqual([{ name: "button", count: 9 }]);
    expect(unused).toEqual(["cream", "stars: comets"]);
  });

  it("names pieces that no paper is large enough for", () => {
    const { noPaper, designs } = needed(`
      sheetwright: 1
      title: Too large
      papers: { night: { cardstock: us-letter }, stars: { pad: 4 x 4, designs: { dots: 6 } } }
      ${card("front: [{ mat: stars.dots, border: 1/8 }]")}
    `);
    expect(noPaper).toEqual(["1b mat"]);
    expect(designs.map(({ design }) => design)).toEqual(["night"]);
  });

  it("calls sheets of die blanks the fewest only where that holds for any strips of them", () => {
    const project = read(`
      sheetwright: 1
      title: Moons
      copies: 19
      papers: { night: { cardstock: us-letter }, copper: { glitter: us-letter } }
      dies: { moon: { shape: circle, size: 1 3/4 } }
      cards: [{ name: Moon, format: us-a2, base: night, front: [{ die: moon, paper: copper }] }]
    `);
    const planned = plan(asManyAsNeeded(project), { effort: "quick" });
    const { packing, endless } = planned.groups[1]!;
    // The strips that were chosen take two sheets; what is proven of all strips does not rule out one.
    expect(packing.bound).toMatchObject({ sheets: 2 });
    expect(endless?.packing.bound).toMatchObject({ sheets: 1 });
    expect(needOf(project, planned).designs[1]).toMatchObject({ sheets: 2, atLeast: 1 });
    const size = { id: "letter", name: "letter", width: inches(8.5), height: inches(11), cost: null };
    const [row] = compareSizes(projectCases(project, [size], [19])).rows;
    expect(row).toMatchObject({ sheets: 12, atLeast: 11 });
  });

  it("tells what is needed of items that the project names, and what they cost by the pack or singly", () => {
    const { namedItems, cost, unused } = needed(`
      sheetwright: 1
      title: Harbour cards
      copies: { guests: 10, spares: 2 }
      papers: { night: { cardstock: us-letter, count: 20 } }
      items:
        pearl: { count: 30, pack: { items: 5, cost: 1.25 } }
        knot: { cost: 0.15 }
        gem: { count: 1 }
        bell: 3
      ${card("extras: [{ name: Pearl, count: 3, thickness: 1/16 }, { name: knot, thickness: 1/8 }, { name: gem, thickness: 1/8 }]")}
    `);
    // Twelve copies: 36 pearls, six more than there are, in two packs; twelve knots; eleven gems, at a cost that nobody knows.
    expect(namedItems).toEqual([
      {
        item: "pearl",
        length: null,
        needed: 36,
        atLeast: 36,
        onHand: 30,
        packItems: 5,
        packs: 8,
        packsToBuy: 2,
        toBuy: 6,
        cost: "2.50",
      },
      {
        item: "knot",
        length: null,
        needed: 12,
        atLeast: 12,
        onHand: null,
        packItems: 1,
        packs: 12,
        packsToBuy: 12,
        toBuy: 12,
        cost: "1.80",
      },
      {
        item: "gem",
        length: null,
        needed: 12,
        atLeast: 12,
        onHand: 1,
        packItems: 1,
        packs: 12,
        packsToBuy: 11,
        toBuy: 11,
        cost: null,
      },
    ]);
    expect(cost).toBe(null);
    expect(unused).toEqual(["bell"]);
  });

  it("knows what an extra costs where only a card says it", () => {
    const { namedItems } = needed(`
      sheetwright: 1
      title: Harbour cards
      copies: 10
      papers: { night: { cardstock: us-letter, count: 20 } }
      items: { Gem: 1, bell: { pack: { items: 4, cost: 0.50 } }, knot: { pack: 4 } }
      ${card("extras: [{ name: gem, thickness: 1/8, cost: 0.20 }, { name: bell, thickness: 1/8, cost: 2 }, { name: knot, thickness: 1/8, cost: 0.10 }]")}
    `);
    // Nine gems; three packs of bells, which say what they cost; three packs of four knots each.
    expect(namedItems.map(({ cost }) => cost)).toEqual(["1.80", "1.50", "1.20"]);
  });
});
