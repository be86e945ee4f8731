import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openThreadPool } from "../../src/solve/thread-pool.js";
import { bench } from "../bench-in-memory.js";
import { filesOf, MEDALS, RIBBONS, STAMPS, TILES } from "../made-up-families.js";

// Worker threads load no TypeScript, so the worker is bundled from its source first.
const folder = mkdtempSync(join(tmpdir(), "bench-worker-"));
const worker = join(folder, "solver-worker.mjs");

beforeAll(async () => {
  await build({
    entryPoints: [fileURLToPath(new URL("../../src/solver-worker.ts", import.meta.url))],
    outfile: worker,
    bundle: true,
    platform: "node",
    format: "esm",
    conditions: ["@sheetwright/source"],
    logLevel: "error",
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.each([["packing"], ["peers"]])(
  "%s gives the same with one thread, with three and without any",
  async (suite) => {
    const data = filesOf("/place/data", [TILES, RIBBONS, MEDALS, STAMPS]);
    const opened: number[] = [];
    const run = async (jobs: number | null): Promise<string> => {
      const line = `${suite} --data data --effort quick --json t.json --jobs ${jobs ?? 1}`;
      const { code, files } = await bench(
        line,
        data,
        0.25,
        jobs === null
          ? {}
          : {
              openPool: (threads) => {
                opened.push(threads);
                return openThreadPool(pathToFileURL(worker), threads);
              },
            },
      );
      expect(code).toBe(0);
      return JSON.stringify(JSON.parse(files.get("/place/t.json") ?? ""), (key, value) =>
        /seconds$/i.test(key) || key === "jobs" ? null : value,
      );
    };
    const alone = await run(null);
    expect(await run(1)).toBe(alone);
    expect(await run(3)).toBe(alone);
    expect(opened).toEqual([1, 3]);
  },
);

test("a fault of the program in a thread is told with the instance it was at", async () => {
  const data = filesOf("/place/data", [STAMPS]);
  const run = bench("packing --data data --effort quick", data, 0.25, {
    openPool: (threads) => openThreadPool(pathToFileURL(join(folder, "nowhere.mjs")), threads),
  });
  await expect(run).rejects.toThrow("stamps roll, fixed, quick could not be solved.");
});
