import type { Project } from "@sheetwright/cards";
import { type Plan, type PlanAsyncOptions, type PlanFinding, verifyPlan } from "@sheetwright/planner";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { sha256 } from "../../src/folder/seal.js";
import type { ProjectPlanFile } from "../../src/project-plan/project-plan-file.js";
import type { ProjectPlanSummary } from "../../src/project-plan/project-plan-summary.js";
import { type MemoryFiles, memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

// Everything is real but for two cases below: the verifier finds something, or the search takes many steps.
const stage = vi.hoisted(() => ({ findings: [] as PlanFinding[], steps: 0 }));
vi.mock("@sheetwright/planner", async (original) => {
  const planner = await original<typeof import("@sheetwright/planner")>();
  const verifyPlan = (project: Project, plan: Plan) => [
    ...planner.verifyPlan(project, plan),
    ...stage.findings,
  ];
  const planAsync = (project: Project, options: PlanAsyncOptions = {}) => {
    const progress = { share: 0.339, startsDone: 3, starts: 9, work: 1, best: undefined };
    for (let step = 0; step < stage.steps; step++)
      options.onProgress?.({ group: 1, groups: 4, aim: "layouts", progress });
    return planner.planAsync(project, options);
  };
  return { ...planner, planAsync, verifyPlan };
});
beforeEach(() => {
  stage.findings = [];
  stage.steps = 0;
});

const CARDS = `sheetwright: 1
title: Evening workshop
copies: { guests: 5, samples: 1 }
papers:
  night: { name: Night blue, cardstock: us-letter, count: 6, grain: long }
  cream: { cardstock: us-letter, count: 6, grain: unknown }
  stars: { pad: 6 x 6, designs: { dots: 6, comets: { count: 6, pattern: one-way } } }
  ember: { cardstock: us-letter }
cards:
  - name: Lantern
    format: us-a2
    base: night
    front:
      - mat: cream
        border: 1/8
      - panel: stars.comets
        border: 1/8
  - name: Two stars
    format: us-a2
    stand: lying
    base: cream
    copies: 2
    front:
      - bands: [1, 2]
        border: 1/4
        papers: [night, stars.dots]
`;
const LESS = CARDS.replace("{ guests: 5, samples: 1 }", "1").replace(/ {2}- name: Two stars[\s\S]*$/, "");
const PLAN = ["plan", "cards.yaml", "--out", "out", "--effort", "quick"] as const;

const home = (cards = CARDS, more: Readonly<Record<string, string>> = {}): MemoryFiles =>
  memoryFiles({ "/desk/cards.yaml": cards, ...more });
const text = (files: MemoryFiles, name: string): string => String(files.all.get(`/desk/out/${name}`));
const planFile = (files: MemoryFiles): ProjectPlanFile => JSON.parse(text(files, "plan.json"));
const written = (files: MemoryFiles): readonly string[] =>
  [...files.all.keys()]
    .filter((path) => path.startsWith("/desk/out/"))
    .map((path) => path.slice(10))
    .sort();

describe("a plan of a project", () => {
  it("is written as sheets by their papers, cards by their names, an overview and plan.json", async () => {
    const files = home();
    const { code } = await runIn(PLAN, { files });
    expect(code).toBe(0);
    const names = written(files);
    expect(names).toEqual(
      expect.arrayContaining([
        "card-1-lantern-sizes.svg",
        "card-1-lantern-sizes.txt",
        "card-1-lantern.svg",
        "card-2-two-stars-sizes.svg",
        "card-2-two-stars-sizes.txt",
        "card-2-two-stars.svg",
        "cut-list.txt",
        "plan.json",
        "sheet-cream-1-cutter.svg",
        "sheet-cream-1.svg",
        "sheet-cream-1.txt",
        "sheet-night-1.svg",
        "sheet-stars-comets-1.svg",
        "sheet-stars-dots-1.svg",
      ]),
    );
    expect(names.every((name) => /^[a-z0-9.-]+$/.test(name))).toBe(true);
    for (const name of names.filter((one) => one.endsWith(".svg")))
      expect(text(files, name)).toMatch(/^<\?xml|^<svg/);
    for (const { name, sha256: hash } of planFile(files).files) expect(sha256(text(files, name))).toBe(hash);
  });

  it("can be proven right from plan.json alone", async () => {
    const files = home();
    await runIn(PLAN, { files });
    const { project, plan } = planFile(files);
    expect(verifyPlan(project, plan)).toEqual([]);
    expect(plan.search).toMatchObject({ effort: "quick", seed: 1 });
  });

  it("is the same bytes each time, wherever it is made", async () => {
    const one = home();
    const other = memoryFiles({ "/elsewhere/far/evening.yml": CARDS });
    const argv = [...PLAN, "--json"];
    const first = await runIn(argv, { files: one });
    const second = await runIn(
      argv.map((word) => (word === "cards.yaml" ? "evening.yml" : word === "out" ? "../plan" : word)),
      { files: other, cwd: "/elsewhere/far" },
    );
    expect(second.stdout).toBe(first.stdout);
    for (const name of written(one)) expect(other.all.get(`/elsewhere/plan/${name}`)).toBe(text(one, name));
  });

  it("is the same from JSON as from YAML", async () => {
    const yaml = home(
      "sheetwright: 1\ntitle: A\npapers: { night: { cardstock: us-letter } }\ncards:\n  - { name: B, format: us-a2, base: night }\n",
    );
    const json = memoryFiles({
      "/desk/cards.json":
        '{"sheetwright":1,"title":"A","papers":{"night":{"cardstock":"us-letter"}},"cards":[{"name":"B","format":"us-a2","base":"night"}]}',
    });
    await runIn(PLAN, { files: yaml });
    await runIn(["plan", "cards.json", ...PLAN.slice(2)], { files: json });
    expect(written(json)).toEqual(written(yaml));
    for (const name of written(yaml)) expect(text(json, name)).toBe(text(yaml, name));
  });

  it("says in the maker's words what she needs to know", async () => {
    const { stdout, stderr } = await runIn(PLAN, { files: home() });
    const lines = stdout.split("\n");
    expect(lines.slice(0, 6)).toEqual([
      "Evening workshop",
      "",
      "Enough     yes, every piece of every copy is planned",
      "Cards      1 Lantern    6 copies  for 5 guests and 1 sample",
      "           2 Two stars  2 copies",
      "Pieces     all 24",
    ]);
    expect(lines[6]).toMatch(/^Papers {5}Night blue +4 of 6 sheets +fewest possible, proven$/);
    expect(stdout).toMatch(/\nFolds {6}with the grain on 6 of 8 bases\n {11}grain not known: 2 of 2a base\n/);
    expect(stdout).toMatch(/\nLeftovers {2}.*: \d+ of .* in/);
    expect(stdout).toMatch(/\nCuts {7}\d+ on all sheets, with \d+ settings? of the trimmer\n/);
    expect(stdout).toMatch(/\nWritten to out:\n {2}cut-list\.txt +open this first: /);
    expect(stdout).toContain("A blade that cuts card cuts fingers.");
    expect(stdout).not.toMatch(/guillotine|kerf|fence|bound|stage|node|group/);
    // A warning is no fault: it stands on standard error, with its place.
    expect(stderr).toMatch(/^cards\.yaml:8:3 papers\.ember: Note: .*\. \(unused-paper\)$/m);
    expect(stderr).toMatch(/^cards\.yaml:\d+:\d+ cards\[1\]\.front\[0\]\S*: Warning: .*\. \([a-z-]+\)$/m);
  });

  it("passes the options on to the search and to the cutter files", async () => {
    const plain = home();
    const other = home();
    await runIn(PLAN, { files: plain });
    const argv = [...PLAN, "--seed", "9", "--cutter-unit", "1/72in", "--cutter-edges", "closed"];
    expect((await runIn(argv, { files: other })).code).toBe(0);
    expect(planFile(other).plan.search).toMatchObject({ effort: "quick", seed: 9 });
    expect(text(other, "sheet-night-1-cutter.svg")).not.toBe(text(plain, "sheet-night-1-cutter.svg"));
  });

  it("that was ended early is the best one so far, and says so", async () => {
    const files = home();
    const { code, stdout } = await runIn([...PLAN, "--json"], { files, signal: { aborted: true } });
    expect(code).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({ enough: "yes", endedEarly: true });
    expect(text(files, "cut-list.txt")).toContain("The search was ended early");
  });

  it("lets the process hear of a signal, and shows on a terminal which papers are searched", async () => {
    let pauses = 0;
    stage.steps = 100;
    const { code, stderr } = await runIn(PLAN, {
      files: home(),
      terminal: true,
      pause: () => {
        pauses += 1;
        return Promise.resolve();
      },
    });
    expect(code).toBe(0);
    expect(pauses).toBeGreaterThan(0);
    expect(stderr).toMatch(/\rSearching: papers 2 of 4, 33 % done/);
  });

  it("that the verifier refuses is a fault of Sheetwright, and nothing is written", async () => {
    stage.findings = [{ code: "wrong-cost", path: "cost", message: "The cost is another one." }];
    const files = home();
    const before = files.snapshot();
    const { code, stdout, stderr } = await runIn(PLAN, { files });
    expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
    expect(stderr).toBe(
      "Sheetwright has a fault of its own and wrote nothing: The plan is not right: cost: The cost is another one.\n" +
        "Please report it, with this line, the command and the file it was given.\n",
    );
    expect(files.snapshot()).toBe(before);
  });
});

describe("a project that cannot be planned as asked", () => {
  it("is planned as far as the paper goes; what is missing is told with its paper and what would help", async () => {
    const files = home(CARDS.replace("count: 6, grain: long", "count: 2, grain: long"));
    const { code, stdout, stderr } = await runIn(PLAN, { files });
    expect(code).toBe(1);
    expect(stdout).toMatch(/\nEnough {5}no, proven\n/);
    expect(stderr).toMatch(
      /\nCannot be planned as asked: \d of 24 pieces missing\.\n\nMissing from Night blue:\n {2}\d of 6 1a base, 8 1\/2 x 5 1\/2 in\n/,
    );
    expect(stderr).toMatch(
      /\nAre 2 sheets enough\? No, proven\. At least 4 are needed, proven\.\nWith 2 more of Night blue \(count: 4\) a plan for all was found\.\n/,
    );
    expect(text(files, "cut-list.txt")).toMatch(/\nMISSING\n\nCannot be planned as asked: /);
    expect(planFile(files).plan.enough).toBe("no");
  });
});

describe("the summary as JSON", () => {
  it("is all there is on standard output; the text goes to standard error", async () => {
    const files = home();
    const { stdout, stderr } = await runIn([...PLAN, "--json"], { files });
    const summary: ProjectPlanSummary = JSON.parse(stdout);
    expect(stdout).toBe(`${JSON.stringify(summary, null, 2)}\n`);
    expect(stderr).toMatch(/^Evening workshop\n\nEnough {5}yes/);
    expect(summary).toMatchObject({
      sheetwright: "project-summary",
      version: 1,
      title: "Evening workshop",
      enough: "yes",
      endedEarly: false,
      units: { length: "tick", ticksPerInch: 40640, shown: "in" },
      pieces: { wanted: 24, cut: 24, missing: [] },
      noPaper: [],
      shortages: [],
    });
    expect(summary.cards[0]).toEqual({
      number: 1,
      name: "Lantern",
      wanted: 6,
      complete: 6,
      guests: 5,
      samples: 1,
    });
    expect(summary.papers.map(({ design }) => design)).toEqual([
      "night",
      "cream",
      "stars.dots",
      "stars.comets",
    ]);
    expect(summary.files.toSorted()).toEqual(written(files));
  });
});

describe("a folder that already holds a plan", () => {
  it("is given the new one; what is stale goes, what was changed stays", async () => {
    const files = home();
    await runIn(PLAN, { files });
    files.all.set("/desk/out/card-2-two-stars.svg", "mine");
    files.all.set("/desk/out/notes.txt", "mine");
    files.all.set("/desk/cards.yaml", LESS);
    const { code, stderr } = await runIn(PLAN, { files });
    expect(code).toBe(0);
    expect(stderr).toContain(
      "\ncard-2-two-stars.svg is of an earlier plan; it was changed since, so it was left there.\n",
    );
    expect(text(files, "notes.txt")).toBe("mine");
    expect(written(files).filter((name) => name.startsWith("card-2"))).toEqual(["card-2-two-stars.svg"]);
    expect(written(files)).not.toContain("sheet-stars-dots-1.svg");
  });

  it("may be that of a list of pieces, and the other way round", async () => {
    const files = home(LESS, { "/desk/pieces.csv": "name,width,height,quantity,turn\nmat,4,5,1,yes\n" });
    const list = "plan --pieces pieces.csv --sheet us-letter --out out --effort quick".split(" ");
    await runIn(list, { files });
    expect((await runIn(PLAN, { files })).code).toBe(0);
    expect(written(files)).not.toContain("sheet-1.svg");
    expect((await runIn(list, { files })).code).toBe(0);
    expect(written(files)).toEqual([
      "cut-list.txt",
      "plan.json",
      "sheet-1-cutter.svg",
      "sheet-1.svg",
      "sheet-1.txt",
    ]);
  });

  it.each([
    "plan.json",
    "cut-list.txt",
    "sheet-night-1.svg",
    "card-1-lantern.svg",
    "card-1-lantern-sizes.txt",
  ])("is left alone where it holds a %s that Sheetwright did not write, unless forced", async (name) => {
    const files = home(LESS, { [`/desk/out/${name}`]: "mine" });
    const before = files.snapshot();
    const { code, stdout, stderr } = await runIn(PLAN, { files });
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toMatch(`out/${name}: a file of this name is there already`);
    expect(files.snapshot()).toBe(before);
    expect((await runIn([...PLAN, "--force"], { files })).code).toBe(0);
    expect(text(files, name)).not.toBe("mine");
  });

  it("holds either the whole old plan or the whole new one, whichever step fails", async () => {
    const start = async (): Promise<MemoryFiles> => {
      const files = home();
      await runIn(PLAN, { files });
      files.all.set("/desk/cards.yaml", LESS);
      files.steps.length = 0;
      return files;
    };
    const trial = await start();
    const old = trial.snapshot();
    await runIn(PLAN, { files: trial });
    const lastMove = trial.steps.map(({ step }) => step).lastIndexOf("rename");
    for (let broken = 0; broken <= lastMove; broken += 9) {
      const files = await start();
      files.failWhen = (_, __, number) => (number === broken ? "ENOSPC" : undefined);
      const { code, stdout, stderr } = await runIn(PLAN, { files });
      expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
      expect(stderr).toContain('--out: "out" cannot be written to: the disk is full.');
      expect(files.snapshot()).toBe(old);
    }
  });
});
