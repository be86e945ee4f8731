import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arrange } from "../src/arrange.js";
import type { CutNode, LeftoverLeaf, PieceLeaf, Size, Split } from "../src/model.js";
import { placements } from "../src/placements.js";
import { verify } from "../src/verify/verify.js";
import { drawFrom, validPlans } from "./valid-plan.js";

const offcut: LeftoverLeaf = { type: "offcut" };
const waste: LeftoverLeaf = { type: "waste" };

function piece(kind: string): PieceLeaf {
  return { type: "piece", shares: [{ kind, form: 0, turned: false, count: 1 }] };
}

function split(axis: "x" | "y", ...parts: readonly (readonly [number, CutNode])[]): Split {
  return { type: "split", axis, parts: parts.map(([size, node]) => ({ size, node })) };
}

describe("arrange", () => {
  it("puts large parts first, equal ones together, and the leftover last", () => {
    const tree = split("x", [2, offcut], [1, piece("c")], [3, piece("a")], [2, piece("b")], [3, piece("a")]);
    expect(arrange(tree, { width: 11, height: 4 })).toEqual(
      split("x", [3, piece("a")], [3, piece("a")], [2, piece("b")], [1, piece("c")], [2, offcut]),
    );
  });

  it("makes nested splits of one axis one level", () => {
    const tree = split("x", [7, split("x", [3, piece("a")], [4, piece("b")])], [5, piece("c")]);
    expect(arrange(tree, { width: 12, height: 4 })).toEqual(
      split("x", [5, piece("c")], [4, piece("b")], [3, piece("a")]),
    );
  });

  it("makes one leftover of several, and regains the kerf between them", () => {
    const tree = split("y", [3, offcut], [5, piece("a")], [2, waste]);
    expect(arrange(tree, { width: 6, height: 12 }, { kerf: 1 })).toEqual(
      split("y", [5, piece("a")], [6, offcut]),
    );
  });

  it("names leftovers by their size, in either direction", () => {
    const tree = split("x", [4, piece("a")], [3, waste]);
    const size = { width: 7, height: 8 };
    const nameFor = (smallestOffcut: Size): CutNode => arrange(tree, size, { smallestOffcut });
    expect(nameFor({ width: 8, height: 3 })).toEqual(split("x", [4, piece("a")], [3, offcut]));
    expect(nameFor({ width: 8, height: 4 })).toEqual(split("x", [4, piece("a")], [3, waste]));
  });

  it("does not cut what holds no piece", () => {
    const tree = split(
      "x",
      [4, piece("a")],
      [6, split("y", [3, offcut], [5, split("x", [2, waste], [4, waste])])],
    );
    expect(arrange(tree, { width: 10, height: 8 })).toEqual(split("x", [4, piece("a")], [6, offcut]));
    expect(arrange(split("y", [3, waste], [5, waste]), { width: 9, height: 8 })).toEqual(offcut);
  });

  it("drops a level with a single part, but keeps the cut that takes a remainder off", () => {
    const inner = split("y", [3, piece("a")], [4, piece("b")]);
    const size = { width: 6, height: 7 };
    const bare = split("y", [4, piece("b")], [3, piece("a")]);
    expect(arrange(split("x", [6, inner]), size)).toEqual(bare);
    expect(arrange(split("x", [5, split("y", [7, piece("a")])]), size, { kerf: 2 })).toEqual(
      split("x", [5, piece("a")]),
    );
  });

  it("joins levels of one axis when the level between them goes", () => {
    const tree = split(
      "x",
      [4, piece("a")],
      [6, split("y", [8, split("x", [1, piece("b")], [5, piece("c")])])],
    );
    expect(arrange(tree, { width: 10, height: 8 })).toEqual(
      split("x", [5, piece("c")], [4, piece("a")], [1, piece("b")]),
    );
  });

  // Two 5 x 7 flats from 12 x 12, cut badly, leave 2 x 12 and two 5 x 5 (common practice, no source).
  it("leaves one large offcut instead of several small ones", () => {
    const strip = split("y", [7, piece("flat")], [5, offcut]);
    const tree = split("x", [5, strip], [5, strip], [2, offcut]);
    expect(arrange(tree, { width: 12, height: 12 })).toEqual(
      split("y", [7, split("x", [5, piece("flat")], [5, piece("flat")], [2, offcut])], [5, offcut]),
    );
  });

  it("gives the free corner to the neighbour that becomes the largest", () => {
    const tree = split("y", [10, split("x", [5, piece("a")], [7, offcut])], [2, offcut]);
    expect(arrange(tree, { width: 12, height: 12 })).toEqual(
      split("x", [5, split("y", [10, piece("a")], [2, offcut])], [7, offcut]),
    );
  });

  it("does not enlarge an offcut by one more stage", () => {
    const strip = split("y", [4, piece("a")], [3, piece("b")], [5, offcut]);
    const tree = split("x", [5, strip], [5, strip], [2, offcut]);
    expect(arrange(tree, { width: 12, height: 12 })).toEqual(tree);
  });

  it("does not enlarge an offcut by a longer cut, unless it may be that long", () => {
    const tree = split("y", [10, split("x", [5, piece("a")], [4, offcut])], [2, offcut]);
    const size = { width: 9, height: 12 };
    const across = split("x", [5, split("y", [10, piece("a")], [2, offcut])], [4, offcut]);
    expect(arrange(tree, size, { longestCut: 11 })).toEqual(tree);
    expect(arrange(tree, size, { longestCut: 12 })).toEqual(across);
  });

  it("gathers only the strips whose ends reach, where a stage is free", () => {
    const full = split("y", [6, piece("c")], [6, split("x", [2, piece("d")], [3, piece("e")])]);
    const short = split("y", [7, piece("a")], [5, offcut]);
    expect(arrange(split("x", [5, full], [5, short], [3, offcut]), { width: 13, height: 12 })).toEqual(
      split(
        "x",
        [8, split("y", [7, split("x", [5, piece("a")], [3, offcut])], [5, offcut])],
        [5, split("y", [6, piece("c")], [6, split("x", [3, piece("e")], [2, piece("d")])])],
      ),
    );
  });

  it("keeps the widest parts together where the tool can hold none of a level, its leftover included", () => {
    const tree = split("x", [14, piece("a")], [10, piece("b")], [17, offcut]);
    const size = { width: 41, height: 40 };
    expect(arrange(tree, size, { narrowestHold: 17 })).toEqual(tree);
    expect(arrange(tree, size, { narrowestHold: 18 })).toEqual(
      split("x", [17, offcut], [14, piece("a")], [10, piece("b")]),
    );
  });

  it("arranges what lies in windows and between stopped cuts each for itself", () => {
    const messy = split("x", [1, piece("b")], [3, piece("a")]);
    const neat = split("x", [3, piece("a")], [1, piece("b")]);
    const window = { x: 1, y: 1, width: 4, height: 6, tool: "knife" };
    const mat: PieceLeaf = { ...piece("mat"), window: { ...window, tree: messy } };
    expect(arrange(mat, { width: 6, height: 8 })).toEqual({ ...mat, window: { ...window, tree: neat } });

    const lines = { type: "stopped", hand: "clockwise", x1: 5, x2: 7, y1: 5, y2: 7 } as const;
    const around = { top: piece("t"), right: piece("r"), bottom: piece("b"), left: piece("l") };
    const centre = split("x", [1, offcut], [1, offcut]);
    expect(arrange({ ...lines, ...around, centre }, { width: 12, height: 12 })).toEqual({
      ...lines,
      ...around,
      centre: offcut,
    });
    const empty = { top: waste, right: waste, bottom: waste, left: waste, centre };
    expect(arrange({ ...lines, ...empty }, { width: 12, height: 12 })).toEqual(offcut);
  });

  it("refuses options that are no lengths and parts that do not fit", () => {
    const tree = split("x", [4, piece("a")], [3, offcut]);
    const size = { width: 7, height: 8 };
    expect(() => arrange(tree, size, { kerf: -1 })).toThrow(RangeError);
    expect(() => arrange(tree, size, { narrowestHold: 0.5 })).toThrow(/narrowestHold is 0.5/);
    expect(() => arrange(split("x", [4, piece("a")], [4, piece("b")]), size)).toThrow(
      "the parts of a split along x take 8, and the part has 7",
    );
  });
});

