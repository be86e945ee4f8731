import { describe, expect, it } from "vitest";
import { replaceFiles } from "../../src/folder/replace-files.js";
import { memoryFiles } from "../memory-files.js";

const OLD = {
  "/desk/out/plan.json": "old plan",
  "/desk/out/sheet-1.svg": "old drawing",
  "/desk/out/sheet-2.svg": "old drawing of a sheet no longer needed",
  "/desk/out/notes.txt": "the maker's own",
};
const NEW = [
  { name: "plan.json", content: "new plan" },
  { name: "cut-list.txt", content: "new list" },
  { name: "sheet-1.svg", content: "new drawing" },
];

describe("replacing the files of a folder", () => {
  it("writes the new ones, removes the stale ones and leaves all others alone", async () => {
    const files = memoryFiles(OLD);
    await replaceFiles(files, "/desk/out", NEW, ["sheet-2.svg"]);
    expect(Object.fromEntries(files.all)).toEqual({
      "/desk/out/plan.json": "new plan",
      "/desk/out/cut-list.txt": "new list",
      "/desk/out/sheet-1.svg": "new drawing",
      "/desk/out/notes.txt": "the maker's own",
    });
    expect([...files.folders].sort()).toEqual(["/", "/desk", "/desk/out"]);
  });

  it("makes the folder and those above it", async () => {
    const files = memoryFiles({ "/desk/pieces.csv": "" });
    await replaceFiles(files, "/desk/a/b/c", NEW, []);
    expect(files.all.get("/desk/a/b/c/plan.json")).toBe("new plan");
  });

  it("moves no file before all are complete, and the plan last", async () => {
    const files = memoryFiles(OLD);
    await replaceFiles(files, "/desk/out", NEW, []);
    const steps = files.steps.map(({ step }) => step);
    expect(steps.lastIndexOf("write")).toBeLessThan(steps.indexOf("rename"));
    const renames = files.steps.filter(({ step }) => step === "rename");
    expect(renames.at(-1)?.path).toBe("/desk/out/.sheetwright-work/new/plan.json");
  });

  it("leaves everything as it was when any one step up to the last move fails", async () => {
    const trial = memoryFiles(OLD);
    await replaceFiles(trial, "/desk/out", NEW, ["sheet-2.svg"]);
    const lastMove = trial.steps.map(({ step }) => step).lastIndexOf("rename");
    expect(lastMove).toBeGreaterThan(6);
    for (let broken = 0; broken <= lastMove; broken++) {
      const files = memoryFiles(OLD);
      const before = files.snapshot();
      files.failWhen = (_, __, number) => (number === broken ? "ENOSPC" : undefined);
      await expect(replaceFiles(files, "/desk/out", NEW, ["sheet-2.svg"])).rejects.toThrow("ENOSPC");
      expect(files.snapshot()).toBe(before);
    }
  });

  it("leaves no folder behind when a new one cannot be filled", async () => {
    for (let broken = 0; broken < 10; broken++) {
      const files = memoryFiles({ "/desk/pieces.csv": "" });
      const before = files.snapshot();
      files.failWhen = (_, __, number) => (number === broken ? "EIO" : undefined);
      await expect(replaceFiles(files, "/desk/a/b", NEW, [])).rejects.toThrow("EIO");
      expect(files.snapshot()).toBe(before);
    }
  });

  it("has done its work even where the work folder cannot be cleared afterwards", async () => {
    const files = memoryFiles(OLD);
    files.failWhen = (step) => (step === "removeFile" ? "EACCES" : undefined);
    await replaceFiles(files, "/desk/out", NEW, ["sheet-2.svg"]);
    expect(files.all.get("/desk/out/plan.json")).toBe("new plan");
  });

  it("clears what an interrupted run left, where it was told to go on", async () => {
    const files = memoryFiles({ ...OLD, "/desk/out/.sheetwright-work/new/plan.json": "half a plan" });
    await replaceFiles(files, "/desk/out", NEW, []);
    expect([...files.all.keys()].some((path) => path.includes(".sheetwright-work"))).toBe(false);
  });

  it("removes nothing that no run has put there, and writes nothing then", async () => {
    const files = memoryFiles({
      ...OLD,
      "/desk/out/.sheetwright-work/old/mine/notes.txt": "the maker's own",
    });
    const before = files.snapshot();
    await expect(replaceFiles(files, "/desk/out", NEW, [])).rejects.toThrow();
    expect(files.snapshot()).toBe(before);
  });
});
