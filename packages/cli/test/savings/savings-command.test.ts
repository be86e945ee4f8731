import { describe, expect, it } from "vitest";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const PROJECT = `sheetwright: 1
title: Strips
copies: { guests: 10, spares: 1 }
papers:
  night: { cardstock: us-letter, grain: long, cost: 0.35 }
  stars: { paper: 5 1/4 x 9 1/2, pattern: one-way, cost: 0.40 }
rates: { currency: $ }
cards:
  - { name: Harbour, format: us-a2, base: night, front: [{ strip: stars, width: 1 }] }
`;

const savings = (words: readonly string[], project = PROJECT) =>
  runIn(["savings", ...words], { files: memoryFiles({ "/desk/cards.yaml": project }) });

describe("what would save most", () => {
  it("is told in words, the best first", async () => {
    const { code, stdout, stderr } = await savings(["cards.yaml"]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    // 11 strips of 4 1/4 x 1 in: nine from a sheet as they stand, eleven where they may turn. 11 bases are six sheets, and ten
    // five. At the same cost for the area a letter sheet costs 0.40 x 93.5 / 49.875 = 0.7499, and one gives 22 strips.
    expect(stdout).toBe(`Strips

As it is    8 sheets, $2.90: night 6 and stars 2

 1  let the strip pieces turn on stars: 1 sheet less, $0.40 less, 7.5 % less paper
    at papers.stars: pattern: none
    7 sheets, $2.50: night 6 and stars 1; without it these papers are planned best already, proven
 2  make no spares: 1 sheet less, $0.35 less, 14.2 % less paper
    at copies: spares: 1 less
    7 sheets, $2.55: night 5 and stars 2; without it these papers are planned best already, proven
 3  take stars as sheets of us-letter, at the same cost for the area: 1 sheet less, $0.05 less,
    0.9 % less paper
    at papers.stars: paper: us-letter
    7 sheets, $2.85: night 6 and stars 1; without it these papers are planned best already, proven

Of 12 changes that were tried 3 save. Each is for itself; what several save together is another
matter.
`);
  });

  it("is there as data", async () => {
    const { code, stdout } = await savings(["cards.yaml", "--json", "--most", "1"]);
    expect(code).toBe(0);
    const data = JSON.parse(stdout) as { readonly savings: readonly unknown[] };
    expect(data.savings).toHaveLength(1);
    expect(data).toMatchObject({
      sheetwright: "savings",
      version: 1,
      endedEarly: false,
      currency: "$",
      asItIs: { sheets: 8, cost: "2.90" },
      search: { effort: "quick", seed: 1 },
    });
  });

  it("is nothing where nothing saves", async () => {
    const full = `sheetwright: 1
title: Full
copies: 2
papers: { night: { cardstock: us-letter, grain: long } }
cards: [{ name: Harbour, format: us-a2, base: night }]
`;
    const { code, stdout } = await savings(["cards.yaml"], full);
    expect(code).toBe(0);
    expect(stdout).toMatch(/\n\nNone of \d+ changes that were tried saves anything\.\n$/);
  });

  it("is not looked for where a piece fits none of its papers", async () => {
    const small = PROJECT.replace("paper: 5 1/4 x 9 1/2", "paper: 2 x 2");
    const { code, stdout, stderr } = await savings(["cards.yaml"], small);
    expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
    expect(stderr).toContain("a piece fits none of its papers");
  });

  it.each([
    ["", "sheetwright savings: the project file is missing."],
    ["cards.yaml --most none", '--most: found "none", expected a whole number from 1 to 100'],
    ["pieces.csv", "sheetwright compare --pieces tells of other sheets"],
  ])("refuses '%s' and says why", async (words, message) => {
    const { code, stdout, stderr } = await savings(words.split(" ").filter((word) => word !== ""));
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toContain(message);
  });
});
