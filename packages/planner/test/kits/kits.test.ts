import { findProjectFaults, readProject } from "@sheetwright/cards";
import { describe, expect, test } from "vitest";
import {
  asManyAsNeeded,
  compareCase,
  completeSets,
  needOf,
  type Plan,
  piecesCut,
  plan,
  priceOf,
  projectCases,
  stockChange,
  verifyPlan,
  wholePlan,
  withBags,
} from "../../src/index.js";

function read(text: string) {
  const { project, faults } = readProject(text);
  if (project === null) throw new Error(faults.map(({ message }) => message).join("\n"));
  return project;
}

// Three guests and a sample are 4 bags. A bag makes 1 Plain and 2 Starry: 3 bases of 8 1/2 x 5 1/2 in, of which a letter
// sheet of 8 1/2 x 11 in holds 2, so that a bag needs 2 sheets and 4 bags need 8. In one pile 12 bases would take only 6.
// The mats, 3 3/4 x 5 in, 4 in all, are cut before: a letter sheet holds 2 x 2 of them. The panels, 3 3/4 x 5 in, two in a
// bag, go out whole: one of a sheet of 6 x 6 in.
const kits = (night = "count: 2", cream = "count: 1") => `
  sheetwright: 1
  title: Lantern bags
  share: kits
  copies: { guests: 3, samples: 1 }
  papers:
    night: { cardstock: us-letter, ${night}, grain: long, cost: 0.30, pack: { sheets: 5, cost: 1.25 } }
    cream: { cardstock: us-letter, hand-out: cut, ${cream}, cost: 0.20 }
    dusk: { paper: 6 x 6, count: 2, cost: 0.05 }
  cards:
    - { name: Plain, format: us-a2, base: night, front: [{ mat: cream, border: 1/4 }] }
    - { name: Starry, format: us-a2, base: night, copies: { guests: 6, samples: 2 }, front: [{ panel: dusk, border: 1/4 }] }`;
const project = read(kits());
const planned = plan(project, { effort: "quick" });

const useOf = ({ use }: Plan) => use.map(({ design, used, left }) => [design, used, left]);

