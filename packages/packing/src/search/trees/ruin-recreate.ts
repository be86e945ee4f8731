/**
 * Goal-driven ruin and recreate on cut trees: the main engine of the search.
 *
 * The goal is a plan whose sheets cost less than those of the best plan known. The engine holds sheets within that budget
 * and the pieces that have found no place on them. A step takes some nodes out of the trees, pieces or whole blocks, and
 * puts what is open back: each time the kind with the fewest places left goes to the place that it fills best. Late
 * acceptance (Burke & Bykov 2017) decides whether the step stands; what is compared is the area of what is still open,
 * and among equals how much of the leftover lies in few large parts.
 *
 * Source: J. Gardeyn, T. Wauters, A goal-driven ruin and recreate heuristic for the 2D variable-sized bin packing problem
 * with guillotine constraints, European J. Operational Research 301 (2022); on justified trees after Fleszar (2013), see
 * cut-tree.ts.
 *
 * What a kind finds on a tree depends on the two alone, so it is remembered until the tree changes; a step that is
 * undone brings back the tree's version, and with it what was remembered.
 */
import type { Demand } from "../best-fit.js";
import type { CompiledProblem, CompiledSheet } from "../compiled-problem.js";
import type { Meter } from "../meter.js";
import type { RandomStream } from "../random-stream.js";
import type { Branch } from "./branch.js";
import { CutTree, cutRules, EXACT_WIDTH } from "./cut-tree.js";
import { type LayTable, layTable } from "./lay-table.js";
import { Remembered } from "./remembered.js";

/** Parameters of the engine; one set serves all problems. */
export const TUNING = {
  /** Nodes taken out of the trees in one step: from 1 to twice as many less one. */
  removals: 6,
  /** Costs that late acceptance remembers. */
  memory: 50,
  /** One tree in this many is passed over when the best place is chosen. */
  passOver: 100,
  /** Weight of the leftover's shape against the area of open pieces, both in sheets. */
  shape: 0.01,
  /** Trees that one step looks at, at most. */
  scope: 64,
  /** Kinds that one step tries to place, at most. */
  slots: 48,
  /** The same for the first plan. */
  firstSlots: 400,
};

/** Steps in which the measure of leftovers is tabulated, for areas from none to the largest sheet. */
const MEASURE_STEPS = 4096;

/** A plan that the engine starts from or has found. */
export interface PlannedSheet {
  readonly sheet: CompiledSheet;
  readonly branch: Branch | undefined;
}

export class RuinAndRecreate {
  steps = 0;
  readonly table: LayTable;
  readonly trees: CutTree[] = [];
  /** Cost of the sheets in use. */
  cost = 0;

  private readonly problem: CompiledProblem;
  private readonly wanted: readonly number[];
  private readonly stock: readonly number[];
  private readonly random: RandomStream;
  private readonly meter: Meter;
  private readonly rules;
  private budget = Number.POSITIVE_INFINITY;

  /** Copies of each kind without a place, the kinds that have any, and what they weigh together. */
  private readonly open: Int32Array;
  private openKinds: number[] = [];
  private openWeight = 0;
  private readonly weight: Float64Array;
  private readonly isLarger: Float64Array;
  private readonly least: Float64Array;
  private readonly weightUnit: number;

  private readonly saved: CutTree[] = [];
  private readonly version: number[] = [];
  private readonly savedVersion: number[] = [];
  private readonly shape: number[] = [];
  private readonly savedShape: number[] = [];
  private readonly isTouched: boolean[] = [];
  private touched: number[] = [];
  private shapeSum = 0;
  private nextVersion = 1;
  private readonly measure = new Float64Array(MEASURE_STEPS + 2);
  private readonly measureScale: number;
  private readonly emptyRate: number;

  /** By sheet: trees in use, and the uncut one that may be used next (or -1). */
  private readonly inUse: number[];
  private readonly uncut: number[];

  private readonly groupTree: Int32Array;
  private readonly groupCopies: Int32Array;

  private current = 0;
  private readonly memory = new Float64Array(TUNING.memory);