/** What a tree costs to cut and what it leaves, worked out anew. */
function measure(tree: CutNode, size: Size, smallest: Size | undefined) {
  const found = { stages: 0, longest: 0, largest: 0 };
  const visit = (node: CutNode, part: Size, stage: number, axis: string): void => {
    if (node.type === "piece") return;
    if (node.type === "split") {
      const here = node.axis === axis ? stage : stage + 1;
      const length = node.axis === "x" ? part.height : part.width;
      found.stages = Math.max(found.stages, here);
      found.longest = Math.max(found.longest, length);
      for (const entry of node.parts) {
        const child =
          node.axis === "x" ? { width: entry.size, height: length } : { width: length, height: entry.size };
        visit(entry.node, child, here, node.axis);
      }
      return;
    }
    if (node.type === "stopped") throw new Error("Stopped cuts are measured elsewhere.");
    const [short, long] = [part.width, part.height].sort((a, b) => a - b) as [number, number];
    const [leastShort, leastLong] = [smallest?.width ?? 0, smallest?.height ?? 0].sort((a, b) => a - b) as [
      number,
      number,
    ];
    const useful = short >= leastShort && long >= leastLong;
    expect(node.type === "offcut" || node.type === "waste").toBe(true);
    if (useful) found.largest = Math.max(found.largest, part.width * part.height);
  };
  visit(tree, size, 0, "");
  return found;
}

