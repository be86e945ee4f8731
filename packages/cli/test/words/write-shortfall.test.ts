import { inches } from "@sheetwright/measure";
import type { Problem } from "@sheetwright/packing";
import { describe, expect, it } from "vitest";
import type { PlanSummary } from "../../src/plan/plan-summary.js";
import { writeShortfall } from "../../src/words/write-shortfall.js";

const problem: Problem = {
  kinds: [{ id: "panel", quantity: 4, forms: [{ width: inches(5), height: inches(7) }] }],
  sheets: [{ id: "square", width: inches(12), height: inches(12), stock: 1 }],
  mode: "guillotine",
  aim: "all",
};

function summary(
  sheets: Partial<PlanSummary["sheets"]>,
  outcome: PlanSummary["outcome"] = "not-found",
): PlanSummary {
  return {
    sheetwright: "summary",
    version: 1,
    outcome,
    endedEarly: false,
    units: { length: "tick", ticksPerInch: 40640, shown: "in" },
    sheet: { name: "square", width: inches(12), height: inches(12) },
    sheets: { used: 1, onHand: 1, atLeast: 1, fewest: false, enough: 2, ...sheets },
    pieces: { wanted: 4, cut: 3, missing: [{ kind: "panel", count: 1 }], fitNoSheet: [] },
    yieldPercent: 72.9,
    layouts: [],
    cuts: 0,
    settings: 0,
    hold: inches(1),
    narrowCuts: 0,
    longestCut: 0,
    leftovers: [],
    files: [],
  };
}

const lastLines = (text: readonly string[]): readonly string[] => text.slice(text.lastIndexOf("") + 1);

describe("is there enough", () => {
  it("needs no answer where all pieces are planned", () => {
    expect(writeShortfall(summary({}, "complete"), problem)).toEqual([]);
  });

  it("is no, proven, where the bound is above what is on hand", () => {
    expect(lastLines(writeShortfall(summary({ atLeast: 2 }), problem))).toEqual([
      "Can all pieces be cut from 1 sheet? No, proven. At least 2 sheets are needed, proven.",
      "2 sheets were found to be enough: --count 2.",
    ]);
    expect(lastLines(writeShortfall(summary({ atLeast: null }, "short"), problem))[0]).toBe(
      "Can all pieces be cut from 1 sheet? No, proven.",
    );
  });

  it("is not found, with the bound, where nothing is proven", () => {
    expect(writeShortfall(summary({}), problem)).toEqual([
      "Cannot be planned as asked: 1 of 4 pieces missing.",
      "",
      "  1 of 4 panel, 5 x 7 in",
      "",
      "Can all pieces be cut from 1 sheet? Not found; nothing proves that it cannot be done. At least 1 sheet is needed, proven.",
      "2 sheets were found to be enough: --count 2.",
    ]);
  });

  it("comes with what else may help", () => {
    const shelf: Problem = { ...problem, mode: "shelf" };
    expect(lastLines(writeShortfall(summary({ enough: null }), shelf)).slice(1)).toEqual([
      "--mode guillotine may place more.",
    ]);
    expect(lastLines(writeShortfall(summary({ enough: null }), problem)).slice(1)).toEqual([
      "--effort thorough searches longer.",
    ]);
    const short: Problem = {
      ...problem,
      sheets: [{ id: "square", width: inches(12), height: inches(12), longestCut: inches(11) }],
    };
    expect(lastLines(writeShortfall(summary({ onHand: null, enough: null }), short))).toEqual([
      "No way was found to cut the missing pieces.",
      "No cut across a part of 12 x 12 in is possible where --longest-cut is 11 in: use a smaller sheet.",
    ]);
  });
});
