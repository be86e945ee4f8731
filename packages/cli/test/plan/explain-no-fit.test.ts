import { inches } from "@sheetwright/measure";
import type { Problem, Turns } from "@sheetwright/packing";
import { describe, expect, it } from "vitest";
import { explainNoFit, writeNoFit } from "../../src/plan/explain-no-fit.js";

function problem(width: number, height: number, turns: Turns, trim = 0): Problem {
  const edge = inches(trim);
  return {
    kinds: [{ id: "poster", quantity: 1, forms: [{ width: inches(width), height: inches(height), turns }] }],
    sheets: [
      {
        id: "us-letter",
        width: inches(8.5),
        height: inches(11),
        ...(trim === 0 ? {} : { trim: { left: edge, right: edge, top: edge, bottom: edge } }),
      },
    ],
    mode: "guillotine",
    aim: "all",
  };
}

const explain = (asked: Problem): readonly string[] =>
  explainNoFit(asked, "in").map((one) => writeNoFit(one, asked, "in"));

describe("a piece that is larger than the sheet", () => {
  it("is told with both sides that are too large, and a sheet that would do", () => {
    expect(explain(problem(9, 12, "upright"))).toEqual([
      '"poster" (9 x 12 in) is larger than the sheet (8 1/2 x 11 in): it is 1/2 in too wide and 1 in too high. ' +
        "A sheet of 9 x 12 in would do, or make the piece smaller.",
    ]);
  });

  it("is measured the way it comes nearest, where it may be turned", () => {
    expect(explain(problem(12, 8, "both"))).toEqual([
      '"poster" (12 x 8 in) is larger than the sheet (8 1/2 x 11 in): at best when turned, it is 1 in too high. ' +
        "A sheet of 8 1/2 x 12 in would do, or make the piece smaller.",
    ]);
  });

  it("is advised to turn where only that is forbidden", () => {
    expect(explain(problem(10, 7, "upright"))).toEqual([
      '"poster" (10 x 7 in) is larger than the sheet (8 1/2 x 11 in): it is 1 1/2 in too wide. ' +
        "It would fit turned: if its pattern and grain allow that, say yes in its turn column.",
    ]);
  });

  it("is advised to leave the trim out where that would do", () => {
    expect(explain(problem(8.5, 10, "upright", 1 / 8))).toEqual([
      '"poster" (8 1/2 x 10 in) is larger than the sheet inside its trim (8 1/4 x 10 3/4 in): it is 1/4 in too wide. ' +
        "It would fit without the trim.",
    ]);
  });

  it("counts the trim in for a sheet that would do", () => {
    expect(explain(problem(9, 10, "upright", 1 / 8))[0]).toContain("A sheet of 9 1/4 x 11 in would do");
  });

  it("is asked about its unit where it would fit in millimetres", () => {
    expect(explain(problem(148, 210, "both"))[0]).toMatch(
      /If its size is in millimetres, give --unit mm or write mm/,
    );
  });

  it("is nothing where it fits as it may lie, to the tick", () => {
    expect(explain(problem(8.5, 11, "upright"))).toEqual([]);
    expect(explain(problem(11, 8.5, "both"))).toEqual([]);
    expect(explain(problem(11, 8.5, "upright"))).toHaveLength(1);
    expect(explain(problem(8.5 + 1 / 40640, 11, "both"))).toHaveLength(1);
  });
});
