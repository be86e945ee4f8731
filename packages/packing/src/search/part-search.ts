/**
 * Parts of a sheet made from the bottom up, the most promising first; what {@link constrainedFill} searches with.
 */
import type { CutNode, Size } from "../model.js";
import { corneredPiece } from "./cornered-piece.js";
import type { OutsideBound } from "./outside-bound.js";

/** A piece as it lies, kerf added, with the number of its kind. */
export interface PartPiece extends Size {
  readonly value: number;
  /** What it counts for in a promise. */
  readonly reduced: number;
  readonly kind: number;
}

/** What a layout with some part may be worth: reduced value of the part, and what comes around it; `scale` times the value. */
export interface PromiseRule {
  readonly scale: number;
  /** Reduced value around a part at most, with what limits give back. */
  readonly around: OutsideBound;
}

/** Parts kept at most: their copies take 2 bytes a kind each. */
const MOST_PARTS = 1 << 19;

/** Steps of a join besides one for each kind. */
const STEPS_PER_JOIN = 8;

const PIECE = 0;
const BESIDE = 1;
const BELOW = 2;

/**
 * The parts made so far, each with its copies: those that are joined with all others that are done, and those that wait,
 * the most promising first. Of parts with equal copies, one that is no smaller than an older one is left out.
 */
export class PartSearch {
  bestPart = -1;
  bestValue: number;
  /** True once parts were left out for want of room: then nothing is proven. */
  isFull = false;
  private readonly width: number;
  private readonly height: number;
  private readonly around: OutsideBound;
  private readonly scale: number;
  private readonly most: readonly number[];
  private readonly widths: number[] = [];
  private readonly heights: number[] = [];
  private readonly values: number[] = [];
  private readonly reduced: number[] = [];
  private readonly promises: number[] = [];
  private readonly joins: number[] = [];
  private readonly firsts: number[] = [];
  private readonly seconds: number[] = [];
  /** Sums over the copies, so that the sum of two parts is that of their join. */
  private readonly hashes: number[] = [];
  private readonly alike = new Map<number, number[]>();
  private copies: Uint16Array;
  private readonly done: number[] = [];
  private readonly waiting: number[] = [];

  constructor(
    width: number,
    height: number,
    most: readonly number[],
    { scale, around }: PromiseRule,
    leastValue: number,
  ) {
    this.width = width;
    this.height = height;
    this.around = around;
    this.scale = scale;
    this.most = most.map((copies) => Math.min(copies, 0xffff));
    this.copies = new Uint16Array(1024 * most.length);
    this.bestValue = leastValue;
  }

  /** A part of one piece. */
  offerPiece({ width, height, value, reduced, kind }: PartPiece, index: number): void {
    const copies = new Uint16Array(this.most.length);
    copies[kind] = 1;
    this.offer(PIECE, index, -1, width, height, value, reduced, hashOf(kind), copies);
  }

  /** Whether some waiting part promises more than the best layout. */
  hasPromise(): boolean {
    const top = this.waiting[0];
    return top !== undefined && (this.promises[top] as number) >= this.enough();
  }

  /** The least promise of a layout that is worth more than the best one. */
  private enough(): number {
    return this.scale * (this.bestValue + 1);
  }

  /** Joins the most promising part with all that are done, both ways; returns the steps taken. */
  expand(): number {
    const part = this.takeTop();
    this.done.push(part);
    const kinds = this.most.length;
    const w = this.widths[part] as number;
    const h = this.heights[part] as number;
    const value = this.values[part] as number;
    const reduced = this.reduced[part] as number;
    const hash = this.hashes[part] as number;
    let steps = this.done.length;
    const together = new Uint16Array(kinds);
    for (const other of this.done) {
      const otherW = this.widths[other] as number;
      const otherH = this.heights[other] as number;
      const isBeside = w + otherW <= this.width;
      const isBelow = h + otherH <= this.height;
      if (!isBeside && !isBelow) continue;
      const counted = reduced + (this.reduced[other] as number);
      const wide = Math.max(w, otherW);
      const high = Math.max(h, otherH);
      const beside = isBeside ? counted + this.around(w + otherW, high) : 0;
      const below = isBelow ? counted + this.around(wide, h + otherH) : 0;
      const enough = this.enough();
      if (beside < enough && below < enough) continue;
      steps += kinds + STEPS_PER_JOIN;
      if (!this.add(part, other, together)) continue;
      const both = (hash + (this.hashes[other] as number)) | 0;
      const sum = value + (this.values[other] as number);
      if (beside >= enough) this.offer(BESIDE, part, other, w + otherW, high, sum, counted, both, together);
      if (below >= enough) this.offer(BELOW, part, other, wide, h + otherH, sum, counted, both, together);
    }
    return steps;
  }

