import { inches } from "@sheetwright/measure";
import { describe, expect, it } from "vitest";
import type { GroupProof } from "../../src/project-plan/group-proof.js";
import type { ProjectPlanSummary } from "../../src/project-plan/project-plan-summary.js";
import { writeProjectSummary } from "../../src/words/write-project-summary.js";

const paper = (design: string, name: string, used: number, onHand: number | null, offcutsUsed = 0) => ({
  design,
  name,
  used,
  onHand,
  offcutsUsed,
});
const proof = (designs: readonly string[], proven: GroupProof["proven"], above = 0): GroupProof => ({
  designs,
  proven,
  above,
  measure: "cost",
});
const fold = (label: string, along: number, across = 0, unknown = 0, none = 0) => ({
  piece: label.slice(0, 2),
  label,
  along,
  across,
  unknown,
  none,
});

const item = (name: string, roll: number | null, onHand: number | null, needed: number, used = needed) => ({
  item: name,
  roll,
  onHand,
  needed,
  atLeast: needed,
  used,
});

const summary: ProjectPlanSummary = {
  sheetwright: "project-summary",
  version: 1,
  title: "Evening workshop",
  enough: "yes",
  endedEarly: false,
  units: { length: "tick", ticksPerInch: 40640, shown: "in" },
  cards: [
    { number: 1, name: "Lantern", wanted: 13, complete: 13, guests: 12, samples: 1 },
    { number: 2, name: "Stars", wanted: 1, complete: 1, guests: 1, samples: 0 },
  ],
  finished: [],
  pieces: { wanted: 40, cut: 40, missing: [] },
  papers: [
    paper("night", "Night blue", 7, 20),
    paper("stars.dots", "Stars: dots", 1, null),
    paper("stars.rays", "Stars: rays", 0, 6, 2),
  ],
  proofs: [proof(["night"], "fewest"), proof(["stars.dots", "stars.rays"], "percent", 4.2)],
  noPaper: [],
  shortages: [],
  folds: [fold("1a base", 13), fold("2a base", 1)],
  grainAssumed: [],
  cost: "3.35",
  layouts: [
    {
      name: "sheet-night-1",
      run: 7,
      cuts: 3,
      settings: 2,
      design: "night",
      offcut: false,
      width: inches(8.5),
      height: inches(11),
      group: 0,
      layout: 0,
    },
  ],
  cuts: 21,
  settings: 2,
  hold: inches(1),
  narrowCuts: 0,
  longestCut: inches(11),
  leftovers: [
    { design: "night", width: inches(4), height: inches(8.5), count: 3, keep: true },
    { design: "night", width: inches(1), height: inches(1), count: 30, keep: false },
    { design: "stars.rays", width: inches(2), height: inches(2), count: 1, keep: true },
  ],
  files: [],
};
const write = (more: Partial<ProjectPlanSummary>): string =>
  writeProjectSummary({ ...summary, ...more }).join("\n");

