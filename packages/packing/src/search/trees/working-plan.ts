import type { Demand } from "../best-fit.js";
import type { CompiledProblem, CompiledSheet } from "../compiled-problem.js";
import type { Branch } from "./branch.js";
import { type CutRules, CutTree, cutRules } from "./cut-tree.js";
import type { LayTable } from "./lay-table.js";
import { LeftoverMeasure } from "./leftover.js";
import { longer } from "./node-list.js";
import { OpenPieces } from "./open-pieces.js";

/** A sheet with what lies on it. */
export interface PlannedSheet {
  readonly sheet: CompiledSheet;
  readonly branch: Branch | undefined;
}

/** The sheets in use, the pieces without a place, and the way back to both as they were before the present step. */
export class WorkingPlan {
  readonly trees: CutTree[] = [];
  /** Changes whenever a tree does; two equal versions of one tree are the same tree. */
  version = new Int32Array(16);
  isTouched = new Uint8Array(16);
  /** Trees that the present step has changed. */
  readonly touched: number[] = [];
  readonly open: OpenPieces;
  /** Cost of the sheets in use, and what they may cost. */
  cost = 0;
  budget = Number.POSITIVE_INFINITY;
  /** By sheet: the uncut tree that may be used next, or -1. */
  readonly uncut: number[];
  /** Nodes refreshed. */
  work = 0;

  private readonly problem: CompiledProblem;
  private readonly stock: readonly number[];
  private readonly rules: CutRules;
  private readonly before: (CutTree | undefined)[] = [];
  private readonly versionBefore: number[] = [];
  private readonly leftover: number[] = [];
  private readonly leftoverBefore: number[] = [];
  private leftoverSum = 0;
  private costBefore = 0;
  private leftoverSumBefore = 0;
  private nextVersion = 1;
  private readonly measure: LeftoverMeasure;
  /** Measure of an unused sheet, by cost. */
  private readonly unusedRate: number;
  private readonly inUse: number[];
  /** By kind: its group, or -1. By group: the tree its pieces lie on, or -1, and how many do. */
  readonly group: Int32Array;
  readonly groupTree: Int32Array;
  private readonly groupCopies: Int32Array;

  constructor(problem: CompiledProblem, table: LayTable, demand: Demand) {
    this.problem = problem;
    this.stock = demand.stock;
    this.rules = cutRules(problem, table);
    this.open = new OpenPieces(problem, demand);
    const areas = problem.sheets.map((sheet) => sheet.width * sheet.height);
    this.measure = new LeftoverMeasure(Math.max(...areas));
    this.unusedRate = Math.max(
      0,
      ...problem.sheets.map(({ cost, index }) =>
        cost > 0 ? this.measure.ofArea(areas[index] ?? 0) / cost : 0,
      ),
    );
    this.inUse = problem.sheets.map(() => 0);
    this.uncut = problem.sheets.map(() => -1);
    this.group = Int32Array.from(problem.kinds, (kind) => kind.group);
    this.groupTree = new Int32Array(problem.groups).fill(-1);
    this.groupCopies = new Int32Array(problem.groups);
    this.findUncut();
  }

  /** Takes sheets over with what lies on them. */
  load(sheets: readonly PlannedSheet[]): void {
    for (const { sheet, branch } of sheets) {
      const at = this.addTree(sheet);
      const tree = this.trees[at] as CutTree;
      tree.write(branch);
      tree.refresh();
      tree.eachPiece((kind) => this.close(kind, at));
      if (tree.count > 0) this.countUse(sheet, 1);
      this.weighLeftover(at);
    }
    this.open.tidy();
    this.findUncut();
  }

  /**
   * How far the plan is from its goal, in sheets: what is still open, less a little for leftovers in few large parts.
   * @param shape what the leftover's shape counts for.
   */
  distance(shape: number): number {
    const unused = Number.isFinite(this.budget) ? (this.budget - this.cost) * this.unusedRate : 0;
    return this.open.inSheets() - shape * (this.leftoverSum + unused);
  }

  /** Begins a step that may be undone. */
  begin(): void {
    this.open.save();
    this.costBefore = this.cost;
    this.leftoverSumBefore = this.leftoverSum;
  }

  /** Puts a kind in on a tree. */
  place(kind: number, at: number, place: number, lay: number): void {
    const seen = this.trees[at] as CutTree;
    const node = seen.placeNode[place] as number;
    const how = seen.placeHow[place] as number;
    const wasUncut = seen.count === 0;
    this.touch(at);
    const tree = this.trees[at] as CutTree;
    tree.insert(node, how, lay);
    tree.refresh();
    this.version[at] = this.nextVersion++;
    this.work += tree.count;
    this.close(kind, at);
    if (wasUncut) {
      this.countUse(tree.sheet, 1);
      this.findUncut();
    }
  }

  /** Takes a node out of a tree with all below it; {@link refreshTouched} must follow the last. */
  takeOut(at: number, node: number): void {
    this.touch(at);
    const tree = this.trees[at] as CutTree;
    tree.remove(node, (kind) => {
      this.open.add(kind);
      this.leaveGroup(kind);
    });
    if (tree.count === 0) this.countUse(tree.sheet, -1);
  }

