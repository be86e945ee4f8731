/**
 * The cut tree of one sheet in flat arrays, justified: every part is as small as what lies in it, and all that is left
 * over can still go anywhere.
 *
 * A node is a piece or a level of parallel cuts; a level has two or more children, and its levels cut the other way. Nodes
 * stand in preorder with the size of their subtree, so that an insertion is a shift, a copy of a tree a copy of two
 * arrays, and both passes over a tree plain loops:
 *
 * - from the leaves up, the extents that each node needs (`width`, `height`): along the cuts the sum of its children with
 *   the kerf between them, across the cuts the largest child;
 * - from the root down, the extents that it could have if all slack went to it alone (`roomWidth`, `roomHeight`).
 *
 * From the second pass follow the places: beside each level as one more child of it, and beside each piece across the
 * cuts of its level, as two children of a new level. One cut out of a part cannot serve two of them at once, but until
 * something is put in, all stay open: that is what justification gains over cutting a leftover up as soon as it arises.
 *
 * Source: K. Fleszar, Three insertion heuristics and a justification improvement heuristic for two-dimensional bin
 * packing with guillotine cuts, Computers & Operations Research 40 (2013).
 *
 * Rules of the cut are held at every insertion: the kerf; the longest cut (the cuts of a level are as long as the level
 * is across, those of the root as the sheet); stages (a level at the last stage holds only pieces that fill it across,
 * since their trims would be one stage more); the shelf rule (levels at most two deep, trims one more).
 */
import type { CompiledProblem, CompiledSheet } from "../compiled-problem.js";
import type { LayTable } from "./lay-table.js";
import { ACROSS, BELOW, BESIDE, CHILD, DOWN, FIRST, longer, longerExtents, NodeList } from "./node-list.js";

const EXACT_WIDTH = 1;
const EXACT_HEIGHT = 2;

/** What all trees of one search share. */
export interface CutRules {
  readonly problem: CompiledProblem;
  readonly table: LayTable;
  readonly kerf: number;
  /** Levels above a piece at most. */
  readonly levels: number;
  /** Stages at most, trims included. */
  readonly stages: number;
}

/** Reads the rules of a problem. */
export function cutRules(problem: CompiledProblem, table: LayTable): CutRules {
  const { kerf, stages, shelf } = problem;
  return { problem, table, kerf, levels: shelf ? Math.min(2, stages) : stages, stages };
}

/** One sheet that is being cut. Mutable inside the search; {@link refresh} must follow a change of its nodes. */
export class CutTree extends NodeList {
  width = new Float64Array(16);
  height = new Float64Array(16);
  private depth = new Int32Array(16);
  private roomWidth = new Float64Array(16);
  private roomHeight = new Float64Array(16);

  /** Places for one more piece, where and how each comes in, and width and height of the largest piece that it takes. */
  places = 0;
  placeNode = new Int32Array(20);
  placeHow = new Int32Array(20);
  room = new Float64Array(40);
  /** 0, or which extent must be met exactly since no stage is left for a trim: EXACT_WIDTH, EXACT_HEIGHT. */
  private placeExact = new Int32Array(20);
  /** The room of the places once more, those with the widest room first. */
  roomByWidth = new Float64Array(40);
  /** No place is higher than this. */
  highest = 0;

  /** Sum of the areas of the pieces, as they lie. */
  used = 0;

  readonly rules: CutRules;
  readonly sheet: CompiledSheet;
  /** Whether a cut may cross the uncut sheet from top to bottom (dividing its width), and from side to side. */
  readonly mayDivideWidth: boolean;
  readonly mayDivideHeight: boolean;
  private readonly longest: number;
  /** Whether levels or stages have a limit. */
  readonly limited: boolean;
  private stagesWithin = 0;
  private levelsWithin = 0;

  constructor(rules: CutRules, sheet: CompiledSheet) {
    super(rules.table);
    this.rules = rules;
    this.sheet = sheet;
    const binds = sheet.longestCut < Math.max(sheet.width, sheet.height);
    this.longest = binds ? sheet.longestCut : Number.POSITIVE_INFINITY;
    this.mayDivideWidth = sheet.height <= sheet.longestCut;
    this.mayDivideHeight = sheet.width <= sheet.longestCut;
    this.limited = rules.levels < Number.POSITIVE_INFINITY;
    this.refresh();
  }

  /** Computes extents, rooms and places anew. */
  refresh(): void {
    this.places = 0;
    this.highest = 0;
    if (this.count === 0) {
      this.used = 0;
      this.addPlace(0, FIRST, this.sheet.width, this.sheet.height, 0);
      this.sortRoom();
      return;
    }
    this.measure();
    this.listPlaces();
    this.sortRoom();
  }

