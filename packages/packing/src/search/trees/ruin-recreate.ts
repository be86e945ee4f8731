/**
 * Goal-driven ruin and recreate on cut trees: the main engine of the search.
 *
 * The goal is a plan whose sheets cost less than those of the best plan known. The engine holds sheets within that budget
 * and the pieces that have found no place on them. A step takes some nodes out of the trees, pieces or whole blocks, and
 * puts what is open back: each time the kind with the fewest places left goes where it fills best. Late acceptance
 * decides whether the step stands; what is compared is the area of what is still open (with the aim `fill` its value), and
 * among equals how much of the leftover lies in few large parts.
 *
 * Sources: J. Gardeyn, T. Wauters, A goal-driven ruin and recreate heuristic for the 2D variable-sized bin packing problem
 * with guillotine constraints, European J. Operational Research 301 (2022), here on justified trees after Fleszar (2013),
 * see cut-tree.ts; E. Burke, Y. Bykov, The late acceptance hill-climbing heuristic, European J. Operational Research 258
 * (2017).
 */
import type { Demand } from "../best-fit.js";
import type { CompiledProblem } from "../compiled-problem.js";
import type { Meter } from "../meter.js";
import type { RandomStream } from "../random-stream.js";
import type { CutTree } from "./cut-tree.js";
import { FoundPlaces } from "./found-places.js";
import { type LayTable, layTable } from "./lay-table.js";
import { ruin } from "./ruin.js";
import { type PlannedSheet, WorkingPlan } from "./working-plan.js";

/** Parameters of the engine; one set serves all problems. */
const TUNING = {
  /** Distances that late acceptance remembers. */
  memory: 50,
  /** Once in so many choices the best tree is passed over: plain greed repeats its mistakes. */
  passOver: 100,
  /** With the aim `fill`, after so many steps, once in so many choices a kind that is drawn comes next. */
  plainSteps: 250,
  drawKind: 4,
  /** Once in so many choices a kind of several forms is laid in one of them that is drawn, not in the one that fills best. */
  drawForm: 3,
  /** What the shape of leftovers counts for against open pieces. */
  shape: 0.01,
  /** Trees that one step looks at, at most. */
  scope: 64,
  /** Kinds that one step tries to place, at most. */
  slots: 48,
};

/** Places looked at count once, nodes refreshed more, and a step that finds nothing to do a little. */
const WORK_PER_NODE = 3;
const WORK_PER_STEP = 50;

export class RuinAndRecreate {
  steps = 0;
  readonly table: LayTable;
  readonly plan: WorkingPlan;

  private readonly isFill: boolean;
  private readonly onGivenSheets: boolean;
  private readonly random: RandomStream;
  private readonly meter: Meter;
  private readonly found: FoundPlaces;
  private current = 0;
  private readonly memory = new Float64Array(TUNING.memory);

  /** Trees looked at in this step, and those of them that may take a piece. */
  private readonly scope: number[] = [];
  private readonly inScope: boolean[] = [];
  private eligible = new Int32Array(16);
  private eligibleCount = 0;
  /** Kinds placed in this step, and by slot: places on all trees, the best fit, the tree that has it. */
  private slots = 0;
  private slotKind = new Int32Array(16);
  private slotPlaces = new Float64Array(16);
  private slotFit = new Float64Array(16);
  private slotTree = new Int32Array(16);
  /** By slot and tree: where the record of {@link FoundPlaces} begins, or -1. */
  private records = new Int32Array(0);
  private columns = 0;

  /** @param onGivenSheets whether the sheets in stock are just those that are to be used, each of them. */
  constructor(
    problem: CompiledProblem,
    demand: Demand,
    random: RandomStream,
    meter: Meter,
    onGivenSheets = false,
  ) {
    this.onGivenSheets = onGivenSheets;
    this.isFill = problem.source.aim === "fill";
    this.random = random;
    this.meter = meter;
    this.table = layTable(problem, demand.wanted);
    this.plan = new WorkingPlan(problem, this.table, demand);
    this.found = new FoundPlaces(this.table);
  }

  /** True where every piece has a place. */
  get isComplete(): boolean {
    return this.plan.open.kinds.length === 0;
  }

  /** Takes a plan over; what it has no place for stays open. */
  load(sheets: readonly PlannedSheet[]): void {
    this.plan.load(sheets);
    this.settle();
  }

  /** Sets what the sheets may cost, and uncuts the least used ones until they do. */
  setBudget(budget: number): void {
    const { plan } = this;
    plan.budget = budget;
    while (plan.cost > budget) {
      let worst = -1;
      let least = Number.POSITIVE_INFINITY;
      plan.trees.forEach((tree, at) => {
        if (tree.count === 0 || tree.sheet.cost === 0) return;
        const use = tree.used / tree.sheet.cost;
        if (use < least) {
          least = use;
          worst = at;
        }
      });
      if (worst < 0) break;
      plan.takeOut(worst, 0);
      plan.refreshTouched();
    }
    this.settle();
  }

