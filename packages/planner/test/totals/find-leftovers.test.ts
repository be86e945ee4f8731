import { howMany, type Packing, type Problem, pack } from "@sheetwright/packing";
import { describe, expect, test } from "vitest";
import { findLeftovers } from "../../src/index.js";

const problem: Problem = {
  kinds: [{ id: "mat", quantity: 7, forms: [{ width: 5, height: 7 }] }],
  sheets: [
    { id: "a", width: 12, height: 12, stock: 2 },
    { id: "b", width: 5, height: 14, stock: 9, trim: { left: 0, bottom: 2 } },
  ],
  mode: "guillotine",
  aim: "all",
  smallestOffcut: { width: 4, height: 2 },
};
const packing = pack(problem, { effort: "quick" });

describe("leftovers", () => {
  test("and pieces are all that lies inside the trim", () => {
    const area = ({ width, height }: { width: number; height: number }): number => width * height;
    const left = findLeftovers(problem, packing).reduce((sum, one) => sum + one.count * area(one), 0);
    const usable = packing.layouts.reduce((sum, { sheet, run }) => sum + run * (sheet === "a" ? 144 : 60), 0);
    expect(left).toBe(usable - 7 * 35);
  });

  test("are worth keeping from the smallest size on, either way round, the largest first", () => {
    const left = findLeftovers(problem, packing);
    for (const { width, height, keep } of left) {
      expect(keep).toBe(Math.max(width, height) >= 4 && Math.min(width, height) >= 2);
    }
    const areas = left.map(({ width, height }) => width * height);
    expect(areas).toEqual([...areas].sort((a, b) => b - a));
  });

  test("of some sheets and of the others are all", () => {
    const count = (isOf?: (sheet: string) => boolean): number =>
      findLeftovers(problem, packing, isOf).reduce((sum, one) => sum + one.count, 0);
    expect(count((sheet) => sheet === "a") + count((sheet) => sheet === "b")).toBe(count());
  });

  test("are all kept where no smallest size is set, and none where nothing is left", () => {
    const sheet = { id: "a", width: 10, height: 7 };
    expect(howMany(sheet, { width: 5, height: 7 }).count).toBe(2);
    const { smallestOffcut: _, ...any } = { ...problem, sheets: [sheet] };
    expect(findLeftovers(any, pack(any))).toEqual([{ width: 5, height: 7, count: 1, keep: true }]);
    expect(findLeftovers(any, { layouts: [] })).toEqual([]);
  });

  test("of a sheet that is not there are refused", () => {
    const layouts: Packing["layouts"] = [{ sheet: "z", run: 1, tree: { type: "waste" } }];
    expect(() => findLeftovers(problem, { layouts })).toThrow('names the sheet "z"');
  });
});
