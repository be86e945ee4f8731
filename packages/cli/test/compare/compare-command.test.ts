import type { Comparison } from "@sheetwright/planner";
import { describe, expect, it } from "vitest";
import { COMPARE_OPTIONS } from "../../src/compare/compare-options.js";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

/** Quarters of a letter sheet: 4 1/4 x 5 1/2 in. */
const QUARTERS = "name,width,height,quantity,turn\nfront,4 1/4,5 1/2,1,yes\n";

const PROJECT = `sheetwright: 1
title: Thank-you cards
papers: { cream: { cardstock: us-letter, count: 1, grain: long } }
cards: [{ name: Thank you, format: us-a2, base: cream, copies: 8 }]
`;

const desk = () => memoryFiles({ "/desk/fronts.csv": QUARTERS, "/desk/cards.yaml": PROJECT });
const compare = (words: readonly string[], files = desk()) => runIn(["compare", ...words], { files });
const compared = async (words: readonly string[]) =>
  JSON.parse((await compare([...words, "--json"])).stdout) as Comparison & { readonly sheetwright: string };

describe("comparing sheet sizes", () => {
  it("tells sheets, waste, cuts and cost of each, the least waste first", async () => {
    const words = "--pieces fronts.csv --sizes 6x6in=0.20,us-letter=0.35,4x4in --copies 2,4,9".split(" ");
    const { code, stdout, stderr } = await compare(words);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(stdout).toBe(`sheet size       copies  sheets                   waste   of it to keep  cuts  cost
US Letter sheet  2       1       fewest possible  50.0 %  50.0 %         2     0.35
                 4       1       fewest possible  0.0 %   0.0 %          3     0.35
                 9       3       fewest possible  25.0 %  25.0 %         9     1.05
6 x 6 in sheet   2       2       fewest possible  35.1 %  0.0 %          4     0.40
                 4       4       fewest possible  35.1 %  0.0 %          8     0.80
                 9       9       fewest possible  35.1 %  0.0 %          18    1.80

4 x 4 in sheet is too small for front.

Least waste: US Letter sheet, 25.0 % on average.
Least cost for 9 copies: US Letter sheet, 1.05.
`);
  });

  it("has a line a size for many numbers of copies", async () => {
    const { stdout } = await compare("--pieces fronts.csv --sizes us-letter,8x8in --copies 1-30".split(" "));
    const [head, ...body] = stdout.split("\n");
    expect(head).toMatch(/^sheet size +mean waste, 1 to 30 copies +sheets for 30 /);
    expect(body.filter((line) => line.includes("sheet  "))).toHaveLength(2);
  });

  it("claims no number of copies that was not looked at", async () => {
    const evens = Array.from({ length: 21 }, (_, i) => 2 * i + 2).join(",");
    const { stdout } = await compare(
      `--pieces fronts.csv --sizes us-letter,8x8in --copies ${evens}`.split(" "),
    );
    expect(stdout).toContain("mean waste, 21 numbers of copies from 2 to 42  ");
  });

  it("takes every paper of a project as sheets of the size, as many as needed", async () => {
    const { rows, sizes } = await compared("cards.yaml --sizes us-letter,iso-a4 --copies 8".split(" "));
    expect(sizes.map(({ id }) => id)).toEqual(["us-letter", "iso-a4"]);
    // Two flats of 8 1/2 x 5 1/2 in come from US letter; A4 is 210 mm wide, less than 8 1/2 in, and gives one.
    expect(rows.map(({ sheets, atLeast }) => [sheets, atLeast])).toEqual([
      [4, 4],
      [8, 8],
    ]);
  });

  it("writes a chart, and replaces no file unless it may", async () => {
    const files = desk();
    const words = "cards.yaml --sizes us-letter,iso-a4 --copies 1-4 --out charts/sizes.svg".split(" ");
    const { code, stdout } = await compare(words, files);
    expect(code).toBe(0);
    expect(stdout).toContain("Written: charts/sizes.svg, the chart.");
    expect(String(files.all.get("/desk/charts/sizes.svg"))).toContain(
      ">Thank-you cards: waste by sheet size<",
    );
    const again = await compare(words, files);
    expect(again.code).toBe(2);
    expect(again.stderr).toContain('--out: "charts/sizes.svg" is there already');
    expect((await compare([...words, "--force"], files)).code).toBe(0);
  });

  it("says where no size gives every piece", async () => {
    const { code, stdout, stderr } = await compare("--pieces fronts.csv --sizes 4x4in,4x5in".split(" "));
    expect({ code, stderr }).toEqual({ code: 1, stderr: "\nNo sheet of these sizes gives every piece.\n" });
    expect(stdout).toContain("4 x 4 in sheet is too small for front.");
  });

  it("stops where it is asked to, and tells what it has", async () => {
    const signal = { aborted: true };
    const words = "--pieces fronts.csv --sizes us-letter --copies 1-3 --json".split(" ");
    const { code, stdout, stderr } = await runIn(["compare", ...words], { files: desk(), signal });
    expect(code).toBe(1);
    expect(JSON.parse(stdout)).toMatchObject({ endedEarly: true, rows: [] });
    expect(stderr).toContain("Ended early");
  });

  it.each([
    ["", "sheetwright compare: the project file is missing."],
    ["fronts.csv --sizes us-letter", '"fronts.csv" is no project file by its name'],
    ["cards.yaml", "--sizes: missing. Give --sizes <sizes>, such as --sizes us-letter,12x12in."],
    ["cards.yaml --sizes us-leter", "Did you mean us-letter?"],
    ["cards.yaml --sizes us-letter,us-letter", '--sizes: "us-letter" is there twice.'],
    ["cards.yaml --sizes us-letter=cheap", '--sizes: found "us-letter=cheap", expected the cost of a sheet'],
    ["cards.yaml --sizes us-letter --copies 0", '--copies: found "0", expected numbers from 1 to 1000'],
    ["cards.yaml --sizes us-letter --copies 5-2", '--copies: found "5-2", expected the smaller number first'],
    ["cards.yaml --sizes us-letter --copies few", '--copies: found "few", expected whole numbers of copies'],
    ["cards.yaml --sizes us-letter --trim 1/8", "--trim: this option is for a list of pieces."],
    ["cards.yaml --sizes us-letter --force", "--force: this has no meaning without --out"],
    ["cards.yaml --sizes us-letter --out sizes.png", 'Write "sizes.svg".'],
    ["cards.yaml --pieces fronts.csv --sizes us-letter", "--pieces: "],
    ["--pieces fronts.csv --sizes 4x4in --trim 2", "--trim: trimming takes the whole sheet of 4 x 4 in."],
    ["--pieces none.csv --sizes us-letter", "there is no such file"],
    ["cards.yaml --sizes us-letter --size 3", "--size: this option is not known. Did you mean --sizes?"],
  ])("refuses '%s' and says why", async (words, message) => {
    const { code, stdout, stderr } = await compare(words.split(" ").filter((word) => word !== ""));
    expect(code).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toContain(message);
  });

  it("has an example that will do for every option with a value", () => {
    for (const { flags, ...option } of Object.values(COMPARE_OPTIONS)) {
      if (flags.includes("<")) expect(option).toHaveProperty("example");
    }
  });
});