  /** What slots find on trees, by slot and tree: number of places, the fit of the best one, it and the lay for it. */
  private columns = 0;
  private slots = 0;
  private places = new Int32Array(0);
  private fit = new Float64Array(0);
  private place = new Int32Array(0);
  private lay = new Int32Array(0);
  private slotKind = new Int32Array(16);
  private slotPlaces = new Float64Array(16);
  private slotFit = new Float64Array(16);
  private slotTree = new Int32Array(16);
  private readonly remembered: Remembered;
  /** Trees looked at in this step, and those of them that may take a piece. */
  private scope: number[] = [];
  private readonly inScope: boolean[] = [];
  private eligible: number[] = [];

  constructor(problem: CompiledProblem, demand: Demand, random: RandomStream, meter: Meter) {
    this.problem = problem;
    this.wanted = demand.wanted;
    this.stock = demand.stock;
    this.random = random;
    this.meter = meter;
    this.table = layTable(problem, demand.wanted);
    this.rules = cutRules(problem, this.table);
    this.open = new Int32Array(problem.kinds.length);
    const isFill = problem.source.aim === "fill";
    const areas = Float64Array.from(problem.kinds, (kind) => smallestArea(kind.lays));
    this.weight = isFill ? Float64Array.from(problem.kinds, (kind) => kind.value) : areas;
    this.isLarger = areas;
    this.least = Float64Array.from(problem.kinds, (kind) => (isFill ? kind.least : 0));
    const largest = Math.max(...problem.sheets.map((sheet) => sheet.width * sheet.height));
    const densest = Math.max(
      ...problem.kinds.map((kind, k) => (kind.fits ? (this.weight[k] as number) / (areas[k] as number) : 0)),
    );
    this.weightUnit = largest * (densest > 0 ? densest : 1);
    this.measureScale = MEASURE_STEPS / largest;
    for (let i = 0; i < this.measure.length; i++) this.measure[i] = convex(i / MEASURE_STEPS);
    this.emptyRate = Math.max(
      0,
      ...problem.sheets
        .filter((sheet) => sheet.cost > 0)
        .map((sheet) => this.measureOf(sheet.width * sheet.height) / sheet.cost),
    );
    this.remembered = new Remembered(problem.kinds.length);
    this.inUse = problem.sheets.map(() => 0);
    this.uncut = problem.sheets.map(() => -1);
    this.groupTree = new Int32Array(problem.groups).fill(-1);
    this.groupCopies = new Int32Array(problem.groups);
    this.wanted.forEach((copies, kind) => {
      if (copies > 0 && problem.kinds[kind]?.fits) {
        this.openKinds.push(kind);
        for (let copy = 0; copy < copies; copy++) this.weighOpen(kind, 1);
      }
    });
    this.findUncut();
  }

  /** True where every piece has a place. */
  get isComplete(): boolean {
    return this.openKinds.length === 0;
  }

  /** The weight of the pieces without a place: their area, or with the aim `fill` their value. */
  get lacking(): number {
    return this.openWeight;
  }

  /** Takes a plan over; what it has no place for stays open. */
  load(sheets: readonly PlannedSheet[]): void {
    for (const { sheet, branch } of sheets) {
      const at = this.addTree(sheet);
      const tree = this.trees[at] as CutTree;
      tree.write(branch);
      tree.eachPiece((kind) => this.close(kind, at));
      if (tree.count > 0) {
        this.inUse[sheet.index] = (this.inUse[sheet.index] ?? 0) + 1;
        this.cost += sheet.cost;
      }
      this.weighShape(at);
    }
    this.openKinds = this.openKinds.filter((kind) => (this.open[kind] as number) > 0);
    this.findUncut();
    this.settle();
  }

  /** Puts every open piece in where it finds a place, opening sheets within the budget. */
  build(): void {
    this.prepareScope(true);
    let before: number;
    do {
      before = this.openWeight;
      this.prepareSlots(TUNING.firstSlots);
      this.recreate();
    } while (this.openWeight < before && this.openKinds.length > 0);
    this.settle();
  }

