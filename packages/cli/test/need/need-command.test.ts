import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const PROJECT = `sheetwright: 1
title: Thank-you cards
copies: { guests: 12, spares: 1 }
papers:
  cream: { cardstock: us-letter, count: 1, grain: long, pack: { sheets: 5, cost: 3.25 } }
  rose: { cardstock: us-letter, cost: 0.5 }
  stars: { pad: 6 x 6, designs: { dots: 20, comets: 4 } }
rates: { currency: $ }
cards:
  - name: Thank you
    format: us-a2
    base: cream
    front:
      - { mat: stars.dots, border: 1/8 }
      - { bands: [1, 1], border: 1/4, papers: [cream, cream], seam: { ribbon: red ribbon, width: 1/2 } }
    extras: [{ name: button, count: 2, thickness: 1/8 }]
`;

const need = (words: readonly string[], project = PROJECT) =>
  runIn(["need", ...words], { files: memoryFiles({ "/desk/cards.yaml": project }) });

describe("what a project needs", () => {
  it("is told with packs, ribbon and what is not used", async () => {
    const { code, stdout, stderr } = await need(["cards.yaml"]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(stdout).toBe(`Thank-you cards

card         copies
1 Thank you  13

paper        sheets                   on hand       used for
cream        10      fewest possible  1, 9 missing  base 65 %, band 23.1 %, left to keep 9.4 %, waste 2.5 %
stars: dots  13      fewest possible  20            mat 58.3 %, left to keep 33.3 %, waste 8.3 %

to buy
cream   2 packs of 5 for 9 sheets  $6.50
In all $6.50.

not cut from paper       number  length in all
red ribbon, 1/2 in wide  13      58 1/2 in, 1.7 yd
button                   26

No card uses rose and stars: comets.
`);
  });

  it("is there as data", async () => {
    const { stdout } = await need(["cards.yaml", "--json", "--effort", "quick"]);
    expect(JSON.parse(stdout)).toMatchObject({
      sheetwright: "need",
      version: 1,
      endedEarly: false,
      cards: [{ card: 1, name: "Thank you", copies: 13 }],
      papers: [
        { paper: "cream", packSheets: 5, packsToBuy: 2, cost: "6.50" },
        { paper: "stars", packSheets: 1, packsToBuy: 0 },
      ],
      unused: ["rose", "stars: comets"],
    });
  });

  it("is not reckoned for a piece that no paper is large enough for", async () => {
    const small = PROJECT.replace("pad: 6 x 6", "pad: 4 x 4");
    const { code, stdout, stderr } = await need(["cards.yaml", "--effort", "quick"], small);
    expect(code).toBe(1);
    expect(stdout).toContain("Not reckoned, since no paper is large enough: 1b mat.");
    expect(stderr).toContain("Cannot be planned as asked: a piece fits none of its papers.");
  });

  it("agrees with the plan where there is enough", async () => {
    const file = await readFile(
      new URL("../../../../test-fixtures/projects/market-stall.yaml", import.meta.url),
      "utf8",
    );
    const files = memoryFiles({ "/desk/cards.yaml": file });
    const words = ["cards.yaml", "--effort", "quick", "--json"];
    const needed = JSON.parse((await runIn(["need", ...words], { files })).stdout) as {
      readonly designs: readonly {
        readonly design: string;
        readonly sheets: number;
        readonly offcuts: number;
        readonly atLeast: number;
        readonly together: readonly string[];
      }[];
    };
    const planned = JSON.parse((await runIn(["plan", "--out", "plan", ...words], { files })).stdout) as {
      readonly papers: readonly {
        readonly design: string;
        readonly used: number;
        readonly offcutsUsed: number;
      }[];
    };
    const alone = needed.designs.filter(({ together }) => together.length === 1);
    expect(alone.length).toBeGreaterThan(1);
    for (const { design, sheets, offcuts, atLeast } of alone) {
      expect(sheets + offcuts).toBeGreaterThanOrEqual(atLeast);
      const found = planned.papers.find((paper) => paper.design === design);
      expect((found?.used ?? 0) + (found?.offcutsUsed ?? 0)).toBeGreaterThanOrEqual(atLeast);
    }
  });

  it.each([
    ["", "sheetwright need: the project file is missing."],
    ["pieces.csv", "is no project file by its name"],
    ["cards.yaml --out plan", "--out: this option is not known."],
    ["cards.yaml --effort long", '--effort: found "long", expected quick, standard or thorough.'],
    ["cards.yaml more.yaml", "nothing was expected here."],
    ["none.yaml", "there is no such file"],
  ])("refuses '%s' and says why", async (words, message) => {
    const { code, stdout, stderr } = await need(words.split(" ").filter((word) => word !== ""));
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toContain(message);
  });

  it("tells of items that are named what there is, how many rolls do at least, and what to buy", async () => {
    const items = `items:
  Red ribbon: { length: 1 yd, count: 1, cost: 1.20 }
  button: { count: 20, pack: { items: 4, cost: 0.90 } }
  pearl: 12
cards:
`;
    const { code, stdout } = await need(["cards.yaml"], PROJECT.replace("cards:\n", items));
    expect(code).toBe(0);
    // Eight lengths of 4 1/2 in are 36 in, a whole yard: 13 take two rolls. Of 26 buttons six are to be bought.
    expect(stdout).toContain(`to buy
cream       2 packs of 5 for 9 sheets  $6.50
Red ribbon  1 roll of 1 yd             $1.20
button      2 packs of 4 for 6         $1.80
In all $9.50.

not cut from paper       number  length in all      from                              on hand
red ribbon, 1/2 in wide  13      58 1/2 in, 1.7 yd  2 rolls of 1 yd  fewest possible  1, 1 missing
button                   26                                                           20, 6 missing

No card uses rose, stars: comets and pearl.
`);
  });

  it("says what of items goes whole into each bag", async () => {
    const file = await readFile(
      new URL("../../../../test-fixtures/projects/ribbon-bags.yaml", import.meta.url),
      "utf8",
    );
    const { stdout } = await need(["cards.yaml", "--effort", "quick"], file);
    expect(stdout).toContain(
      "For 6 bags: each gets 2 sheets of Night blue, 1 roll of plum ribbon (1 yd) and 2 x gem.\n",
    );
    expect(stdout).toContain(
      "copper ribbon, 1/4 in wide  6       42 in, 1.2 yd  6 rolls of 12 in  fewest possible  5, 1 missing\n",
    );
  });
});
