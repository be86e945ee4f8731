import { fileURLToPath } from "node:url";
import chromium from "@sparticuz/chromium";
import { build } from "esbuild";
import { type Browser, chromium as playwright } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Problem, pack } from "../../src/index.js";

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

  test("pack gives the same bytes as in Node (promise 2)", async () => {
    const page = await browser.newPage();
    await page.addScriptTag({ content: await bundle() });
    for (const [i, problem] of problems.entries()) {
      const seed = 11 + i;
      const there = await page.evaluate(
        `JSON.stringify(packing.pack(${JSON.stringify(problem)}, { effort: "quick", seed: ${seed} }))`,
      );
      expect(there).toBe(JSON.stringify(pack(problem, { effort: "quick", seed })));
      const findings = await page.evaluate(`packing.verify(${JSON.stringify(problem)}, ${there})`);
      expect(findings).toEqual([]);
    }
  });
});
