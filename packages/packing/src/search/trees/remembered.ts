/** Entries at most; a search with more kinds times trees remembers nothing. */
const MOST_ENTRIES = 1 << 19;

/**
 * What kinds have found on trees, by kind and by tree. Two entries each: one for the tree as it was before the present
 * step, which is the one that counts again when the step is undone, and one for the tree as the step has made it.
 */
export class Remembered {
  places = new Int32Array(0);
  fit = new Float64Array(0);
  place = new Int32Array(0);
  lay = new Int32Array(0);
  private version = new Float64Array(0);
  private columns = 0;
  private half = 0;
  private readonly kinds: number;

  constructor(kinds: number) {
    this.kinds = kinds;
  }

  /** Makes room for so many trees; may forget everything. */
  growTo(trees: number): void {
    if (trees <= this.columns) return;
    this.columns = trees + (trees >> 2) + 4;
    this.half = this.kinds * this.columns;
    if (this.half > MOST_ENTRIES) {
      this.half = 0;
      this.version = new Float64Array(0);
      return;
    }
    this.version = new Float64Array(2 * this.half);
    this.places = new Int32Array(2 * this.half);
    this.fit = new Float64Array(2 * this.half);
    this.place = new Int32Array(2 * this.half);
    this.lay = new Int32Array(2 * this.half);
  }

  /** The entry for a version of a tree, or -1. Versions count from 1. */
  find(kind: number, tree: number, version: number): number {
    const entry = kind * this.columns + tree;
    if (this.version[entry] === version) return entry;
    if (this.version[entry + this.half] === version) return entry + this.half;
    return -1;
  }

  keep(
    kind: number,
    tree: number,
    version: number,
    isTouched: boolean,
    places: number,
    fit: number,
    place: number,
    lay: number,
  ): void {
    if (this.half === 0) return;
    const entry = kind * this.columns + tree + (isTouched ? this.half : 0);
    this.version[entry] = version;
    this.places[entry] = places;
    this.fit[entry] = fit;
    this.place[entry] = place;
    this.lay[entry] = lay;
  }
}
