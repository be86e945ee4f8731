import type { CutNode, LeftoverLeaf, PieceLeaf, Size, Split, SplitPart, StoppedCuts } from "../model.js";
import { childrenOf } from "../placements.js";
import { compareNodes } from "./compare-nodes.js";

/** What the normal form of a cut tree depends on; lengths in the caller's unit. */
export interface NormalFormRules {
  readonly kerf: number;
  /** See {@link Problem.smallestOffcut}. */
  readonly smallestOffcut: Size | undefined;
  readonly narrowestHold: number;
}

/** Says whether a leftover of this size reaches the smallest useful size, in either direction. */
export function isOffcut(size: Size, smallest: Size | undefined): boolean {
  if (smallest === undefined) return true;
  return (
    Math.min(size.width, size.height) >= Math.min(smallest.width, smallest.height) &&
    Math.max(size.width, size.height) >= Math.max(smallest.width, smallest.height)
  );
}

/** The area of the largest offcut of a tree, 0 where there is none; what is in windows does not count. */
export function largestOffcut(node: CutNode, part: Size, rules: NormalFormRules): number {
  if (node.type === "piece") return 0;
  if (node.type !== "split" && node.type !== "stopped") {
    return isOffcut(part, rules.smallestOffcut) ? part.width * part.height : 0;
  }
  let largest = 0;
  for (const child of childrenOf(node, part, rules.kerf)) {
    largest = Math.max(largest, largestOffcut(child.node, child, rules));
  }
  return largest;
}

/** The size of a child that takes `extent` along the axis of a split. */
export function partSize(axis: "x" | "y", extent: number, part: Size): Size {
  return axis === "x" ? { width: extent, height: part.height } : { width: part.width, height: extent };
}

export function isLeftover(node: CutNode): node is LeftoverLeaf {
  return node.type === "offcut" || node.type === "waste";
}

function leftover(size: Size, rules: NormalFormRules): LeftoverLeaf {
  return { type: isOffcut(size, rules.smallestOffcut) ? "offcut" : "waste" };
}

function leftoverArea(node: CutNode, part: Size, kerf: number): number {
  if (isLeftover(node)) return part.width * part.height;
  if (node.type === "piece") return 0;
  let area = 0;
  for (const child of childrenOf(node, part, kerf)) area += leftoverArea(child.node, child, kerf);
  return area;
}

/** The parts of one level: splits nested along the same axis give up theirs. No recursion: such chains may be long. */
function partsOfLevel(split: Split): SplitPart[] {
  const parts: SplitPart[] = [];
  const ahead: SplitPart[] = [...split.parts].reverse();
  for (let part = ahead.pop(); part !== undefined; part = ahead.pop()) {
    if (part.node.type !== "split" || part.node.axis !== split.axis) parts.push(part);
    else for (let i = part.node.parts.length - 1; i >= 0; i--) ahead.push(part.node.parts[i]!);
  }
  return parts;
}

function sortParts(split: Split, part: Size, rules: NormalFormRules): SplitPart[] {
  const keyed = split.parts.map((entry) => ({
    entry,
    left: leftoverArea(entry.node, partSize(split.axis, entry.size, part), rules.kerf),
  }));
  // Where the tool can hold none of the parts, the widest ones stay together to the end, a leftover among them.
  const bySizeAlone = split.parts.every(({ size }) => size < rules.narrowestHold);
  keyed.sort(
    (a, b) =>
      (bySizeAlone ? 0 : Number(isLeftover(a.entry.node)) - Number(isLeftover(b.entry.node))) ||
      b.entry.size - a.entry.size ||
      a.left - b.left ||
      compareNodes(a.entry.node, b.entry.node),
  );
  return keyed.map(({ entry }) => entry);
}

/**
 * Brings a cut tree into its normal form. Splits nested along one axis become one level; the leftovers of a level
 * become one, the kerf between them regained, and are named by their size; a level without pieces is no longer cut,
 * nor is one with a single part that needs no cut; parts stand in order of size, the leftover last.
 *
 * Keeps every piece, and never adds a cut, a stage or a longer cut: all cuts of a level are equally long, and a level
 * only ever loses some. Two normal forms of trees that differ in the order of their parts are equal.
 *
 * @param inside What becomes of a piece or of stopped cuts, which have trees of their own.
 * @throws RangeError where the parts of a split need more than the part has.
 */
export function normalForm(
  node: CutNode,
  part: Size,
  rules: NormalFormRules,
  inside: (node: PieceLeaf | StoppedCuts, part: Size) => CutNode = (kept) => kept,
): CutNode {
  if (isLeftover(node)) return leftover(part, rules);
  if (node.type !== "split") {
    const kept = inside(node, part);
    if (
      kept.type === "stopped" &&
      childrenOf(kept, part, rules.kerf).every((block) => isLeftover(block.node))
    ) {
      return leftover(part, rules);
    }
    return kept;
  }
  const { axis } = node;
  const extent = axis === "x" ? part.width : part.height;
  const kept: SplitPart[] = [];
  for (const { size, node: child } of partsOfLevel(node)) {
    const normal = normalForm(child, partSize(axis, size, part), rules, inside);
    // A child may turn out to be cut along this axis only now, when a level between has gone.
    const inner = normal.type === "split" && normal.axis === axis ? normal.parts : [{ size, node: normal }];
    kept.push(...inner.filter((entry) => !isLeftover(entry.node)));
  }
  const only = kept[0];
  if (only === undefined) return leftover(part, rules);
  const needed = kept.reduce((sum, { size }) => sum + size, rules.kerf * (kept.length - 1));
  const remains = extent - needed;
  if (remains < 0) {
    throw new RangeError(`the parts of a split along ${axis} take ${needed}, and the part has ${extent}`);
  }
  if (remains === 0 && kept.length === 1) return only.node;
  if (remains > rules.kerf) {
    const size = remains - rules.kerf;
    kept.push({ size, node: leftover(partSize(axis, size, part), rules) });
  }
  return { type: "split", axis, parts: sortParts({ type: "split", axis, parts: kept }, part, rules) };
}
