import { describe, expect, test } from "vitest";
import { bench } from "../bench-in-memory.js";

const PROJECT = `sheetwright: 1
title: Choices
papers:
  cream: { cardstock: 5 x 7, cost: 0.5, weight: 80 lb cover }
  night: { cardstock: us-letter, cost: 0.9, weight: 216 gsm, offcuts: [4 x 5] }
cards:
  - { name: Note, size: 5 x 7, fold: flat, base: [cream, night], copies: 2 }
  - { name: Tag, size: 4 x 5, fold: flat, base: night, copies: 1 }
  - { name: Slip, size: 5 x 7, fold: flat, base: cream, copies: 2 }
`;

describe("the suite alternatives", () => {
  // By hand: a 5 x 7 of cream costs 0.50; a letter sheet of night, 0.90, gives two of them, or one and the tag. Without a
  // choice four of cream and a sheet for the tag. That sheet gives a note too, which saves one of cream. The offcut is the
  // tag, then both notes come from one sheet, and where night is like cream the slips as well.
  test("says what a choice of papers and an offcut save", async () => {
    const { code, stdout, stderr, files } = await bench("alternatives --projects own --effort quick", {
      "/place/own/choices.yaml": PROJECT,
      "/place/own/read me.txt": "no project",
    });
    expect(stderr).not.toContain("costs more");
    expect(code).toBe(0);
    const rows = JSON.parse(files.get("/place/results/alternatives_own_quick.json") ?? "").rows;
    expect(
      rows.map((row: Record<string, unknown>) => [row.way, row.sheets, row.offcuts, row.cost, row.verified]),
    ).toEqual([
      ["no choice", 5, 0, "2.90", true],
      ["papers and folds", 4, 0, "2.40", true],
      ["offcuts", 4, 1, "2.00", true],
      ["as written", 3, 1, "1.90", true],
      ["any paper like it", 2, 1, "1.80", true],
    ]);
    expect(stdout).toMatch(/\| choices \| +5 \| +4 \| +4 \+ 1 \| +3 \+ 1 \| +2 \+ 1 \|/);
    expect(files.get("/place/results/alternatives_own_quick.md")).toBe(stdout);
  });

  test("takes no whole sheet of a bag for what is cut before", async () => {
    // By hand: two sheets of cream for the notes, 1.00, and one of night in each of two bags, 1.80. A sheet of night would give
    // the note as well as the tag.
    const kits = `sheetwright: 1
title: Bags
share: kits
copies: 2
papers:
  cream: { cardstock: 5 x 7, cost: 0.5, weight: 80 lb cover, hand-out: cut }
  night: { cardstock: us-letter, cost: 0.9, weight: 216 gsm }
cards:
  - { name: Note, size: 5 x 7, fold: flat, base: cream }
  - { name: Tag, size: 4 x 5, fold: flat, base: night }
`;
    const { code, files } = await bench("alternatives --projects own --effort quick", {
      "/place/own/bags.yaml": kits,
    });
    expect(code).toBe(0);
    const rows = JSON.parse(files.get("/place/results/alternatives_own_quick.json") ?? "").rows;
    for (const row of rows) expect(row).toMatchObject({ sheets: 4, cost: "2.80", verified: true });
  });

  test("refuses a folder without projects, a broken one and an effort that there is not, and measures nothing", async () => {
    for (const [line, told] of [
      ["alternatives --projects none", "none holds no project"],
      ["alternatives --projects own", "There is no paper"],
      ["alternatives --projects own --effort long", 'found "long", expected quick, standard, thorough.'],
    ] as const) {
      const { code, stdout, stderr } = await bench(line, {
        "/place/own/a.yaml": PROJECT.replace("base: cream", "base: craem"),
        "/place/none/a.csv": "",
      });
      expect([code, stdout]).toEqual([2, ""]);
      expect(stderr).toContain(told);
    }
  });
});