  /** One step; afterwards the engine holds the new state, or the old one where the new is not accepted. */
  step(): void {
    this.steps++;
    const { plan, memory } = this;
    plan.begin();
    ruin(plan, this.random, this.onGivenSheets);
    this.prepareScope();
    this.prepareSlots();
    this.recreate();
    plan.weighTouched();
    const distance = plan.distance(TUNING.shape);
    const oldest = this.steps % memory.length;
    if (distance <= this.current || distance <= (memory[oldest] as number)) {
      this.current = distance;
      plan.keep();
    } else plan.undo();
    if (this.current < (memory[oldest] as number)) memory[oldest] = this.current;
    this.meter.work += WORK_PER_STEP + this.found.work + WORK_PER_NODE * plan.work;
    this.found.work = 0;
    plan.work = 0;
  }

  /** Chooses the trees that this step looks at: all, or those it has ruined and some others. */
  private prepareScope(): void {
    const { scope, inScope } = this;
    const { trees, touched, uncut } = this.plan;
    for (const at of scope) inScope[at] = false;
    scope.length = 0;
    if (trees.length <= TUNING.scope) {
      for (let at = 0; at < trees.length; at++) this.addToScope(at);
      return;
    }
    for (const at of touched) this.addToScope(at);
    for (const at of uncut) this.addToScope(at);
    while (scope.length < TUNING.scope) this.addToScope(this.random.below(trees.length));
  }

  private addToScope(at: number): void {
    if (at < 0 || this.inScope[at]) return;
    this.inScope[at] = true;
    this.scope.push(at);
  }

  /** Chooses the kinds that this step places: all that are open, or those just taken out and some others. */
  private prepareSlots(): void {
    const { kinds } = this.plan.open;
    const slots = Math.min(kinds.length, TUNING.slots);
    this.slots = slots;
    if (slots > this.slotKind.length) {
      this.slotKind = new Int32Array(2 * slots);
      this.slotPlaces = new Float64Array(2 * slots);
      this.slotFit = new Float64Array(2 * slots);
      this.slotTree = new Int32Array(2 * slots);
    }
    if (slots < kinds.length) {
      // Those taken out last stand at the end and keep their places; the others are drawn into the first places.
      const drawn = slots >> 1;
      const last = slots - drawn;
      for (let i = 0; i < drawn; i++) {
        const other = i + this.random.below(kinds.length - last - i);
        const kind = kinds[other] as number;
        kinds[other] = kinds[i] as number;
        kinds[i] = kind;
        this.slotKind[i] = kind;
      }
      for (let i = drawn; i < slots; i++) this.slotKind[i] = kinds[kinds.length - slots + i] as number;
    } else for (let i = 0; i < slots; i++) this.slotKind[i] = kinds[i] as number;
  }

  private recreate(): void {
    const { plan, slotKind, slotPlaces } = this;
    const { copies } = plan.open;
    this.prepareRecords();
    this.countAll();
    for (;;) {
      const slot = this.chooseSlot();
      if (slot < 0) break;
      const kind = slotKind[slot] as number;
      const at = this.chooseTree(slot);
      const tree = plan.trees[at] as CutTree;
      const wasUncut = tree.count === 0;
      this.found.choose(kind, tree, this.drawForm(kind));
      plan.place(kind, at, this.found.place, this.found.lay);
      if (copies[kind] === 0) slotPlaces[slot] = 0;
      if (wasUncut) {
        for (const fresh of plan.uncut) this.addToScope(fresh);
        this.prepareRecords();
        this.countAll();
      } else if ((plan.group[kind] as number) >= 0) this.countAll();
      else {
        for (let other = 0; other < this.slots; other++) {
          if (slotPlaces[other] !== 0) this.countAgain(other, at);
        }
      }
    }
    plan.open.tidy();
  }

  /** The slot with the fewest places, and of those the largest piece; -1 where none has any. */
  private chooseSlot(): number {
    const { slotPlaces, slotKind } = this;
    const { area } = this.plan.open;
    const mayDraw = this.isFill && this.steps > TUNING.plainSteps;
    if (mayDraw && this.random.below(TUNING.drawKind) === 0) return this.drawSlot();
    let chosen = -1;
    let fewest = Number.POSITIVE_INFINITY;
    let largest = 0;
    for (let slot = 0; slot < this.slots; slot++) {
      const places = slotPlaces[slot] as number;
      if (places === 0 || places > fewest) continue;
      const own = area[slotKind[slot] as number] as number;
      if (places === fewest && own <= largest) continue;
      fewest = places;
      largest = own;
      chosen = slot;
    }
    return chosen;
  }

  /**
   * A slot that has places, or -1: the dearer piece of two that are drawn. With the aim `fill` not everything finds room, so
   * what comes first decides what is left out.
   */
  private drawSlot(): number {
    const { slotPlaces } = this;
    let count = 0;
    for (let slot = 0; slot < this.slots; slot++) if (slotPlaces[slot] !== 0) count++;
    if (count === 0) return -1;
    const one = this.nthSlot(this.random.below(count));
    const other = this.nthSlot(this.random.below(count));
    const { each } = this.plan.open;
    const worth = (slot: number): number => each[this.slotKind[slot] as number] as number;
    return worth(one) >= worth(other) ? one : other;
  }

