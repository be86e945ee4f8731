import type { CutNode } from "@sheetwright/packing";

/** Copies of each kind from all sheets of a run. */
export function countPieces(tree: CutNode): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  const visit = (node: CutNode): void => {
    if (node.type === "piece") {
      for (const { kind, count } of node.shares) counts.set(kind, (counts.get(kind) ?? 0) + count);
      if (node.window !== undefined) visit(node.window.tree);
    } else if (node.type === "split") {
      for (const part of node.parts) visit(part.node);
    } else if (node.type === "stopped") {
      for (const part of [node.top, node.right, node.bottom, node.left, node.centre]) visit(part);
    }
  };
  visit(tree);
  return counts;
}
