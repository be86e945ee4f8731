import { fileURLToPath } from "node:url";
import chromium from "@sparticuz/chromium";
import { build } from "esbuild";
import { type Browser, type Page, chromium as playwright } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Packing, type PackOptions, type Problem, pack, packStart } from "../../src/index.js";

// The browser comes from npm on Linux; elsewhere an installed Chrome is used.
const isLinux = process.platform === "linux";

/** The whole package as one classic script that sets `packing`. */
async function bundle(): Promise<string> {
  const result = await build({
    entryPoints: [fileURLToPath(new URL("../../src/index.ts", import.meta.url))],
    bundle: true,
    format: "iife",
    globalName: "packing",
    target: "es2022",
    write: false,
  });
  return result.outputFiles[0]?.text ?? "";
}

const INCH = 40640;

/** Orders of different make: many kinds, many copies, limits of every sort. */
const problems: readonly Problem[] = [
  {
    mode: "guillotine",
    aim: "all",
    kinds: Array.from({ length: 40 }, (_, i) => ({
      id: `k${i}`,
      quantity: 1 + ((i * 7) % 5),
      forms: [{ width: 20_000 + ((i * 7919) % 120_000), height: 30_000 + ((i * 104_729) % 150_000) }],
    })),
    sheets: [{ id: "letter", width: 8.5 * INCH, height: 11 * INCH, trim: { left: 1270, top: 1270 } }],
    kerf: 320,
  },
  {
    mode: "shelf",
    aim: "all",
    kinds: Array.from({ length: 12 }, (_, i) => ({
      id: `k${i}`,
      quantity: 130 + 11 * i,
      forms: [
        { width: 60_000 + 5_001 * i, height: 90_000 + 3_333 * i, turns: i % 3 === 0 ? "upright" : "both" },
      ],
    })),
    sheets: [
      { id: "pad", width: 6 * INCH, height: 6 * INCH, stock: 40, cost: 30 },
      { id: "square", width: 12 * INCH, height: 12 * INCH, cost: 95 },
    ],
  },
  {
    mode: "guillotine",
    aim: "fill",
    kinds: Array.from({ length: 9 }, (_, i) => ({
      id: `k${i}`,
      quantity: i % 2 === 0 ? null : 6,
      value: 100 + 37 * i,
      forms: [{ width: 50_000 + 9_001 * i, height: 140_000 - 8_003 * i }],
    })),
    sheets: [{ id: "square", width: 12 * INCH, height: 12 * INCH, stock: 3, longestCut: 12 * INCH }],
    stages: 4,
  },
];

/** Few pieces, of which no plan is ever proven: nearly all the work is ruin and recreate. */
const pieces = (count: number): Problem["kinds"] =>
  Array.from({ length: count }, (_, i) => ({
    id: `k${i}`,
    quantity: 1,
    forms: [{ width: 17 + ((i * 37) % 41), height: 19 + ((i * 53) % 47) }],
  }));
const improved: readonly (readonly [Problem, PackOptions])[] = [
  [
    {
      mode: "guillotine",
      aim: "all",
      kinds: pieces(40).map((kind, i) => (i < 4 ? { ...kind, together: "seam" } : kind)),
      sheets: [
        { id: "large", width: 110, height: 80, cost: 20, longestCut: 100 },
        { id: "small", width: 60, height: 55, cost: 7, stock: 3 },
      ],
      kerf: 1,
      stages: 3,
    },
    { effort: "quick", seed: 2 },
  ],
  [
    {
      mode: "guillotine",
      aim: "fill",
      kinds: pieces(12),
      sheets: [{ id: "sheet", width: 80, height: 60, stock: 1 }],
      kerf: 1,
      stages: 4,
    },
    { effort: "standard", seed: 3 },
  ],
];

describe("in a browser", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await playwright.launch(
      isLinux
        ? { executablePath: await chromium.executablePath(), args: chromium.args, headless: true }
        : { channel: "chrome", headless: true },
    );
  });
  afterAll(async () => {
    await browser.close();
  });

  /** Packs in the browser and in Node, and compares. */
  async function expectSame(page: Page, problem: Problem, options: PackOptions): Promise<Packing> {
    const there = String(
      await page.evaluate(
        `JSON.stringify(packing.pack(${JSON.stringify(problem)}, ${JSON.stringify(options)}))`,
      ),
    );
    expect(there).toBe(JSON.stringify(pack(problem, options)));
    const findings = await page.evaluate(`packing.verify(${JSON.stringify(problem)}, ${there})`);
    expect(findings).toEqual([]);
    return JSON.parse(there) as Packing;
  }

  test("pack gives the same bytes as in Node (promise 2)", async () => {
    const page = await browser.newPage();
    await page.addScriptTag({ content: await bundle() });
    for (const [i, problem] of problems.entries()) {
      await expectSame(page, problem, { effort: "quick", seed: 11 + i });
    }
  });

  test("ruin and recreate takes the same steps as in Node, and a start of its own there does too (promise 2)", async () => {
    const page = await browser.newPage();
    await page.addScriptTag({ content: await bundle() });
    for (const [problem, options] of improved) {
      const { search } = await expectSame(page, problem, options);
      expect(search.steps).toBeGreaterThan(100);
      const given = `${JSON.stringify(problem)}, ${JSON.stringify(options)}`;
      const start = await page.evaluate(`JSON.stringify(packing.packStart(${given}, 0))`);
      expect(start).toBe(JSON.stringify(packStart(problem, options, 0)));
    }
  });
});
