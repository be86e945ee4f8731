/**
 * Trees in which one piece that lies alone in its part is turned, where it may and fits:
 *
 *     +-----+--+        +--------+
 *     |     |  |        |        |
 *     |  p  |  |  --->  |   p    |      what is left joins the leftover below
 *     |     |  |        +--------+
 *     +-----+--+        |        |
 */
import type { CutNode, PieceLeaf, Size, SplitPart } from "../model.js";
import { childrenOf } from "../placements.js";
import type { CompiledProblem, CompiledSheet } from "./compiled-problem.js";
import { corneredPiece } from "./cornered-piece.js";

/** One tree for each such piece. Where stages are counted there are none, since a turned piece may take one more. */
export function turnedPieces(
  problem: CompiledProblem,
  sheet: CompiledSheet,
  tree: CutNode,
): readonly CutNode[] {
  if (problem.shelf || Number.isFinite(problem.stages)) return [];
  const kinds = new Map(problem.kinds.map((kind) => [kind.id, kind]));
  const turned = (part: Size, leaf: PieceLeaf): CutNode | undefined => {
    const [share] = leaf.shares;
    if (share === undefined || leaf.shares.length > 1 || leaf.window !== undefined) return undefined;
    const lays = kinds.get(share.kind)?.lays[sheet.index] ?? [];
    const other = lays.find((lay) => lay.form === share.form && lay.turned !== share.turned);
    if (other === undefined || other.width > part.width || other.height > part.height) return undefined;
    if (Math.max(part.width, part.height) > sheet.longestCut) return undefined;
    return corneredPiece(part, problem.kerf, other, {
      ...leaf,
      shares: [{ ...share, turned: other.turned }],
    });
  };
  const walk = (node: CutNode, part: Size): readonly CutNode[] => {
    if (node.type !== "split") return [];
    const lone = lonePiece(node);
    if (lone !== undefined) {
      const one = turned(part, lone);
      return one === undefined ? [] : [one];
    }
    return childrenOf(node, part, problem.kerf).flatMap((child, i) =>
      walk(child.node, child).map((replacement) => {
        const parts: SplitPart[] = [...node.parts];
        if (i < parts.length) parts[i] = { size: (parts[i] as SplitPart).size, node: replacement };
        return { ...node, parts };
      }),
    );
  };
  return walk(tree, sheet);
}

/** The piece of a part that has one and no more. */
function lonePiece(node: CutNode): PieceLeaf | undefined {
  const pieces: PieceLeaf[] = [];
  const collect = (one: CutNode): void => {
    if (one.type === "piece") pieces.push(one);
    if (one.type !== "split") return;
    for (const part of one.parts) if (pieces.length < 2) collect(part.node);
  };
  collect(node);
  return pieces.length === 1 ? pieces[0] : undefined;
}
