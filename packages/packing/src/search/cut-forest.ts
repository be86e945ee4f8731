/**
 * Cut trees that grow piece by piece, one a sheet, in flat arrays.
 *
 * A level is a row of parallel cuts in one part. Its children lie in any order, so all that it has left over is kept as
 * one free rectangle at its end (leftovers of one level are merged by construction). Putting a piece into a free
 * rectangle makes at most two cuts, and each of them either continues the level that the rectangle belongs to or opens
 * a level of its own:
 *
 *     free rectangle      across first (x, then y)     down first (y, then x)
 *     +-----------+       +-----+-----+                +-----+-----+
 *     |           |       |piece|     |                |piece| strip
 *     |           |       +-----+ free|                +-----+-----+
 *     |           |       |strip|     |                |   free    |
 *     +-----------+       +-----+-----+                +-----------+
 *
 * Kerf, stage limit, longest cut and the shelf rule are checked where a cut is made, so every forest is cuttable at any
 * moment. Mutable inside the search; {@link treeOf} makes plain data of it.
 */
import type { CutNode, Size, SplitPart } from "../model.js";
import type { CompiledProblem, CompiledSheet, Lay } from "./compiled-problem.js";

/** Which cut frees a piece first: `across` divides the width, `down` the height. */
export type FirstCut = "across" | "down";

const NO_AXIS = 0;
const X = 1;
const Y = 2;

/** A part of the tree: a level of cuts or a piece. */
type Branch = Level | PieceAt;

interface Level {
  readonly axis: typeof X | typeof Y;
  readonly width: number;
  readonly height: number;
  readonly children: Branch[];
}

interface PieceAt {
  readonly kind: number;
  readonly lay: Lay;
}

/** A rectangle that nothing lies in yet. */
export interface Free {
  width: number;
  height: number;
  /** Levels above it, its own included. */
  depth: number;
  /** The level at whose end it lies; undefined for a whole sheet. */
  level: Level | undefined;
  readonly bin: Bin;
}

/** One sheet that is being cut. */
export interface Bin {
  readonly index: number;
  readonly sheet: CompiledSheet;
  root: Branch | undefined;
  /** Copies of each kind on it, in the order in which they came. */
  readonly pieces: number[];
  used: number;
}

/** All sheets in use and all their free rectangles. */
export interface Forest {
  readonly problem: CompiledProblem;
  readonly bins: Bin[];
  readonly free: Free[];
}

/** An empty forest. */
export function plantForest(problem: CompiledProblem): Forest {
  return { problem, bins: [], free: [] };
}

/** Takes one more sheet; its usable part is free as a whole. */
export function openSheet(forest: Forest, sheet: CompiledSheet): Free {
  const bin: Bin = { index: forest.bins.length, sheet, root: undefined, pieces: [], used: 0 };
  const free: Free = { width: sheet.width, height: sheet.height, depth: 0, level: undefined, bin };
  forest.bins.push(bin);
  forest.free.push(free);
  return free;
}

/** Whether a piece of these extents can be cut out of a free rectangle by this cut first. */
export function canCut(
  problem: CompiledProblem,
  free: Free,
  width: number,
  height: number,
  first: FirstCut,
): boolean {
  const across = width < free.width;
  const down = height < free.height;
  const longest = free.bin.sheet.longestCut;
  const axis = free.level?.axis ?? NO_AXIS;
  let depth = free.depth;
  if (first === "across") {
    if (!across) return !down;
    if (free.height > longest) return false;
    if (axis !== X) depth++;
    if (down) {
      if (width > longest) return false;
      depth++;
    }
  } else {
    if (!down) return !across;
    if (free.width > longest) return false;
    if (axis !== Y) depth++;
    if (across) {
      if (height > longest) return false;
      depth++;
    }
  }
  return depth <= problem.stages;
}