const plainPlans = fc
  .constantFrom("guillotine" as const, "shelf" as const)
  .chain((mode) => validPlans({ mode, windows: false }));

function usable(sheet: { width: number; height: number; trim?: object | undefined }): Size {
  const { left = 0, right = 0, top = 0, bottom = 0 } = (sheet.trim ?? {}) as Record<string, number>;
  return { width: sheet.width - left - right, height: sheet.height - top - bottom };
}

const holds = fc.oneof(fc.constant(0), fc.nat({ max: 30 }));

describe("arranged plans", () => {
  it("are as right as they were: sizes, counts, stages, longest cuts, the rule of their mode", () => {
    fc.assert(
      fc.property(validPlans(), holds, ({ problem, packing }, narrowestHold) => {
        expect(verify(problem, packing)).toEqual([]);
        const layouts = packing.layouts.map((layout) => {
          const sheet = problem.sheets.find(({ id }) => id === layout.sheet)!;
          return { ...layout, tree: arrange(layout.tree, usable(sheet), { ...problem, narrowestHold }) };
        });
        expect(verify(problem, { ...packing, layouts })).toEqual([]);
      }),
    );
  });

  it("have the same pieces, no more stages, no longer cut, and no smaller largest offcut", () => {
    fc.assert(
      fc.property(plainPlans, holds, ({ problem, packing }, narrowestHold) => {
        const { kerf = 0, smallestOffcut } = problem;
        for (const layout of packing.layouts) {
          const sheet = problem.sheets.find(({ id }) => id === layout.sheet)!;
          const size = usable(sheet);
          const tree = arrange(layout.tree, size, { kerf, smallestOffcut, narrowestHold });
          const before = measure(layout.tree, size, smallestOffcut);
          const after = measure(tree, size, smallestOffcut);
          expect(after.stages).toBeLessThanOrEqual(before.stages);
          expect(after.longest).toBeLessThanOrEqual(before.longest);
          expect(after.largest).toBeGreaterThanOrEqual(before.largest);
          const piecesOf = (of: CutNode): string[] =>
            placements(sheet, { ...layout, tree: of }, kerf)
              .filter(({ node }) => node.type === "piece")
              .map(({ width, height, node }) => JSON.stringify([width, height, node]))
              .sort();
          expect(piecesOf(tree)).toEqual(piecesOf(layout.tree));
          if (kerf > 0) continue;
          const areaOf = (of: CutNode): number =>
            placements(sheet, { ...layout, tree: of }).reduce((sum, at) => sum + at.width * at.height, 0);
          expect(areaOf(tree)).toBe(areaOf(layout.tree));
        }
      }),
    );
  });

  it("do not change when they are arranged again", () => {
    fc.assert(
      fc.property(validPlans(), holds, ({ problem, packing }, narrowestHold) => {
        const options = { ...problem, narrowestHold };
        for (const layout of packing.layouts) {
          const size = usable(problem.sheets.find(({ id }) => id === layout.sheet)!);
          const once = arrange(layout.tree, size, options);
          expect(arrange(once, size, options)).toEqual(once);
        }
      }),
    );
  });

  it("do not depend on the order in which the parts came", () => {
    const shuffle = (node: CutNode, draw: (below: number) => number): CutNode => {
      if (node.type !== "split") return node;
      const parts = node.parts.map(({ size, node: child }) => ({ size, node: shuffle(child, draw) }));
      for (let i = parts.length - 1; i > 0; i--) {
        const j = draw(i + 1);
        [parts[i], parts[j]] = [parts[j]!, parts[i]!];
      }
      return { ...node, parts };
    };
    fc.assert(
      fc.property(validPlans(), holds, fc.nat(), ({ problem, packing }, narrowestHold, seed) => {
        const options = { ...problem, narrowestHold };
        for (const layout of packing.layouts) {
          const size = usable(problem.sheets.find(({ id }) => id === layout.sheet)!);
          const shuffled = shuffle(layout.tree, drawFrom(seed, 200));
          expect(arrange(shuffled, size, options)).toEqual(arrange(layout.tree, size, options));
        }
      }),
    );
  });
});
