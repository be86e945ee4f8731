/** What must not get worse when a cut tree is brought into another form: its stages, its longest cut, the shelf rule. */

import type { CutNode, Size, Split } from "../model.js";
import { childrenOf } from "../placements.js";

/** The number of levels of parallel cuts on the longest way down; a split along its parent's axis adds none. */
export function stageDepth(node: CutNode, parentAxis?: "x" | "y"): number {
  if (node.type === "split") {
    let deepest = 0;
    for (const part of node.parts) deepest = Math.max(deepest, stageDepth(part.node, node.axis));
    return deepest + (node.axis === parentAxis ? 0 : 1);
  }
  if (node.type === "stopped") {
    const blocks = [node.top, node.right, node.bottom, node.left, node.centre];
    return 1 + Math.max(...blocks.map((block) => stageDepth(block)));
  }
  return 0;
}

/** The longest edge-to-edge cut of a tree: the largest extent of a part along a cut made on it; 0 without cuts. */
export function longestCut(node: CutNode, part: Size, kerf: number): number {
  if (node.type !== "split" && node.type !== "stopped") return 0;
  let longest = node.type === "split" ? (node.axis === "x" ? part.height : part.width) : 0;
  for (const child of childrenOf(node, part, kerf)) {
    longest = Math.max(longest, longestCut(child.node, child, kerf));
  }
  return longest;
}

function isLastTrim(split: Split): boolean {
  let pieces = 0;
  for (const { node } of split.parts) {
    if (node.type === "split" || node.type === "stopped") return false;
    if (node.type === "piece") pieces += 1;
  }
  return pieces === 1;
}

/**
 * Says whether a tree without nested splits of one axis keeps the rule of mode `shelf`: strips, pieces from the
 * strips, and at most one last trim a piece.
 */
export function keepsShelfRule(tree: CutNode): boolean {
  if (tree.type !== "split") return tree.type !== "stopped";
  return tree.parts.every(
    ({ node: strip }) =>
      strip.type !== "stopped" &&
      (strip.type !== "split" ||
        strip.parts.every(
          ({ node }) => node.type !== "stopped" && (node.type !== "split" || isLastTrim(node)),
        )),
  );
}