  /** Copies of each kind in a part. */
  countsOf(part: number): readonly number[] {
    const kinds = this.most.length;
    return [...this.copies.subarray(part * kinds, (part + 1) * kinds)];
  }

  /** The tree of a part that lies in the corner of a larger one. */
  lay(
    part: number,
    size: Size,
    kerf: number,
    pieces: readonly (Size & { readonly leaf: CutNode })[],
  ): CutNode {
    const first = this.firsts[part] as number;
    const second = this.seconds[part] as number;
    if (this.joins[part] === PIECE) {
      const piece = pieces[first] as Size & { readonly leaf: CutNode };
      return corneredPiece(size, kerf, piece, piece.leaf);
    }
    const isBeside = this.joins[part] === BESIDE;
    const near = ((isBeside ? this.widths[first] : this.heights[first]) as number) - kerf;
    const far = (isBeside ? size.width : size.height) - near - kerf;
    const sized = (extent: number): Size =>
      isBeside ? { ...size, width: extent } : { ...size, height: extent };
    return {
      type: "split",
      axis: isBeside ? "x" : "y",
      parts: [
        { size: near, node: this.lay(first, sized(near), kerf, pieces) },
        { size: far, node: this.lay(second, sized(far), kerf, pieces) },
      ],
    };
  }

  /** Sums the copies of two parts; false where a limit is passed. */
  private add(part: number, other: number, sum: Uint16Array): boolean {
    const kinds = this.most.length;
    for (let kind = 0; kind < kinds; kind++) {
      const count =
        (this.copies[part * kinds + kind] as number) + (this.copies[other * kinds + kind] as number);
      if (count > (this.most[kind] as number)) return false;
      sum[kind] = count;
    }
    return true;
  }

  private offer(
    join: number,
    first: number,
    second: number,
    width: number,
    height: number,
    value: number,
    reduced: number,
    hash: number,
    copies: Uint16Array,
  ): void {
    const promise = reduced + this.around(width, height);
    if (promise < this.enough()) return;
    const alike = this.alike.get(hash) ?? [];
    for (const other of alike) {
      if ((this.widths[other] as number) > width || (this.heights[other] as number) > height) continue;
      if (this.hasCopies(other, copies)) return;
    }
    const part = this.widths.length;
    if (part >= MOST_PARTS) {
      this.isFull = true;
      return;
    }
    alike.push(part);
    this.alike.set(hash, alike);
    this.widths.push(width);
    this.heights.push(height);
    this.values.push(value);
    this.reduced.push(reduced);
    this.promises.push(promise);
    this.joins.push(join);
    this.firsts.push(first);
    this.seconds.push(second);
    this.hashes.push(hash);
    this.keepCopies(part, copies);
    if (value > this.bestValue) {
      this.bestValue = value;
      this.bestPart = part;
    }
    this.wait(part);
  }

  private hasCopies(part: number, copies: Uint16Array): boolean {
    const kinds = this.most.length;
    for (let kind = 0; kind < kinds; kind++) {
      if (this.copies[part * kinds + kind] !== copies[kind]) return false;
    }
    return true;
  }

  private keepCopies(part: number, copies: Uint16Array): void {
    const kinds = this.most.length;
    if ((part + 1) * kinds > this.copies.length) {
      const larger = new Uint16Array(2 * this.copies.length);
      larger.set(this.copies);
      this.copies = larger;
    }
    this.copies.set(copies, part * kinds);
  }

  /** Whether a part goes before another: it promises more, or the same with less still to come, or is older. */
  private isBefore(part: number, other: number): boolean {
    const more = (this.promises[part] as number) - (this.promises[other] as number);
    if (more !== 0) return more > 0;
    const done = (this.values[part] as number) - (this.values[other] as number);
    return done === 0 ? part < other : done > 0;
  }

  private wait(part: number): void {
    const { waiting } = this;
    let at = waiting.length;
    waiting.push(part);
    while (at > 0) {
      const above = (at - 1) >> 1;
      const other = waiting[above] as number;
      if (!this.isBefore(part, other)) break;
      waiting[at] = other;
      at = above;
    }
    waiting[at] = part;
  }

  private takeTop(): number {
    const { waiting } = this;
    const top = waiting[0] as number;
    const last = waiting.pop() as number;
    if (waiting.length === 0) return top;
    let at = 0;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= waiting.length) break;
      if (
        below + 1 < waiting.length &&
        this.isBefore(waiting[below + 1] as number, waiting[below] as number)
      ) {
        below++;
      }
      if (!this.isBefore(waiting[below] as number, last)) break;
      waiting[at] = waiting[below] as number;
      at = below;
    }
    waiting[at] = last;
    return top;
  }
}

/** A number of 32 bits for one copy of a kind. */
function hashOf(kind: number): number {
  let mixed = Math.imul(kind + 1, 0x9e3779b1);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x85ebca6b);
  return mixed ^ (mixed >>> 13);
}
