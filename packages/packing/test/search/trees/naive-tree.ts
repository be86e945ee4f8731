/**
 * Cut trees as plain values, and what follows from them by definition. It shares nothing with the flat arrays of the
 * search: every question looks at the whole tree anew.
 */

import type { Size } from "../../../src/index.js";
import type { CompiledProblem, CompiledSheet } from "../../../src/search/compiled-problem.js";
import { ACROSS, BELOW, BESIDE, CHILD, FIRST, type NodeList } from "../../../src/search/trees/node-list.js";

/** A piece, or a level of parallel cuts that divide its width (`x`) or its height (`y`). */
export type NaiveTree = NaivePiece | NaiveLevel;

export interface NaivePiece extends Size {
  readonly axis: undefined;
  readonly lay: number;
}

interface NaiveLevel {
  readonly axis: "x" | "y";
  readonly children: readonly NaiveTree[];
}

/** A node, by its number in preorder, and how a piece may come in there. */
export interface Spot {
  readonly node: number;
  readonly how: number;
}

/** Reads the nodes of the search by their order and the sizes of their subtrees alone. */
export function readNodes({ count, item, size, table }: NodeList): NaiveTree | undefined {
  const read = (at: number): NaiveTree => {
    const what = item[at] as number;
    if (what >= 0) {
      const { width = 0, height = 0 } = table.lays[what] ?? {};
      return { axis: undefined, lay: what, width, height };
    }
    const children: NaiveTree[] = [];
    const end = at + (size[at] as number);
    for (let child = at + 1; child < end; child += size[child] as number) children.push(read(child));
    return { axis: what === ACROSS ? "x" : "y", children };
  };
  return count === 0 ? undefined : read(0);
}

/** All nodes in preorder. */
export function nodesOf(tree: NaiveTree | undefined): readonly NaiveTree[] {
  if (tree === undefined) return [];
  return tree.axis === undefined ? [tree] : [tree, ...tree.children.flatMap(nodesOf)];
}

export function piecesOf(tree: NaiveTree | undefined): readonly NaivePiece[] {
  return nodesOf(tree).filter((node) => node.axis === undefined);
}

/** What a tree needs: along the cuts the sum of its children and the kerf between them, across them the largest. */
export function extentsOf(tree: NaiveTree, kerf: number): Size {
  if (tree.axis === undefined) return tree;
  const sizes = tree.children.map((child) => extentsOf(child, kerf));
  const sum = (list: readonly number[]) => list.reduce((all, one) => all + one, kerf * (list.length - 1));
  const widths = sizes.map((size) => size.width);
  const heights = sizes.map((size) => size.height);
  return tree.axis === "x"
    ? { width: sum(widths), height: Math.max(...heights) }
    : { width: Math.max(...widths), height: sum(heights) };
}

/** Every node and way by which one more piece can come into a tree; no two give the same tree. */
export function spotsOf(tree: NaiveTree | undefined): readonly Spot[] {
  if (tree === undefined) return [{ node: 0, how: FIRST }];
  const spots: Spot[] = [];
  let next = 0;
  const visit = (node: NaiveTree, above: "x" | "y" | undefined): void => {
    const at = next++;
    if (node.axis !== undefined) spots.push({ node: at, how: CHILD });
    const isCutAcross = above === "x" || (above === undefined && node.axis === "x");
    const isCutDown = above === "y" || (above === undefined && node.axis === "y");
    if (node.axis === undefined || above === undefined) {
      if (!isCutDown) spots.push({ node: at, how: BELOW });
      if (!isCutAcross) spots.push({ node: at, how: BESIDE });
    }
    if (node.axis !== undefined) for (const child of node.children) visit(child, node.axis);
  };
  visit(tree, undefined);
  return spots;
}

/** A tree with one more piece. */
export function withPiece(tree: NaiveTree | undefined, { node, how }: Spot, piece: NaivePiece): NaiveTree {
  if (tree === undefined) return piece;
  let next = 0;
  const copy = (old: NaiveTree): NaiveTree => {
    const isHere = next++ === node;
    const own: NaiveTree = old.axis === undefined ? old : { ...old, children: old.children.map(copy) };
    if (!isHere) return own;
    if (how === CHILD && own.axis !== undefined) return { ...own, children: [...own.children, piece] };
    return { axis: how === BESIDE ? "x" : "y", children: [own, piece] };
  };
  return copy(tree);
}

/** A tree without a node and all below it; levels with one child go, and a level inside one of its own direction joins it. */
export function withoutNode(tree: NaiveTree, node: number): NaiveTree | undefined {
  let next = 0;
  const copy = (old: NaiveTree): NaiveTree | undefined => {
    const isHere = next++ === node;
    if (old.axis === undefined) return isHere ? undefined : old;
    const { axis } = old;
    const left = old.children.map(copy).filter((child) => child !== undefined);
    if (isHere) return undefined;
    const children = left.flatMap((child) => (child.axis === axis ? child.children : [child]));
    return children.length > 1 ? { axis, children } : children[0];
  };
  return copy(tree);
}

/**
 * Whether a sheet can be cut into what a tree says, and each piece be trimmed where it does not fill its part, within all
 * rules of the problem. Before the cuts of the root one cut across them may free it from the sheet.
 */
export function isCuttable(
  tree: NaiveTree | undefined,
  problem: CompiledProblem,
  sheet: CompiledSheet,
): boolean {
  const { kerf, stages, shelf } = problem;
  const { longestCut } = sheet;
  const mostLevels = shelf ? 2 : Number.POSITIVE_INFINITY;
  // Cuts that divide a width are as long as their part is high, and the other way round.
  const cut = (node: NaiveTree, width: number, height: number, stage: number, levels: number): boolean => {
    const own = extentsOf(node, kerf);
    if (stage > stages || levels > mostLevels || own.width > width || own.height > height) return false;
    if (node.axis === undefined) {
      const isLow = own.height < height;
      const isNarrow = own.width < width;
      if (!isLow && !isNarrow) return true;
      const acrossFirst = isNarrow && height <= longestCut && cut(node, own.width, height, stage + 1, levels);
      return acrossFirst || (isLow && width <= longestCut && cut(node, width, own.height, stage + 1, levels));
    }
    if (node.axis === "x") {
      const each = (child: NaiveTree): boolean =>
        cut(child, extentsOf(child, kerf).width, height, stage + 1, levels + 1);
      if (height <= longestCut && node.children.every(each)) return true;
      return (
        own.height < height && width <= longestCut && cut(node, width, own.height, stage + 1, levels + 1)
      );
    }
    const each = (child: NaiveTree): boolean =>
      cut(child, width, extentsOf(child, kerf).height, stage + 1, levels + 1);
    if (width <= longestCut && node.children.every(each)) return true;
    return own.width < width && height <= longestCut && cut(node, own.width, height, stage + 1, levels + 1);
  };
  return tree === undefined || cut(tree, sheet.width, sheet.height, 0, 0);
}