  /** Whether a piece that leaves these rests at a place needs no trim that has no stage left. */
  takesExactly(place: number, right: number, below: number): boolean {
    const exact = this.placeExact[place] as number;
    return exact === 0 || (exact === EXACT_WIDTH ? right : below) === 0;
  }

  /** Whether so many more levels may stand above the root. */
  hasStagesAbove(count: number): boolean {
    const { stages, levels } = this.rules;
    return !this.limited || (this.stagesWithin + count <= stages && this.levelsWithin + count <= levels);
  }

  /** Extents from the leaves up, and the parent of each node. */
  private measure(): void {
    const { item, size, parent, width, height } = this;
    const { kerf, table } = this.rules;
    const layWidth = table.width;
    const layHeight = table.height;
    let used = 0;
    for (let i = this.count - 1; i >= 0; i--) {
      const what = item[i] as number;
      if (what >= 0) {
        const w = layWidth[what] as number;
        const h = layHeight[what] as number;
        width[i] = w;
        height[i] = h;
        used += w * h;
        continue;
      }
      const end = i + (size[i] as number);
      const along = what === ACROSS ? width : height;
      const across = what === ACROSS ? height : width;
      let sum = -kerf;
      let most = 0;
      for (let child = i + 1; child < end; child += size[child] as number) {
        sum += (along[child] as number) + kerf;
        const extent = across[child] as number;
        if (extent > most) most = extent;
        parent[child] = i;
      }
      along[i] = sum;
      across[i] = most;
    }
    parent[0] = -1;
    this.used = used;
    if (this.limited) this.countStages();
  }

  /** Levels within the root, and stages with the trims of pieces that do not fill their level across. */
  private countStages(): void {
    const { item, parent, width, height, depth } = this;
    let stages = 0;
    let levels = 0;
    depth[0] = 0;
    for (let i = 0; i < this.count; i++) {
      const above = parent[i] as number;
      const what = item[i] as number;
      if (i > 0) depth[i] = (depth[above] as number) + 1;
      let own = depth[i] as number;
      if (what < 0) levels = Math.max(levels, own + 1);
      else if (i > 0) {
        const isFull = item[above] === ACROSS ? height[i] === height[above] : width[i] === width[above];
        if (!isFull) own++;
      }
      stages = Math.max(stages, own);
    }
    this.stagesWithin = stages;
    this.levelsWithin = levels;
  }

  /** Rooms from the root down, and the places that follow from them. */
  private listPlaces(): void {
    const { item, parent, width, height, roomWidth, roomHeight, depth, limited, longest } = this;
    const { kerf, levels, stages, table } = this.rules;
    const leastWidth = table.leastWidth[this.sheet.index] as number;
    const leastHeight = table.leastHeight[this.sheet.index] as number;
    this.placesAroundRoot(leastWidth, leastHeight);
    for (let i = 0; i < this.count; i++) {
      const what = item[i] as number;
      let isColumn = false;
      if (i > 0) {
        const above = parent[i] as number;
        isColumn = item[above] === ACROSS;
        let across = roomWidth[above] as number;
        let down = roomHeight[above] as number;
        if (isColumn) across += (width[i] as number) - (width[above] as number);
        else down += (height[i] as number) - (height[above] as number);
        roomWidth[i] = Math.min(across, longest);
        roomHeight[i] = Math.min(down, longest);
        if (limited) depth[i] = (depth[above] as number) + 1;
      } else if (what >= 0) return;
      const across = roomWidth[i] as number;
      const down = roomHeight[i] as number;
      if (what >= 0) {
        // A piece becomes a level with the new piece, across the cuts of its own level.
        const right = isColumn ? across : across - (width[i] as number) - kerf;
        const below = isColumn ? down - (height[i] as number) - kerf : down;
        if (right < leastWidth || below < leastHeight) continue;
        const how = isColumn ? BELOW : BESIDE;
        if (!limited) this.addPlace(i, how, right, below, 0);
        else if ((depth[i] as number) <= levels) {
          if ((depth[i] as number) < stages) this.addPlace(i, how, right, below, 0);
          else if (isColumn) this.addPlace(i, how, width[i] as number, below, EXACT_WIDTH);
          else this.addPlace(i, how, right, height[i] as number, EXACT_HEIGHT);
        }
      } else if (what === ACROSS) {
        const right = across - (width[i] as number) - kerf;
        if (right < leastWidth || down < leastHeight) continue;
        if (!limited || (depth[i] as number) < stages) this.addPlace(i, CHILD, right, down, 0);
        else this.addPlace(i, CHILD, right, this.filledDown(i), EXACT_HEIGHT);
      } else {
        const below = down - (height[i] as number) - kerf;
        if (across < leastWidth || below < leastHeight) continue;
        if (!limited || (depth[i] as number) < stages) this.addPlace(i, CHILD, across, below, 0);
        else this.addPlace(i, CHILD, this.filledAcross(i), below, EXACT_WIDTH);
      }
    }
  }

