import type { CutNode, PieceLeaf } from "../../model.js";
import { ACROSS, type NodeList } from "./node-list.js";

/** A cut tree without leftovers: pieces, and levels of two or more children that cut the other way than the level above. */
export type Branch =
  | { readonly axis: undefined; readonly lay: number }
  | { readonly axis: "x" | "y"; readonly children: readonly Branch[] };

/**
 * Reads plain data as a branch: leftovers and cuts that only trim go, levels of one direction become one. Undefined where
 * no piece is left; throws RangeError for stopped cuts.
 * @param layOf gives the number of a piece's lay.
 */
export function branchOf(node: CutNode, layOf: (leaf: PieceLeaf) => number): Branch | undefined {
  if (node.type === "piece") return { axis: undefined, lay: layOf(node) };
  if (node.type === "stopped") throw new RangeError("The search makes no stopped cuts.");
  if (node.type !== "split") return undefined;
  const children: Branch[] = [];
  for (const part of node.parts) {
    const child = branchOf(part.node, layOf);
    if (child === undefined) continue;
    if (child.axis === node.axis) children.push(...child.children);
    else children.push(child);
  }
  return children.length > 1 ? { axis: node.axis, children } : children[0];
}

/** Reads the nodes of a tree as a branch; undefined for an uncut sheet. */
export function branchOfTree({ item, size, count }: NodeList): Branch | undefined {
  const branchAt = (node: number): Branch => {
    const what = item[node] as number;
    if (what >= 0) return { axis: undefined, lay: what };
    const children: Branch[] = [];
    const end = node + (size[node] as number);
    for (let child = node + 1; child < end; child += size[child] as number) children.push(branchAt(child));
    return { axis: what === ACROSS ? "x" : "y", children };
  };
  return count === 0 ? undefined : branchAt(0);
}
