import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { verify } from "@sheetwright/packing";
import { describe, expect, it } from "vitest";
import type { PlanFile } from "../src/plan/plan-file.js";
import { type MemoryFiles, memoryFiles } from "./memory-files.js";
import { type Ended, runIn } from "./run-in.js";

const root = fileURLToPath(new URL("../../../test-fixtures/", import.meta.url));
const namesIn = async (folder: string): Promise<readonly string[]> =>
  (await readdir(join(root, folder)))
    .filter((name) => name.endsWith(".args"))
    .map((name) => name.slice(0, -5));

async function runFixture(folder: string, name: string): Promise<Ended & { readonly files: MemoryFiles }> {
  const argv = (await readFile(join(root, folder, `${name}.args`), "utf8")).trimEnd().split("\n");
  const files = memoryFiles({ [`/desk/${name}.csv`]: await readFile(join(root, folder, `${name}.csv`)) });
  return { ...(await runIn(argv, { files })), files };
}

const planOf = (files: MemoryFiles): PlanFile => JSON.parse(String(files.all.get("/desk/out/plan.json")));

describe("lists that can be planned", async () => {
  const folders = ["small", "lantern-night"];
  const lists = (
    await Promise.all(
      folders.map(async (folder) => (await namesIn(folder)).map((name) => [folder, name] as const)),
    )
  ).flat();
  it.each(lists)("are planned and proven: %s/%s", async (folder, name) => {
    const { code, files } = await runFixture(folder, name);
    expect(code).toBe(0);
    const { problem, packing } = planOf(files);
    expect(packing.outcome).toBe("complete");
    expect(verify(problem, packing)).toEqual([]);
  });

  it("give fourteen cards of 2 1/2 x 3 1/2 in from one 12 x 12 in, the most with edge-to-edge cuts (computed)", async () => {
    const { files } = await runFixture("small", "fourteen-from-a-square");
    expect(planOf(files).packing.sheets).toBe(1);
  });
});

describe("the demo", () => {
  it("makes do with the sheets at hand, and nobody could with fewer", async () => {
    for (const name of ["pieces", "cream"]) {
      const { stdout } = await runFixture("lantern-night", name);
      expect(stdout).toContain(": fewest possible, proven\n");
    }
  });
});

describe("lists that cannot be planned as asked", async () => {
  // The expected text is all of standard error, after a line with the exit code.
  it.each(await namesIn("not-enough"))(
    "say what is missing and why, and the rest is still written: %s",
    async (name) => {
      const { code, stderr, files } = await runFixture("not-enough", name);
      expect(`exit ${code}\n${stderr}`).toBe(
        await readFile(join(root, "not-enough", `${name}.expected.txt`), "utf8"),
      );
      expect(code).toBe(1);
      const { problem, packing } = planOf(files);
      expect(verify(problem, packing)).toEqual([]);
      expect(files.all.has("/desk/out/cut-list.txt")).toBe(true);
      expect(files.all.has("/desk/out/sheet-1.svg")).toBe(packing.layouts.length > 0);
    },
  );
});
