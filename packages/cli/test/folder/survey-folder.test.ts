import { describe, expect, it } from "vitest";
import { findConflicts } from "../../src/folder/find-conflicts.js";
import { seal, sha256 } from "../../src/folder/seal.js";
import { surveyFolder } from "../../src/folder/survey-folder.js";
import { memoryFiles } from "../memory-files.js";

function planListing(...names: readonly string[]): string {
  const files = names.map((name) => ({ name, sha256: sha256(`content of ${name}`) }));
  return seal(`${JSON.stringify({ sheetwright: "plan", seal: "", files }, null, 2)}\n`);
}

const PLAN = planListing("sheet-1.svg", "sheet-1.txt");

describe("whose the files of a folder are", () => {
  it("counts what the plan lists as ours while it is unchanged", async () => {
    const files = memoryFiles({
      "/out/plan.json": PLAN,
      "/out/sheet-1.svg": "content of sheet-1.svg",
      "/out/sheet-1.txt": "content of sheet-1.txt, and a note",
      "/out/sheet-2.svg": "somebody's",
    });
    const survey = await surveyFolder(files, "/out");
    expect(survey.what).toBe("folder");
    expect([...survey.own]).toEqual(["plan.json", "sheet-1.svg"]);
    expect([...survey.changed]).toEqual(["sheet-1.txt"]);
  });

  it("trusts no plan that was changed", async () => {
    const files = memoryFiles({
      "/out/plan.json": `${PLAN}\n`,
      "/out/sheet-1.svg": "content of sheet-1.svg",
    });
    const survey = await surveyFolder(files, "/out");
    expect([...survey.own]).toEqual([]);
    expect([...survey.changed]).toEqual(["plan.json"]);
  });

  it.each(["no JSON", "[]", '{"sheetwright":"plan"}', '{"plan":true}'])(
    "takes %s for somebody else's",
    async (text) => {
      const survey = await surveyFolder(memoryFiles({ "/out/plan.json": text }), "/out");
      expect(survey.own.size + survey.changed.size).toBe(0);
    },
  );

  it("counts the files of a project's plan", async () => {
    const names = [
      "sheet-night-1.svg",
      "sheet-stars-comets-12-cutter.svg",
      "card-3-good-night.svg",
      "card-3-sizes-2.svg",
      "card-10-a-sizes.txt",
    ];
    const plan = planListing(...names).replace('"sheetwright": "plan"', '"sheetwright": "project-plan"');
    const files = memoryFiles({
      "/out/plan.json": seal(plan),
      ...Object.fromEntries(names.map((name) => [`/out/${name}`, `content of ${name}`])),
    });
    expect([...(await surveyFolder(files, "/out")).own]).toEqual(["plan.json", ...names]);
  });

  it("never takes a file elsewhere, or of a name of the maker's, for its own", async () => {
    for (const name of [
      "../pieces.csv",
      "/desk/pieces.csv",
      "notes.txt",
      "sheet-0.svg",
      "sheet-Night-1.svg",
      "sheet-a/../b-1.svg",
      "card-rooftops.svg",
      "card-1-rooftops.yaml",
    ]) {
      const files = memoryFiles({
        "/out/plan.json": planListing(name),
        [`/out/${name}`]: `content of ${name}`,
      });
      const survey = await surveyFolder(files, "/out");
      expect(survey.own.size).toBe(0);
    }
  });

  it("tells a folder that is not there, and a file in its place", async () => {
    expect((await surveyFolder(memoryFiles(), "/out")).what).toBeNull();
    expect((await surveyFolder(memoryFiles({ "/out": "" }), "/out")).what).toBe("file");
  });
});

describe("what keeps a folder from being written to", () => {
  const state = {
    "/out/plan.json": PLAN,
    "/out/sheet-1.svg": "content of sheet-1.svg",
    "/out/sheet-1.txt": "changed",
    "/out/cut-list.txt": "somebody's",
  };
  const names = ["plan.json", "sheet-1.svg", "sheet-1.txt", "cut-list.txt", "sheet-2.svg"];
  const codes = async (files: Readonly<Record<string, string>>, force: boolean): Promise<readonly string[]> =>
    findConflicts(await surveyFolder(memoryFiles(files), "/out"), "out", names, force).map(
      ({ code, place }) => `${code} ${"file" in place ? place.file : place.option}`,
    );

  it("is any file that was changed or is somebody else's", async () => {
    expect(await codes(state, false)).toEqual(["changed-since out/sheet-1.txt", "not-ours out/cut-list.txt"]);
  });

  it("is nothing with --force", async () => {
    expect(await codes(state, true)).toEqual([]);
  });

  it("is a folder in a file's place, even with --force", async () => {
    const files = { "/out/sheet-1.svg/notes.txt": "somebody's" };
    expect(await codes(files, false)).toEqual(["no-file out/sheet-1.svg"]);
    expect(await codes(files, true)).toEqual(["no-file out/sheet-1.svg"]);
  });

  it("is a run that did not end, unless forced", async () => {
    const left = { "/out/.sheetwright-work/new/plan.json": "half" };
    expect(await codes(left, false)).toEqual(["interrupted out/.sheetwright-work"]);
    expect(await codes(left, true)).toEqual([]);
  });

  it("is a file where the folder should be, even with --force", async () => {
    expect(await codes({ "/out": "" }, true)).toEqual(["not-a-folder --out"]);
  });
});
