/**
 * Narrow strips are cut while the rest is still wide (common practice, no source). A part that is too narrow for the tool
 * to hold once it is divided often is a small grid; cut the other way round, its strips come off the wider part above:
 *
 *     +---------+        +---------+
 *     |  base   |        |  base   |      The part at the bottom is cut into four by two short cuts along a ruler, or by
 *     |         |   or   |         |      one more cut off the wide sheet and two across the strips.
 *     +----+----+        +---------+
 *     +----+----+        +----+----+
 *     +----+----+        +----+----+
 */
import type { CutNode, Size, Split, SplitPart } from "../model.js";
import { isLeftover, isOffcut, type NormalFormRules, partSize } from "./normal-form.js";

/** A part of a level as a grid: rows along the level's axis, each divided alike. */
interface Grid {
  readonly sizes: readonly number[];
  readonly columns: readonly SplitPart[];
}

/**
 * The tree with the first such grid, from the root down, cut the other way round; `undefined` where there is none. Pieces,
 * stages and the length of cuts stay as they are or get less; an offcut is never divided.
 */
export function cutStripsFromWide(tree: CutNode, size: Size, rules: NormalFormRules): CutNode | undefined {
  if (tree.type !== "split" || rules.narrowestHold === 0) return undefined;
  for (const [i, entry] of tree.parts.entries()) {
    const rest = tree.parts.some((other, j) => j !== i && other.size >= rules.narrowestHold);
    const grid = rest ? gridOf(tree, entry, size, rules) : undefined;
    if (grid === undefined) continue;
    const strips = grid.sizes.map((extent, row): SplitPart => {
      const parts = grid.columns.map((column): SplitPart => {
        const { node } = column;
        return {
          size: column.size,
          node: node.type === "split" ? (node.parts[row] as SplitPart).node : node,
        };
      });
      return { size: extent, node: { type: "split", axis: tree.axis === "x" ? "y" : "x", parts } };
    });
    return { ...tree, parts: [...tree.parts.slice(0, i), ...strips, ...tree.parts.slice(i + 1)] };
  }
  for (const [i, entry] of tree.parts.entries()) {
    const node = cutStripsFromWide(entry.node, partSize(tree.axis, entry.size, size), rules);
    if (node === undefined) continue;
    return { ...tree, parts: tree.parts.map((other, j) => (i === j ? { size: entry.size, node } : other)) };
  }
  return undefined;
}

function gridOf(level: Split, entry: SplitPart, part: Size, rules: NormalFormRules): Grid | undefined {
  const { node } = entry;
  if (node.type !== "split" || node.axis === level.axis) return undefined;
  const inner = partSize(level.axis, entry.size, part);
  let sizes: readonly number[] | undefined;
  for (const column of node.parts) {
    if (isLeftover(column.node)) {
      if (isOffcut(partSize(node.axis, column.size, inner), rules.smallestOffcut)) return undefined;
      continue;
    }
    if (column.node.type !== "split") return undefined;
    const own = column.node.parts.map((row) => row.size);
    sizes ??= own;
    if (own.length !== sizes.length || own.some((extent, row) => extent !== sizes?.[row])) return undefined;
  }
  if (sizes === undefined || sizes.every((extent) => extent >= rules.narrowestHold)) return undefined;
  return { sizes, columns: node.parts };
}
