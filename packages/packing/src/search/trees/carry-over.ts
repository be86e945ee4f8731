import type { CompiledProblem, CompiledSheet } from "../compiled-problem.js";
import { type Branch, branchOfTree } from "./branch.js";
import type { CutTree } from "./cut-tree.js";
import type { LayTable } from "./lay-table.js";
import type { PlannedSheet } from "./working-plan.js";

/** What lies on a sheet, apart from the sheet. */
export interface LooseTree {
  /** The sheet it comes from. */
  readonly sheet: CompiledSheet;
  readonly branch: Branch;
  /** Extents that it needs. */
  readonly width: number;
  readonly height: number;
  /** Area of its pieces. */
  readonly used: number;
  /** Whether any sheet that is large enough takes it: not where levels or lengths of cuts have a limit. */
  readonly mayMove: boolean;
}

/** Reads all trees that have pieces. */
export function looseTrees(trees: readonly CutTree[]): readonly LooseTree[] {
  return trees.flatMap((tree) => {
    const branch = branchOfTree(tree);
    if (branch === undefined) return [];
    const { sheet, used, limited } = tree;
    const width = tree.width[0] as number;
    const height = tree.height[0] as number;
    return { sheet, branch, width, height, used, mayMove: !limited && isWithoutLimit(sheet) };
  });
}

/**
 * Puts trees on new sheets: those with the most on them first, each on a sheet of its own kind, and then what is left on the
 * smallest that is large enough. Trees that find none are left out.
 * @param counts the new sheets, by sheet index.
 * @returns all new sheets, those without a tree too.
 */
export function carryOver(
  { sheets }: CompiledProblem,
  table: LayTable,
  counts: readonly number[],
  loose: readonly LooseTree[],
): readonly PlannedSheet[] {
  const places = sheets.flatMap((sheet) =>
    Array.from({ length: counts[sheet.index] ?? 0 }, (): Place => ({ sheet, branch: undefined })),
  );
  const byUse = [...loose].sort((a, b) => b.used - a.used);
  const left = byUse.filter((tree) => {
    const place = places.find(({ sheet, branch }) => sheet === tree.sheet && branch === undefined);
    if (place) place.branch = tree.branch;
    return place === undefined;
  });
  const bySize = [...places].sort((a, b) => areaOf(a.sheet) - areaOf(b.sheet));
  for (const tree of left) {
    const place = bySize.find(({ sheet, branch }) => branch === undefined && takes(sheet, tree));
    if (place) place.branch = onSheet(table, tree.branch, place.sheet);
  }
  return places;
}

/** A new sheet, with what has come to lie on it. */
interface Place {
  readonly sheet: CompiledSheet;
  branch: Branch | undefined;
}

function takes(sheet: CompiledSheet, tree: LooseTree): boolean {
  const isLarge = sheet.width >= tree.width && sheet.height >= tree.height;
  return tree.mayMove && isLarge && isWithoutLimit(sheet);
}

function isWithoutLimit({ width, height, longestCut }: CompiledSheet): boolean {
  return longestCut >= Math.max(width, height);
}

function areaOf({ width, height }: CompiledSheet): number {
  return width * height;
}

/** The same branch with the lays of another sheet; undefined where one of its pieces may not lie so there. */
function onSheet(table: LayTable, branch: Branch, sheet: CompiledSheet): Branch | undefined {
  if (branch.axis === undefined) {
    const own = table.lays[branch.lay];
    const row = sheet.index * table.kinds + (table.kind[branch.lay] as number);
    for (let lay = table.first[row] as number; lay < (table.first[row + 1] as number); lay++) {
      const other = table.lays[lay];
      if (other?.width === own?.width && other?.height === own?.height) return { axis: undefined, lay };
    }
    return undefined;
  }
  const children: Branch[] = [];
  for (const child of branch.children) {
    const moved = onSheet(table, child, sheet);
    if (moved === undefined) return undefined;
    children.push(moved);
  }
  return { axis: branch.axis, children };
}
