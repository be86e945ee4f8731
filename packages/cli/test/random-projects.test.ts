import { verifyPlan } from "@sheetwright/planner";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { randomProject } from "../../cards/test/random-project.js";
import { type ProjectPlanFile, projectPlanFile } from "../src/project-plan/project-plan-file.js";
import type { ProjectPlanSummary } from "../src/project-plan/project-plan-summary.js";
import { type MemoryFiles, memoryFiles } from "./memory-files.js";
import { type Ended, runIn } from "./run-in.js";

/** A slip of the pen in about one project of five: some letters of its text become others. */
const slip = fc.option(
  fc.record({
    at: fc.nat({ max: 9999 }),
    length: fc.nat({ max: 3 }),
    instead: fc.constantFrom("", "0", "x", "-", '"', ",", "{", "9 7/8", "nigth", "\n"),
  }),
  { freq: 4, nil: undefined },
);

async function runOn(text: string): Promise<Ended & { readonly files: MemoryFiles }> {
  const files = memoryFiles({ "/desk/cards.json": text });
  const argv = ["plan", "cards.json", "--out", "out", "--effort", "quick", "--json"];
  return { ...(await runIn(argv, { files })), files };
}

// A whole plan with all its drawings takes a tenth of a second, so a quarter of the usual number of cases goes through here;
// the parts of it have properties of their own.
const numRuns = Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 4);

describe("any project", () => {
  it("gives a plan that can be proven, or faults that say where; the same bytes each time, nothing half done", async () => {
    const ends = { 0: 0, 1: 0, 2: 0 };
    let runs = 0;
    await fc.assert(
      fc.asyncProperty(randomProject({ cards: 2, copies: 4, layers: 3 }), slip, async (project, wrong) => {
        const right = JSON.stringify(project, null, 1);
        const at = wrong === undefined ? 0 : wrong.at % right.length;
        const text =
          wrong === undefined ? right : right.slice(0, at) + wrong.instead + right.slice(at + wrong.length);
        const { code, stdout, stderr, files } = await runOn(text);
        ends[code] += 1;
        runs += 1;
        expect(stderr).not.toMatch(/fault of its own|^\s+at |undefined|NaN|\[object/m);
        if (code === 2) {
          expect(wrong).toBeDefined();
          expect(JSON.parse(stdout).faults.length).toBeGreaterThan(0);
          expect([...files.all.keys()]).toEqual(["/desk/cards.json"]);
          return;
        }
        const told: ProjectPlanSummary = JSON.parse(stdout);
        const written: ProjectPlanFile = JSON.parse(String(files.all.get("/desk/out/plan.json")));
        expect(projectPlanFile.safeParse(written).error).toBeUndefined();
        expect(verifyPlan(written.project, written.plan)).toEqual([]);
        expect(told.enough === "yes").toBe(code === 0);
        const lacks = (told.items ?? []).some(({ onHand, needed }) => onHand !== null && needed > onHand);
        expect(told.pieces.missing.length === 0 && !lacks).toBe(code === 0);
        expect(told.pieces.cut + told.pieces.missing.reduce((sum, { count }) => sum + count, 0)).toBe(
          told.pieces.wanted,
        );
        expect(stderr.includes("Cannot be planned as asked")).toBe(code === 1);
        expect([...files.all.keys()].sort()).toEqual(
          ["/desk/cards.json", ...told.files.map((name) => `/desk/out/${name}`)].sort(),
        );
        // A second run of every fourth project takes a fifth of the time, not half of it.
        if (runs % 4 !== 0) return;
        const again = await runOn(text);
        expect(again.stdout).toBe(stdout);
        expect(again.files.snapshot()).toBe(files.snapshot());
      }),
      { numRuns },
    );
    // Each of the three ends must come up often enough for the property to say something of it.
    if (runs >= 100) for (const count of Object.values(ends)) expect(count).toBeGreaterThan(runs / 50);
  }, 300_000);
});
