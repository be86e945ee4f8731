import type { CompiledProblem, CompiledSheet } from "../compiled-problem.js";
import type { DraftLayout } from "../draft.js";
import type { Branch } from "../trees/branch.js";
import { CutTree, cutRules } from "../trees/cut-tree.js";
import type { LayTable } from "../trees/lay-table.js";
import { layoutsOfTrees } from "../trees/layouts-of-trees.js";
import type { Block } from "./block.js";

/** A block as it lies on a sheet; undefined where one of its pieces may not lie so there. */
export function branchOfBlock(
  table: LayTable,
  sheet: CompiledSheet,
  { width, height, of }: Block,
  turned: boolean,
): Branch | undefined {
  if (typeof of === "number") {
    const row = sheet.index * table.kinds + of;
    const [across, down] = turned ? [height, width] : [width, height];
    for (let lay = table.first[row] as number; lay < (table.first[row + 1] as number); lay++) {
      if (table.width[lay] === across && table.height[lay] === down) return { axis: undefined, lay };
    }
    return undefined;
  }
  const axis = (of.axis === "x") !== turned ? "x" : "y";
  return levelOf(axis, [
    branchOfBlock(table, sheet, of.first, of.firstTurned !== turned),
    branchOfBlock(table, sheet, of.second, of.secondTurned !== turned),
  ]);
}

/** Two parts or more of one level, those that are cut the same way taken apart. */
export function levelOf(axis: "x" | "y", parts: readonly (Branch | undefined)[]): Branch | undefined {
  const children: Branch[] = [];
  for (const part of parts) {
    if (part === undefined) return undefined;
    if (part.axis === axis) children.push(...part.children);
    else children.push(part);
  }
  return { axis, children };
}

/** Sheets with what lies on them as layouts; undefined where a branch is. */
export function layoutsOfBranches(
  problem: CompiledProblem,
  table: LayTable,
  sheets: readonly { readonly sheet: CompiledSheet; readonly branch: Branch | undefined }[],
): readonly DraftLayout[] | undefined {
  const rules = cutRules(problem, table);
  const trees: CutTree[] = [];
  for (const { sheet, branch } of sheets) {
    if (branch === undefined) return undefined;
    const tree = new CutTree(rules, sheet);
    tree.write(branch);
    tree.refresh();
    trees.push(tree);
  }
  return layoutsOfTrees(problem, trees);
}