describe("the summary of a project for a person", () => {
  it("answers whether there is enough, then tells cards, papers, cuts, folds and leftovers", () => {
    expect(writeProjectSummary(summary)).toEqual([
      "Evening workshop",
      "",
      "Enough     yes, every piece of every copy is planned",
      "Cards      1 Lantern  13 copies  for 12 guests and 1 sample",
      "           2 Stars    1 copy",
      "Pieces     all 40",
      "Papers     Night blue   7 of 20 sheets                fewest possible, proven",
      "           Stars: dots  1 sheet",
      "           Stars: rays  0 of 6 sheets, and 2 offcuts",
      "           Stars: dots and Stars: rays together: at most 4.2 % above the least cost possible",
      "Cost       3.35 for the sheets used",
      "Layouts    1 for 7 sheets",
      "Cuts       21 on all sheets, with 2 settings of the trimmer",
      "Folds      with the grain on all 14 bases",
      "Leftovers  Night blue: 3 of 4 x 8 1/2 in",
      "           Stars: rays: 1 of 2 x 2 in",
    ]);
  });

  it("has three answers to whether there is enough", () => {
    expect(write({ enough: "no" })).toContain("\nEnough     no, proven\n");
    expect(write({ enough: "not-found" })).toContain(
      "\nEnough     not found, and nothing proves that it cannot be done\n",
    );
  });

  it("says how many copies there will be where pieces are missing", () => {
    const [first, ...others] = summary.cards;
    if (first === undefined) throw new Error("no card");
    const text = write({
      cards: [{ ...first, complete: 8 }, ...others],
      pieces: { wanted: 40, cut: 31, missing: [{ kind: "1a", count: 9 }] },
    });
    expect(text).toContain("1 Lantern  8 of 13 copies  for 12 guests and 1 sample\n");
    expect(text).toContain("\nPieces     31 of 40\n");
  });

  it("says what work costs where the project has rates", () => {
    const costs = { currency: "$", copies: 14, minutes: "172.5", work: "53.19", total: "56.54" };
    expect(write({ costs })).toContain(
      "\nCost       $3.35 for the sheets used\nWork       2 h 52.5 min on 14 cards: $53.19; with the sheets $56.54\n",
    );
    const words = { ...costs, currency: "kr.", minutes: "45" };
    expect(write({ costs: words })).toContain(
      "Work       45 min on 14 cards: 53.19 kr.; with the sheets 56.54 kr.\n",
    );
    const hours = { ...costs, currency: null, minutes: "120", work: null, total: null };
    expect(write({ costs: hours })).toContain(
      "\nCost       3.35 for the sheets used\nWork       2 h on 14 cards\n",
    );
    expect(write({ cost: null, costs: { ...costs, minutes: null, work: null, total: null } })).not.toContain(
      "Work",
    );
  });

  it("answers a wish for spares apart from the copies", () => {
    const [lantern, stars] = summary.cards;
    if (lantern === undefined || stars === undefined) throw new Error("no cards");
    const cards = (lanterns: number, ember: number) => [
      { ...lantern, spares: { wished: 2, made: lanterns } },
      { ...stars, spares: { wished: 1, made: ember } },
    ];
    const text = (lanterns: number, ember: number) => write({ cards: cards(lanterns, ember) });
    expect(text(2, 1)).toContain("yes, every piece of every copy is planned, and 3 spares\n");
    expect(text(2, 1)).toContain("1 Lantern  13 copies and 2 spares  for 12 guests and 1 sample\n");
    expect(text(1, 0)).toContain("yes, every piece of every copy is planned, and 1 of 3 spares\n");
    expect(text(1, 0)).toContain("1 Lantern  13 copies and 1 of 2 spares  for 12 guests and 1 sample\n");
    expect(text(1, 0)).toMatch(/2 Stars +1 copy and 0 of 1 spare\n/);
    expect(write({ enough: "no", cards: cards(0, 0) })).toContain("Enough     no, proven\n");
  });

  it("says how good the use of the papers is proven to be", () => {
    const night = (proven: GroupProof["proven"], above = 0): string =>
      write({ proofs: [proof(["night"], proven, above)] });
    expect(night("sheets", 2)).toContain("at most 2 more than the fewest possible\n");
    expect(night("least")).toContain("least cost possible, proven\n");
    expect(night("nothing")).toContain("Night blue   7 of 20 sheets\n");
    expect(write({ proofs: [{ ...proof(["night"], "percent", 3), measure: "area" }] })).toContain(
      "at most 3 % above the least paper possible\n",
    );
  });

  it("names the bases that are not folded along the grain", () => {
    expect(
      write({ folds: [fold("1a base", 9, 4), fold("2a base", 0, 1), fold("3a base", 0, 0, 5, 2)] }),
    ).toContain(
      [
        "Folds      with the grain on 9 of 21 bases",
        "           across the grain: 4 of 1a base, 1 of 2a base",
        "           grain not known: 5 of 3a base",
        "           paper without grain: 2 of 3a base",
        "",
      ].join("\n"),
    );
  });

  it("counts offcuts that are cut apart from sheets", () => {
    const [layout] = summary.layouts;
    if (layout === undefined) throw new Error("The summary has a layout.");
    const offcut = { ...layout, name: "sheet-night-2", run: 1, offcut: true };
    expect(write({ layouts: [layout, offcut] })).toContain("Layouts    2 for 7 sheets and 1 offcut\n");
    expect(write({ layouts: [offcut] })).toContain("Layouts    1 for 1 offcut\n");
  });

  it("says that inserts are counted with the bases, where there are any", () => {
    expect(write({ folds: [fold("1a base", 9, 4), fold("1b insert", 13)] })).toContain(
      "Folds      with the grain on 22 of 26 bases and inserts\n",
    );
    expect(write({ folds: [fold("1a base", 13), fold("1b insert", 13)] })).toContain(
      "Folds      with the grain on all 26 bases and inserts\n",
    );
  });

  it("says where the grain is only assumed, if that decides how a base lies", () => {
    expect(write({ grainAssumed: ["Night blue", "Cream"] })).toMatch(
      /\nFolds {6}with the grain on all 14 bases\n {11}the grain of Night blue and Cream is assumed\n/,
    );
    expect(write({ grainAssumed: ["Night blue"], folds: [fold("1a base", 0, 0, 5)] })).not.toContain(
      "assumed",
    );
  });

  it("lists four sizes of leftovers a paper and counts the rest", () => {
    const leftovers = Array.from({ length: 6 }, () => ({
      design: "night",
      width: inches(3),
      height: inches(3),
      count: 2,
      keep: true,
    }));
    expect(write({ leftovers })).toMatch(/\nLeftovers {2}Night blue: (2 of 3 x 3 in, ){4}and 4 smaller$/);
    expect(write({ leftovers: [] })).toContain("Leftovers  none worth keeping");
  });

  it("says no more than that where nothing can be cut, and no cost where none is known", () => {
    const text = write({ layouts: [], cost: null });
    expect(text).not.toMatch(/Cost|Cuts|Folds|Leftovers/);
    expect(write({ cost: null })).not.toContain("Cost");
  });

  it("tells what is taken of items that some copy needs, and what is proven", () => {
    const items = [
      item("plum ribbon", inches(36), 2, 2),
      { ...item("gold ribbon", inches(12), null, 3), atLeast: 2 },
      item("pearl", null, 9, 12, 8),
      item("bell", null, 5, 0),
    ];
    expect(write({ items })).toContain(`
Items      plum ribbon  2 of 2 rolls of 1 yd  fewest possible, proven
           gold ribbon  3 rolls of 12 in      at least 2, proven
           pearl        8 of 9                12 needed for all
Cost`);
  });

  it("names narrow and long cuts as the project does", () => {
    expect(write({ narrowCuts: 1 })).toContain(
      "1 cut holds a part narrower than 1 in (narrowest-hold); the cut lists mark it: cut along a metal ruler.",
    );
    expect(write({ longestCut: inches(22) })).toContain("set longest-cut in the project.");
    expect(write({ endedEarly: true })).toContain("The search was ended early");
  });

  it("explains the mark of a rounded length where one is printed", () => {
    const leftovers = [{ design: "night", width: 336000, height: 475200, count: 1, keep: true }];
    expect(write({ leftovers })).toMatch(/~ marks a length rounded to 1\/64 in; with units: mm /);
    expect(write({})).not.toContain("~");
  });
});
