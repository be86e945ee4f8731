import type { CutNode, SplitPart } from "../../model.js";
import type { CutTree } from "./cut-tree.js";
import { firstCut } from "./leftover.js";
import { ACROSS } from "./node-list.js";

/** A tree as plain data; every leftover is called waste until {@link arrange} names it. */
export function cutNodeOf(tree: CutTree): CutNode {
  if (tree.count === 0) return { type: "waste" };
  const { sheet, width, height } = tree;
  const first = firstCut(tree);
  if (first === 0) return nodeAt(tree, 0, sheet.width, sheet.height);
  if (first === ACROSS) {
    const size = width[0] as number;
    return splitOf("x", sheet.width, tree.rules.kerf, [{ size, node: nodeAt(tree, 0, size, sheet.height) }]);
  }
  const size = height[0] as number;
  return splitOf("y", sheet.height, tree.rules.kerf, [{ size, node: nodeAt(tree, 0, sheet.width, size) }]);
}

/** The subtree of a node in a part of the given extents. */
function nodeAt(tree: CutTree, at: number, across: number, down: number): CutNode {
  const { item, size, width, height } = tree;
  const { kerf } = tree.rules;
  const what = item[at] as number;
  if (what >= 0) return pieceIn(tree, what, across, down);
  const parts: SplitPart[] = [];
  const end = at + (size[at] as number);
  for (let child = at + 1; child < end; child += size[child] as number) {
    const extent = (what === ACROSS ? width[child] : height[child]) as number;
    const node = what === ACROSS ? nodeAt(tree, child, extent, down) : nodeAt(tree, child, across, extent);
    parts.push({ size: extent, node });
  }
  return what === ACROSS ? splitOf("x", across, kerf, parts) : splitOf("y", down, kerf, parts);
}

function pieceIn(tree: CutTree, lay: number, across: number, down: number): CutNode {
  const { kerf, problem, table } = tree.rules;
  const kind = problem.kinds[table.kind[lay] as number];
  const own = table.lays[lay];
  if (kind === undefined || own === undefined) throw new RangeError(`There is no lay ${lay}.`);
  const { form, turned, width, height } = own;
  let node: CutNode = { type: "piece", shares: [{ kind: kind.id, form, turned, count: 1 }] };
  if (height < down) node = splitOf("y", down, kerf, [{ size: height, node }]);
  if (width < across) node = splitOf("x", across, kerf, [{ size: width, node }]);
  return node;
}

/** One level of cuts with what it has left over. */
function splitOf(axis: "x" | "y", extent: number, kerf: number, parts: readonly SplitPart[]): CutNode {
  const used = parts.reduce((sum, part) => sum + part.size + kerf, 0);
  const rest = extent - used;
  return {
    type: "split",
    axis,
    parts: rest > 0 ? [...parts, { size: rest, node: { type: "waste" } }] : parts,
  };
}
