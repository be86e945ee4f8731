import { inches, millimetres } from "@sheetwright/measure";
import { describe, expect, it } from "vitest";
import { writeFault } from "../../src/fault.js";
import type { WrittenOptions } from "../../src/request/plan-options.js";
import { readPlanRequest } from "../../src/request/plan-request.js";

const NEEDED = { pieces: ["pieces.csv"], sheet: ["us-letter"], out: ["out"] };
const request = (options: WrittenOptions = {}) => {
  const read = readPlanRequest({ ...NEEDED, ...options }, []);
  expect(read.faults.map(writeFault)).toEqual([]);
  return read.request;
};
const faults = (options: WrittenOptions, rest: readonly string[] = []): readonly string[] =>
  readPlanRequest({ ...NEEDED, ...options }, rest).faults.map(writeFault);

describe("what a plan is asked", () => {
  it("has defaults for all but the pieces, the sheet and the folder", () => {
    expect(request()).toEqual({
      pieces: "pieces.csv",
      out: "out",
      unit: "in",
      sheet: { id: "us-letter", name: "US Letter sheet", width: inches(8.5), height: inches(11) },
      count: null,
      mode: "guillotine",
      trim: {},
      kerf: 0,
      longestCut: null,
      // Common practice, no published source: what a tool holds firmly, and the smallest leftover kept.
      hold: inches(1),
      keep: { width: inches(2), height: inches(2) },
      cutterUnit: "mm",
      cutterEdges: "once",
      effort: "standard",
      seed: 1,
      jobs: null,
      ownSolver: false,
      json: false,
      force: false,
    });
  });

  it("has round metric defaults with --unit mm", () => {
    expect(request({ unit: ["mm"] })).toMatchObject({
      unit: "mm",
      hold: millimetres(25),
      keep: { width: millimetres(50), height: millimetres(50) },
    });
  });

  it("takes every option", () => {
    expect(
      request({
        sheet: ["210x297mm"],
        count: ["20"],
        unit: ["mm"],
        mode: ["shelf"],
        trim: ["1/8 in"],
        trimSides: ["left, top"],
        kerf: ["0.5"],
        longestCut: ["300"],
        hold: ["0"],
        keep: ["3 x 4 in"],
        cutterUnit: ["1/96in"],
        cutterEdges: ["closed"],
        effort: ["thorough"],
        seed: ["7"],
        jobs: ["2"],
        ownSolver: true,
        json: true,
        force: true,
      }),
    ).toEqual({
      pieces: "pieces.csv",
      out: "out",
      unit: "mm",
      sheet: {
        id: "210 x 297 mm",
        name: "210 x 297 mm sheet",
        width: millimetres(210),
        height: millimetres(297),
      },
      count: 20,
      mode: "shelf",
      trim: { left: inches(0.125), top: inches(0.125) },
      kerf: millimetres(0.5),
      longestCut: millimetres(300),
      hold: 0,
      keep: { width: inches(3), height: inches(4) },
      cutterUnit: "1/96 in",
      cutterEdges: "closed",
      effort: "thorough",
      seed: 7,
      jobs: 2,
      ownSolver: true,
      json: true,
      force: true,
    });
  });

  it("trims all four sides unless told which", () => {
    const trim = inches(0.125);
    expect(request({ trim: ["1/8"] })?.trim).toEqual({ left: trim, right: trim, top: trim, bottom: trim });
    expect(request({ trim: ["0"] })?.trim).toEqual({});
  });

  it("never turns a sheet: width comes first", () => {
    expect(request({ sheet: ["11 x 8 1/2"] })?.sheet).toMatchObject({
      width: inches(11),
      height: inches(8.5),
    });
  });

  it.each([
    "us-letter",
    "US Letter",
    "12x12in",
    "12 x 12",
    '12" x 12"',
    "8-1/2 x 11 in",
    "21 x 29.7 cm",
    "210×297mm",
  ])("takes %s for a sheet", (sheet) => {
    expect(request({ sheet: [sheet] })?.sheet.width).toBeGreaterThan(0);
  });

  it("names the size of a card that was given for a sheet", () => {
    expect(faults({ sheet: ["us-a7"] })).toEqual([
      '--sheet: "us-a7" is the size of a card, expected that of a sheet. Write 5 x 7 in if that is meant.',
    ]);
  });

  it("takes numbers written in full only", () => {
    for (const count of ["0", "-1", "1.5", "1e3", "", "100001", "0x10", "twenty"]) {
      expect(faults({ count: [count] })).toHaveLength(1);
    }
    for (const seed of ["-1", "4294967296", "one"]) expect(faults({ seed: [seed] })).toHaveLength(1);
    expect(request({ count: ["100000"], seed: ["4294967295"] })).toMatchObject({
      count: 100_000,
      seed: 4_294_967_295,
    });
  });

  it("refuses an option that is given twice", () => {
    expect(faults({ count: ["3", "4"] })).toEqual([
      "--count: given 2 times, expected once. Keep one of them.",
    ]);
  });

  it("refuses words that are no option, all in one fault", () => {
    expect(faults({}, ["1/2", "x", "11"])).toEqual([
      '"1/2 x 11": nothing was expected here. A value with spaces in it goes in quotes, such as --sheet "8 1/2 x 11 in".',
    ]);
  });

  it("suggests the option that was meant, and lets its value pass", () => {
    expect(faults({}, ["--mod", "shelf"])).toEqual(["--mod: this option is not known. Did you mean --mode?"]);
    expect(faults({}, ["--colour"])).toEqual(["--colour: this option is not known."]);
  });

  it("refuses a trim that leaves nothing or cannot be cut", () => {
    expect(faults({ trim: ["4 1/4"] })[0]).toMatch(/^--trim: trimming takes the whole sheet/);
    expect(faults({ trim: ["1/8"], longestCut: ["10"] })[0]).toContain("takes a cut of 11 in");
    expect(request({ trim: ["1/8"], trimSides: ["top"], longestCut: ["10"] })?.longestCut).toBe(inches(10));
  });

  it("keeps what could be read, so that the piece list can be judged in the same run", () => {
    const read = readPlanRequest({ ...NEEDED, count: ["x"], unit: ["mm"] }, []);
    expect(read).toMatchObject({ request: null, pieces: "pieces.csv", out: "out", unit: "mm" });
    expect(readPlanRequest({ ...NEEDED, unit: ["cm"] }, []).unit).toBeNull();
  });
});