describe("kits", () => {
  test("are planned bag by bag from what goes out whole, and from one pile of what is cut before", () => {
    expect(planned.groups.map(({ designs, bags, packing }) => [designs[0], bags, packing.sheets])).toEqual([
      ["night", 4, 2],
      ["cream", undefined, 1],
      ["dusk", 4, 2],
    ]);
    expect(useOf(planned)).toEqual([
      ["night", 8, 0],
      ["cream", 1, 0],
      ["dusk", 8, 0],
    ]);
    // 8 x 0.30 + 0.20 + 8 x 0.05.
    expect([planned.enough, planned.cost]).toEqual(["yes", "3.00"]);
    expect(planned.complete).toEqual([
      { card: 1, wanted: 4, complete: 4 },
      { card: 2, wanted: 8, complete: 8 },
    ]);
    expect(verifyPlan(project, planned)).toEqual([]);
    expect(verifyPlan(project, JSON.parse(JSON.stringify(planned)))).toEqual([]);
  });

  test("lack what one bag lacks as often as there are bags, and are told the sheets for all of them", () => {
    // One sheet a bag gives 2 of its 3 bases.
    const short = plan(read(kits("count: 1")), { effort: "quick" });
    expect(short.enough).toBe("no");
    expect(short.shortages).toMatchObject([
      { outcome: "short", wouldHelp: [{ design: "night", more: 4 }], atLeast: 8 },
    ]);
    expect(short.shortages[0]?.pieces.reduce((sum, { missing }) => sum + missing, 0)).toBe(4);
    expect(verifyPlan(read(kits("count: 1")), short)).toEqual([]);
    // 6 sheets in all would do for one pile, but are one a bag and 2 that do not divide; 2 more make it two a bag.
    const all = read(kits("count: 6, count-for: all"));
    const few = plan(all, { effort: "quick" });
    expect(few.shortages[0]?.wouldHelp).toEqual([{ design: "night", more: 2 }]);
    expect(few.use[0]).toMatchObject({ used: 4, left: 2 });
    expect(verifyPlan(all, few)).toEqual([]);
  });

  test("do not cut before for copies that the bags cannot complete", () => {
    // A bag's letter sheet of night gives two bases, one to each of its cards. The four letter sheets of cream give 16 panels
    // of 3 3/4 x 5 in: the second card has use for one in a bag, which leaves three for the third. By itself cream would be
    // shared out two and two.
    const short = read(`
      sheetwright: 1
      title: Short bags
      share: kits
      copies: 4
      papers:
        night: { cardstock: us-letter, count: 1 }
        cream: { cardstock: us-letter, hand-out: cut, count: 4 }
        spare: { cardstock: us-letter }
      cards:
        - { name: One, format: us-a2, base: night, copies: 16, front: [{ panel: spare, border: 1/4 }] }
        - { name: Two, format: us-a2, base: night, copies: 16, front: [{ panel: cream, border: 1/4 }] }
        - { name: Three, format: us-a2, base: spare, copies: 16, front: [{ panel: cream, border: 1/4 }] }`);
    const found = plan(short, { effort: "quick" });
    expect(verifyPlan(short, found)).toEqual([]);
    expect(found.complete.map(({ complete }) => complete)).toEqual([4, 4, 12]);
    expect(found.shortages.map(({ pieces }) => pieces)).toEqual([
      [
        { piece: "1a", missing: 12 },
        { piece: "2a", missing: 12 },
      ],
      [
        { piece: "2b", missing: 12 },
        { piece: "3b", missing: 4 },
      ],
    ]);
  });

  test("need whole papers bag by bag, rounded up to packs in all", () => {
    // 8 sheets are 2 packs of 5; 4 are on hand, so that 4 more are 1 pack.
    const { designs, papers } = needOf(
      read(kits("count: 1")),
      plan(asManyAsNeeded(read(kits("count: 1"))), { effort: "quick" }),
    );
    expect(designs.map(({ sheets, atLeast, onHand }) => [sheets, atLeast, onHand])).toEqual([
      [8, 8, 4],
      [1, 1, 1],
      [8, 8, 8],
    ]);
    expect(papers[0]).toMatchObject({ packs: 2, sheetsToBuy: 4, packsToBuy: 1, cost: "1.25" });
  });

  test("take their sheets from the stock, and bring back only what the maker cuts", () => {
    const changes = stockChange(planned, wholePlan(planned));
    expect(changes.map(({ design, sheets }) => [design, sheets])).toEqual([
      ["night", 8],
      ["cream", 1],
      ["dusk", 8],
    ]);
    expect(changes.filter(({ left }) => left.length > 0).every(({ design }) => design === "cream")).toBe(
      true,
    );
    const cut = piecesCut(planned, wholePlan(planned));
    expect(planned.pieces.map(({ id }) => cut.get(id))).toEqual(
      planned.pieces.map(({ quantity }) => quantity),
    );
  });

  test("cost a guest what a bag costs", () => {
    // 3.00 for 4 bags, 3 of them for guests, who pay for the sample too.
    expect(priceOf(project, planned).guest).toMatchObject({ guests: 3, cost: "1.00" });
  });

  test("give as many sets as bags can be filled", async () => {
    // 8 sheets of night are two for each of 4 bags; a fifth bag would get one only.
    const found = await completeSets(project, { effort: "quick" });
    expect(found).toMatchObject({ most: 4, wanted: 4, impossible: { sets: 5 } });
    expect(found.set.map(({ copies }) => copies)).toEqual([1, 2]);
  });

  test("are compared bag by bag", () => {
    const letter = { id: "us-letter", name: "US letter", width: 345440, height: 447040, cost: null };
    const row = (copies: number) => compareCase(projectCases(project, [letter], [copies])[0]!).sheets;
    // A bag of one copy of each card takes a sheet for its two bases and one for its panel; the pile gives four mats a sheet.
    expect([row(1), row(5)]).toEqual([3, 5 + 5 + 2]);
  });

  test("keep their sheets in all when the bags are other ones", () => {
    const two = withBags(project, 2);
    expect(two.papers.map(({ bags, designs }) => [bags, designs[0]?.count])).toEqual([
      [2, 8],
      [undefined, 1],
      [2, 8],
    ]);
  });
});