  /** Places beside and below everything on the sheet, and the room of the root. */
  private placesAroundRoot(leastWidth: number, leastHeight: number): void {
    const { longest, limited } = this;
    const { width: sheetWidth, height: sheetHeight } = this.sheet;
    const { kerf, levels, stages } = this.rules;
    const what = this.item[0] as number;
    const width = this.width[0] as number;
    const height = this.height[0] as number;
    const right = sheetWidth - width - kerf;
    const below = sheetHeight - height - kerf;
    this.roomWidth[0] = sheetWidth;
    this.roomHeight[0] = sheetHeight;
    this.depth[0] = 1;
    if (what === ACROSS || what === DOWN) {
      const isColumn = what === ACROSS;
      const isOwnCut = isColumn ? this.mayDivideWidth : this.mayDivideHeight;
      if (!isOwnCut) {
        // A first cut the other way must free the root, and takes a stage.
        this.depth[0] = 2;
        if (isColumn) this.roomHeight[0] = Math.min(sheetHeight, longest);
        else this.roomWidth[0] = Math.min(sheetWidth, longest);
      }
      // The new level's cuts cross the sheet, or a first cut the other way must free it and takes one stage more.
      const isCrossCut = isColumn ? this.mayDivideHeight : this.mayDivideWidth;
      if (limited && !this.hasStagesAbove(isCrossCut ? 1 : 2)) return;
      if (isColumn && below >= leastHeight && (isCrossCut || width <= longest))
        this.addPlace(0, BELOW, isCrossCut ? sheetWidth : longest, below, 0);
      if (!isColumn && right >= leastWidth && (isCrossCut || height <= longest))
        this.addPlace(0, BESIDE, right, isCrossCut ? sheetHeight : longest, 0);
      return;
    }
    if (right >= leastWidth) {
      const depth = this.mayDivideWidth ? 1 : 2;
      const room = depth === 1 ? sheetHeight : Math.min(sheetHeight, longest);
      if ((this.mayDivideWidth || this.mayDivideHeight) && depth <= levels) {
        if (depth < stages) this.addPlace(0, BESIDE, right, room, 0);
        else if (depth > 1 || height === sheetHeight) this.addPlace(0, BESIDE, right, height, EXACT_HEIGHT);
      }
    }
    if (below >= leastHeight) {
      const depth = this.mayDivideHeight ? 1 : 2;
      const room = depth === 1 ? sheetWidth : Math.min(sheetWidth, longest);
      if ((this.mayDivideWidth || this.mayDivideHeight) && depth <= levels) {
        if (depth < stages) this.addPlace(0, BELOW, room, below, 0);
        else if (depth > 1 || width === sheetWidth) this.addPlace(0, BELOW, width, below, EXACT_WIDTH);
      }
    }
  }

  /** What a piece must measure that fills a level at the last stage. */
  private filledDown(at: number): number {
    return at === 0 && this.mayDivideWidth ? this.sheet.height : (this.height[at] as number);
  }

  private filledAcross(at: number): number {
    return at === 0 && this.mayDivideHeight ? this.sheet.width : (this.width[at] as number);
  }

  private addPlace(node: number, how: number, width: number, height: number, exact: number): void {
    const at = this.places++;
    this.placeNode[at] = node;
    this.placeHow[at] = how;
    this.room[2 * at] = width;
    this.room[2 * at + 1] = height;
    this.placeExact[at] = exact;
    if (height > this.highest) this.highest = height;
  }

  private sortRoom(): void {
    const { room, roomByWidth } = this;
    const end = 2 * this.places;
    for (let i = 0; i < end; i += 2) {
      const width = room[i] as number;
      let to = i;
      while (to > 0 && (roomByWidth[to - 2] as number) < width) {
        roomByWidth[to] = roomByWidth[to - 2] as number;
        roomByWidth[to + 1] = roomByWidth[to - 1] as number;
        to -= 2;
      }
      roomByWidth[to] = width;
      roomByWidth[to + 1] = room[i + 1] as number;
    }
  }

  protected override grow(): void {
    super.grow();
    const nodes = this.item.length;
    // A level and a piece each have one place, the root two more.
    const places = nodes + 4;
    this.depth = longer(this.depth, nodes);
    this.width = longerExtents(this.width, nodes);
    this.height = longerExtents(this.height, nodes);
    this.roomWidth = longerExtents(this.roomWidth, nodes);
    this.roomHeight = longerExtents(this.roomHeight, nodes);
    this.placeNode = longer(this.placeNode, places);
    this.placeHow = longer(this.placeHow, places);
    this.placeExact = longer(this.placeExact, places);
    this.room = longerExtents(this.room, 2 * places);
    this.roomByWidth = new Float64Array(2 * places);
  }
}