  /** The slot that comes after so many others with places. */
  private nthSlot(before: number): number {
    let left = before;
    let slot = 0;
    while (this.slotPlaces[slot] === 0 || left-- > 0) slot++;
    return slot;
  }

  /** A form to lay a kind in, or -1 for the one that fills best: that may be too large for what is to come. */
  private drawForm(kind: number): number {
    const forms = this.table.forms[kind] as number;
    return forms > 1 && this.random.below(TUNING.drawForm) === 0 ? this.random.below(forms) : -1;
  }

  /** The tree that a slot fills best; now and then the second best. */
  private chooseTree(slot: number): number {
    const best = this.slotTree[slot] as number;
    if (this.random.below(TUNING.passOver) !== 0) return best;
    let second = best;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.eligibleCount; i++) {
      const at = this.eligible[i] as number;
      const fit = this.fitOn(slot, at);
      if (fit >= least || at === best) continue;
      least = fit;
      second = at;
    }
    return second;
  }

  /** Finds the places of all slots that still have open copies, on all trees that have any. */
  private countAll(): void {
    const { plan, found, scope, slotKind, slotPlaces } = this;
    const { trees } = plan;
    const { copies } = plan.open;
    let count = 0;
    for (let i = 0; i < scope.length; i++) {
      const at = scope[i] as number;
      if ((trees[at] as CutTree).places > 0 && plan.mayTake(at)) this.eligible[count++] = at;
    }
    this.eligibleCount = count;
    const { eligible, records, columns } = this;
    const { version, isTouched } = plan;
    for (let slot = 0; slot < this.slots; slot++) {
      const kind = slotKind[slot] as number;
      if (copies[kind] === 0) {
        slotPlaces[slot] = 0;
        continue;
      }
      const only = this.onlyTreeOf(kind);
      const row = found.rowOf(kind, slot);
      let sum = 0;
      let best = -1;
      let least = Number.POSITIVE_INFINITY;
      for (let i = 0; i < count; i++) {
        const at = eligible[i] as number;
        if (only >= 0 && only !== at) {
          records[slot * columns + at] = -1;
          continue;
        }
        const entry = found.find(
          row,
          kind,
          at,
          trees[at] as CutTree,
          version[at] as number,
          isTouched[at] === 1,
        );
        records[slot * columns + at] = entry;
        sum += found.placesIn(entry);
        const fit = found.fitIn(entry);
        if (fit < least) {
          least = fit;
          best = at;
        }
      }
      slotPlaces[slot] = sum;
      this.slotFit[slot] = least;
      this.slotTree[slot] = best;
    }
  }

  /** The tree that a kind has to lie on since others of its group do, or -1. */
  private onlyTreeOf(kind: number): number {
    const group = this.plan.group[kind] as number;
    return group < 0 ? -1 : (this.plan.groupTree[group] as number);
  }

  /** Finds the places of a slot anew on one tree that has changed. */
  private countAgain(slot: number, at: number): void {
    const { plan, found } = this;
    const kind = this.slotKind[slot] as number;
    const record = slot * this.columns + at;
    const known = this.records[record] as number;
    if (known < 0) return;
    const before = found.placesIn(known);
    const tree = plan.trees[at] as CutTree;
    const entry = found.find(found.rowOf(kind, slot), kind, at, tree, plan.version[at] as number, true);
    this.records[record] = entry;
    const sum = (this.slotPlaces[slot] as number) - before + found.placesIn(entry);
    this.slotPlaces[slot] = sum;
    if (sum === 0) return;
    const fit = found.fitIn(entry);
    if (fit < (this.slotFit[slot] as number)) {
      this.slotFit[slot] = fit;
      this.slotTree[slot] = at;
    } else if (this.slotTree[slot] === at) this.findBest(slot);
  }

  private findBest(slot: number): void {
    const { eligible } = this;
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.eligibleCount; i++) {
      const at = eligible[i] as number;
      const fit = this.fitOn(slot, at);
      if (fit < least) {
        least = fit;
        best = at;
      }
    }
    this.slotFit[slot] = least;
    this.slotTree[slot] = best;
  }

  private fitOn(slot: number, at: number): number {
    const entry = this.records[slot * this.columns + at] as number;
    return entry < 0 ? Number.POSITIVE_INFINITY : this.found.fitIn(entry);
  }

  private prepareRecords(): void {
    const trees = this.plan.trees.length;
    this.found.prepare(trees, this.slots);
    if (trees > this.columns) this.columns = trees + (trees >> 2) + 4;
    if (trees > this.eligible.length) this.eligible = new Int32Array(2 * trees);
    const entries = this.slots * this.columns;
    if (entries > this.records.length) this.records = new Int32Array(2 * entries);
  }

  /** Takes the present state as the one to improve. */
  private settle(): void {
    this.plan.weighTouched();
    this.plan.keep();
    this.current = this.plan.distance(TUNING.shape);
    this.memory.fill(this.current);
  }
}
