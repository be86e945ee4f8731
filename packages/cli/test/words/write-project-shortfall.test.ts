import { inches } from "@sheetwright/measure";
import type { Plan, Shortage } from "@sheetwright/planner";
import { beforeAll, describe, expect, it } from "vitest";
import type { ProjectPlanFile } from "../../src/project-plan/project-plan-file.js";
import type { ProjectPlanSummary } from "../../src/project-plan/project-plan-summary.js";
import { writeProjectShortfall } from "../../src/words/write-project-shortfall.js";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const CARDS = `
sheetwright: 1
title: Evening
copies: 4
papers:
  night: { name: Night blue, cardstock: us-letter, count: 1, grain: long }
  stars: { pad: 6 x 6, designs: { dots: 1, comets: 1 } }
cards:
  - { name: Lantern, format: us-a2, base: night, front: [{ panel: stars, size: 4 x 5 }] }
`;

let plan: Plan;
let summary: ProjectPlanSummary;
beforeAll(async () => {
  const files = memoryFiles({ "/desk/cards.yaml": CARDS });
  const argv = ["plan", "cards.yaml", "--out", "out", "--effort", "quick", "--json"];
  const { code, stdout } = await runIn(argv, { files });
  expect(code).toBe(1);
  summary = JSON.parse(stdout);
  const file: ProjectPlanFile = JSON.parse(String(files.all.get("/desk/out/plan.json")));
  plan = file.plan;
});

/** What is said of the first group, its shortage and papers changed. */
function said(change: Partial<Shortage>, papers: Plan["papers"] = plan.papers, effort = plan.search.effort) {
  const [shortage] = plan.shortages;
  if (shortage === undefined) throw new Error("nothing is short");
  const changed: Plan = {
    ...plan,
    papers,
    search: { ...plan.search, effort },
    shortages: [{ ...shortage, ...change }],
  };
  return writeProjectShortfall(summary, changed, (path) => `cards.yaml:1:1 ${path}`);
}

describe("what of a project cannot be planned", () => {
  it("is told paper by paper, with what was proven, what would help and what becomes of the cards", () => {
    expect(writeProjectShortfall(summary, plan, (path) => path)).toEqual([
      "Cannot be planned as asked: 4 of 8 pieces missing.",
      "",
      "Missing from Night blue:",
      "  2 of 4 1a base, 8 1/2 x 5 1/2 in",
      "Is 1 sheet enough? No, proven. At least 2 are needed, proven.",
      "With 1 more of Night blue (count: 2) a plan for all was found.",
      "",
      "Missing from stars: dots or stars: comets:",
      "  2 of 4 1b panel, 4 x 5 in",
      "Are 2 sheets enough? No, proven. At least 4 are needed, proven.",
      expect.stringMatching(/^With .* a plan for all was found\.$/),
      "",
      "Copies with every piece: 2 of 4 Lantern.",
    ]);
  });

  it("is not found, where nothing proves that there is too little", () => {
    expect(said({ outcome: "not-found", atLeast: null, wouldHelp: [] }).slice(4, 6)).toEqual([
      "Is 1 sheet enough? Not found; nothing proves that it cannot be done.",
      "--effort thorough searches longer.",
    ]);
    expect(
      said({ outcome: "not-found", atLeast: 1, wouldHelp: [] }, plan.papers, "thorough").slice(4, 6),
    ).toEqual(["Is 1 sheet enough? Not found; nothing proves that it cannot be done.", ""]);
  });

  it("counts offcuts, and asks for no number where sheets are as many as needed", () => {
    const papers = (count: number | null, offcuts: number): Plan["papers"] =>
      plan.papers.map((paper) => ({
        ...paper,
        designs: paper.designs.map((design) => ({
          ...design,
          count,
          offcuts: offcuts === 0 ? [] : [{ width: inches(4), height: inches(4), count: offcuts }],
        })),
      }));
    expect(said({ atLeast: 6 }, papers(3, 2))[4]).toBe(
      "Are 3 sheets and 2 offcuts enough? No, proven. At least 6 are needed, proven.",
    );
    expect(said({ atLeast: 4 }, papers(3, 2))[4]).toBe("Are 3 sheets and 2 offcuts enough? No, proven.");
    expect(said({ atLeast: 1 }, papers(0, 0))[4]).toBe(
      "There is none on hand. At least 1 is needed, proven.",
    );
    expect(said({ atLeast: null, outcome: "not-found" }, papers(null, 0))[4]).toBe(
      "Can they all be cut? Not found; nothing proves that it cannot be done.",
    );
  });

  it("is told of items by what is proven, and how many there are to be", () => {
    const items = [
      { item: "plum ribbon", roll: inches(36), onHand: 2, needed: 5, atLeast: 4, used: 2 },
      { item: "gold ribbon", roll: inches(12), onHand: 1, needed: 2, atLeast: 1, used: 1 },
      { item: "pearl", roll: null, onHand: 6, needed: 10, atLeast: 10, used: 6 },
      { item: "knot", roll: null, onHand: 9, needed: 9, atLeast: 9, used: 9 },
    ];
    const lacking = { ...summary, pieces: { ...summary.pieces, missing: [] }, items };
    const own = { ...plan, shortages: [], noPaper: [] };
    expect(writeProjectShortfall(lacking, own, (path) => path)).toEqual([
      "Cannot be planned as asked: too little of plum ribbon, gold ribbon and pearl.",
      "",
      "Missing of plum ribbon, rolls of 1 yd: 3 of 5",
      "Are 2 rolls enough? No, proven. At least 4 are needed, proven.",
      "With 3 more rolls of plum ribbon (count: 5) there is enough for all copies.",
      "",
      "Missing of gold ribbon, rolls of 12 in: 1 of 2",
      "Is 1 roll enough? Not found; nothing proves that it cannot be done.",
      "With 1 more roll of gold ribbon (count: 2) there is enough for all copies.",
      "",
      "Missing of pearl: 4 of 10",
      "Are 6 enough? No, proven.",
      "With 4 more of pearl (count: 10) there is enough for all copies.",
      "",
      "Copies with every piece and item: 2 of 4 Lantern.",
    ]);
  });

  it("is nothing where all is planned", () => {
    const complete = { ...summary, pieces: { ...summary.pieces, missing: [] } };
    expect(writeProjectShortfall(complete, plan, (path) => path)).toEqual([]);
  });
});
