import type { Demand } from "../best-fit.js";
import type { CompiledProblem } from "../compiled-problem.js";

/**
 * The copies that have found no place, by kind, and what they weigh together: their area, or with the aim `fill` their
 * value, and apart from it the area of those that must be there. Weights are whole numbers, so up to 2^53 sums are exact
 * whatever their order.
 */
export class OpenPieces {
  readonly copies: Int32Array;
  /** Kinds with open copies; those opened last stand at the end. */
  kinds: number[] = [];
  weight = 0;
  /** Area of the copies below the least number; these count before all others. */
  urgent = 0;
  /** Area of the smallest form of each kind. */
  readonly area: Float64Array;
  /** Weight of a piece that covers the largest sheet, at the most weight an area that any kind has; that sheet's area. */
  private readonly unit: number;
  private readonly largest: number;
  /** What an urgent area counts for: so much that the smallest urgent piece outweighs all others together. */
  private readonly urgency: number;

  /** What one copy of each kind weighs. */
  readonly each: Float64Array;
  /** Copies of each kind above its least number; all where there is none. */
  private readonly spare: Float64Array;
  private savedKinds: number[] = [];
  private savedCopies: number[] = [];
  private savedWeight = 0;
  private savedUrgent = 0;

  constructor(problem: CompiledProblem, demand: Demand) {
    const isFill = problem.source.aim === "fill";
    const wanted = problem.kinds.map((kind) => (kind.fits ? (demand.wanted[kind.index] ?? 0) : 0));
    this.copies = Int32Array.from(wanted);
    this.kinds = problem.kinds.map((kind) => kind.index).filter((kind) => (wanted[kind] ?? 0) > 0);
    this.area = Float64Array.from(problem.kinds, (kind) => smallestArea(kind.lays));
    this.each = isFill ? Float64Array.from(problem.kinds, (kind) => kind.value) : this.area;
    this.spare = Float64Array.from(problem.kinds, (kind) =>
      isFill && kind.least > 0
        ? Math.max(0, (wanted[kind.index] ?? 0) - kind.least)
        : Number.POSITIVE_INFINITY,
    );
    let densest = 0;
    let smallestUrgent = Number.POSITIVE_INFINITY;
    for (const kind of this.kinds) {
      const own = this.each[kind] as number;
      const area = this.area[kind] as number;
      const copies = this.copies[kind] as number;
      const spare = Math.min(copies, this.spare[kind] as number);
      this.weight += own * spare;
      this.urgent += area * (copies - spare);
      if (spare < copies) smallestUrgent = Math.min(smallestUrgent, area);
      densest = Math.max(densest, own / area);
    }
    this.largest = Math.max(...problem.sheets.map((sheet) => sheet.width * sheet.height));
    this.unit = this.largest * (densest > 0 ? densest : 1);
    const hasUrgent = Number.isFinite(smallestUrgent);
    this.urgency = hasUrgent ? ((this.weight / this.unit + 1) * this.largest) / smallestUrgent : 0;
  }

  /** What is open, in sheets. */
  inSheets(): number {
    return this.weight / this.unit + (this.urgent / this.largest) * this.urgency;
  }

  /** One copy more has no place. */
  add(kind: number): void {
    const copies = this.copies[kind] as number;
    if (copies === 0) this.kinds.push(kind);
    this.copies[kind] = copies + 1;
    if (copies < (this.spare[kind] as number)) this.weight += this.each[kind] as number;
    else this.urgent += this.area[kind] as number;
  }

  /** One copy has found a place; {@link tidy} must follow the last. */
  take(kind: number): void {
    const copies = (this.copies[kind] as number) - 1;
    this.copies[kind] = copies;
    if (copies < (this.spare[kind] as number)) this.weight -= this.each[kind] as number;
    else this.urgent -= this.area[kind] as number;
  }

  /** Takes kinds without open copies off the list. */
  tidy(): void {
    const { kinds, copies } = this;
    let kept = 0;
    for (let i = 0; i < kinds.length; i++) {
      const kind = kinds[i] as number;
      if ((copies[kind] as number) > 0) kinds[kept++] = kind;
    }
    kinds.length = kept;
  }

  /** Keeps what is open, to come back to it. */
  save(): void {
    const { kinds, savedKinds, savedCopies, copies } = this;
    savedKinds.length = kinds.length;
    savedCopies.length = kinds.length;
    for (let i = 0; i < kinds.length; i++) {
      const kind = kinds[i] as number;
      savedKinds[i] = kind;
      savedCopies[i] = copies[kind] as number;
    }
    this.savedWeight = this.weight;
    this.savedUrgent = this.urgent;
  }

  /** Comes back to what was kept last. */
  restore(): void {
    const { kinds, savedKinds, savedCopies, copies } = this;
    for (let i = 0; i < kinds.length; i++) copies[kinds[i] as number] = 0;
    kinds.length = savedKinds.length;
    for (let i = 0; i < savedKinds.length; i++) {
      const kind = savedKinds[i] as number;
      kinds[i] = kind;
      copies[kind] = savedCopies[i] as number;
    }
    this.weight = this.savedWeight;
    this.urgent = this.savedUrgent;
  }
}

function smallestArea(lays: CompiledProblem["kinds"][number]["lays"]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const list of lays) for (const lay of list) least = Math.min(least, lay.width * lay.height);
  return Number.isFinite(least) ? least : 0;
}
