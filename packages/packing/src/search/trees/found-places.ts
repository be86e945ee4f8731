import type { CutTree } from "./cut-tree.js";
import type { LayTable } from "./lay-table.js";

/** Records remembered at most; a search with more kinds times trees looks everything up anew. */
const MOST_RECORDS = 1 << 19;

/** Words of one record: version of the tree, number of places, fit of the best one; the fourth is empty. */
const RECORD = 4;
const PLACES = 1;
const FIT = 2;

/**
 * The places that kinds find on trees. What a kind finds depends on the tree alone, so it is remembered by kind and tree
 * until the tree changes: twice, as the tree was before the present step, which counts again when the step is undone,
 * and as the step has made it.
 */
export class FoundPlaces {
  /** Places looked at. */
  work = 0;
  /** The place and the lay for it that {@link choose} has found. */
  place = -1;
  lay = -1;
  private count = 0;
  private fit = 0;

  private readonly table: LayTable;
  private columns = 0;
  private slots = 0;
  private isRemembering = true;
  private words = new Int32Array(0);
  /** The same words: a fit only compares places, so it may be rounded. */
  private fits = new Float32Array(0);

  constructor(table: LayTable) {
    this.table = table;
  }

  /** Makes room for so many trees and slots; may forget everything. */
  prepare(trees: number, slots: number): void {
    if (trees > this.columns) {
      this.columns = trees + (trees >> 2) + 4;
      this.isRemembering = 2 * this.table.kinds * this.columns <= MOST_RECORDS;
      this.slots = 0;
      if (this.isRemembering) this.allot(2 * this.table.kinds * this.columns);
    }
    if (this.isRemembering) return;
    if (slots > this.slots) {
      this.slots = 2 * slots;
      this.allot(2 * this.slots * this.columns);
    } else this.words.fill(0, 0, 2 * RECORD * slots * this.columns);
  }

  /** Where the records of a kind begin. */
  rowOf(kind: number, slot: number): number {
    return 2 * RECORD * this.columns * (this.isRemembering ? kind : slot);
  }

  /**
   * Where the record of a kind on a tree begins; it stays right until the same kind is looked up on the same tree again.
   * @param row {@link rowOf} the kind.
   */
  find(row: number, kind: number, at: number, tree: CutTree, version: number, isTouched: boolean): number {
    const { words } = this;
    const before = row + 2 * RECORD * at;
    if (words[before] === version) return before;
    const now = before + RECORD;
    if (words[now] === version) return now;
    const entry = isTouched ? now : before;
    this.lookUp(entry, kind, tree, version);
    return entry;
  }

  /** Number of places. */
  placesIn(entry: number): number {
    return this.words[entry + PLACES] as number;
  }

  /** How well the best place is filled: the least rest along either side; infinite without a place. */
  fitIn(entry: number): number {
    return this.fits[entry + FIT] as number;
  }

  /**
   * Finds all places of a kind on a tree: the best {@link place} with the {@link lay} for it.
   * @param form the form that is preferred where it has a place, or -1.
   */
  choose(kind: number, tree: CutTree, form = -1): void {
    const { width, height, first, kinds, lays } = this.table;
    const { room, places, limited } = tree;
    const from = first[tree.sheet.index * kinds + kind] as number;
    const to = first[tree.sheet.index * kinds + kind + 1] as number;
    let count = 0;
    let fit = Number.POSITIVE_INFINITY;
    let isPreferred = false;
    for (let lay = from; lay < to; lay++) {
      const w = width[lay] as number;
      const h = height[lay] as number;
      const isForm = lays[lay]?.form === form;
      for (let place = 0; place < places; place++) {
        const right = (room[2 * place] as number) - w;
        const below = (room[2 * place + 1] as number) - h;
        if (right < 0 || below < 0) continue;
        if (limited && !tree.takesExactly(place, right, below)) continue;
        count++;
        const rest = Math.min(right, below);
        if (isForm === isPreferred ? rest >= fit : isPreferred) continue;
        fit = rest;
        isPreferred = isForm;
        this.place = place;
        this.lay = lay;
      }
    }
    this.work += (to - from) * places + 1;
    this.count = count;
    this.fit = fit;
  }

  private lookUp(entry: number, kind: number, tree: CutTree, version: number): void {
    this.words[entry] = version;
    if (tree.limited) {
      this.choose(kind, tree);
      this.words[entry + PLACES] = this.count;
      this.fits[entry + FIT] = this.fit;
      return;
    }
    const { width, height, first, kinds } = this.table;
    const { roomByWidth, highest } = tree;
    const from = first[tree.sheet.index * kinds + kind] as number;
    const to = first[tree.sheet.index * kinds + kind + 1] as number;
    const end = 2 * tree.places;
    let count = 0;
    let fit = Number.POSITIVE_INFINITY;
    for (let lay = from; lay < to; lay++) {
      const w = width[lay] as number;
      const h = height[lay] as number;
      if (h > highest) continue;
      let i = 0;
      for (; i < end; i += 2) {
        const right = (roomByWidth[i] as number) - w;
        if (right < 0) break;
        const below = (roomByWidth[i + 1] as number) - h;
        if (below < 0) continue;
        count++;
        const rest = Math.min(right, below);
        if (rest < fit) fit = rest;
      }
      this.work += i >> 1;
    }
    this.work++;
    this.words[entry + PLACES] = count;
    this.fits[entry + FIT] = fit;
  }

  private allot(records: number): void {
    this.words = new Int32Array(RECORD * records);
    this.fits = new Float32Array(this.words.buffer);
  }
}
