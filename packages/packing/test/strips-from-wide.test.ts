import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arrange, type CutNode, cutOrder, type Problem, pack, type Sheet, verify } from "../src/index.js";
import { anyProblem } from "./problems.js";

const piece = (kind: string): CutNode => ({
  type: "piece",
  shares: [{ kind, form: 0, turned: false, count: 1 }],
});
const split = (axis: "x" | "y", ...parts: readonly (readonly [number, CutNode])[]): CutNode => ({
  type: "split",
  axis,
  parts: parts.map(([size, node]) => ({ size, node })),
});

function narrowCuts(sheet: Sheet, tree: CutNode, hold: number): number {
  const { cuts } = cutOrder(sheet, { sheet: sheet.id, run: 1, tree }, { narrowestHold: hold });
  return cuts.filter((cut) => cut.tooNarrow).length;
}

describe("narrow strips", () => {
  // A base of 7 x 10 with half-inch strips from the inch below it, in eighths of an inch.
  const sheet = { id: "letter", width: 68, height: 88 };
  const halves = (kind: string): CutNode => split("y", [4, piece(kind)], [4, piece(kind)]);
  const below = split("x", [38, halves("long")], [24, halves("short")], [6, { type: "waste" }]);
  const tree = split("y", [80, split("x", [56, piece("base")], [12, { type: "waste" }])], [8, below]);
  const smallestOffcut = { width: 16, height: 16 };

  test("come off the wide sheet instead of a part that cannot be held", () => {
    expect(narrowCuts(sheet, arrange(tree, sheet, { smallestOffcut }), 8)).toBeGreaterThan(0);
    const arranged = arrange(tree, sheet, { smallestOffcut, narrowestHold: 8 });
    expect(narrowCuts(sheet, arranged, 8)).toBe(0);
    expect(arranged).toMatchObject({ axis: "y", parts: [{ size: 80 }, { size: 4 }, { size: 4 }] });
  });

  test("leave an offcut whole", () => {
    const kept = arrange(tree, sheet, { smallestOffcut: { width: 6, height: 6 }, narrowestHold: 8 });
    expect(kept).toMatchObject({ axis: "y", parts: [{ size: 80 }, { size: 8 }] });
  });

  test("never make a plan wrong, larger or dearer", () => {
    fc.assert(
      fc.property(anyProblem, fc.integer({ min: 1, max: 30 }), (problem: Problem, narrowestHold) => {
        const plain = pack(problem, { effort: "quick" });
        const held = pack(problem, { effort: "quick", narrowestHold });
        expect(verify(problem, held)).toEqual([]);
        expect([held.cost, held.value, held.sheets]).toEqual([plain.cost, plain.value, plain.sheets]);
      }),
      // Each case makes two plans.
      { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 4) },
    );
  });
});