  /** Brings all changed trees up to date. */
  refreshTouched(): void {
    let isUncut = false;
    for (const at of this.touched) {
      const tree = this.trees[at] as CutTree;
      tree.refresh();
      this.version[at] = this.nextVersion++;
      this.work += tree.count;
      if (tree.count === 0) isUncut = true;
    }
    if (isUncut) this.findUncut();
  }

  /** Measures what the changed trees leave over. */
  weighTouched(): void {
    for (const at of this.touched) this.weighLeftover(at);
  }

  /** Ends a step; what it changed stays. */
  keep(): void {
    for (const at of this.touched) this.isTouched[at] = 0;
    this.touched.length = 0;
  }

  /** Ends a step; everything is as it was when it began. */
  undo(): void {
    const hasGroups = this.problem.groups > 0;
    let isUsed = false;
    for (const at of this.touched) {
      const tree = this.trees[at] as CutTree;
      const before = this.before[at] as CutTree;
      if (tree.count === 0 || before.count === 0) isUsed = true;
      const { index } = tree.sheet;
      const change = Number(before.count > 0) - Number(tree.count > 0);
      this.inUse[index] = (this.inUse[index] as number) + change;
      if (hasGroups) tree.eachPiece((kind) => this.leaveGroup(kind));
      this.trees[at] = before;
      this.before[at] = tree;
      this.version[at] = this.versionBefore[at] as number;
      this.leftover[at] = this.leftoverBefore[at] as number;
    }
    if (hasGroups) {
      for (const at of this.touched) {
        (this.trees[at] as CutTree).eachPiece((kind) => this.joinGroup(kind, at));
      }
    }
    this.open.restore();
    this.cost = this.costBefore;
    this.leftoverSum = this.leftoverSumBefore;
    if (isUsed) this.findUncut();
    this.keep();
  }

  /** A tree with pieces, or the uncut one of its sheet where the budget allows one more. */
  mayTake(at: number): boolean {
    const tree = this.trees[at] as CutTree;
    if (tree.count > 0) return true;
    return this.uncut[tree.sheet.index] === at && this.cost + tree.sheet.cost <= this.budget;
  }

  /** One uncut tree of each sheet that is in stock. */
  private findUncut(): void {
    this.uncut.fill(-1);
    this.trees.forEach((tree, at) => {
      const { index } = tree.sheet;
      if (tree.count === 0 && (this.uncut[index] as number) < 0) this.uncut[index] = at;
    });
    for (const sheet of this.problem.sheets) {
      const hasMore = (this.inUse[sheet.index] as number) < (this.stock[sheet.index] ?? 0);
      if (!hasMore) this.uncut[sheet.index] = -1;
      else if ((this.uncut[sheet.index] as number) < 0) this.uncut[sheet.index] = this.addTree(sheet);
    }
  }

  private addTree(sheet: CompiledSheet): number {
    const at = this.trees.length;
    this.trees.push(new CutTree(this.rules, sheet));
    this.before.push(undefined);
    if (at >= this.version.length) {
      this.version = longer(this.version, 2 * at);
      const isTouched = new Uint8Array(2 * at);
      isTouched.set(this.isTouched);
      this.isTouched = isTouched;
    }
    this.version[at] = this.nextVersion++;
    this.versionBefore.push(0);
    this.leftover.push(0);
    this.leftoverBefore.push(0);
    return at;
  }

  /** Keeps a tree as it is; from now on a copy of it changes. */
  private touch(at: number): void {
    if (this.isTouched[at] === 1) return;
    this.isTouched[at] = 1;
    this.touched.push(at);
    const tree = this.trees[at] as CutTree;
    const copy = this.before[at] ?? new CutTree(this.rules, tree.sheet);
    copy.copyFrom(tree);
    this.trees[at] = copy;
    this.before[at] = tree;
    this.versionBefore[at] = this.version[at] as number;
    this.leftoverBefore[at] = this.leftover[at] as number;
  }

  private weighLeftover(at: number): void {
    const tree = this.trees[at] as CutTree;
    const before = this.leftover[at] as number;
    // Uncut sheets count by their cost, where there is a budget.
    const now = tree.count > 0 ? this.measure.of(tree) : 0;
    this.leftover[at] = now;
    this.leftoverSum += now - before;
  }

  private countUse(sheet: CompiledSheet, change: 1 | -1): void {
    this.inUse[sheet.index] = (this.inUse[sheet.index] as number) + change;
    this.cost += change * sheet.cost;
  }

  private close(kind: number, at: number): void {
    this.open.take(kind);
    this.joinGroup(kind, at);
  }

  private joinGroup(kind: number, at: number): void {
    const group = this.group[kind] as number;
    if (group < 0) return;
    this.groupCopies[group] = (this.groupCopies[group] as number) + 1;
    this.groupTree[group] = at;
  }

  private leaveGroup(kind: number): void {
    const group = this.group[kind] as number;
    if (group < 0) return;
    const copies = (this.groupCopies[group] as number) - 1;
    this.groupCopies[group] = copies;
    if (copies === 0) this.groupTree[group] = -1;
  }
}
