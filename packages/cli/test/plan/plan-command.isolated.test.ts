import { readFile } from "node:fs/promises";
import { type Finding, type Packing, type Problem, verify } from "@sheetwright/packing";
import { Ajv2020 } from "ajv/dist/2020.js";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { sha256 } from "../../src/folder/seal.js";
import type { PlanFile } from "../../src/plan/plan-file.js";
import type { PlanSummary } from "../../src/plan/plan-summary.js";
import { type MemoryFiles, memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

// Everything is real but for one case below, in which the verifier finds something.
const refused = vi.hoisted(() => ({ findings: [] as Finding[] }));
vi.mock("@sheetwright/packing", async (original) => {
  const packing = await original<typeof import("@sheetwright/packing")>();
  const verify = (problem: Problem, plan: Packing) => [...packing.verify(problem, plan), ...refused.findings];
  return { ...packing, verify };
});
beforeEach(() => {
  refused.findings = [];
});

const PIECES = "name,width,height,quantity,turn\nbase,7,10,2,no\nmat,4,5 1/4,5,yes\nstrip,1/2,4,3,yes\n";
const PLAN = [
  "plan",
  "--pieces",
  "pieces.csv",
  "--sheet",
  "us-letter",
  "--out",
  "out",
  "--effort",
  "quick",
] as const;

const home = (more: Readonly<Record<string, string>> = {}): MemoryFiles =>
  memoryFiles({ "/desk/pieces.csv": PIECES, ...more });
const text = (files: MemoryFiles, name: string): string => String(files.all.get(`/desk/out/${name}`));
const plan = (files: MemoryFiles): PlanFile => JSON.parse(text(files, "plan.json"));
const written = (files: MemoryFiles): readonly string[] =>
  [...files.all.keys()]
    .filter((path) => path.startsWith("/desk/out/"))
    .map((path) => path.slice(10))
    .sort();

describe("a plan", () => {
  it("is written as a drawing, a cut list and a cutter file a layout, an overview and plan.json", async () => {
    const files = home();
    const { code, stderr } = await runIn(PLAN, { files });
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    const { packing, files: listed, cutOrders } = plan(files);
    const layouts = packing.layouts.map((_, index) => `sheet-${index + 1}`);
    expect(written(files)).toEqual(
      [
        "cut-list.txt",
        "plan.json",
        ...layouts.flatMap((name) => [`${name}-cutter.svg`, `${name}.svg`, `${name}.txt`]),
      ].sort(),
    );
    expect(cutOrders).toHaveLength(layouts.length);
    for (const { name, sha256: hash } of listed) expect(sha256(text(files, name))).toBe(hash);
    for (const name of layouts) {
      expect(text(files, `${name}.svg`)).toMatch(/^<\?xml|^<svg/);
      expect(text(files, `${name}-cutter.svg`)).toMatch(/^<\?xml|^<svg/);
      expect(text(files, `${name}.txt`)).not.toBe("");
    }
  });

  it("can be proven right from plan.json alone, which keeps to its published schema", async () => {
    const files = home();
    await runIn(PLAN, { files });
    const { problem, packing } = plan(files);
    expect(verify(problem, packing)).toEqual([]);
    const schema = JSON.parse(
      await readFile(new URL("../../schema/plan.schema.json", import.meta.url), "utf8"),
    );
    const validate = new Ajv2020({ strict: true }).compile(schema);
    validate(plan(files));
    expect(validate.errors).toBeNull();
  });

  it("is the same bytes each time, wherever it is made", async () => {
    const one = home();
    const other = memoryFiles({ "/elsewhere/far/list.csv": PIECES });
    const argv = [...PLAN, "--json"];
    const first = await runIn(argv, { files: one });
    const second = await runIn(
      argv.map((word) => (word === "pieces.csv" ? "list.csv" : word === "out" ? "../plan" : word)),
      { files: other, cwd: "/elsewhere/far" },
    );
    expect(second.stdout).toBe(first.stdout);
    for (const name of written(one)) expect(other.all.get(`/elsewhere/plan/${name}`)).toBe(text(one, name));
  });

  it("says in the summary what a person needs to know", async () => {
    const { stdout } = await runIn(PLAN, { files: home() });
    const lines = stdout.split("\n");
    expect(lines[0]).toBe("Pieces     all 10");
    expect(lines[1]).toMatch(
      /^Sheets {5}\d+ of US Letter sheet, 8 1\/2 x 11 in: (fewest possible, proven|at most \d+ more than the fewest possible)$/,
    );
    expect(lines[2]).toMatch(/^Yield {6}[\d.]+ % of the paper becomes pieces$/);
    expect(lines[3]).toMatch(/^Layouts {4}sheet-1: cut \d+ sheets? like this, \d+ cuts? each$/);
    expect(stdout).toMatch(/\nCuts {7}\d+ on all sheets, with \d+ settings? of the trimmer\n/);
    expect(stdout).toMatch(/\nLeftovers {2}\d+ of .* in\n/);
    expect(stdout).toMatch(/\nWritten to out: plan\.json, cut-list\.txt, and for each layout\n/);
    expect(stdout).toMatch(/A blade that cuts card cuts fingers\./);
  });

  it("carries every option into the problem", async () => {
    const files = home();
    const options =
      "--count 9 --mode shelf --trim 1/8 --trim-sides left,top --kerf 1/64 --longest-cut 11 --hold 2 --keep 3x4in --seed 5";
    const { code } = await runIn([...PLAN, ...options.split(" ")], { files });
    expect(code).toBe(0);
    const { problem, packing, hold, units } = plan(files);
    expect(problem).toEqual({
      kinds: [
        { id: "base", quantity: 2, forms: [{ width: 284480, height: 406400, turns: "upright" }] },
        { id: "mat", quantity: 5, forms: [{ width: 162560, height: 213360, turns: "both" }] },
        { id: "strip", quantity: 3, forms: [{ width: 20320, height: 162560, turns: "both" }] },
      ],
      sheets: [
        {
          id: "us-letter",
          name: "US Letter sheet",
          width: 345440,
          height: 447040,
          stock: 9,
          trim: { left: 5080, top: 5080 },
          longestCut: 447040,
        },
      ],
      mode: "shelf",
      aim: "all",
      kerf: 635,
      smallestOffcut: { width: 121920, height: 162560 },
    });
    expect(packing.search).toMatchObject({ effort: "quick", seed: 5 });
    expect(hold).toBe(81280);
    expect(units.shown).toBe("in");
  });

  it("is written in millimetres with --unit mm", async () => {
    const files = memoryFiles({ "/desk/pieces.csv": "name,width,height,quantity,turn\nmat,100,142,3,yes\n" });
    const { stdout } = await runIn(
      [...PLAN.map((word) => (word === "us-letter" ? "iso-a4" : word)), "--unit", "mm"],
      { files },
    );
    expect(stdout).toContain("ISO A4 sheet, 210 x 297 mm");
    expect(text(files, "cut-list.txt")).toContain("100 x 142 mm");
    expect(plan(files).units.shown).toBe("mm");
  });

  it("leaves out pieces with quantity 0, and says how many comments were left out", async () => {
    const files = memoryFiles({ "/desk/pieces.csv": `${PIECES}#spare,1,1,1,yes\nlater,3,3,0,yes\n` });
    const { code, stderr } = await runIn(PLAN, { files });
    expect(code).toBe(0);
    expect(plan(files).problem.kinds.map(({ id }) => id)).toEqual(["base", "mat", "strip"]);
    expect(stderr).toBe("\npieces.csv: 1 line that starts with # was left out as a comment.\n");
  });

  it("that was ended early is the best one so far, and says so", async () => {
    const files = home();
    const { code, stdout } = await runIn([...PLAN, "--json"], { files, signal: { aborted: true } });
    expect(code).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({ outcome: "complete", endedEarly: true });
    expect(text(files, "cut-list.txt")).toContain("The search was ended early");
  });

  it("that the verifier refuses is a fault of Sheetwright, and nothing is written", async () => {
    refused.findings = [{ code: "overlap", path: "layouts[0]", message: "Two pieces lie on each other." }];
    const files = home();
    const before = files.snapshot();
    const { code, stdout, stderr } = await runIn(PLAN, { files });
    expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
    expect(stderr).toBe(
      "Sheetwright has a fault of its own and wrote nothing: The plan is not right: layouts[0]: Two pieces lie on each other.\n" +
        "Please report it, with this line, the command and the file it was given.\n",
    );
    expect(files.snapshot()).toBe(before);
  });
});

describe("the summary as JSON", () => {
  it("is all there is on standard output; the text goes to standard error", async () => {
    const { stdout, stderr } = await runIn([...PLAN, "--json"], { files: home() });
    const summary: PlanSummary = JSON.parse(stdout);
    expect(stdout).toBe(`${JSON.stringify(summary, null, 2)}\n`);
    expect(stderr).toMatch(/^Pieces {5}all 10\n/);
    expect(summary).toMatchObject({
      sheetwright: "summary",
      version: 1,
      outcome: "complete",
      endedEarly: false,
      units: { length: "tick", ticksPerInch: 40640, shown: "in" },
      sheet: { name: "US Letter sheet", width: 345440, height: 447040 },
      sheets: { onHand: null, enough: null },
      pieces: { wanted: 10, cut: 10, missing: [], fitNoSheet: [] },
    });
    expect(summary.files).toEqual(expect.arrayContaining(["plan.json", "cut-list.txt", "sheet-1.svg"]));
  });
});

describe("a folder that already holds something", () => {
  it("is given the new plan where it holds an earlier one; what is stale goes", async () => {
    const files = home({ "/desk/one.csv": "name,width,height,quantity,turn\nbase,7,10,1,no\n" });
    await runIn(PLAN, { files });
    const before = written(files);
    expect(before.length).toBeGreaterThan(5);
    const { code } = await runIn(
      PLAN.map((word) => (word === "pieces.csv" ? "one.csv" : word)),
      { files },
    );
    expect(code).toBe(0);
    expect(written(files)).toEqual([
      "cut-list.txt",
      "plan.json",
      "sheet-1-cutter.svg",
      "sheet-1.svg",
      "sheet-1.txt",
    ]);
  });

  it("keeps files of other names", async () => {
    const files = home({ "/desk/out/notes.txt": "mine" });
    expect((await runIn(PLAN, { files })).code).toBe(0);
    expect(text(files, "notes.txt")).toBe("mine");
  });

  it.each(["plan.json", "cut-list.txt", "sheet-1.svg", "sheet-1-cutter.svg", "sheet-1.txt"])(
    "is left alone where it holds a %s that Sheetwright did not write",
    async (name) => {
      const files = home({ [`/desk/out/${name}`]: "mine" });
      const before = files.snapshot();
      const { code, stdout, stderr } = await runIn(PLAN, { files });
      expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
      expect(stderr).toMatch(
        `out/${name}: a file of this name is there already, and nothing says that Sheetwright wrote it.`,
      );
      expect(files.snapshot()).toBe(before);
    },
  );

  it("is left alone where a file was changed since, and written with --force", async () => {
    const files = home();
    await runIn(PLAN, { files });
    const original = text(files, "sheet-1.txt");
    files.all.set("/desk/out/sheet-1.txt", `${original}A note of the maker.\n`);
    const before = files.snapshot();
    const { code, stderr } = await runIn(PLAN, { files });
    expect(code).toBe(2);
    expect(stderr).toMatch(/^out\/sheet-1\.txt: this file was changed after Sheetwright wrote it\./);
    expect(files.snapshot()).toBe(before);
    expect((await runIn([...PLAN, "--force"], { files })).code).toBe(0);
    expect(text(files, "sheet-1.txt")).toBe(original);
  });

  it("keeps a changed file that the new plan has no use for, and says so", async () => {
    const files = home({ "/desk/one.csv": "name,width,height,quantity,turn\nbase,7,10,1,no\n" });
    await runIn(PLAN, { files });
    const last =
      written(files)
        .filter((name) => name.endsWith(".txt") && name.startsWith("sheet-"))
        .at(-1) ?? "";
    expect(last).not.toBe("sheet-1.txt");
    files.all.set(`/desk/out/${last}`, "mine");
    const { code, stderr } = await runIn(
      PLAN.map((word) => (word === "pieces.csv" ? "one.csv" : word)),
      { files },
    );
    expect(code).toBe(0);
    expect(stderr).toBe(`\n${last} is of an earlier plan; it was changed since, so it was left there.\n`);
    expect(text(files, last)).toBe("mine");
  });

  it("holds either the whole old plan or the whole new one, whichever step fails", async () => {
    const start = async (): Promise<MemoryFiles> => {
      const files = home();
      await runIn(PLAN, { files });
      files.all.set("/desk/pieces.csv", "name,width,height,quantity,turn\nbase,7,10,1,no\n");
      files.steps.length = 0;
      return files;
    };
    const trial = await start();
    const old = trial.snapshot();
    await runIn(PLAN, { files: trial });
    const lastMove = trial.steps.map(({ step }) => step).lastIndexOf("rename");
    for (let broken = 0; broken <= lastMove; broken += 3) {
      const files = await start();
      files.failWhen = (_, __, number) => (number === broken ? "EACCES" : undefined);
      const { code, stdout, stderr } = await runIn(PLAN, { files });
      expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
      expect(stderr).toBe(
        '--out: "out" cannot be written to: you have no permission for it. What was there before is unchanged.\n' +
          "1 fault; no file was written. sheetwright plan --help explains the options.\n",
      );
      expect(files.snapshot()).toBe(old);
    }
  });
});