  /** Sets what the sheets may cost, and uncuts the least used ones until they do. */
  setBudget(budget: number): void {
    this.budget = budget;
    while (this.cost > budget) {
      let worst = -1;
      let least = Number.POSITIVE_INFINITY;
      this.trees.forEach((tree, at) => {
        if (tree.count === 0 || tree.sheet.cost === 0) return;
        const use = tree.used / tree.sheet.cost;
        if (use < least) {
          least = use;
          worst = at;
        }
      });
      if (worst < 0) break;
      this.touch(worst);
      this.removeFrom(worst, 0);
      this.refreshRuined();
    }
    this.findUncut();
    this.settle();
  }

  /** One step; afterwards the engine holds the new state, or the old one where the new is not accepted. */
  step(): void {
    this.steps++;
    const kindsBefore = this.openKinds.slice();
    const copiesBefore = kindsBefore.map((kind) => this.open[kind] as number);
    const weightBefore = this.openWeight;
    const shapeBefore = this.shapeSum;
    const costBefore = this.cost;
    this.ruin();
    this.prepareScope(false);
    this.prepareSlots(TUNING.slots);
    this.recreate();
    for (const at of this.touched) this.weighShape(at);
    const value = this.objective();
    const slot = this.steps % this.memory.length;
    if (value <= this.current || value <= (this.memory[slot] as number)) {
      this.current = value;
    } else {
      this.undo();
      for (const kind of this.openKinds) this.open[kind] = 0;
      kindsBefore.forEach((kind, i) => {
        this.open[kind] = copiesBefore[i] as number;
      });
      this.openKinds = kindsBefore;
      this.openWeight = weightBefore;
      this.shapeSum = shapeBefore;
      this.cost = costBefore;
    }
    if (this.current < (this.memory[slot] as number)) this.memory[slot] = this.current;
    this.forgetTouched();
  }

  private ruin(): void {
    const removals = 1 + this.random.below(2 * TUNING.removals - 1);
    const trees = this.trees.length;
    for (let i = 0; i < removals; i++) {
      const at = this.random.below(trees);
      const tree = this.trees[at] as CutTree;
      if (tree.count === 0) continue;
      this.touch(at);
      this.removeFrom(at, this.random.below(tree.count));
    }
    this.refreshRuined();
  }

  private refreshRuined(): void {
    let isUncut = false;
    for (const at of this.touched) {
      const tree = this.trees[at] as CutTree;
      tree.refresh();
      this.version[at] = this.nextVersion++;
      this.meter.work += 3 * tree.count;
      if (tree.count === 0) isUncut = true;
    }
    if (isUncut) this.findUncut();
  }

  private removeFrom(at: number, node: number): void {
    const tree = this.trees[at] as CutTree;
    tree.remove(node, (kind) => this.reopen(kind));
    if (tree.count === 0) {
      const { index, cost } = tree.sheet;
      this.inUse[index] = (this.inUse[index] as number) - 1;
      this.cost -= cost;
    }
  }

  /** Chooses the trees that this step looks at: all, or those it has ruined and some others. */
  private prepareScope(isFirst: boolean): void {
    const { scope, inScope, trees, random } = this;
    for (const at of scope) inScope[at] = false;
    scope.length = 0;
    const add = (at: number): void => {
      if (inScope[at]) return;
      inScope[at] = true;
      scope.push(at);
    };
    if (isFirst || trees.length <= TUNING.scope) {
      for (let at = 0; at < trees.length; at++) add(at);
      return;
    }
    for (const at of this.touched) add(at);
    for (const at of this.uncut) if (at >= 0) add(at);
    while (scope.length < TUNING.scope) add(random.below(trees.length));
  }

  /** The kinds that are placed now: all that are open, or those just taken out and some others. */
  private prepareSlots(most: number): void {
    const { openKinds, random } = this;
    const all = openKinds.length;
    const slots = Math.min(all, most);
    this.slots = slots;
    if (this.slotKind.length < slots) {
      this.slotKind = new Int32Array(2 * slots);
      this.slotPlaces = new Float64Array(2 * slots);
      this.slotFit = new Float64Array(2 * slots);
      this.slotTree = new Int32Array(2 * slots);
    }
    if (all > slots) {
      // Kinds taken out last stand at the end; they keep their places, the others are drawn.
      const kept = slots >> 1;
      for (let i = 0; i < slots - kept; i++) {
        const other = i + random.below(all - kept - i);
        const kind = openKinds[other] as number;
        openKinds[other] = openKinds[i] as number;
        openKinds[i] = kind;
        this.slotKind[i] = kind;
      }
      for (let i = slots - kept; i < slots; i++) this.slotKind[i] = openKinds[all - slots + i] as number;
    } else {
      for (let i = 0; i < all; i++) this.slotKind[i] = openKinds[i] as number;
    }
  }

