import type { CutTree } from "./cut-tree.js";
import { EXACT_WIDTH } from "./cut-tree.js";
import type { LayTable } from "./lay-table.js";

/** Records remembered at most; a search with more kinds times trees looks everything up anew. */
const MOST_RECORDS = 1 << 18;

/** Numbers of one record: version of the tree, places, fit of the best one, which one, and the lay for it. */
const RECORD = 5;
export const PLACES = 1;
export const FIT = 2;
export const PLACE = 3;
export const LAY = 4;

/**
 * The places that kinds find on trees. What a kind finds depends on the tree alone, so it is remembered by kind and tree
 * until the tree changes: twice, as the tree was before the present step, which counts again when the step is undone,
 * and as the step has made it.
 */
export class FoundPlaces {
  /** All records, one behind the other. */
  record = new Float64Array(0);
  /** Lookups and places looked at. */
  work = 0;

  private readonly table: LayTable;
  private columns = 0;
  private slots = 0;
  private isRemembering = true;

  constructor(table: LayTable) {
    this.table = table;
  }

  /** Makes room for so many trees and slots; may forget everything. */
  prepare(trees: number, slots: number): void {
    if (trees > this.columns) {
      this.columns = trees + (trees >> 2) + 4;
      this.isRemembering = 2 * this.table.kinds * this.columns <= MOST_RECORDS;
      this.slots = 0;
      if (this.isRemembering) this.record = new Float64Array(2 * RECORD * this.table.kinds * this.columns);
    }
    if (this.isRemembering) return;
    if (slots > this.slots) {
      this.slots = 2 * slots;
      this.record = new Float64Array(RECORD * this.slots * this.columns);
    } else this.record.fill(0, 0, RECORD * slots * this.columns);
  }

  /**
   * Where the record of a kind on a tree begins. It stays right until the same kind is looked up on the same tree again.
   * @param slot the kind's place in the present step.
   */
  find(kind: number, slot: number, at: number, tree: CutTree, version: number, isTouched: boolean): number {
    this.work++;
    const { record } = this;
    if (!this.isRemembering) {
      const only = RECORD * (slot * this.columns + at);
      if (record[only] !== version) this.lookUp(only, kind, tree, version);
      return only;
    }
    const before = 2 * RECORD * (kind * this.columns + at);
    if (record[before] === version) return before;
    const now = before + RECORD;
    if (record[now] === version) return now;
    const place = isTouched ? now : before;
    this.lookUp(place, kind, tree, version);
    return place;
  }

  /** Finds all places of a kind on a tree, and the one that it fills best: the least rest along either side. */
  private lookUp(entry: number, kind: number, tree: CutTree, version: number): void {
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
      this.work += places;
      for (let place = 0; place < places; place++) {
        const right = (placeWidth[place] as number) - w;
        const below = (placeHeight[place] as number) - h;
        if (right < 0 || below < 0) continue;
        const exact = placeExact[place] as number;
        if (exact !== 0 && (exact === EXACT_WIDTH ? right : below) !== 0) continue;
        count++;
        const rest = Math.min(right, below);
        if (rest < fit) {
          fit = rest;
          bestPlace = place;
          bestLay = lay;
        }
      }
    }
    const { record } = this;
    record[entry] = version;
    record[entry + PLACES] = count;
    record[entry + FIT] = fit;
    record[entry + PLACE] = bestPlace;
    record[entry + LAY] = bestLay;
  }
}