/** Cuts a piece out of a free rectangle; {@link canCut} must have agreed. */
export function cutPiece(forest: Forest, free: Free, kind: number, lay: Lay, first: FirstCut): void {
  const { kerf } = forest.problem;
  const piece: PieceAt = { kind, lay };
  const { bin } = free;
  bin.pieces.push(kind);
  bin.used += lay.width * lay.height;
  const across = lay.width < free.width;
  const down = lay.height < free.height;
  if (!across && !down) {
    attach(free, piece);
    removeFree(forest, free);
    return;
  }
  const firstAxis = first === "across" ? X : Y;
  let level = free.level;
  if (level === undefined || level.axis !== firstAxis) {
    level = { axis: firstAxis, width: free.width, height: free.height, children: [] };
    attach(free, level);
    free.level = level;
    free.depth++;
  }
  if (firstAxis === X) {
    const strip = down ? cutStrip(forest, free, piece, Y) : piece;
    level.children.push(strip);
    free.width -= lay.width + kerf;
  } else {
    const strip = across ? cutStrip(forest, free, piece, X) : piece;
    level.children.push(strip);
    free.height -= lay.height + kerf;
  }
  // The third level of shelf mode is a last trim: what it cuts away takes no more pieces.
  const closed = forest.problem.shelf && free.depth >= 3;
  if (!isOfUse(forest.problem, free) || closed) removeFree(forest, free);
}

/** A strip as wide (or as high) as the piece, with the piece cut from its end; the rest of it is free. */
function cutStrip(forest: Forest, free: Free, piece: PieceAt, axis: typeof X | typeof Y): Level {
  const { kerf, shelf } = forest.problem;
  const width = axis === Y ? piece.lay.width : free.width;
  const height = axis === Y ? free.height : piece.lay.height;
  const strip: Level = { axis, width, height, children: [piece] };
  const depth = free.depth + 1;
  const restWidth = axis === X ? width - piece.lay.width - kerf : width;
  const restHeight = axis === Y ? height - piece.lay.height - kerf : height;
  const closed = shelf && depth >= 3;
  const rest = { width: restWidth, height: restHeight, depth, level: strip, bin: free.bin };
  if (isOfUse(forest.problem, rest) && !closed) forest.free.push(rest);
  return strip;
}

function isOfUse(problem: CompiledProblem, rest: Size): boolean {
  return rest.width >= problem.smallest.width && rest.height >= problem.smallest.height;
}

function attach(free: Free, branch: Branch): void {
  if (free.level) free.level.children.push(branch);
  else free.bin.root = branch;
}

function removeFree(forest: Forest, free: Free): void {
  const at = forest.free.indexOf(free);
  // Order among free rectangles carries no meaning but must be the same everywhere: keep it.
  forest.free.splice(at, 1);
}

/** A copy that can be changed without touching the original; for groups that must be placed whole or not at all. */
export function copyForest(forest: Forest): Forest {
  const bins: Bin[] = [];
  const levels = new Map<Level, Level>();
  const copyBranch = (branch: Branch): Branch => {
    if (!("children" in branch)) return branch;
    const copy: Level = { ...branch, children: branch.children.map(copyBranch) };
    levels.set(branch, copy);
    return copy;
  };
  for (const bin of forest.bins) {
    bins.push({ ...bin, root: bin.root && copyBranch(bin.root), pieces: [...bin.pieces] });
  }
  const free = forest.free.map((entry) => ({
    ...entry,
    level: entry.level && levels.get(entry.level),
    bin: bins[entry.bin.index] as Bin,
  }));
  return { problem: forest.problem, bins, free };
}

/** The tree of one sheet as plain data; every leftover is called waste until {@link arrange} names it. */
export function treeOf(problem: CompiledProblem, bin: Bin): CutNode {
  if (bin.root === undefined) return { type: "waste" };
  return branchTree(problem, bin.root);
}

function branchTree(problem: CompiledProblem, branch: Branch): CutNode {
  if (!("children" in branch)) {
    const kind = problem.kinds[branch.kind];
    if (kind === undefined) throw new RangeError(`There is no kind ${branch.kind}.`);
    const { form, turned } = branch.lay;
    return { type: "piece", shares: [{ kind: kind.id, form, turned, count: 1 }] };
  }
  const axis = branch.axis === X ? "x" : "y";
  const extent = branch.axis === X ? branch.width : branch.height;
  const parts: SplitPart[] = branch.children.map((child) => ({
    size: extentOf(child, branch.axis),
    node: branchTree(problem, child),
  }));
  const used = parts.reduce((sum, part) => sum + part.size + problem.kerf, 0);
  if (extent - used > 0) parts.push({ size: extent - used, node: { type: "waste" } });
  return { type: "split", axis, parts };
}

function extentOf(branch: Branch, axis: typeof X | typeof Y): number {
  const size = "children" in branch ? branch : branch.lay;
  return axis === X ? size.width : size.height;
}