  private recreate(): void {
    const { open, slotKind, slotPlaces, isLarger } = this;
    this.prepareFound();
    this.countAll();
    for (;;) {
      let chosen = -1;
      let fewest = Number.POSITIVE_INFINITY;
      let area = 0;
      for (let slot = 0; slot < this.slots; slot++) {
        const places = slotPlaces[slot] as number;
        if (places === 0 || places > fewest) continue;
        const own = isLarger[slotKind[slot] as number] as number;
        if (places === fewest && own <= area) continue;
        fewest = places;
        area = own;
        chosen = slot;
      }
      if (chosen < 0) break;
      const at = this.chooseTree(chosen);
      const kind = slotKind[chosen] as number;
      const tree = this.trees[at] as CutTree;
      const found = chosen * this.columns + at;
      this.touch(at);
      const wasUncut = tree.count === 0;
      tree.insert(this.place[found] as number, this.lay[found] as number);
      this.version[at] = this.nextVersion++;
      this.meter.work += 3 * tree.count;
      this.close(kind, at);
      if (wasUncut) {
        const { index, cost } = tree.sheet;
        this.inUse[index] = (this.inUse[index] as number) + 1;
        this.cost += cost;
        this.findUncut();
        if (this.trees.length > this.columns) this.prepareFound();
      }
      if (open[kind] === 0) slotPlaces[chosen] = 0;
      if (wasUncut || (this.problem.kinds[kind]?.group ?? -1) >= 0) this.countAll();
      else {
        for (let slot = 0; slot < this.slots; slot++) if (slotPlaces[slot] !== 0) this.countAgain(slot, at);
      }
    }
    let kept = 0;
    for (const kind of this.openKinds) {
      if ((open[kind] as number) > 0) this.openKinds[kept++] = kind;
    }
    this.openKinds.length = kept;
  }

  /** The tree that a slot fills best; now and then another one, since plain greed repeats its mistakes. */
  private chooseTree(slot: number): number {
    const best = this.slotTree[slot] as number;
    if (this.random.below(TUNING.passOver) !== 0) return best;
    let second = -1;
    let least = Number.POSITIVE_INFINITY;
    for (const at of this.eligible) {
      const fit = this.fit[slot * this.columns + at] as number;
      if (fit >= least || at === best) continue;
      least = fit;
      second = at;
    }
    return second < 0 ? best : second;
  }

  /** Finds the places of all slots that still have open copies on all trees. */
  private countAll(): void {
    this.eligible.length = 0;
    for (const at of this.scope) if (this.isEligible(at)) this.eligible.push(at);
    for (let slot = 0; slot < this.slots; slot++) {
      const kind = this.slotKind[slot] as number;
      if ((this.open[kind] as number) === 0) {
        this.slotPlaces[slot] = 0;
        continue;
      }
      let sum = 0;
      const row = slot * this.columns;
      for (const at of this.eligible) {
        this.lookUp(row + at, kind, at);
        sum += this.places[row + at] as number;
      }
      this.slotPlaces[slot] = sum;
      this.findBest(slot);
    }
  }

  /** Finds the places of a slot anew on one tree that has changed. */
  private countAgain(slot: number, at: number): void {
    const found = slot * this.columns + at;
    const before = this.places[found] as number;
    this.lookUp(found, this.slotKind[slot] as number, at);
    const sum = (this.slotPlaces[slot] as number) - before + (this.places[found] as number);
    this.slotPlaces[slot] = sum;
    if (sum === 0) return;
    const fit = this.fit[found] as number;
    if (fit < (this.slotFit[slot] as number)) {
      this.slotFit[slot] = fit;
      this.slotTree[slot] = at;
    } else if (this.slotTree[slot] === at) this.findBest(slot);
  }

