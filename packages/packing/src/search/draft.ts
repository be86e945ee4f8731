import type { CutNode, Layout, PieceLeaf, Share, Size } from "../model.js";
import { childrenOf } from "../placements.js";
import type { CompiledProblem, CompiledSheet } from "./compiled-problem.js";
import { type Forest, treeOf } from "./cut-forest.js";

/** Sheets cut alike, as the search keeps them. */
export interface DraftLayout {
  readonly sheet: CompiledSheet;
  readonly run: number;
  readonly tree: () => CutNode;
  /** Copies by kind index on one sheet. */
  readonly counts: ReadonlyMap<number, number>;
  /** Sum of the squares of the free areas on one sheet: large where little is in many places. */
  readonly spread: number;
}

/** A whole plan with what it is judged by. */
export interface Draft {
  readonly layouts: readonly DraftLayout[];
  readonly placed: readonly number[];
  /** Copies below the least asked for, weighed by value. */
  readonly lacking: number;
  readonly value: number;
  readonly cost: number;
  /** Layouts that differ in what they yield; counted when it is first asked for. */
  readonly different: () => number;
  readonly spread: number;
}

/** Every sheet of a forest as a layout of its own. */
export function layoutsOf(problem: CompiledProblem, forest: Forest): readonly DraftLayout[] {
  const spread = forest.bins.map(() => 0);
  for (const free of forest.free) {
    const area = free.width * free.height;
    spread[free.bin.index] = (spread[free.bin.index] ?? 0) + area * area;
  }
  return forest.bins
    .filter((bin) => bin.pieces.length > 0)
    .map((bin) => ({
      sheet: bin.sheet,
      run: 1,
      tree: () => treeOf(problem, bin),
      counts: tally(bin.pieces),
      spread: spread[bin.index] ?? 0,
    }));
}

/** Sum of the squares of the free areas of a tree, large where little is in many places. */
export function leftoverSpread(node: CutNode, part: Size, kerf: number): number {
  if (node.type !== "split") {
    const area = part.width * part.height;
    return node.type === "piece" || node.type === "stopped" ? 0 : area * area;
  }
  return childrenOf(node, part, kerf).reduce(
    (sum, child) => sum + leftoverSpread(child.node, child, kerf),
    0,
  );
}

/** How often each number stands in a list. */
function tally(list: readonly number[]): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const entry of list) counts.set(entry, (counts.get(entry) ?? 0) + 1);
  return counts;
}

/** The same text for layouts that yield the same pieces from the same sheet. */
export function yieldKey(layout: DraftLayout): string {
  const counts = [...layout.counts].sort((a, b) => a[0] - b[0]).map(([kind, count]) => `${kind}x${count}`);
  return `${layout.sheet.index}:${counts.join(",")}`;
}

/** Judges a list of layouts. */
export function draftOf(problem: CompiledProblem, layouts: readonly DraftLayout[]): Draft {
  const placed = problem.kinds.map(() => 0);
  let cost = 0;
  let spread = 0;
  for (const layout of layouts) {
    cost += layout.run * layout.sheet.cost;
    spread += layout.run * layout.spread;
    for (const [kind, count] of layout.counts) placed[kind] = (placed[kind] ?? 0) + count * layout.run;
  }
  let value = 0;
  let lacking = 0;
  for (const kind of problem.kinds) {
    const count = placed[kind.index] ?? 0;
    value += count * kind.value;
    lacking += Math.max(0, kind.least - count) * Math.max(1, kind.value);
  }
  let known = 0;
  const different = (): number => {
    if (known === 0) known = new Set(layouts.map(yieldKey)).size;
    return known;
  };
  return { layouts, placed, lacking, value, cost, different, spread };
}

