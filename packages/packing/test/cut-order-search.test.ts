import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arrange } from "../src/arrange.js";
import { exactOrder } from "../src/cut-order/exact-order.js";
import { findShapes } from "../src/cut-order/find-shapes.js";
import { foresightedOrder, greedyOrder } from "../src/cut-order/greedy-order.js";
import { readLevels } from "../src/cut-order/read-levels.js";
import { cutOrder } from "../src/cut-order.js";
import type { CutNode } from "../src/model.js";
import { bruteOrder, countCuts } from "./brute-order.js";
import { replayCuts } from "./replay-cuts.js";
import { drawFrom } from "./valid-plan.js";

type Draw = (below: number) => number;

interface Case {
  readonly tree: CutNode;
  readonly width: number;
  readonly height: number;
  readonly kerf: number;
}

/** A tree whose parts are drawn from few sizes, so that settings meet; every leaf is a piece or leftover. */
function drawTree(
  draw: Draw,
  width: number,
  height: number,
  kerf: number,
  sizes: readonly number[],
  depth: number,
  axis: "x" | "y",
): CutNode {
  const leaf: CutNode = draw(5) === 4 ? { type: "offcut" } : { type: "piece", shares: [] };
  if (depth === 0 || (depth < 3 && draw(4) === 3)) return leaf;
  const extent = axis === "x" ? width : height;
  const taken: number[] = [];
  let room = extent;
  for (let count = 1 + draw(4); count > 0; count--) {
    const size = sizes[draw(sizes.length)]!;
    if (size > room) break;
    taken.push(size);
    room -= size + kerf;
  }
  if (room > 0) taken.push(room);
  if (taken.length === 0 || (taken.length === 1 && taken[0] === extent)) return leaf;
  const other = axis === "x" ? "y" : "x";
  const below = draw(8) === 7 ? axis : other;
  const parts = taken.map((size) => ({
    size,
    node:
      axis === "x"
        ? drawTree(draw, size, height, kerf, sizes, depth - 1, below)
        : drawTree(draw, width, size, kerf, sizes, depth - 1, below),
  }));
  return { type: "split", axis, parts };
}

function drawCase(draw: Draw, hasKerf: boolean, side: number): Case {
  const kerf = hasKerf ? draw(4) : 0;
  const width = side + draw(2 * side);
  const height = side + draw(2 * side);
  const sizes = Array.from({ length: 2 + draw(4) }, () => 1 + draw(side));
  const tree = drawTree(draw, width, height, kerf, sizes, 1 + draw(3), draw(2) === 0 ? "x" : "y");
  return { tree, width, height, kerf };
}

const smallCases = fc
  .tuple(fc.nat({ max: 0x7fffffff }), fc.integer({ min: 15, max: 90 }))
  .map(([seed, choices]) => drawCase(drawFrom(seed, choices), true, 8))
  .filter(({ tree, width, height, kerf }) => {
    const cuts = countCuts(tree, width, height, kerf);
    return cuts >= 2 && cuts <= 6;
  });

describe("the order of a few cuts", () => {
  it("has the fewest narrow holds, settings and quarter turns of all orders, in this order of importance", () => {
    fc.assert(
      fc.property(smallCases, fc.nat({ max: 9 }), ({ tree, width, height, kerf }, narrowestHold) => {
        const sheet = { id: "sheet", width, height };
        const found = cutOrder(sheet, { sheet: sheet.id, run: 1, tree }, { kerf, narrowestHold });
        const { narrowHolds, settings, quarterTurns, faults } = replayCuts(sheet, found, kerf, narrowestHold);
        expect(faults).toEqual([]);
        expect({ narrowHolds, settings, quarterTurns }).toEqual(
          bruteOrder(tree, width, height, kerf, narrowestHold),
        );
      }),
    );
  });

  it("has no more narrow holds than any other arrangement of the parts, where a level is arranged for the tool", () => {
    const permutations = (sizes: readonly number[]): number[][] =>
      sizes.length <= 1
        ? [[...sizes]]
        : sizes.flatMap((size, i) =>
            permutations(sizes.filter((_, j) => j !== i)).map((rest) => [size, ...rest]),
          );
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 2, maxLength: 4 }),
        fc.nat({ max: 8 }),
        fc.integer({ min: 1, max: 20 }),
        (sizes, leftover, narrowestHold) => {
          const all = leftover > 0 ? [...sizes, leftover] : sizes;
          const height = 20;
          const width = all.reduce((sum, size) => sum + size, 0);
          const level = (order: readonly (readonly [number, boolean])[]): CutNode => ({
            type: "split",
            axis: "x",
            parts: order.map(([size, isPiece]) => ({
              size,
              node: isPiece ? { type: "piece", shares: [] } : { type: "offcut" },
            })),
          });
          const tree = level(all.map((size, i) => [size, i < sizes.length] as const));
          const narrowIn = (node: CutNode): number =>
            bruteOrder(node, width, height, 0, narrowestHold).narrowHolds;
          const least = Math.min(
            ...permutations(all).map((order) => narrowIn(level(order.map((size) => [size, true] as const)))),
          );
          expect(narrowIn(arrange(tree, { width, height }, { narrowestHold }))).toBe(least);
        },
      ),
      { numRuns: 200 },
    );
  });
});

/** How often each method finds the fewest settings that the exact search proves. */
function compare(count: number, fewest: number, most: number) {
  const result = {
    proven: 0,
    greedy: 0,
    foresighted: 0,
    settings: 0,
    greedySettings: 0,
    foresightedSettings: 0,
  };
  const setup = { distance: undefined, axis: undefined };
  for (let seed = 1, cases = 0; cases < count; seed++) {
    const { tree, width, height } = drawCase(drawFrom(seed * 7919, 400), false, 40);
    const arranged = arrange(tree, { width, height });
    const { levels } = readLevels(arranged, { x: 0, y: 0, width, height }, 0);
    const shapes = findShapes(levels, 0, 0);
    const cuts = shapes.reduce((sum, { sizes }) => sum + sizes.length - 1, 0);
    if (cuts < fewest || cuts > most) continue;
    cases += 1;
    const greedy = greedyOrder(shapes, setup);
    const foresighted = foresightedOrder(shapes, setup);
    const { order = foresighted, proven } = exactOrder(shapes, setup, foresighted, 10_000);
    result.settings += order.settings;
    result.greedySettings += greedy.settings;
    result.foresightedSettings += foresighted.settings;
    if (!proven) continue;
    result.proven += 1;
    if (greedy.settings === order.settings) result.greedy += 1;
    if (foresighted.settings === order.settings) result.foresighted += 1;
  }
  return result;
}

// Measured on arranged random layouts: a change that makes a method worse fails here, one that makes it better moves
// the record.
describe("how often the heuristics find the fewest settings", () => {
  it("is recorded for 4 to 12 different cuts, where the exact search always proves them", () => {
    expect(compare(200, 4, 12)).toEqual({
      proven: 200,
      greedy: 171,
      foresighted: 193,
      settings: 712,
      greedySettings: 744,
      foresightedSettings: 719,
    });
  });

  it("is recorded for 13 to 25 different cuts, where it still does in most cases", () => {
    expect(compare(60, 13, 25)).toEqual({
      proven: 51,
      greedy: 34,
      foresighted: 45,
      settings: 326,
      greedySettings: 355,
      foresightedSettings: 332,
    });
  });
});