  private findBest(slot: number): void {
    const row = slot * this.columns;
    const { eligible, fit } = this;
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < eligible.length; i++) {
      const at = eligible[i] as number;
      const own = fit[row + at] as number;
      if (own < least) {
        least = own;
        best = at;
      }
    }
    this.slotFit[slot] = least;
    this.slotTree[slot] = best;
  }

  /** A tree with pieces, or the uncut one of its sheet where the budget allows one more. */
  private isEligible(at: number): boolean {
    const tree = this.trees[at] as CutTree;
    if (tree.count > 0) return true;
    return this.uncut[tree.sheet.index] === at && this.cost + tree.sheet.cost <= this.budget;
  }

  /** Makes room for what slots find. */
  private prepareFound(): void {
    this.columns = Math.max(this.columns, this.trees.length);
    const entries = this.slots * this.columns;
    if (entries <= this.places.length) return;
    this.places = new Int32Array(2 * entries);
    this.fit = new Float64Array(2 * entries);
    this.place = new Int32Array(2 * entries);
    this.lay = new Int32Array(2 * entries);
  }

  /** Finds the places of a kind on one tree, and the one that it fills best: the least rest along either side. */
  private lookUp(found: number, kind: number, at: number): void {
    const group = this.problem.kinds[kind]?.group ?? -1;
    const taken = group < 0 ? -1 : (this.groupTree[group] as number);
    if (taken >= 0 && taken !== at) {
      this.places[found] = 0;
      this.fit[found] = Number.POSITIVE_INFINITY;
      return;
    }
    const { remembered } = this;
    const version = this.version[at] as number;
    const known = remembered.find(kind, at, version);
    this.meter.work++;
    if (known >= 0) {
      this.places[found] = remembered.places[known] as number;
      this.fit[found] = remembered.fit[known] as number;
      this.place[found] = remembered.place[known] as number;
      this.lay[found] = remembered.lay[known] as number;
      return;
    }
    const tree = this.trees[at] as CutTree;
    const { width, height, first, kinds } = this.table;
    const { placeWidth, placeHeight, placeExact, places, widestPlace, highestPlace } = tree;
    const from = first[tree.sheet.index * kinds + kind] as number;
    const to = first[tree.sheet.index * kinds + kind + 1] as number;
    let count = 0;
    let fit = Number.POSITIVE_INFINITY;
    let bestPlace = -1;
    let bestLay = -1;
    for (let lay = from; lay < to; lay++) {
      const w = width[lay] as number;
      const h = height[lay] as number;
      if (w > widestPlace || h > highestPlace) continue;
      for (let place = 0; place < places; place++) {
        const right = (placeWidth[place] as number) - w;
        const below = (placeHeight[place] as number) - h;
        if (right < 0 || below < 0) continue;
        const exact = placeExact[place] as number;
        if (exact !== 0 && (exact === EXACT_WIDTH ? right : below) !== 0) continue;
        count++;
        const rest = right < below ? right : below;
        if (rest < fit) {
          fit = rest;
          bestPlace = place;
          bestLay = lay;
        }
      }
      this.meter.work += places;
    }
    this.places[found] = count;
    this.fit[found] = fit;
    this.place[found] = bestPlace;
    this.lay[found] = bestLay;
    remembered.keep(kind, at, version, this.isTouched[at] as boolean, count, fit, bestPlace, bestLay);
  }

  private objective(): number {
    const unused = Number.isFinite(this.budget) ? (this.budget - this.cost) * this.emptyRate : 0;
    return this.openWeight / this.weightUnit - TUNING.shape * (this.shapeSum + unused);
  }

  private settle(): void {
    for (const at of this.touched) this.weighShape(at);
    this.forgetTouched();
    this.current = this.objective();
    this.memory.fill(this.current);
  }

  private forgetTouched(): void {
    for (const at of this.touched) this.isTouched[at] = false;
    this.touched.length = 0;
  }

  private undo(): void {
    let isUsed = false;
    for (const at of this.touched) {
      const tree = this.trees[at] as CutTree;
      const before = this.saved[at] as CutTree;
      if (tree.count === 0 || before.count === 0) isUsed = true;
      const { index } = tree.sheet;
      const change = Number(before.count > 0) - Number(tree.count > 0);
      this.inUse[index] = (this.inUse[index] as number) + change;
      if (this.problem.groups > 0) tree.eachPiece((kind) => this.leaveGroup(kind));
      tree.copyFrom(before);
      tree.refresh();
      this.version[at] = this.savedVersion[at] as number;
      this.shape[at] = this.savedShape[at] as number;
    }
    if (this.problem.groups > 0) {
      for (const at of this.touched) {
        (this.trees[at] as CutTree).eachPiece((kind) => this.joinGroup(kind, at));
      }
    }
    if (isUsed) this.findUncut();
  }

  /** Keeps a tree as it is, so that the step can be undone. */
  private touch(at: number): void {
    if (this.isTouched[at]) return;
    this.isTouched[at] = true;
    this.touched.push(at);
    (this.saved[at] as CutTree).copyFrom(this.trees[at] as CutTree);
    this.savedVersion[at] = this.version[at] as number;
    this.savedShape[at] = this.shape[at] as number;
  }

  private weighShape(at: number): void {
    const tree = this.trees[at] as CutTree;
    const before = this.shape[at] as number;
    const isCounted = tree.count > 0 || !Number.isFinite(this.budget);
    const now = isCounted ? tree.leftover(this.measure, this.measureScale) : 0;
    this.shape[at] = now;
    this.shapeSum += now - before;
  }

  private measureOf(area: number): number {
    return this.measure[Math.floor(area * this.measureScale)] as number;
  }

  private addTree(sheet: CompiledSheet): number {
    const at = this.trees.length;
    this.trees.push(new CutTree(this.rules, sheet));
    this.saved.push(new CutTree(this.rules, sheet));
    this.version.push(this.nextVersion++);
    this.savedVersion.push(0);
    this.shape.push(0);
    this.savedShape.push(0);
    this.isTouched.push(false);
    this.inScope.push(false);
    this.remembered.growTo(this.trees.length);
    return at;
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
      const at = this.uncut[sheet.index] as number;
      if (at >= 0 && !this.inScope[at]) {
        this.inScope[at] = true;
        this.scope.push(at);
      }
    }
  }

  private reopen(kind: number): void {
    if ((this.open[kind] as number) === 0) this.openKinds.push(kind);
    this.weighOpen(kind, 1);
    this.leaveGroup(kind);
  }

  private close(kind: number, at: number): void {
    this.weighOpen(kind, -1);
    this.joinGroup(kind, at);
  }

  /** Counts a copy as open (1) or placed (-1). Weights are whole numbers, so sums are exact. */
  private weighOpen(kind: number, change: 1 | -1): void {
    const copies = change > 0 ? (this.open[kind] as number) : (this.open[kind] as number) - 1;
    // Below the least number a copy counts ten times.
    const spare = (this.wanted[kind] as number) - (this.least[kind] as number);
    const factor = (this.least[kind] as number) > 0 && copies >= spare ? 10 : 1;
    this.openWeight += change * factor * (this.weight[kind] as number);
    this.open[kind] = (this.open[kind] as number) + change;
  }

  private joinGroup(kind: number, at: number): void {
    const group = this.problem.kinds[kind]?.group ?? -1;
    if (group < 0) return;
    this.groupCopies[group] = (this.groupCopies[group] as number) + 1;
    this.groupTree[group] = at;
  }

  private leaveGroup(kind: number): void {
    const group = this.problem.kinds[kind]?.group ?? -1;
    if (group < 0) return;
    const copies = (this.groupCopies[group] as number) - 1;
    this.groupCopies[group] = copies;
    if (copies === 0) this.groupTree[group] = -1;
  }
}

function smallestArea(lays: CompiledProblem["kinds"][number]["lays"]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const list of lays) for (const lay of list) least = Math.min(least, lay.width * lay.height);
  return Number.isFinite(least) ? least : 0;
}

/** x to the power 1.1875, by square roots. */
function convex(x: number): number {
  const eighth = Math.sqrt(Math.sqrt(Math.sqrt(x)));
  return x * eighth * Math.sqrt(eighth);
}
