import { describe, expect, test } from "vitest";
import { dropSurplus } from "../../src/columns/drop-surplus.js";
import type { CutNode } from "../../src/index.js";
import { compileProblem } from "../../src/search/compiled-problem.js";
import type { DraftLayout } from "../../src/search/draft.js";

const problem = compileProblem({
  kinds: [
    { id: "card", quantity: 7, forms: [{ width: 4, height: 6 }] },
    { id: "tag", quantity: 2, forms: [{ width: 2, height: 6 }] },
  ],
  sheets: [{ id: "sheet", width: 10, height: 6 }],
  mode: "guillotine",
  aim: "all",
});

const leaf = (kind: string): CutNode => ({
  type: "piece",
  shares: [{ kind, form: 0, turned: false, count: 1 }],
});

/** Two cards and a tag from each of some sheets. */
const layout = (run: number): DraftLayout => {
  const tree: CutNode = {
    type: "split",
    axis: "x",
    parts: [
      { size: 4, node: leaf("card") },
      { size: 4, node: leaf("card") },
      { size: 2, node: leaf("tag") },
    ],
  };
  const counts = new Map([
    [0, 2],
    [1, 1],
  ]);
  const sheet = problem.sheets[0] as DraftLayout["sheet"];
  return { sheet, run, tree: () => tree, counts, spread: 0 };
};

const summary = (layouts: readonly DraftLayout[]) =>
  layouts.map(({ run, counts }) => ({ run, counts: Object.fromEntries(counts) }));

describe("copies that nobody wants", () => {
  test("leave their places as waste, on as few sheets as possible", () => {
    const left = dropSurplus(problem, [layout(4)], [7, 2]);
    expect(summary(left)).toEqual([
      { run: 2, counts: { 0: 2, 1: 1 } },
      { run: 1, counts: { 0: 2 } },
      { run: 1, counts: { 0: 1 } },
    ]);
    expect(JSON.stringify(left[2]?.tree()).match(/"waste"/g)).toHaveLength(2);
    expect(left[2]?.spread).toBe(24 * 24 + 12 * 12);
  });

  test("take empty sheets with them", () => {
    expect(summary(dropSurplus(problem, [layout(1), layout(3)], [2, 1]))).toEqual([
      { run: 1, counts: { 0: 2, 1: 1 } },
    ]);
  });

  test("are none where all is wanted", () => {
    const all = [layout(3)];
    expect(dropSurplus(problem, all, [6, 3])).toEqual(all);
  });
});
