import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { countCuts } from "../src/cut-order/count-cuts.js";
import { cutOrder } from "../src/cut-order.js";
import { pack } from "../src/pack.js";
import { anyProblem } from "./problems.js";

describe("counting cuts", () => {
  it("counts as many as the order of cuts lists", () => {
    fc.assert(
      fc.property(anyProblem, (problem) => {
        const sheets = new Map(problem.sheets.map((sheet) => [sheet.id, sheet]));
        for (const layout of pack(problem, { effort: "quick" }).layouts) {
          const sheet = sheets.get(layout.sheet)!;
          const { cuts } = cutOrder(sheet, layout, { narrowestHold: 0, kerf: problem.kerf ?? 0 });
          expect(countCuts(sheet, layout, problem.kerf)).toBe(cuts.length);
        }
      }),
    );
  });

  it("counts no cut for a sheet that is one piece", () => {
    const tree = { type: "piece", shares: [{ kind: "whole", form: 0, turned: false, count: 1 }] } as const;
    expect(countCuts({ id: "sheet", width: 5, height: 7 }, { tree })).toBe(0);
  });
});
