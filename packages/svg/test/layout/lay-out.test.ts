import { type CutNode, placements } from "@sheetwright/packing";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { layOut } from "../../src/layout/lay-out.js";
import { offcut, type Plan, piece, split, waste } from "../plans/build.js";
import { examples } from "../plans/examples.js";
import { randomPlan } from "../plans/random-plan.js";

const sheet = { id: "s", width: 100, height: 60 };

describe("layOut", () => {
  test("places the parts of a split one kerf apart, inside the trim", () => {
    const trim = { left: 4, right: 6, top: 3, bottom: 2 };
    const tree = split("x", 90, [[30, piece({ kind: "a" })]], split("y", 55, [[20, waste]], offcut, 2), 2);
    const laidOut = layOut({ ...sheet, trim }, { sheet: "s", run: 1, tree }, 2);
    expect(laidOut.pieces).toMatchObject([{ x: 4, y: 3, width: 30, height: 55, level: 0, window: null }]);
    expect(laidOut.leftovers).toEqual([
      { x: 36, y: 3, width: 58, height: 20, what: "waste", level: 0 },
      { x: 36, y: 25, width: 58, height: 33, what: "offcut", level: 0 },
    ]);
    expect(laidOut.trims).toEqual([
      { side: "left", x: 0, y: 0, width: 4, height: 60 },
      { side: "right", x: 94, y: 0, width: 6, height: 60 },
      { side: "top", x: 4, y: 0, width: 90, height: 3 },
      { side: "bottom", x: 4, y: 58, width: 90, height: 2 },
    ]);
  });

  test("leaves out trims of no width", () => {
    expect(layOut(sheet, { sheet: "s", run: 1, tree: offcut }, 0).trims).toEqual([]);
  });

  test.each(["clockwise", "anticlockwise"] as const)(
    "fills a %s five-block node without gap or overlap",
    (hand) => {
      const tree: CutNode = {
        type: "stopped",
        hand,
        x1: 30,
        x2: 70,
        y1: 20,
        y2: 40,
        top: piece({ kind: "a" }),
        right: piece({ kind: "b" }),
        bottom: piece({ kind: "c" }),
        left: piece({ kind: "d" }),
        centre: piece({ kind: "e" }),
      };
      const { pieces } = layOut(sheet, { sheet: "s", run: 1, tree }, 0);
      expect(pieces.reduce((sum, { width, height }) => sum + width * height, 0)).toBe(100 * 60);
      for (const a of pieces) {
        for (const b of pieces) {
          if (a === b) continue;
          const apart =
            a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;
          expect(apart).toBe(true);
        }
      }
    },
  );

  test("puts what is cut from a window into the piece, one level deeper", () => {
    const tree: CutNode = {
      ...piece({ kind: "frame" }),
      window: {
        x: 10,
        y: 5,
        width: 50,
        height: 40,
        tool: "knife",
        tree: split("x", 50, [[20, piece({ kind: "star" })]]),
      },
    };
    const laidOut = layOut({ ...sheet, trim: { left: 2 } }, { sheet: "s", run: 1, tree }, 0);
    const window = { x: 12, y: 5, width: 50, height: 40 };
    expect(laidOut.windows).toEqual([{ ...window, tool: "knife", level: 0 }]);
    expect(laidOut.pieces).toMatchObject([
      { x: 2, y: 0, width: 98, height: 60, level: 0, window },
      { x: 12, y: 5, width: 20, height: 40, level: 1 },
    ]);
    expect(laidOut.leftovers).toEqual([{ x: 32, y: 5, width: 30, height: 40, what: "offcut", level: 1 }]);
  });

  // The packing package places pieces with code of its own.
  test("agrees with the placements of the packing package", () => {
    const agree = ({ problem, packing }: Plan) => {
      const [layout] = packing.layouts;
      const found = problem.sheets.find(({ id }) => id === layout?.sheet);
      if (layout === undefined || found === undefined) throw new Error("A plan has a layout and its sheet.");
      const kerf = problem.kerf ?? 0;
      const boxes = ({ x, y, width, height }: { x: number; y: number; width: number; height: number }) =>
        `${x} ${y} ${width} ${height}`;
      const laidOut = layOut(found, layout, kerf);
      const planned = placements(found, layout, kerf);
      expect(laidOut.pieces.map(boxes).sort()).toEqual(
        planned
          .filter(({ node }) => node.type === "piece")
          .map(boxes)
          .sort(),
      );
      expect(laidOut.leftovers.map(boxes).sort()).toEqual(
        planned
          .filter(({ node }) => node.type !== "piece")
          .map(boxes)
          .sort(),
      );
    };
    for (const example of examples) agree(example);
    fc.assert(fc.property(randomPlan({ windows: true }), (random) => agree(random)));
  });
});
