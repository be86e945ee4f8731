import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CutNode, type Kind, type PieceLeaf, type Size, verify } from "../../../src/index.js";
import { childrenOf } from "../../../src/placements.js";
import type { CompiledSheet } from "../../../src/search/compiled-problem.js";
import { branchOf } from "../../../src/search/trees/branch.js";
import { cutNodeOf } from "../../../src/search/trees/cut-node-of.js";
import { type CutRules, CutTree } from "../../../src/search/trees/cut-tree.js";
import { LeftoverMeasure } from "../../../src/search/trees/leftover.js";
import {
  extentsOf,
  isCuttable,
  type NaivePiece,
  nodesOf,
  piecesOf,
  readNodes,
  spotsOf,
  withoutNode,
  withPiece,
} from "./naive-tree.js";
import { groundOf, growTree, oneSheetPlans, takes, treeCases } from "./tree-cases.js";

describe("a cut tree that pieces come into and go out of", () => {
  test("is after each change what the change says, with levels of two or more children that alternate", () => {
    let deepest = 0;
    fc.assert(
      fc.property(treeCases, ({ problem, choices }) => {
        const ground = groundOf(problem);
        let expected = readNodes(new CutTree(ground.rules, ground.sheet));
        let gone: readonly number[] = [];
        growTree(
          ground,
          choices,
          (tree, change) => {
            expect(readNodes(tree)).toEqual(expected);
            if ("taken" in change) expect(change.taken).toEqual(gone);
            for (const node of nodesOf(expected)) {
              if (node.axis === undefined) continue;
              expect(node.children.length).toBeGreaterThan(1);
              for (const child of node.children) expect(child.axis).not.toBe(node.axis);
            }
            deepest = Math.max(deepest, tree.count);
          },
          (tree, change) => {
            const old = readNodes(tree);
            if ("taken" in change) {
              if (old === undefined) throw new RangeError("Nothing can go out of an uncut sheet.");
              const going = nodesOf(old)[change.node];
              gone = piecesOf(going).map(({ lay }) => tree.table.kind[lay] as number);
              expected = withoutNode(old, change.node);
              return;
            }
            const { place, lay } = change;
            const { width = 0, height = 0 } = tree.table.lays[lay] ?? {};
            const spot = { node: tree.placeNode[place] as number, how: tree.placeHow[place] as number };
            expected = withPiece(old, spot, { axis: undefined, lay, width, height });
          },
        );
      }),
    );
    // Some trees have outgrown the arrays they began with.
    expect(deepest).toBeGreaterThan(16);
  });

  test("can be cut, and verifies, after each change", () => {
    fc.assert(
      fc.property(treeCases, ({ problem, choices }) => {
        const ground = groundOf(problem);
        const planOf = oneSheetPlans(problem);
        growTree(ground, choices, (tree) => {
          expect(isCuttable(readNodes(tree), ground.compiled, ground.sheet)).toBe(true);
          if (tree.count > 0) expect(verify(problem, planOf(cutNodeOf(tree)))).toEqual([]);
        });
      }),
    );
  });

  test("needs the extents that follow from its pieces", () => {
    fc.assert(
      fc.property(treeCases, ({ problem, choices }) => {
        const ground = groundOf(problem);
        growTree(ground, choices, (tree) => {
          const nodes = nodesOf(readNodes(tree));
          nodes.forEach((node, i) => {
            const own = { width: tree.width[i], height: tree.height[i] };
            expect(own).toEqual(sizeOf(extentsOf(node, ground.rules.kerf)));
          });
          const used = piecesOf(nodes[0]).reduce((sum, { width, height }) => sum + width * height, 0);
          expect(tree.used).toBe(used);
        });
      }),
    );
  });

  test("offers a place to a piece exactly where all stays cuttable with it", () => {
    const offers = { limited: 0, short: 0, free: 0 };
    fc.assert(
      fc.property(treeCases, ({ problem, choices }) => {
        const ground = groundOf(problem);
        const { compiled, sheet, rules } = ground;
        growTree(ground, choices, (tree) => {
          const own = readNodes(tree);
          const offered = new Map<string, number>();
          for (let place = 0; place < tree.places; place++) {
            const key = `${tree.placeNode[place]} ${tree.placeHow[place]}`;
            expect(offered.has(key)).toBe(false);
            offered.set(key, place);
          }
          for (const spot of spotsOf(own)) {
            const place = offered.get(`${spot.node} ${spot.how}`);
            offered.delete(`${spot.node} ${spot.how}`);
            for (let lay = 0; lay < rules.table.lays.length; lay++) {
              const { width = 0, height = 0 } = rules.table.lays[lay] ?? {};
              const piece: NaivePiece = { axis: undefined, lay, width, height };
              const isOffered = place !== undefined && takes(tree, place, lay);
              const isPossible = isCuttable(withPiece(own, spot, piece), compiled, sheet);
              if (isOffered !== isPossible)
                expect({ own, spot, piece, offered: isOffered }).toEqual({
                  own,
                  spot,
                  piece,
                  offered: isPossible,
                });
              if (isOffered) offers[tree.limited ? "limited" : sheet.longestCut < 100 ? "short" : "free"]++;
            }
          }
          expect([...offered.keys()]).toEqual([]);
        });
      }),
    );
    for (const count of Object.values(offers)) expect(count).toBeGreaterThan(1000);
  });

  test("takes a piece of exactly the room that a place has, and none that is one larger", () => {
    fc.assert(
      fc.property(treeCases, ({ problem, choices }) => {
        const ground = groundOf(problem);
        const tree = growTree(ground, choices, () => {});
        if (tree.count === 0) return;
        const grown = cutNodeOf(tree);
        const rooms = Array.from({ length: tree.places }, (_, place) => ({
          width: tree.room[2 * place] as number,
          height: tree.room[2 * place + 1] as number,
        }));
        const probes = rooms.map((room, i): Kind => {
          return { id: `room ${i}`, quantity: 1, forms: [{ ...room, turns: "upright" }] };
        });
        const withProbes = { ...problem, kinds: [...problem.kinds, ...probes] };
        const { compiled, sheet, rules } = groundOf(withProbes);
        const planOf = oneSheetPlans(withProbes);
        const branch = branchOf(grown, layIn(rules, sheet));
        rooms.forEach((room, place) => {
          const spot = { node: tree.placeNode[place] as number, how: tree.placeHow[place] as number };
          const fuller = new CutTree(rules, sheet);
          fuller.write(branch);
          fuller.insert(spot.node, spot.how, rules.table.kind.indexOf(problem.kinds.length + place));
          fuller.refresh();
          expect(verify(withProbes, planOf(cutNodeOf(fuller)))).toEqual([]);
          const larger = [
            { ...room, width: room.width + 1 },
            { ...room, height: room.height + 1 },
          ];
          for (const size of larger) {
            const piece: NaivePiece = { axis: undefined, lay: -1, ...size };
            expect(isCuttable(withPiece(readNodes(tree), spot, piece), compiled, sheet)).toBe(false);
          }
        });
      }),
    );
  });

  test("is read back from plain data node by node", () => {
    fc.assert(
      fc.property(treeCases, ({ problem, choices }) => {
        const ground = groundOf(problem);
        const { rules, sheet } = ground;
        growTree(ground, choices, (tree) => {
          const copy = new CutTree(rules, sheet);
          copy.write(branchOf(cutNodeOf(tree), layIn(rules, sheet)));
          copy.refresh();
          expect(stateOf(copy)).toEqual(stateOf(tree));
          const other = new CutTree(rules, sheet);
          other.copyFrom(tree);
          other.refresh();
          expect(stateOf(other)).toEqual(stateOf(tree));
        });
      }),
    );
  });
});

