import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CutNode, Layout, PieceLeaf, Rectangle, Sheet } from "../src/model.js";
import { type Placement, placements } from "../src/placements.js";
import { validPlans } from "./valid-plan.js";

function piece(kind: string): PieceLeaf {
  return { type: "piece", shares: [{ kind, form: 0, turned: false, count: 1 }] };
}

function layoutOf(tree: CutNode): Layout {
  return { sheet: "sheet", run: 1, tree };
}

function sheetOf(width: number, height: number, trim?: Sheet["trim"]): Sheet {
  return { id: "sheet", width, height, trim };
}

function name({ node }: Placement): string {
  return node.type === "piece" ? (node.shares[0]?.kind ?? "") : node.type;
}

/** Name, x, y, width and height, for readable examples. */
function brief(found: readonly Placement[]): unknown[] {
  return found.map((at) => [name(at), at.x, at.y, at.width, at.height]);
}

describe("placements", () => {
  it("puts the parts of a split side by side, left to right", () => {
    const tree: CutNode = {
      type: "split",
      axis: "x",
      parts: [
        { size: 5, node: piece("a") },
        { size: 4, node: { type: "waste" } },
        { size: 3, node: piece("b") },
      ],
    };
    expect(brief(placements(sheetOf(12, 7), layoutOf(tree)))).toEqual([
      ["a", 0, 0, 5, 7],
      ["waste", 5, 0, 4, 7],
      ["b", 9, 0, 3, 7],
    ]);
  });

  it("starts inside the trim and leaves one kerf between neighbours", () => {
    const tree: CutNode = {
      type: "split",
      axis: "y",
      parts: [
        {
          size: 10,
          node: {
            type: "split",
            axis: "x",
            parts: [
              { size: 20, node: piece("a") },
              { size: 7, node: piece("b") },
            ],
          },
        },
        { size: 6, node: { type: "offcut" } },
      ],
    };
    const sheet = sheetOf(35, 24, { left: 3, right: 4, top: 2, bottom: 5 });
    expect(brief(placements(sheet, layoutOf(tree), 1))).toEqual([
      ["a", 3, 2, 20, 10],
      ["b", 24, 2, 7, 10],
      ["offcut", 3, 13, 28, 6],
    ]);
  });

  it("places a leaf that is the whole sheet", () => {
    expect(placements(sheetOf(9, 8), layoutOf(piece("a")))).toEqual([
      { x: 0, y: 0, width: 9, height: 8, path: [], node: piece("a"), depth: 0 },
    ]);
  });

  // Four 5 x 7 from 12 x 12 round a 2 x 2 centre: common practice, no source.
  it("places four blocks round the centre of clockwise stopped cuts", () => {
    const tree: CutNode = {
      type: "stopped",
      hand: "clockwise",
      x1: 5,
      x2: 7,
      y1: 5,
      y2: 7,
      top: piece("top"),
      right: piece("right"),
      bottom: piece("bottom"),
      left: piece("left"),
      centre: { type: "offcut" },
    };
    expect(brief(placements(sheetOf(12, 12), layoutOf(tree)))).toEqual([
      ["top", 0, 0, 7, 5],
      ["right", 7, 0, 5, 7],
      ["bottom", 5, 7, 7, 5],
      ["left", 0, 5, 5, 7],
      ["offcut", 5, 5, 2, 2],
    ]);
  });

  it("leaves the kerf of stopped cuts beyond their lines", () => {
    const tree: CutNode = {
      type: "stopped",
      hand: "anticlockwise",
      x1: 5,
      x2: 9,
      y1: 4,
      y2: 10,
      top: piece("top"),
      right: piece("right"),
      bottom: piece("bottom"),
      left: piece("left"),
      centre: { type: "waste" },
    };
    expect(brief(placements(sheetOf(20, 20), layoutOf(tree), 1))).toEqual([
      ["top", 6, 0, 14, 4],
      ["right", 10, 5, 10, 15],
      ["bottom", 0, 11, 9, 9],
      ["left", 0, 0, 5, 10],
      ["waste", 6, 5, 3, 5],
    ]);
  });

  it("lists what lies in a window after its piece, one level deeper, and goes on with the piece's path", () => {
    const opened: PieceLeaf = {
      ...piece("mat"),
      window: {
        x: 2,
        y: 3,
        width: 6,
        height: 5,
        tool: "knife",
        tree: {
          type: "split",
          axis: "x",
          parts: [
            { size: 4, node: piece("layer") },
            { size: 2, node: { type: "waste" } },
          ],
        },
      },
    };
    const tree: CutNode = {
      type: "split",
      axis: "y",
      parts: [
        { size: 11, node: piece("base") },
        { size: 10, node: opened },
      ],
    };
    const found = placements(sheetOf(10, 21), layoutOf(tree));
    expect(brief(found)).toEqual([
      ["base", 0, 0, 10, 11],
      ["mat", 0, 11, 10, 10],
      ["layer", 2, 14, 4, 5],
      ["waste", 6, 14, 2, 5],
    ]);
    expect(found.map(({ path, depth }) => [path, depth])).toEqual([
      [[0], 0],
      [[1], 0],
      [[1, 0], 1],
      [[1, 1], 1],
    ]);
  });

  it("places thousands of leaves however deep the tree is", () => {
    let tree: CutNode = piece("p");
    for (let i = 0; i < 4000; i++) {
      tree = {
        type: "split",
        axis: "x",
        parts: [
          { size: 1, node: piece("p") },
          { size: i + 1, node: tree },
        ],
      };
    }
    const found = placements(sheetOf(4001, 5), layoutOf(tree));
    expect(found).toHaveLength(4001);
    expect(found.map(({ x }) => x)).toEqual(Array.from({ length: 4001 }, (_, i) => i));
  });

  const overlaps = (a: Rectangle, b: Rectangle): boolean =>
    a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

  it("never lets two leaves overlap, nor one leave its sheet or window", () => {
    fc.assert(
      fc.property(validPlans(), ({ problem, packing }) => {
        for (const layout of packing.layouts) {
          const sheet = problem.sheets.find(({ id }) => id === layout.sheet)!;
          const found = placements(sheet, layout, problem.kerf);
          const depths = new Set(found.map(({ depth }) => depth));
          for (const depth of depths) {
            const level = found.filter((at) => at.depth === depth);
            for (const [i, a] of level.entries()) {
              expect(level.slice(i + 1).some((b) => overlaps(a, b))).toBe(false);
            }
          }
          const { left = 0, right = 0, top = 0, bottom = 0 } = sheet.trim ?? {};
          for (const { x, y, width, height } of found) {
            expect(x >= left && x + width <= sheet.width - right).toBe(true);
            expect(y >= top && y + height <= sheet.height - bottom).toBe(true);
          }
        }
      }),
    );
  });

  it("covers the usable part exactly where nothing is lost to the kerf", () => {
    fc.assert(
      fc.property(validPlans({ kerf: false }), ({ problem, packing }) => {
        for (const layout of packing.layouts) {
          const sheet = problem.sheets.find(({ id }) => id === layout.sheet)!;
          const { left = 0, right = 0, top = 0, bottom = 0 } = sheet.trim ?? {};
          const areas = placements(sheet, layout)
            .filter(({ depth }) => depth === 0)
            .map(({ width, height }) => width * height);
          expect(areas.reduce((sum, area) => sum + area, 0)).toBe(
            (sheet.width - left - right) * (sheet.height - top - bottom),
          );
        }
      }),
    );
  });

  /** Goes down a path; `depth` says how many windows to enter. */
  function nodeAt(tree: CutNode, path: readonly number[], depth: number): CutNode {
    let node = tree;
    let windows = 0;
    const ahead = [...path];
    for (;;) {
      if (node.type === "piece" && node.window !== undefined && windows < depth) {
        node = node.window.tree;
        windows += 1;
        continue;
      }
      const index = ahead.shift();
      if (index === undefined) return node;
      if (node.type === "split") node = node.parts[index]!.node;
      else if (node.type === "stopped") {
        node = [node.top, node.right, node.bottom, node.left, node.centre][index]!;
      } else throw new Error("The path goes on below a leaf.");
    }
  }

  it("gives every leaf once, by a path that leads to it", () => {
    fc.assert(
      fc.property(validPlans(), ({ problem, packing }) => {
        for (const layout of packing.layouts) {
          const sheet = problem.sheets.find(({ id }) => id === layout.sheet)!;
          const found = placements(sheet, layout, problem.kerf);
          for (const { path, depth, node } of found) expect(nodeAt(layout.tree, path, depth)).toBe(node);
          const keys = new Set(found.map(({ path, depth }) => `${depth}:${path.join()}`));
          expect(keys.size).toBe(found.length);
        }
      }),
    );
  });
});
