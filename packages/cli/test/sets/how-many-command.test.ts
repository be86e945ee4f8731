import { describe, expect, it } from "vitest";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const PROJECT = `sheetwright: 1
title: Thank-you cards
copies: 3
papers:
  cream: { cardstock: us-letter, count: 5, grain: long }
  rose: { cardstock: us-letter, count: 2 }
cards:
  - { name: Thank you, format: us-a2, base: cream, front: [{ mat: rose, border: 1/8 }] }
  - { name: Plain, format: us-a2, base: cream }
`;

const howMany = (words: readonly string[], project = PROJECT) =>
  runIn(["how-many", ...words], { files: memoryFiles({ "/desk/cards.yaml": project }) });

const quick = ["cards.yaml", "--effort", "quick"];

describe("how many complete sets there are", () => {
  it("is told with what is proven, what runs out, and what more would give", async () => {
    const { code, stdout, stderr } = await howMany(quick);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    // Five sheets of cream are ten bases of 8 1/2 x 5 1/2 in, two a set; of two of rose come eight mats, 4 x 5 1/4 in.
    expect(stdout).toBe(`Thank-you cards

A set is one each of Thank you and Plain; 3 are asked for.
5 complete sets found; 6 are impossible, proven: there is too little cream.

runs out  after
cream     5 sets
rose      8 sets

With 1 more of cream (count: 6): 6 sets.
With 3 more of cream (count: 8): 8 sets, until rose runs out.
`);
  });

  it("is there as data", async () => {
    const { code, stdout } = await howMany([...quick, "--json"]);
    expect(code).toBe(0);
    expect(JSON.parse(stdout)).toEqual({
      sheetwright: "how-many",
      version: 1,
      endedEarly: false,
      title: "Thank-you cards",
      set: [
        { card: 1, name: "Thank you", copies: 1 },
        { card: 2, name: "Plain", copies: 1 },
      ],
      wanted: 3,
      asNeeded: [],
      most: 5,
      noPaper: [],
      impossible: { sets: 6, papers: [["cream"]] },
      runsOut: [
        { sets: 5, papers: [{ designs: ["cream"], proven: true }] },
        { sets: 8, papers: [{ designs: ["rose"], proven: true }] },
      ],
      withMore: [
        { sets: 6, sheets: [{ design: "cream", more: 1 }] },
        { sets: 8, sheets: [{ design: "cream", more: 3 }] },
      ],
      units: { length: "tick", ticksPerInch: 40640, shown: "in" },
    });
  });

  it("is any number of paper that comes as needed", async () => {
    const { code, stdout } = await howMany(quick, PROJECT.replace(/count: \d/g, "count: as needed"));
    expect(code).toBe(0);
    expect(stdout).toContain("Any number of sets can be made: cream and rose come as needed.");
  });

  it("is none, with another exit code, where a paper has no sheet or is too small", async () => {
    const empty = await howMany(quick, PROJECT.replace("count: 2", "count: 0"));
    expect(empty.code).toBe(1);
    expect(empty.stdout).toContain(
      "Not one complete set was found; 1 is impossible, proven: there is too little rose.",
    );
    const small = await howMany(
      quick,
      PROJECT.replace("rose: { cardstock: us-letter", "rose: { cardstock: 3 x 3"),
    );
    expect(small.code).toBe(1);
    expect(small.stdout).toContain("No paper is large enough for 1b mat.");
  });

  it("tells what a set holds where guests have several copies of a card", async () => {
    const two = PROJECT.replace("name: Plain,", "name: Plain, copies: 6,");
    const { stdout } = await howMany(quick, two);
    expect(stdout).toContain(
      "A set is 1 Thank you and 2 Plain; 3 are asked for.\n3 complete sets found; 4 are impossible",
    );
  });

  it.each([
    ["", "sheetwright how-many: the project file is missing."],
    ["pieces.csv", "How much of a list can be cut is told by sheetwright plan --pieces with --count."],
    ["cards.yaml --stock none.json", "none.json"],
    ["cards.yaml --out plan", "--out: this option is not known."],
  ])("refuses '%s' and says why", async (words, message) => {
    const { code, stdout, stderr } = await howMany(words.split(" ").filter((word) => word !== ""));
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toContain(message);
  });

  it("names items that run out among the papers", async () => {
    const items = `items:
  pearl: 7
  plum ribbon: { length: 12, count: 3 }
cards:
  - name: Tied
    format: us-a2
    base: cream
    front: [{ bands: [1, 1], papers: [rose, rose], seam: { ribbon: plum ribbon, width: 1/4 } }]
    extras: [{ name: pearl, count: 2, thickness: 1/16 }]
`;
    const { code, stdout } = await howMany(quick, PROJECT.replace(/cards:\n/, items));
    expect(code).toBe(0);
    // Three bases a set: ten of them are three sets. Seven pearls are three sets as well; a roll of 12 in has two lengths of 5.
    expect(stdout).toContain(
      "3 complete sets found; 4 are impossible, proven: there is too little cream and pearl.\n",
    );
    expect(stdout).toMatch(/^pearl +3 sets$/m);
    expect(stdout).toContain("With 1 more of cream (count: 6) and 1 more of pearl (count: 8): 4 sets");
    const { stdout: data } = await howMany([...quick, "--json"], PROJECT.replace(/cards:\n/, items));
    expect(JSON.parse(data).impossible).toEqual({ sets: 4, papers: [["cream"]], items: ["pearl"] });
    const fewer = items.replace("pearl: 7", "pearl: 8").replace("count: 3", "count: 1");
    const { stdout: ofRibbon } = await howMany(quick, PROJECT.replace(/cards:\n/, fewer));
    // One roll is two sets.
    expect(ofRibbon).toContain("With 1 more roll of plum ribbon (count: 2): 3 sets, until cream runs out.");
  });
});
