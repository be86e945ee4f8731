import { describe, expect, it } from "vitest";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const PROJECT = `sheetwright: 1
title: Thank-you cards
papers:
  cream: { cardstock: us-letter, count: 4, grain: long }
  rose: { cardstock: us-letter, count: 2 }
cards:
  - { name: Thank you, format: us-a2, base: cream, copies: 2, front: [{ mat: rose, border: 1/8 }] }
  - { name: Plain, format: us-a2, base: cream, copies: 1 }
`;

const PANELS = `name,width,height,quantity,turn
tag,2,3 1/2,6,yes
poster,12,12,1,yes
place card,3 1/2,4,8,no
`;

const bonus = (words: readonly string[], project = PROJECT) =>
  runIn(["bonus", ...words], {
    files: memoryFiles({ "/desk/cards.yaml": project, "/desk/panels.csv": PANELS }),
  });

describe("what can be made besides", () => {
  it("is told card by card and panel by panel, the best first", async () => {
    const { code, stdout, stderr } = await bonus([
      "cards.yaml",
      "--panels",
      "panels.csv",
      "--effort",
      "quick",
    ]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    // Two and a half sheets of cream are five bases of 8 1/2 x 5 1/2 in; the mats, 4 x 5 1/4 in, come from rose.
    expect(stdout).toBe(`Thank-you cards

left of
cream    2 sheets, 8 1/2 x 5 1/2 in
rose     1 sheet, 4 1/2 x 11 in

more of      copies  of the paper left
1 Thank you  5       89.9 %
2 Plain      5       62 %

panel       width x height  number  wanted  of the paper left  from
tag         2 x 3 1/2 in    48      6       89.2 %             cream 30, rose 18
place card  3 1/2 x 4 in    16      8       59.5 %             cream 10, rose 6
poster      12 x 12 in      none    1

Each line is for itself: what one uses the others do not have.
`);
  });

  it("is there as data", async () => {
    const { code, stdout } = await bonus(["cards.yaml", "--json", "--effort", "quick"]);
    expect(code).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({
      sheetwright: "bonus",
      version: 1,
      enough: "yes",
      endedEarly: false,
      cards: [
        { card: 1, name: "Thank you", copies: 5 },
        { card: 2, name: "Plain", copies: 5 },
      ],
      panels: [],
    });
  });

  it("is limited by items, and tells what is left of those that are counted", async () => {
    const items = `items:
  plum ribbon: { length: 12, count: 1 }
  gold ribbon: { length: 1 yd, count: 3 }
  pearl: 5
  knot: as needed
  bell: 4
cards:
  - name: Tied
    format: us-a2
    base: cream
    front: [{ bands: [1, 1], papers: [cream, cream], seam: { ribbon: plum ribbon, width: 1/4 } }]
    extras: [{ name: knot, thickness: 1/16 }]
  - name: Golden
    format: us-a2
    base: cream
    front: [{ bands: [1, 1], papers: [cream, cream], seam: { ribbon: gold ribbon, width: 1/4 } }]
    extras: [{ name: pearl, count: 2, thickness: 1/16 }]
`;
    const { code, stdout } = await bonus(
      ["cards.yaml", "--effort", "quick"],
      PROJECT.replace("cards:\n", items).replace("count: 4,", "count: 8,"),
    );
    expect(code).toBe(0);
    // One Tied takes the roll of 12 in, of which 5 in; one Golden a roll and two pearls, so that three pearls are one more.
    expect(stdout).toContain(
      "\nplum ribbon  no whole roll\ngold ribbon  2 rolls of 1 yd\npearl        3\n\n",
    );
    expect(stdout).toMatch(/^\d Tied +none$/m);
    expect(stdout).toMatch(/^\d Golden +1 /m);
  });

  it("is nothing where the project itself cannot be planned", async () => {
    const short = PROJECT.replace("copies: 2", "copies: 20");
    const { code, stdout, stderr } = await bonus(["cards.yaml", "--effort", "quick"], short);
    expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
    expect(stderr).toContain("Nothing is over: not every copy of the project is complete.");
  });

  it.each([
    ["", "sheetwright bonus: the project file is missing."],
    ["panels.csv", "Give the project, and the list behind --panels."],
    ["cards.yaml --panels none.csv", '--panels: "none.csv" cannot be read'],
    ["cards.yaml --stock none.json", "none.json"],
    ["cards.yaml --out plan", "--out: this option is not known."],
  ])("refuses '%s' and says why", async (words, message) => {
    const { code, stdout, stderr } = await bonus(words.split(" ").filter((word) => word !== ""));
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toContain(message);
  });
});
