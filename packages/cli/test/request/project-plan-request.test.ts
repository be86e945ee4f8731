import { describe, expect, it } from "vitest";
import { writeFault } from "../../src/fault.js";
import { OPTION_KEYS, PLAN_OPTIONS, type WrittenOptions } from "../../src/request/plan-options.js";
import { asksForList, readProjectPlanRequest } from "../../src/request/project-plan-request.js";

const faults = (rest: readonly string[], options: WrittenOptions = { out: ["out"] }): readonly string[] =>
  readProjectPlanRequest(options, rest).faults.map(writeFault);

describe("what a plan of a project is asked", () => {
  it("has defaults for all but the file and the folder", () => {
    expect(readProjectPlanRequest({ out: ["out"] }, ["cards.yaml"])).toMatchObject({
      faults: [],
      request: {
        file: "cards.yaml",
        out: "out",
        stock: null,
        after: null,
        effort: "standard",
        seed: 1,
        jobs: null,
        ownSolver: false,
        json: false,
        force: false,
        cutterUnit: "mm",
        cutterEdges: "once",
      },
    });
  });

  it("takes the options of both forms", () => {
    const written = {
      out: ["out"],
      stock: ["stock.json"],
      after: ["before"],
      effort: ["quick"],
      seed: ["7"],
      jobs: ["2"],
      ownSolver: true,
      json: true,
      force: true,
      cutterUnit: ["1/72in"],
      cutterEdges: ["closed"],
    } as const;
    expect(readProjectPlanRequest(written, ["a/b c.json"]).request).toEqual({
      file: "a/b c.json",
      out: "out",
      stock: "stock.json",
      after: "before",
      effort: "quick",
      seed: 7,
      jobs: 2,
      ownSolver: true,
      json: true,
      force: true,
      cutterUnit: "1/72 in",
      cutterEdges: "closed",
    });
  });

  it("refuses every option of a list, and says how a project says the same", () => {
    for (const key of OPTION_KEYS) {
      const option = PLAN_OPTIONS[key];
      if (!("inProject" in option)) continue;
      expect(faults(["cards.yaml"], { out: ["out"], [key]: ["1"] })).toEqual([
        `${option.flags.split(" ")[0]}: this option is for a list of pieces. A project says it in its file: ${option.inProject}.`,
      ]);
    }
  });

  it("finds the file beside an unknown option", () => {
    expect(faults(["--efort", "quick", "cards.yaml"])).toEqual([
      "--efort: this option is not known. Did you mean --effort?",
    ]);
    expect(faults(["--fast", "cards.yaml"])).toEqual(["--fast: this option is not known."]);
  });

  it("refuses a second file", () => {
    expect(faults(["cards.yaml", "more.yaml"])).toEqual([
      '"more.yaml": nothing was expected here. One project file is planned at a time. A name with spaces in it goes in quotes.',
    ]);
  });

  it("wants a file and a folder", () => {
    expect(faults([], {})).toEqual([
      "sheetwright plan: the project file is missing. Give its name, such as sheetwright plan cards.yaml --out plan; " +
        "for a list of pieces give --pieces and --sheet.",
      "--out: missing. Give --out <folder>, such as --out plan.",
    ]);
  });
});

describe("which of the two forms is meant", () => {
  it("is a list where --pieces is given, or without a file what only a list has", () => {
    expect(asksForList({ pieces: ["a.csv"] }, [])).toBe(true);
    expect(asksForList({ pieces: ["a.csv"] }, ["cards.yaml"])).toBe(true);
    expect(asksForList({ sheet: ["us-letter"] }, [])).toBe(true);
    expect(asksForList({ sheet: ["us-letter"] }, ["cards.yaml"])).toBe(false);
    expect(asksForList({ out: ["out"] }, ["cards.yaml"])).toBe(false);
    expect(asksForList({}, [])).toBe(false);
  });
});
