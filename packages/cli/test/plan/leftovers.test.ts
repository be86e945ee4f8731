import type { CutNode, Packing, Problem } from "@sheetwright/packing";
import { describe, expect, it } from "vitest";
import { findLeftovers } from "../../src/plan/leftovers.js";

const problem: Problem = {
  kinds: [{ id: "mat", quantity: 5, forms: [{ width: 40, height: 100 }] }],
  sheets: [{ id: "cream", width: 102, height: 102, trim: { left: 1, right: 1, top: 1, bottom: 1 } }],
  mode: "guillotine",
  aim: "all",
  kerf: 2,
  smallestOffcut: { width: 20, height: 50 },
};
const share = (count: number): CutNode => ({
  type: "piece",
  shares: [{ kind: "mat", form: 0, turned: false, count }],
});
const packing = (run: number, second: number): Pick<Packing, "layouts"> => ({
  layouts: [
    {
      sheet: "cream",
      run,
      tree: {
        type: "split",
        axis: "x",
        parts: [
          { size: 40, node: share(run) },
          { size: 40, node: share(second) },
          { size: 16, node: { type: "waste" } },
        ],
      },
    },
  ],
});
const find = (run: number, second: number) => findLeftovers(problem, packing(run, second) as Packing);

describe("leftovers", () => {
  it("are counted over all sheets of a run, without trims and kerfs", () => {
    expect(find(3, 3)).toEqual([{ width: 16, height: 100, count: 3, keep: false }]);
  });

  it("include the places that yield no piece on some sheets of the run", () => {
    expect(find(3, 2)).toEqual([
      { width: 40, height: 100, count: 1, keep: true },
      { width: 16, height: 100, count: 3, keep: false },
    ]);
  });

  it("are worth keeping from the smallest size up, whichever way they lie", () => {
    const sized = { ...problem, smallestOffcut: { width: 100, height: 16 } };
    expect(findLeftovers(sized, packing(1, 1) as Packing)[0]?.keep).toBe(true);
  });
});
