import { mkdtemp, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";

const { argv, exitCode } = process;
afterEach(() => {
  process.argv = argv;
  process.exitCode = exitCode;
  vi.restoreAllMocks();
  vi.resetModules();
});

/** Runs bin.ts in this process with its output caught. */
async function runBin(
  ...words: readonly string[]
): Promise<{ readonly code: unknown; readonly out: string; readonly err: string }> {
  const caught = { out: "", err: "" };
  vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    caught.out += String(text);
    return true;
  });
  vi.spyOn(process.stderr, "write").mockImplementation((text) => {
    caught.err += String(text);
    return true;
  });
  const listeners = process.listeners("SIGINT");
  process.argv = ["node", "sheetwright", ...words];
  process.exitCode = undefined;
  await import("../src/bin.js");
  for (const listener of process.listeners("SIGINT")) {
    if (!listeners.includes(listener)) process.removeListener("SIGINT", listener);
  }
  return { code: process.exitCode, ...caught };
}

describe("the process", () => {
  it("plans with the files of this machine and ends with the run's exit code", async () => {
    const folder = await mkdtemp(join(tmpdir(), "sheetwright-"));
    try {
      const pieces = join(folder, "pieces.csv");
      await writeFile(pieces, "name,width,height,quantity,turn\nmat,4,5 1/4,3,yes\n");
      const plan = ["plan", "--pieces", pieces, "--sheet", "us-letter", "--effort", "quick", "--out"];
      const first = await runBin(...plan, join(folder, "a", "b"));
      expect(first).toMatchObject({ code: 0, err: "" });
      expect(first.out).toContain("Pieces     all 3");
      expect((await readdir(join(folder, "a", "b"))).sort()).toEqual([
        "cut-list.txt",
        "plan.json",
        "sheet-1-cutter.svg",
        "sheet-1.svg",
        "sheet-1.txt",
      ]);
      vi.resetModules();
      expect((await runBin(...plan, join(folder, "a", "b"))).code).toBe(0);
      vi.resetModules();
      const onFile = await runBin(...plan, pieces);
      expect(onFile).toMatchObject({ code: 2, out: expect.not.stringContaining("Pieces     all 3\nall") });
      expect(onFile.err).toContain("is there already and is not a folder");
    } finally {
      await rm(folder, { recursive: true });
    }
  });
});
