import { readProject } from "@sheetwright/cards";
import type { LinearSolver } from "@sheetwright/packing";
import { describe, expect, test } from "vitest";
import { plan, verifyPlan } from "../src/index.js";

const { project } = readProject(`
sheetwright: 1
title: Lantern Night
papers:
  cream: { cardstock: us-letter }
cards:
  - { name: Lantern, format: us-a2, base: cream, copies: 41 }
  - { name: Boat, format: us-a7, base: cream, copies: 23 }
`);

describe("a solver of linear programs", () => {
  test("is named in the plan where one is passed in, and the plan is right whatever it answers", () => {
    if (project === null) throw new Error("The project must be sound.");
    const broken: LinearSolver = {
      name: "broken 1.0",
      solve: () => {
        throw new Error("out of memory");
      },
    };
    const without = plan(project, { effort: "quick" });
    const found = plan(project, { effort: "quick", solver: broken });
    expect([without.search.lp, found.search.lp]).toEqual(["none", "broken 1.0"]);
    expect(verifyPlan(project, found)).toEqual([]);
    expect(found.use).toEqual(without.use);
  });

  test("is refused where the plan names another one than its packings", () => {
    if (project === null) throw new Error("The project must be sound.");
    const found = plan(project, { effort: "quick" });
    const findings = verifyPlan(project, { ...found, search: { ...found.search, lp: "highs 0.0.0" } });
    expect(findings.map(({ code, path }) => [code, path])).toEqual([["wrong-search", "search.lp"]]);
  });
});
