import { describe, expect, it } from "vitest";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const PROJECT = `sheetwright: 1
title: One card
shelf: shelves/my-shelf.yaml
copies: { guests: 3, samples: 1, spares: 9 }
papers:
  night: shelf
  pale: { shelf: cream, count: 1 }
cards:
  - name: Rooftops
    format: us-a2
    base: night
    front:
      - { die: star, paper: pale }
`;

const SHELF = `sheetwright-shelf: 1
papers:
  night: { cardstock: us-letter, count: 20, grain: long, cost: 0.35 }
  cream: { cardstock: us-letter, count: 12, grain: long, cost: 0.30 }
dies: { star: 3 x 3 }
rates: { currency: $, hour: 18.50, minutes-per-card: 12 }
`;

const check = (files: Readonly<Record<string, string | Uint8Array>>, file = "cards.yaml") =>
  runIn(["check", file], { files: memoryFiles(files) });

describe("a project with a shelf", () => {
  it("is checked with what is on the shelf, whose place is told from the project", async () => {
    const found = await check(
      { "/desk/work/cards.yaml": PROJECT, "/desk/work/shelves/my-shelf.yaml": SHELF },
      "work/cards.yaml",
    );
    expect(found.code).toBe(0);
    expect(found.stdout).toContain("4 copies for 3 guests and 1 sample, and 9 spares wished for");
    expect(found.stdout).toContain("20 sheets on hand");
  });

  it("is planned, with the spares that it gives, the die blanks, and what the work costs", async () => {
    const files = memoryFiles({ "/desk/cards.yaml": PROJECT, "/desk/shelves/my-shelf.yaml": SHELF });
    const { code, stdout, stderr } = await runIn(
      ["plan", "cards.yaml", "--out", "out", "--effort", "quick"],
      {
        files,
      },
    );
    expect([code, stderr.includes("fault")]).toEqual([0, false]);
    // A sheet of cream gives six die blanks of 3 1/2 x 3 1/2, so two spares beside the four copies.
    expect(stdout).toContain("Enough     yes, every piece of every copy is planned, and 2 of 9 spares\n");
    expect(stdout).toContain("1 Rooftops  4 copies and 2 of 9 spares  for 3 guests and 1 sample\n");
    expect(stdout).toContain("Pieces     all 12\n");
    expect(stdout).toContain("Cost       $1.35 for the sheets used\n");
    expect(stdout).toContain("Work       1 h 12 min on 6 cards: $22.20; with the sheets $23.55\n");
    const overview = String(files.all.get("/desk/out/cut-list.txt"));
    expect(overview).toContain("1 Rooftops, 4 copies and 2 spares\n");
    expect(overview).toMatch(/1b die blank +3 1\/2 x 3 1\/2 in +pale +6\n/);
    expect(overview).toContain("cut by the die star, 3 x 3 in");
    const written = JSON.parse(String(files.all.get("/desk/out/plan.json")));
    expect(written.plan.complete).toEqual([
      { card: 1, wanted: 4, complete: 4, spares: { wished: 9, made: 2 } },
    ]);
    expect(written.plan.pieces[1].die).toEqual({ name: "star", cut: { width: 121_920, height: 121_920 } });
  });

  it("is told when the shelf is not there, at the place where the project names it", async () => {
    const { code, stderr } = await check({ "/desk/cards.yaml": PROJECT });
    expect(code).toBe(2);
    expect(stderr).toBe(
      'cards.yaml:3:8 shelf: "shelves/my-shelf.yaml" cannot be read: there is no such file or folder.\n1 fault.\n',
    );
  });

  it("is told when the shelf is no text", async () => {
    const files = {
      "/desk/cards.yaml": PROJECT,
      "/desk/shelves/my-shelf.yaml": new Uint8Array([0xff, 0xfe, 0x41]),
    };
    const { code, stderr } = await check(files);
    expect(code).toBe(2);
    expect(stderr).toMatch(
      /^shelves\/my-shelf\.yaml.*Save the file as UTF-8, or make sure that this is the shelf\.\n1 fault\.\n$/,
    );
  });

  it("is told what is wrong with the shelf under the name of that file", async () => {
    const shelf = SHELF.replace("star: 3 x 3", "star: large").replace("count: 12", "count: 1.5");
    const { code, stderr } = await check({
      "/desk/cards.yaml": PROJECT,
      "/desk/shelves/my-shelf.yaml": shelf,
    });
    expect(code).toBe(2);
    expect(stderr.split("\n").map((line) => line.split(": ")[0])).toEqual([
      "shelves/my-shelf.yaml:4:41 papers.cream.count",
      "shelves/my-shelf.yaml:5:15 dies.star",
      "2 faults.",
      "",
    ]);
  });
});

describe("sheetwright check of a shelf", () => {
  const files = (shelf: string) => ({ "/desk/my-shelf.yaml": shelf });

  it("says what is on it, and as data with --json", async () => {
    const { code, stdout, stderr } = await check(files(SHELF), "my-shelf.yaml");
    expect([code, stderr]).toEqual([0, ""]);
    expect(stdout).toBe("A shelf of 2 papers, 1 die and rates; nothing odd was found.\n");
    const empty = await check(files("sheetwright-shelf: 1\n"), "my-shelf.yaml");
    expect(empty.stdout).toBe("The shelf is empty; nothing odd was found.\n");
    const data = await runIn(["check", "my-shelf.yaml", "--json"], { files: memoryFiles(files(SHELF)) });
    expect(JSON.parse(data.stdout)).toEqual({
      sheetwright: "shelf-check",
      version: 1,
      papers: ["night", "cream"],
      trimmers: [],
      dies: ["star"],
      rates: true,
    });
  });

  it("tells what is wrong with it", async () => {
    const { code, stdout, stderr } = await check(files(SHELF.replace("3 x 3", "large")), "my-shelf.yaml");
    expect([code, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(/^my-shelf\.yaml:5:15 dies\.star: .*\n1 fault\.\n$/);
  });

  it("does not take a project for one, nor a file that is not there", async () => {
    const missing = await check({}, "my-shelf.yaml");
    expect(missing.code).toBe(2);
    expect(missing.stderr).toContain('"my-shelf.yaml" cannot be read');
    const plan = await runIn(["plan", "my-shelf.yaml", "--out", "out"], { files: memoryFiles(files(SHELF)) });
    expect(plan.code).toBe(2);
    expect(plan.stderr).toContain("This is a shelf, and a project is wanted");
  });
});
