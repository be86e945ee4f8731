import type { CompiledProblem } from "../compiled-problem.js";
import { type DraftLayout, leftoverSpread } from "../draft.js";
import { cutNodeOf } from "./cut-node-of.js";
import type { CutTree } from "./cut-tree.js";

/** Every sheet in use as a layout of its own. The trees are read at once, so they may change afterwards. */
export function layoutsOfTrees(problem: CompiledProblem, trees: readonly CutTree[]): readonly DraftLayout[] {
  return trees
    .filter((tree) => tree.count > 0)
    .map((tree) => {
      const node = cutNodeOf(tree);
      const counts = new Map<number, number>();
      tree.eachPiece((kind) => counts.set(kind, (counts.get(kind) ?? 0) + 1));
      const layout = { sheet: tree.sheet, run: 1, tree: () => node, counts };
      return { ...layout, spread: spreadOf(problem, layout) };
    });
}

/** {@link leftoverSpread} of one sheet of a layout. */
export function spreadOf(problem: CompiledProblem, { sheet, tree }: Omit<DraftLayout, "spread">): number {
  return leftoverSpread(tree(), { width: sheet.width, height: sheet.height }, problem.kerf);
}