/** Judges plain trees; throws RangeError where they hold a sheet or kind that the problem does not have. */
export function draftFromTrees(
  problem: CompiledProblem,
  sheets: readonly { readonly sheet: string; readonly run: number; readonly tree: CutNode }[],
): Draft {
  const numbers = new Map(problem.kinds.map((kind) => [kind.id, kind.index]));
  const layouts = sheets.map(({ sheet: id, run, tree }): DraftLayout => {
    const sheet = problem.sheets.find((entry) => entry.id === id);
    if (sheet === undefined) throw new RangeError(`There is no sheet '${id}'.`);
    const kinds: number[] = [];
    mapPieces(tree, (leaf) => {
      for (const share of leaf.shares) {
        const kind = numbers.get(share.kind);
        if (kind === undefined) throw new RangeError(`There is no kind '${share.kind}'.`);
        for (let copy = 0; copy < share.count; copy++) kinds.push(kind);
      }
      return leaf;
    });
    const spread = leftoverSpread(tree, { width: sheet.width, height: sheet.height }, problem.kerf);
    return { sheet, run, tree: () => tree, counts: tally(kinds), spread };
  });
  return draftOf(problem, layouts);
}

/** Whether one plan is better than another, by what was asked and then by what is handier to cut and to keep. */
export function isBetterDraft(problem: CompiledProblem, a: Draft, b: Draft): boolean {
  if (a.lacking !== b.lacking) return a.lacking < b.lacking;
  if (problem.source.aim === "fill" && a.value !== b.value) return a.value > b.value;
  if (a.cost !== b.cost) return a.cost < b.cost;
  if (a.different() !== b.different()) return a.different() < b.different();
  return a.spread > b.spread;
}

/**
 * Arranged layouts as plain data: equal trees merged into runs whose places count what they yield, longest runs first.
 */
export function mergeRuns(problem: CompiledProblem, layouts: readonly DraftLayout[]): readonly Layout[] {
  const merged = new Map<string, { sheet: string; run: number; tree: CutNode }>();
  layouts.forEach((layout, i) => {
    const { sheet, run } = layout;
    const tree = layout.tree();
    const alone = [...layout.counts.keys()].some((kind) => (problem.kinds[kind]?.group ?? -1) >= 0);
    const key = alone ? `alone ${i}` : `${sheet.index} ${shapeOf(tree)}`;
    const counted = run === 1 ? tree : timesRun(tree, run);
    const known = merged.get(key);
    merged.set(key, {
      sheet: sheet.id,
      run: run + (known?.run ?? 0),
      tree: known ? sumOf(known.tree, counted) : counted,
    });
  });
  return [...merged.values()].sort((a, b) => b.run - a.run);
}

/** The tree without names: where two trees agree, their sheets are cut alike. */
function shapeOf(node: CutNode): string {
  if (node.type === "piece") return "p";
  if (node.type === "split")
    return `${node.axis}(${node.parts.map((part) => `${part.size}${shapeOf(part.node)}`).join(",")})`;
  if (node.type === "stopped") throw new RangeError("The search makes no stopped cuts.");
  return node.type[0] as string;
}

function mapPieces(node: CutNode, change: (leaf: PieceLeaf) => PieceLeaf): CutNode {
  if (node.type === "piece") return change(node);
  if (node.type !== "split") return node;
  return {
    ...node,
    parts: node.parts.map((part) => ({ size: part.size, node: mapPieces(part.node, change) })),
  };
}

function timesRun(tree: CutNode, run: number): CutNode {
  return mapPieces(tree, (leaf) => ({
    ...leaf,
    shares: leaf.shares.map((share) => ({ ...share, count: share.count * run })),
  }));
}

/** Two trees of one shape as one, the copies at each place added up. */
function sumOf(a: CutNode, b: CutNode): CutNode {
  const leaves: PieceLeaf[] = [];
  mapPieces(b, (leaf) => {
    leaves.push(leaf);
    return leaf;
  });
  let at = 0;
  return mapPieces(a, (leaf) => {
    const other = leaves[at++];
    return other ? { ...leaf, shares: addShares(leaf.shares, other.shares) } : leaf;
  });
}

function addShares(a: readonly Share[], b: readonly Share[]): readonly Share[] {
  const sum = a.map((share) => ({ ...share }));
  for (const share of b) {
    const same = sum.find(
      (own) => own.kind === share.kind && own.form === share.form && own.turned === share.turned,
    );
    if (same) same.count += share.count;
    else sum.push({ ...share });
  }
  return sum;
}
