import { inches } from "@sheetwright/measure";
import { describe, expect, it } from "vitest";
import type { PlanSummary } from "../../src/plan/plan-summary.js";
import { writeSummary } from "../../src/words/write-summary.js";

const summary: PlanSummary = {
  sheetwright: "summary",
  version: 1,
  outcome: "complete",
  endedEarly: false,
  units: { length: "tick", ticksPerInch: 40640, shown: "in" },
  sheet: { name: "US Letter sheet", width: inches(8.5), height: inches(11) },
  sheets: { used: 4, onHand: null, atLeast: 4, fewest: true, enough: null },
  pieces: { wanted: 12, cut: 12, missing: [], fitNoSheet: [] },
  yieldPercent: 91.3,
  layouts: [
    { name: "sheet-1", run: 3, cuts: 4, settings: 3 },
    { name: "sheet-2", run: 1, cuts: 1, settings: 1 },
  ],
  cuts: 13,
  settings: 4,
  hold: inches(1),
  narrowCuts: 0,
  longestCut: inches(11),
  leftovers: [
    { width: inches(3), height: inches(8.5), count: 2, keep: true },
    { width: inches(1), height: inches(1), count: 9, keep: false },
  ],
  files: [],
};
const write = (more: Partial<PlanSummary>): string => writeSummary({ ...summary, ...more }).join("\n");

describe("the summary for a person", () => {
  it("tells pieces, sheets, yield, layouts, cuts and leftovers", () => {
    expect(writeSummary(summary)).toEqual([
      "Pieces     all 12",
      "Sheets     4 of US Letter sheet, 8 1/2 x 11 in: fewest possible, proven",
      "Yield      91.3 % of the paper becomes pieces",
      "Layouts    sheet-1: cut 3 sheets like this, 4 cuts each",
      "           sheet-2: cut 1 sheet like this, 1 cut each",
      "Cuts       13 on all sheets, with 4 settings of the trimmer",
      "Leftovers  2 of 3 x 8 1/2 in",
    ]);
  });

  it("says how far a plan may be from the fewest sheets", () => {
    expect(write({ sheets: { ...summary.sheets, fewest: false, atLeast: 3 } })).toContain(
      "8 1/2 x 11 in: at most 1 more than the fewest possible\n",
    );
  });

  it("lists eight leftovers and counts the rest", () => {
    const leftovers = Array.from({ length: 10 }, () => ({
      width: inches(3),
      height: inches(3),
      count: 2,
      keep: true,
    }));
    expect(write({ leftovers }).match(/2 of 3 x 3 in/g)).toHaveLength(8);
    expect(write({ leftovers })).toMatch(/\n {11}and 4 smaller, listed in cut-list\.txt$/);
    expect(write({ leftovers: [] })).toContain("Leftovers  none worth keeping");
  });

  it("lists twelve layouts and counts the rest, or lists all where there is room", () => {
    const layouts = Array.from({ length: 14 }, (_, index) => ({
      name: `sheet-${index + 1}`,
      run: 1,
      cuts: 3,
      settings: 2,
    }));
    expect(write({ layouts })).toMatch(
      /sheet-12: cut 1 sheet like this, 3 cuts each\n {11}and 2 more layouts, listed in cut-list\.txt\n/,
    );
    expect(writeSummary({ ...summary, layouts }, 14).join("\n")).toContain("sheet-14: cut 1 sheet like this");
  });

  it("names narrow and long cuts, and what to do", () => {
    expect(write({ narrowCuts: 1 })).toContain(
      "1 cut holds a part narrower than 1 in (--hold); the cut lists mark it: cut along a metal ruler.",
    );
    expect(write({ narrowCuts: 3 })).toContain(
      "3 cuts hold a part narrower than 1 in (--hold); the cut lists mark them",
    );
    // 12 in is the usual cut of a craft trimmer (common practice, no source).
    expect(write({ longestCut: inches(12) })).not.toContain("longest cut");
    expect(write({ longestCut: inches(22) })).toContain("The longest cut is 22 in.");
  });

  it("says that a search was ended early", () => {
    expect(write({ endedEarly: true })).toContain("The search was ended early: this is the best plan so far");
  });

  it("explains the mark of a rounded length where one is printed", () => {
    expect(write({ sheet: { name: "ISO A4 sheet", width: 336000, height: 475200 } })).toMatch(
      /~ marks a length rounded to 1\/64 in/,
    );
    expect(write({})).not.toContain("~");
  });

  it("has no words of the workshop's inside", () => {
    const text = write({ narrowCuts: 2, endedEarly: true, longestCut: inches(22) });
    expect(text).not.toMatch(/guillotine|kerf|fence|bound|run of|stage|node/);
  });
});
