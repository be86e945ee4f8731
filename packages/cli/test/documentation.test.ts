import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { BONUS_OPTIONS } from "../src/bonus/bonus-options.js";
import { COMPARE_OPTION_KEYS, compareOptionName } from "../src/compare/compare-options.js";
import { NEED_OPTIONS } from "../src/need/need-options.js";
import { PRICE_OPTIONS } from "../src/price/price-options.js";
import { OPTION_KEYS, optionName } from "../src/request/plan-options.js";
import { SAVINGS_OPTIONS } from "../src/savings/savings-options.js";
import { HOW_MANY_OPTIONS } from "../src/sets/how-many-options.js";
import { SHAPE_OPTION_KEYS, shapeOptionName } from "../src/shape/shape-options.js";
import { STOCK_OPTION_KEYS, stockOptionName } from "../src/stock/stock-options.js";
import { memoryFiles } from "./memory-files.js";
import { runIn } from "./run-in.js";

const page = await readFile(new URL("../../../docs/command-line.md", import.meta.url), "utf8");

const fixture = (name: string): Promise<string> =>
  readFile(new URL(`../../../test-fixtures/${name}`, import.meta.url), "utf8");

describe("the page on the command line", () => {
  it.each(OPTION_KEYS)("explains the option %s", (key) => {
    expect(page).toMatch(new RegExp(`^\\| \`${optionName(key)}\\b`, "m"));
  });

  it("explains the options of a shape in their order, and no other", () => {
    const [, section = ""] = /\n## A shape\n([\s\S]*?)\n## /.exec(page) ?? [];
    const explained = [...section.matchAll(/^\| `(--[a-z-]+)/gm)].map((match) => match[1]);
    expect(explained).toEqual(SHAPE_OPTION_KEYS.map(shapeOptionName));
  });

  it("explains the options of what to buy in their order, and no other", () => {
    const [, section = ""] = /\n## What to buy\n([\s\S]*?)\n## /.exec(page) ?? [];
    const explained = [...section.matchAll(/^\| `(--[a-z-]+)/gm)].map((match) => match[1]);
    expect(explained).toEqual(Object.values(NEED_OPTIONS).map(({ flags }) => flags.split(" ")[0]));
  });

  it("explains the options of what can be made besides in their order, and no other", () => {
    const [, section = ""] = /\n## What can be made besides\n([\s\S]*?)\n## /.exec(page) ?? [];
    const explained = [...section.matchAll(/^\| `(--[a-z-]+)/gm)].map((match) => match[1]);
    expect(explained).toEqual(Object.values(BONUS_OPTIONS).map(({ flags }) => flags.split(" ")[0]));
  });

  it("explains the options of how many sets there are in their order, and no other", () => {
    const [, section = ""] = /\n## How many complete sets\n([\s\S]*?)\n## /.exec(page) ?? [];
    const explained = [...section.matchAll(/^\| `(--[a-z-]+)/gm)].map((match) => match[1]);
    expect(explained).toEqual(Object.values(HOW_MANY_OPTIONS).map(({ flags }) => flags.split(" ")[0]));
  });

  it("explains the options of what it costs in their order, and no other", () => {
    const [, section = ""] = /\n## What it costs\n([\s\S]*?)\n## /.exec(page) ?? [];
    const explained = [...section.matchAll(/^\| `(--[a-z-]+)/gm)].map((match) => match[1]);
    expect(explained).toEqual(Object.values(PRICE_OPTIONS).map(({ flags }) => flags.split(" ")[0]));
  });

  it("explains the options of what would save most in their order, and no other", () => {
    const [, section = ""] = /\n## What would save most\n([\s\S]*?)\n## /.exec(page) ?? [];
    const explained = [...section.matchAll(/^\| `(--[a-z-]+)/gm)].map((match) => match[1]);
    expect(explained).toEqual(Object.values(SAVINGS_OPTIONS).map(({ flags }) => flags.split(" ")[0]));
  });

  it("explains the options of a comparison in their order, and no other", () => {
    const [, section = ""] = /\n## Sheet sizes compared\n([\s\S]*?)\n## /.exec(page) ?? [];
    const explained = [...section.matchAll(/^\| `(--[a-z-]+)/gm)].map((match) => match[1]);
    expect(explained).toEqual(COMPARE_OPTION_KEYS.map(compareOptionName));
  });

  it("explains the options of a stock in their order, and no other", () => {
    const [, section = ""] = /\n## What is on hand\n([\s\S]*?)\n## /.exec(page) ?? [];
    const explained = [...section.matchAll(/^\| `(--[a-z-]+)/gm)].map((match) => match[1]);
    expect(explained).toEqual(STOCK_OPTION_KEYS.map(stockOptionName));
  });

  it("shows what a shape really says", async () => {
    const [, command = "", said = ""] =
      /\n## A shape\n\n {4}sheetwright (.*)\n[\s\S]*?\n\n((?: {4}.*\n|\n)+)/.exec(page) ?? [];
    const { code, stdout } = await runIn(command.split(" "), { files: memoryFiles({ "/desk/a": "" }) });
    expect(code).toBe(0);
    expect(said.replace(/^ {4}/gm, "").trimEnd()).toBe(stdout.trimEnd());
  });

  it("shows a piece list that can be planned", async () => {
    const list = /\n\n((?: {4}.*\n)+)\n\| column/.exec(page)?.[1]?.replace(/^ {4}/gm, "") ?? "";
    const files = memoryFiles({ "/desk/pieces.csv": list });
    const argv = "plan --pieces pieces.csv --sheet us-letter --out plan --effort quick".split(" ");
    expect(await runIn(argv, { files })).toMatchObject({ code: 0, stderr: "" });
  });

  it("shows a project that can be planned, the one of ten lines among the fixtures", async () => {
    const project = /```yaml\n([\s\S]*?)```/.exec(page)?.[1] ?? "";
    expect(project).toBe(await fixture("projects/ten-lines.yaml"));
    const files = memoryFiles({ "/desk/cards.yaml": project });
    expect(await runIn(["plan", "cards.yaml", "--out", "plan"], { files })).toMatchObject({
      code: 0,
      stderr: "",
    });
  });

  it("shows what a mistake and a project without enough paper really say", async () => {
    const short = (await fixture("projects/too-little-glitter.expected.txt")).replace(/^exit 1\n\n/, "");
    expect(page).toContain(short.replace(/^(?=.)/gm, "    "));
    const [, mistake = ""] = (await fixture("broken-projects/paper-misspelt.expected.txt")).split("\n");
    expect(page).toContain(`\n    ${mistake}\n    1 fault.\n`);
  });

  it("names every kind of file that a plan of a project writes", async () => {
    const files = memoryFiles({ "/desk/cards.yaml": await fixture("projects/market-stall.yaml") });
    const { stdout } = await runIn(["plan", "cards.yaml", "--out", "plan", "--effort", "quick", "--json"], {
      files,
    });
    const written: readonly string[] = JSON.parse(stdout).files;
    const named = [...page.matchAll(/^\| `([a-z0-9.-]+\.(?:svg|txt|json))`/gm)].map(
      (match) => match[1] ?? "",
    );
    const kind = (name: string): string =>
      name.replace(/^(sheet|card)-[a-z0-9-]*?(-sizes|-cutter)?\./, "$1$2.");
    for (const name of written) expect(named.map(kind)).toContain(kind(name.replace(/-\d+(?=\.svg$)/, "")));
  });

  it("shows what exit code 1 really says", async () => {
    const said = await fixture("not-enough/too-large-and-too-few.expected.txt");
    const shown = said.replace(/^exit 1\n\n/, "").replace(/^(?=.)/gm, "    ");
    expect(page).toContain(shown);
  });
});