describe("the measure of leftovers", () => {
  test("counts each part of the plain tree that is waste, once and with its area", () => {
    /** Areas instead of what they count for. */
    class Areas extends LeftoverMeasure {
      readonly seen: number[] = [];
      override ofArea(area: number): number {
        this.seen.push(area);
        return area;
      }
    }
    fc.assert(
      fc.property(treeCases, ({ problem, choices }) => {
        const ground = groundOf(problem);
        const { sheet, rules } = ground;
        growTree(ground, choices, (tree) => {
          const areas = new Areas(sheet.width * sheet.height);
          const sum = areas.of(tree);
          const expected = wasteOf(cutNodeOf(tree), sheet, rules.kerf);
          expect([...areas.seen].sort()).toEqual([...expected].sort());
          expect(sum).toBe(expected.reduce((all, one) => all + one, 0));
          if (rules.kerf === 0) expect(sum).toBe(sheet.width * sheet.height - tree.used);
        });
      }),
    );
  });

  test("cuts off first what leaves the larger part", () => {
    const firstSizes = [
      { width: 10, height: 40 },
      { width: 90, height: 20 },
    ].map((size) => {
      const kinds = [{ id: "piece", quantity: 1, forms: [{ ...size, turns: "upright" as const }] }];
      const sheets = [{ id: "sheet", width: 100, height: 50 }];
      const { rules, sheet } = groundOf({ mode: "guillotine", aim: "all", kinds, sheets });
      const tree = new CutTree(rules, sheet);
      tree.write({ axis: undefined, lay: 0 });
      tree.refresh();
      const node = cutNodeOf(tree);
      return node.type === "split" ? [node.axis, ...node.parts.map((part) => part.size)] : node.type;
    });
    expect(firstSizes).toEqual([
      ["x", 10, 90],
      ["y", 20, 30],
    ]);
  });

  test("prefers one large leftover to two small ones, and knows the whole sheet as 1", () => {
    const measure = new LeftoverMeasure(10_000);
    expect(measure.ofArea(10_000)).toBe(1);
    expect(measure.ofArea(0)).toBe(0);
    for (const area of [100, 1_000, 4_000])
      expect(measure.ofArea(2 * area)).toBeGreaterThan(2 * measure.ofArea(area));
  });
});

/** Nodes, extents and places of a tree that is up to date. */
function stateOf(tree: CutTree) {
  const { count, places } = tree;
  return {
    nodes: readNodes(tree),
    parents: [...tree.parent.subarray(0, count)],
    widths: [...tree.width.subarray(0, count)],
    heights: [...tree.height.subarray(0, count)],
    places: [...tree.placeNode.subarray(0, places)],
    ways: [...tree.placeHow.subarray(0, places)],
    room: [...tree.room.subarray(0, 2 * places)],
    used: tree.used,
  };
}

/** Finds the lay of a leaf by what it says. */
function layIn({ table, problem }: CutRules, sheet: CompiledSheet): (leaf: PieceLeaf) => number {
  return (leaf) => {
    const [share] = leaf.shares;
    return table.lays.findIndex(
      (lay, i) =>
        problem.kinds[table.kind[i] as number]?.id === share?.kind &&
        problem.kinds[table.kind[i] as number]?.lays[sheet.index]?.includes(lay) === true &&
        lay.form === share?.form &&
        lay.turned === share?.turned,
    );
  };
}

/** Areas of the leaves that are no pieces. */
function wasteOf(node: CutNode, part: Size, kerf: number): readonly number[] {
  if (node.type === "piece") return [];
  if (node.type !== "split") return [part.width * part.height];
  return childrenOf(node, part, kerf).flatMap((child) => wasteOf(child.node, child, kerf));
}

function sizeOf({ width, height }: Size): Size {
  return { width, height };
}
