import { inches } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { expandProject, findProjectFaults, type Paper, type Project, ProjectError } from "../../src/index.js";
import { card, evenly, face, paper, paperDesign, project } from "../small-project.js";

const sound = project([card(inches(5), inches(7), [])], {
  papers: [paper("night", inches(8.5), inches(11))],
});

const withPaper = (change: Partial<Paper>): Project => ({
  ...sound,
  papers: sound.papers.map((each) => ({ ...each, ...change })),
});
const withDesign = (change: object): Project => withPaper({ designs: [paperDesign("night", change)] });
const withTrimmer = (change: object): Project => ({ ...sound, trimmer: { ...sound.trimmer, ...change } });

// Made by other tools, which may not keep to the types.
const broken: readonly (readonly [string, Project, string, string])[] = [
  ["a count below 0", withDesign({ count: -1 }), "papers.night.count", "not-a-count"],
  ["half a sheet", withDesign({ count: 1.5 }), "papers.night.count", "not-a-count"],
  ["more sheets than can be counted", withDesign({ count: 3e9 }), "papers.night.count", "too-many"],
  ["a cost in words", withDesign({ cost: "abc" }), "papers.night.cost", "not-a-count"],
  [
    "a pack of no sheets",
    withPaper({ pack: { sheets: 0, cost: null } }),
    "papers.night.pack.sheets",
    "not-a-count",
  ],
  [
    "a pack of half sheets",
    withPaper({ pack: { sheets: 2.5, cost: null } }),
    "papers.night.pack.sheets",
    "not-a-count",
  ],
  [
    "a pack with a cost in words",
    withPaper({ pack: { sheets: 5, cost: "dear" } }),
    "papers.night.pack.cost",
    "not-a-count",
  ],
  ["a cost with five decimals", withDesign({ cost: "0.12345" }), "papers.night.cost", "not-a-count"],
  [
    "an offcut without a width",
    withDesign({ offcuts: [{ width: 0, height: 9, count: 1 }] }),
    "papers.night.offcuts[0]",
    "not-a-length",
  ],
  [
    "fewer than no offcuts",
    withDesign({ offcuts: [{ width: 9, height: 9, count: -1 }] }),
    "papers.night.offcuts[0].count",
    "not-a-count",
  ],
  [
    "an unknown pattern",
    withDesign({ front: face("night", { pattern: "foo" as "none" }) }),
    "papers.night.pattern",
    "not-a-word",
  ],
  [
    "an unknown pattern of a back",
    withDesign({ back: face("night.back", { pattern: "foo" as "none" }) }),
    "papers.night.back.pattern",
    "not-a-word",
  ],
  ["an unknown grain", withPaper({ grain: "foo" as "none" }), "papers.night.grain", "not-a-word"],
  ["a grain known from nowhere", withPaper({ grain: "width" }), "papers.night.grain", "contradiction"],
  [
    "an unknown grain that is given",
    withPaper({ grain: "unknown", grainBasis: "given" }),
    "papers.night.grain",
    "contradiction",
  ],
  ["an unknown material", withPaper({ material: "foo" as "pad" }), "papers.night", "not-a-word"],
  ["a negative trim", withPaper({ trim: { ...evenly(0), top: -1 } }), "papers.night.trim", "not-a-length"],
  [
    "a sheet without a width",
    withPaper({ sheet: { width: Number.NaN, height: 9 } }),
    "papers.night.cardstock",
    "not-a-length",
  ],
  ["no thickness", withPaper({ thickness: 0 }), "papers.night.thickness", "not-a-length"],
  ["a paper without designs", withPaper({ designs: [] }), "papers.night.designs", "missing"],
  [
    "a paper that is there twice",
    { ...sound, papers: [...sound.papers, ...sound.papers] },
    "papers.night",
    "twice",
  ],
  ["a negative kerf", withTrimmer({ kerf: -1 }), "trimmer.kerf", "not-a-length"],
  ["a longest cut of nothing", withTrimmer({ longestCut: 0 }), "trimmer.longest-cut", "not-a-length"],
  ["a negative hold", withTrimmer({ narrowestHold: -1 }), "trimmer.narrowest-hold", "not-a-length"],
  [
    "a smallest offcut of nothing",
    withTrimmer({ smallestOffcut: { width: 0, height: 1 } }),
    "trimmer.smallest-offcut",
    "not-a-length",
  ],
  ["unknown cuts", withTrimmer({ cuts: "foo" }), "trimmer.cuts", "not-a-word"],
  ["unknown units", { ...sound, units: "foo" as "in" }, "units", "not-a-word"],
];

describe("the papers and the tool of a project that another tool made", () => {
  test("have no faults where they are sound", () => {
    expect(findProjectFaults(sound)).toEqual([]);
  });

  test.each(broken)("%s is a fault with its place", (_, whole, path, code) => {
    const faults = findProjectFaults(whole);
    expect(faults[0]).toMatchObject({ path, code, line: null });
    if (code !== "missing") expect(faults[0]?.message).toContain(faults[0]?.found);
    expect(() => expandProject(whole)).toThrow(ProjectError);
  });
});
