import { describe, expect, it } from "vitest";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const PROJECT = `sheetwright: 1
title: Thank-you cards
copies: { guests: 6, samples: 1, spares: 1 }
papers:
  cream: { cardstock: us-letter, grain: long, pack: { sheets: 25, cost: 8.99 } }
  rose: { cardstock: us-letter, cost: 0.5 }
rates:
  currency: $
  hour: 18.50
  minutes-per-card: 12.5
  ribbons: { red ribbon: 1.20 }
  consumables: { adhesive: 0.10 }
  price-factor: 2.5
cards:
  - name: Thank you
    format: us-a2
    base: cream
    front:
      - { mat: rose, border: 1/8 }
      - { bands: [1, 1], border: 1/4, papers: [cream, cream], seam: { ribbon: red ribbon, width: 1/2 } }
    extras: [{ name: button, count: 2, thickness: 1/8, cost: 0.15 }]
    envelope: { name: us-a2, cost: 0.20 }
  - { name: Plain, format: us-a2, base: cream, extras: [{ name: bell, thickness: 1/8 }] }
`;

const price = (words: readonly string[], project = PROJECT) =>
  runIn(["price", ...words], { files: memoryFiles({ "/desk/cards.yaml": project }) });

describe("what cards cost", () => {
  it("is told with the numbers that lead to it", async () => {
    const { code, stdout, stderr } = await price(["cards.yaml", "--effort", "quick"]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    // 16 bases of 46.75 sq in and 16 bands of 3 1/2 x 2 3/8 in lie on ten sheets of cream; one card has half of the bases and
    // all bands: (8 x 46.75 + 133) / 881 = 57.5 %. Ten sheets of a pack of 25 for 8.99 are 3.596.
    expect(stdout).toBe(`Thank-you cards

what                   number      each            cost
cream                  10 sheets   $8.99 for 25    $3.60
rose                   2 sheets    $0.50           $1.00
envelope of Thank you  8           $0.20           $1.60
button                 16          $0.15           $2.40
red ribbon             36 in       $1.20 a yard    $1.20
adhesive               16 copies   $0.10           $1.60
work                   3 h 20 min  $18.50 an hour  $61.67
in all                                             $73.07

Not reckoned, since no cost is given: bell.

card         copies  paper  envelopes  extras  ribbons  used up  work    in all
1 Thank you  8       $3.07  $1.60      $2.40   $1.20    $0.80    $30.84  $39.91
2 Plain      8       $1.53  $0.00      $0.00   $0.00    $0.80    $30.83  $33.16

Sheets are shared by the area of the pieces, waste alike:
  cream: Thank you 57.5 %, Plain 42.5 %

A copy of Thank you: $39.91 / 8 copies = $4.99; price $39.91 x 2.5 / 8 = $12.48
A copy of Plain: $33.16 / 8 copies = $4.15; price $33.16 x 2.5 / 8 = $10.37
A guest: $73.07 / 6 guests = $12.18; price $73.07 x 2.5 / 6 = $30.45
`);
  });

  it("is there as data", async () => {
    const { code, stdout } = await price(["cards.yaml", "--json", "--effort", "quick"]);
    expect(code).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({
      sheetwright: "price",
      version: 1,
      enough: "yes",
      endedEarly: false,
      sheets: "on hand",
      currency: "$",
      unknown: ["bell"],
      guest: { guests: 6 },
    });
  });

  it("is reckoned with as many sheets as needed where the papers on hand do not give all", async () => {
    const short = PROJECT.replace("rose: { cardstock: us-letter,", "rose: { cardstock: us-letter, count: 1,");
    const { code, stdout, stderr } = await price(["cards.yaml", "--effort", "quick"], short);
    expect(code).toBe(0);
    expect(stdout).toContain("A guest: $73.07 / 6 guests");
    expect(stdout).toContain("rose                   2 sheets");
    expect(stderr).toContain("as much as needed is reckoned with.");
  });

  it("is not reckoned where nothing has a cost", async () => {
    const free = `sheetwright: 1
title: Free
papers: { cream: { cardstock: us-letter } }
cards: [{ name: Plain, format: us-a2, base: cream, envelope: us-a2 }]
`;
    const { code, stdout } = await price(["cards.yaml", "--effort", "quick"], free);
    expect(code).toBe(0);
    expect(stdout).toBe(`Free

Nothing is reckoned: the project gives no cost of anything that is used.
It uses cream and envelope of Plain.
Write cost at papers, items, envelopes and extras, or pack, and what work costs under rates.
`);
  });

  it("is not reckoned where a piece fits none of its papers", async () => {
    const small = PROJECT.replace("rose: { cardstock: us-letter,", "rose: { cardstock: 3 x 3,");
    const { code, stdout, stderr } = await price(["cards.yaml", "--effort", "quick"], small);
    expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
    expect(stderr).toContain("a piece fits none of its papers");
  });

  it.each([
    ["", "sheetwright price: the project file is missing."],
    ["pieces.csv", "told by sheetwright compare --pieces"],
    ["cards.yaml --seed x", "--seed"],
  ])("refuses '%s' and says why", async (words, message) => {
    const { code, stdout, stderr } = await price(words.split(" ").filter((word) => word !== ""));
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toContain(message);
  });
});
