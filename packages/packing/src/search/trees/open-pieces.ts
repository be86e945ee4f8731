import type { Demand } from "../best-fit.js";
import type { CompiledProblem } from "../compiled-problem.js";

/** What a copy below the least number counts for, in copies above it. */
const URGENT = 10;

/**
 * The copies that have found no place, by kind, and what they weigh together: their area, or with the aim `fill` their
 * value. Weights are whole numbers, so sums are exact whatever their order.
 */
export class OpenPieces {
  readonly copies: Int32Array;
  /** Kinds with open copies; those opened last stand at the end. */
  kinds: number[] = [];
  weight = 0;
  /** Area of the smallest form of each kind. */
  readonly area: Float64Array;
  /** Weight of a piece that covers the largest sheet, at the most weight an area that any kind has. */
  readonly unit: number;

  private readonly each: Float64Array;
  /** Copies of each kind above its least number; all where there is none. */
  private readonly spare: Float64Array;
  private savedKinds: number[] = [];
  private savedCopies: number[] = [];
  private savedWeight = 0;

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
    for (const kind of this.kinds) {
      const own = this.each[kind] as number;
      const copies = this.copies[kind] as number;
      const spare = Math.min(copies, this.spare[kind] as number);
      this.weight += own * (spare + URGENT * (copies - spare));
      densest = Math.max(densest, own / (this.area[kind] as number));
    }
    const largest = Math.max(...problem.sheets.map((sheet) => sheet.width * sheet.height));
    this.unit = largest * (densest > 0 ? densest : 1);
  }

  /** One copy more has no place. */
  add(kind: number): void {
    const copies = this.copies[kind] as number;
    if (copies === 0) this.kinds.push(kind);
    this.copies[kind] = copies + 1;
    this.weight += this.weightOf(kind, copies);
  }

  /** One copy has found a place; {@link tidy} must follow the last. */
  take(kind: number): void {
    const copies = (this.copies[kind] as number) - 1;
    this.copies[kind] = copies;
    this.weight -= this.weightOf(kind, copies);
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
  }

  /** What the copy weighs that comes after so many open ones. */
  private weightOf(kind: number, copies: number): number {
    const own = this.each[kind] as number;
    return copies < (this.spare[kind] as number) ? own : URGENT * own;
  }
}

function smallestArea(lays: CompiledProblem["kinds"][number]["lays"]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const list of lays) for (const lay of list) least = Math.min(least, lay.width * lay.height);
  return Number.isFinite(least) ? least : 0;
}
