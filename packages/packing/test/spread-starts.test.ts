import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import fc from "fast-check";
import { Tinypool } from "tinypool";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  joinStarts,
  type PackOptions,
  type Problem,
  pack,
  packStart,
  type StartResult,
  startCount,
  verify,
} from "../src/index.js";
import { anyProblem } from "./problems.js";

const standard: PackOptions = { effort: "standard", seed: 3 };

const kinds = (count: number): Problem["kinds"] =>
  Array.from({ length: count }, (_, i) => ({
    id: `k${i}`,
    quantity: 1,
    forms: [{ width: 17 + ((i * 37) % 41), height: 19 + ((i * 53) % 47) }],
  }));

/** Pieces on as few sheets as can be, and on one sheet; no plan for either is ever proven, so every start has work. */
const onSheets = (count: number, stages: number): Problem => ({
  mode: "guillotine",
  aim: "all",
  kinds: kinds(count),
  sheets: [{ id: "sheet", width: 110, height: 80 }],
  kerf: 1,
  stages,
});
const onOneSheet = (count: number, stages: number): Problem => ({
  mode: "guillotine",
  aim: "fill",
  kinds: kinds(count),
  sheets: [{ id: "sheet", width: 80, height: 60, stock: 1 }],
  kerf: 1,
  stages,
});

const startsOf = (problem: Problem, options: PackOptions): readonly StartResult[] =>
  Array.from({ length: startCount(problem, options) }, (_, start) => packStart(problem, options, start));

describe("a search spread over workers", () => {
  test("gives the same bytes as pack, in whatever order the results come", () => {
    const problem = onOneSheet(12, 4);
    const results = startsOf(problem, standard);
    const whole = pack(problem, standard);
    expect(whole.search).toMatchObject({ ended: "finished" });
    expect(whole.search.steps).toBeGreaterThan(100);
    for (const list of [results, [...results].reverse()]) {
      expect(JSON.stringify(joinStarts(problem, standard, list))).toBe(JSON.stringify(whole));
    }
  });

  test("gives the same bytes as pack for any problem (promise 2)", () => {
    let improved = 0;
    fc.assert(
      fc.property(anyProblem, fc.nat(1000), (problem, seed) => {
        const options = { effort: "quick", seed } as const;
        const results = startsOf(problem, options);
        expect(JSON.stringify(joinStarts(problem, options, results))).toBe(
          JSON.stringify(pack(problem, options)),
        );
        if (results.some(({ sheets }) => sheets !== null)) improved++;
      }),
      { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 4) },
    );
    expect(improved).toBeGreaterThan(0);
  });

  test("needs no results after the first that is proven", () => {
    // Each sheet gives two bases, which only the first plans prove.
    const problem: Problem = {
      mode: "guillotine",
      aim: "all",
      kinds: [{ id: "base", quantity: 6, forms: [{ width: 55, height: 85 }] }],
      sheets: [{ id: "letter", width: 85, height: 110 }],
    };
    expect(packStart(problem, standard, 1)).toEqual({
      start: 1,
      sheets: null,
      proven: true,
      cancelled: false,
      best: null,
      steps: 0,
      work: 0,
    });
    expect(JSON.stringify(joinStarts(problem, standard, []))).toBe(JSON.stringify(pack(problem, standard)));
  });

  test("names the start whose result is missing", () => {
    const problem = onOneSheet(12, 4);
    const first = packStart(problem, standard, 0);
    expect(() => joinStarts(problem, standard, [first])).toThrow(
      new RangeError("The result of start 1 of 2 is missing. Run packStart for it."),
    );
    expect(() => joinStarts(problem, standard, [{ ...first, start: 1 }])).toThrow("start 0 of 2");
  });

  test("refuses a start that the effort does not have, and results of another problem", () => {
    const problem = onOneSheet(12, 4);
    for (const start of [-1, 0.5, 2]) expect(() => packStart(problem, standard, start)).toThrow(RangeError);
    expect(() => startCount(problem, { effort: "slow" as "quick" })).toThrow(RangeError);
    const sheets = [{ sheet: "another", run: 1, tree: { type: "waste" } as const }];
    const ended = { proven: false, cancelled: false, best: null, steps: 1, work: 1 };
    const foreign: StartResult = { start: 0, sheets, ...ended };
    expect(() => joinStarts(problem, standard, [foreign])).toThrow("another");
  });
});

describe("worker threads", () => {
  let folder = "";
  let worker = "";

  beforeAll(async () => {
    // Threads know nothing of the test's loader, so they get the package as plain JavaScript.
    folder = await mkdtemp(join(tmpdir(), "pack-start-"));
    worker = join(folder, "worker.mjs");
    await build({
      stdin: {
        contents: `import { packStart } from "./spread-starts.js";
          export const run = ({ problem, options, start }) => packStart(problem, options, start);`,
        resolveDir: fileURLToPath(new URL("../src", import.meta.url)),
      },
      bundle: true,
      format: "esm",
      target: "es2022",
      outfile: worker,
    });
  });
  afterAll(async () => {
    await rm(folder, { recursive: true, force: true });
  });

  test("give the same bytes as no worker, be there 1, 2 or 4 of them (promise 2)", async () => {
    const problems = [onSheets(8, 2), onOneSheet(12, 4)];
    const sent = new Set<string>();
    for (const threads of [1, 2, 4]) {
      const pool = new Tinypool({
        filename: pathToFileURL(worker).href,
        runtime: "worker_threads",
        minThreads: threads,
        maxThreads: threads,
        isolateWorkers: false,
      });
      const tasks = problems.flatMap((problem) =>
        Array.from({ length: startCount(problem, standard) }, (_, start) =>
          pool.run({ problem, options: standard, start }, { name: "run" }),
        ),
      );
      sent.add(JSON.stringify(await Promise.all(tasks)));
      await pool.destroy();
    }
    expect(sent.size).toBe(1);
    const [text = "[]"] = sent;
    const results = JSON.parse(text) as StartResult[];
    for (const problem of problems) {
      const own = results.splice(0, startCount(problem, standard));
      const whole = pack(problem, standard);
      expect(JSON.stringify(joinStarts(problem, standard, own))).toBe(JSON.stringify(whole));
      expect(whole.search.steps).toBeGreaterThan(100);
      expect(verify(problem, whole)).toEqual([]);
    }
  });
});