describe("a project of kits", () => {
  const faultsOf = (text: string) => readProject(text).faults.map(({ path, message }) => [path, message]);

  test("is refused where the copies of a card do not divide among the bags", () => {
    expect(faultsOf(kits().replace("{ guests: 6, samples: 2 }", "10"))).toEqual([
      ["cards[1].copies", expect.stringContaining("10 copies do not divide among them. Expected 4 copies")],
    ]);
  });

  test("is refused where a piece may come both from whole sheets and from what is cut before", () => {
    expect(faultsOf(kits().replace("mat: cream", "mat: [dusk, cream]"))).toEqual([
      ["cards[0].front[0].mat", expect.stringContaining("nobody could tell who cuts this piece")],
    ]);
  });

  test("is refused with spares", () => {
    const spared = kits().replace("{ guests: 6, samples: 2 }", "{ guests: 4, spares: 1 }");
    expect(faultsOf(spared)).toEqual([["cards[1].copies", expect.stringContaining("Make a bag more")]]);
  });

  test("is what makes hand-out and count-for mean something", () => {
    const text = kits("count: 2, count-for: bag").replace("share: kits", "share: class");
    expect(faultsOf(text).map(([path]) => path)).toEqual(["papers.night.count-for", "papers.cream.hand-out"]);
  });

  test("is refused where whole sheets are told to be cut already, or go into other bags", () => {
    const cut = findProjectFaults({ ...project, cutAlready: [{ piece: "1a", count: 1 }] });
    expect(cut.map(({ path }) => path)).toEqual(["cards[0].base"]);
    expect(findProjectFaults({ ...project, cutAlready: [{ piece: "1b", count: 1 }] })).toEqual([]);
    const [night, ...others] = project.papers;
    const other = { ...project, papers: [{ ...night!, bags: 3 }, ...others] };
    expect(findProjectFaults(other).map(({ path }) => path)).toEqual(["papers.night"]);
  });
});

describe("a plan of kits is refused", () => {
  const [night, ...others] = planned.groups;
  const codes = (changed: Partial<Plan>) =>
    verifyPlan(project, { ...planned, ...changed }).map(({ code }) => code);

  test.each([
    ["other bags", 3],
    ["no bags", undefined],
  ])("for %s", (_, bags) => {
    expect(codes({ groups: [{ ...night!, bags }, ...others] })).toEqual(["wrong-bags"]);
  });

  test("where pieces cross bags", () => {
    // In one pile the bases take 6 sheets.
    const { kits: _, ...pile } = project;
    const papers = pile.papers.map(({ bags: __, ...paper }) => paper);
    const { groups } = plan({ ...pile, papers }, { effort: "quick" });
    expect(groups[0]?.packing.sheets).toBe(6);
    const found = codes({ groups: [{ ...groups[0]!, bags: 4 }, ...others] });
    expect(found).toContain("wrong-quantity");
    expect(found).toContain("wrong-stock");
    expect(found).toContain("wrong-use");
  });

  test.each([
    [
      "the sheets of one bag as those of all",
      "wrong-use",
      { use: planned.use.map((one) => ({ ...one, used: one.used === 8 ? 2 : one.used })) },
    ],
    [
      "the copies of one bag as those of all",
      "wrong-complete",
      { complete: planned.complete.map((one) => ({ ...one, complete: one.complete / 4 })) },
    ],
    [
      "the folds of one bag as those of all",
      "wrong-folds",
      { folds: planned.folds.map((one) => ({ ...one, along: one.along / 4 })) },
    ],
    ["the cost of one bag as that of all", "wrong-cost", { cost: "0.90" }],
    [
      "the leftovers of one bag as those of all",
      "wrong-leftovers",
      { leftovers: planned.leftovers.map((one) => ({ ...one, count: 1 })) },
    ],
  ] as const)("with %s", (_, code, changed) => {
    expect(codes(changed)).toContain(code);
  });

  test("where more would help than is proven", () => {
    const few = read(kits("count: 1"));
    const short = plan(few, { effort: "quick" });
    const [shortage] = short.shortages;
    const told = (changed: object) =>
      verifyPlan(few, { ...short, shortages: [{ ...shortage!, ...changed }] }).map(({ code }) => code);
    expect(told({ atLeast: 2 })).toEqual(["wrong-more-sheets"]);
    expect(told({ wouldHelp: [{ design: "night", more: 1 }] })).toEqual(["wrong-more-sheets"]);
    expect(told({ pieces: shortage!.pieces.map((one) => ({ ...one, missing: one.missing / 4 })) })).toEqual([
      "wrong-shortage",
    ]);
  });
});
