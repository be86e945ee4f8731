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
import type { CutNode, SplitPart } from "../../model.js";
import type { CompiledProblem, CompiledSheet } from "../compiled-problem.js";
import type { Branch } from "./branch.js";
import type { LayTable } from "./lay-table.js";

/** In `item`: a level whose cuts divide the width, or the height; else the number of a lay. */
const ACROSS = -1;
const DOWN = -2;

/** How a piece is put in at a place. */
const FIRST = 0;
const CHILD = 1;
const BESIDE = 2;
const BELOW = 3;

/** In {@link CutTree.placeExact}. */
export const EXACT_WIDTH = 1;
export const EXACT_HEIGHT = 2;

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

/** One sheet that is being cut. Mutable inside the search. */
export class CutTree {
  /** Nodes in use; 0 for an uncut sheet. */
  count = 0;
  item = new Int32Array(16);
  size = new Int32Array(16);
  private parent = new Int32Array(16);
  private depth = new Int32Array(16);
  private width = new Float64Array(16);
  private height = new Float64Array(16);
  private roomWidth = new Float64Array(16);
  private roomHeight = new Float64Array(16);
  private givenWidth = new Float64Array(16);
  private givenHeight = new Float64Array(16);

  /** Places for one more piece, and the largest piece that each takes. */
  places = 0;
  placeWidth = new Float64Array(24);
  placeHeight = new Float64Array(24);
  private placeNode = new Int32Array(24);
  private placeHow = new Int32Array(24);
  /** 0, or which extent must be met exactly since no stage is left for a trim: {@link EXACT_WIDTH}, {@link EXACT_HEIGHT}. */
  placeExact = new Int32Array(24);

  /** No place is wider, or higher, than this. */
  widestPlace = 0;
  highestPlace = 0;

  /** Sum of the areas of the pieces, as they lie. */
  used = 0;

  private readonly sheetWidth: number;
  private readonly sheetHeight: number;
  private readonly longest: number;
  /** Whether a cut may cross the uncut sheet from top to bottom (dividing its width), and from side to side. */
  private readonly mayDivideWidth: boolean;
  private readonly mayDivideHeight: boolean;
  private readonly limited: boolean;
  private stagesWithin = 0;
  private levelsWithin = 0;

  readonly rules: CutRules;
  readonly sheet: CompiledSheet;

  constructor(rules: CutRules, sheet: CompiledSheet) {
    this.rules = rules;
    this.sheet = sheet;
    this.sheetWidth = sheet.width;
    this.sheetHeight = sheet.height;
    const binds = sheet.longestCut < Math.max(sheet.width, sheet.height);
    this.longest = binds ? sheet.longestCut : Number.POSITIVE_INFINITY;
    this.mayDivideWidth = sheet.height <= sheet.longestCut;
    this.mayDivideHeight = sheet.width <= sheet.longestCut;
    this.limited = rules.levels < Number.POSITIVE_INFINITY;
    this.refresh();
  }

  /** Puts a lay in at a place of this tree; the place must take it. */
  insert(place: number, lay: number): void {
    const how = this.placeHow[place] as number;
    const at = this.placeNode[place] as number;
    if (this.count + 2 > this.item.length) this.grow();
    const { item, size } = this;
    if (how === FIRST) {
      item[0] = lay;
      size[0] = 1;
      this.count = 1;
    } else if (how === CHILD) {
      const end = at + (size[at] as number);
      this.shift(end, 1);
      item[end] = lay;
      size[end] = 1;
      size[at] = (size[at] as number) + 1;
      this.widenAncestors(at, 1);
    } else {
      const nodes = size[at] as number;
      const end = at + nodes;
      this.widenAncestors(at, 2);
      this.shift(end, 2);
      for (let i = end - 1; i >= at; i--) {
        item[i + 1] = item[i] as number;
        size[i + 1] = size[i] as number;
      }
      item[at] = how === BESIDE ? ACROSS : DOWN;
      size[at] = nodes + 2;
      item[end + 1] = lay;
      size[end + 1] = 1;
    }
    this.refresh();
  }

  /**
   * Takes a node out with all below it. The tree stays sound, but {@link refresh} must follow the last removal.
   * @param taken is called with the kind of each piece that goes.
   */
  remove(at: number, taken: (kind: number) => void): void {
    const { item, size, parent } = this;
    const nodes = size[at] as number;
    const { kind } = this.rules.table;
    for (let i = at; i < at + nodes; i++) {
      const lay = item[i] as number;
      if (lay >= 0) taken(kind[lay] as number);
    }
    const above = parent[at] as number;
    if (at === 0) {
      this.count = 0;
      return;
    }
    this.widenAncestors(at, -nodes);
    this.shift(at + nodes, -nodes);
    if ((size[above] as number) === (size[above + 1] as number) + 1) {
      // An only child takes its level's place; a level that comes under one of its own direction joins it.
      const joins = (item[above + 1] as number) < 0 && above > 0;
      const gone = joins ? 2 : 1;
      this.widenAncestors(above, -gone);
      this.shift(above + gone, -gone);
    }
    this.linkParents();
  }

  /** Makes this tree equal to another of the same sheet; {@link refresh} must follow. */
  copyFrom(other: CutTree): void {
    while (this.item.length < other.count) this.grow();
    this.count = other.count;
    for (let i = 0; i < other.count; i++) {
      this.item[i] = other.item[i] as number;
      this.size[i] = other.size[i] as number;
    }
  }

  /** Computes extents, rooms and places anew. */
  refresh(): void {
    this.places = 0;
    this.widestPlace = 0;
    this.highestPlace = 0;
    if (this.count === 0) {
      this.used = 0;
      this.placeWidth[0] = this.sheetWidth;
      this.placeHeight[0] = this.sheetHeight;
      this.placeHow[0] = FIRST;
      this.placeNode[0] = 0;
      this.placeExact[0] = 0;
      this.places = 1;
      this.widestPlace = this.sheetWidth;
      this.highestPlace = this.sheetHeight;
      return;
    }
    this.measure();
    this.listPlaces();
  }

  /**
   * What is left over, each part by a convex measure of its area, so that one large part counts for more than two small
   * ones. All slack goes to the outermost level that can have it.
   * @param measure values of the measure at multiples of 1 / scale.
   */
  leftover(measure: Float64Array, scale: number): number {
    const { item, parent, width, height, givenWidth, givenHeight, sheetWidth, sheetHeight } = this;
    const { kerf } = this.rules;
    if (this.count === 0) return measure[Math.floor(sheetWidth * sheetHeight * scale)] as number;
    let sum = 0;
    givenWidth[0] = sheetWidth;
    givenHeight[0] = sheetHeight;
    const first = this.firstCut();
    if (first === ACROSS) {
      const rest = sheetWidth - (width[0] as number) - kerf;
      if (rest > 0) sum += measure[Math.floor(rest * sheetHeight * scale)] as number;
      givenWidth[0] = width[0] as number;
    } else if (first === DOWN) {
      const rest = sheetHeight - (height[0] as number) - kerf;
      if (rest > 0) sum += measure[Math.floor(rest * sheetWidth * scale)] as number;
      givenHeight[0] = height[0] as number;
    }
    for (let i = 0; i < this.count; i++) {
      if (i > 0) {
        const above = parent[i] as number;
        const isColumn = item[above] === ACROSS;
        givenWidth[i] = (isColumn ? width[i] : givenWidth[above]) as number;
        givenHeight[i] = (isColumn ? givenHeight[above] : height[i]) as number;
      }
      const what = item[i] as number;
      const across = givenWidth[i] as number;
      const down = givenHeight[i] as number;
      const right = across - (width[i] as number) - kerf;
      const below = down - (height[i] as number) - kerf;
      if (right > 0 && what !== DOWN) sum += measure[Math.floor(right * down * scale)] as number;
      if (below > 0 && what !== ACROSS) sum += measure[Math.floor(below * across * scale)] as number;
    }
    return sum;
  }

  /** The tree as plain data; every leftover is called waste until {@link arrange} names it. */
  toCutNode(): CutNode {
    const { kerf } = this.rules;
    const { sheetWidth, sheetHeight } = this;
    if (this.count === 0) return { type: "waste" };
    const first = this.firstCut();
    if (first === 0) return this.nodeAt(0, sheetWidth, sheetHeight);
    const axis = first === ACROSS ? "x" : "y";
    const size = (axis === "x" ? this.width[0] : this.height[0]) as number;
    const inner = axis === "x" ? this.nodeAt(0, size, sheetHeight) : this.nodeAt(0, sheetWidth, size);
    const whole = axis === "x" ? sheetWidth : sheetHeight;
    return splitOf(axis, whole, kerf, [{ size, node: inner }]);
  }

  /** Calls back with the kind of each piece. */
  eachPiece(found: (kind: number) => void): void {
    for (let i = 0; i < this.count; i++) {
      const lay = this.item[i] as number;
      if (lay >= 0) found(this.rules.table.kind[lay] as number);
    }
  }

  /** Writes a branch into this tree, which then holds nothing else. */
  write(root: Branch | undefined): void {
    const items: number[] = [];
    const sizes: number[] = [];
    const write = (branch: Branch): void => {
      const at = items.length;
      items.push(branch.axis === undefined ? branch.lay : branch.axis === "x" ? ACROSS : DOWN);
      sizes.push(0);
      if (branch.axis !== undefined) for (const child of branch.children) write(child);
      sizes[at] = items.length - at;
    };
    if (root !== undefined) write(root);
    while (this.item.length < items.length) this.grow();
    this.item.set(items);
    this.size.set(sizes);
    this.count = items.length;
    this.refresh();
  }

  private nodeAt(at: number, roomAcross: number, roomDown: number): CutNode {
    const { item, size, width, height } = this;
    const { kerf, problem, table } = this.rules;
    const what = item[at] as number;
    if (what >= 0) {
      const kind = problem.kinds[table.kind[what] as number];
      const lay = table.lays[what];
      if (kind === undefined || lay === undefined) throw new RangeError(`There is no lay ${what}.`);
      const { form, turned } = lay;
      let node: CutNode = { type: "piece", shares: [{ kind: kind.id, form, turned, count: 1 }] };
      if (lay.height < roomDown) node = splitOf("y", roomDown, kerf, [{ size: lay.height, node }]);
      if (lay.width < roomAcross) node = splitOf("x", roomAcross, kerf, [{ size: lay.width, node }]);
      return node;
    }
    const parts: SplitPart[] = [];
    const end = at + (size[at] as number);
    for (let child = at + 1; child < end; child += size[child] as number) {
      const extent = (what === ACROSS ? width[child] : height[child]) as number;
      const node =
        what === ACROSS ? this.nodeAt(child, extent, roomDown) : this.nodeAt(child, roomAcross, extent);
      parts.push({ size: extent, node });
    }
    return splitOf(what === ACROSS ? "x" : "y", what === ACROSS ? roomAcross : roomDown, kerf, parts);
  }

  /**
   * The cut that frees the root from the sheet before its own cuts: none (0), ACROSS or DOWN. It is made where the root
   * may not be cut at the sheet's full extent, and where it leaves more than cuts that cross the whole sheet.
   */
  private firstCut(): number {
    const what = this.item[0] as number;
    const right = this.sheetWidth - (this.width[0] as number);
    const below = this.sheetHeight - (this.height[0] as number);
    if (what === ACROSS) {
      if (!this.mayDivideWidth) return DOWN;
      if (below === 0 || !this.mayDivideHeight || !this.hasStageAbove()) return 0;
      return below * this.sheetWidth > right * this.sheetHeight ? DOWN : 0;
    }
    if (what === DOWN) {
      if (!this.mayDivideHeight) return ACROSS;
      if (right === 0 || !this.mayDivideWidth || !this.hasStageAbove()) return 0;
      return right * this.sheetHeight > below * this.sheetWidth ? ACROSS : 0;
    }
    if (right === 0 || below === 0) return 0;
    if (!this.mayDivideWidth) return DOWN;
    if (!this.mayDivideHeight) return ACROSS;
    return right * this.sheetHeight > below * this.sheetWidth ? ACROSS : DOWN;
  }

  /** Whether one more level may stand above the root. */
  private hasStageAbove(): boolean {
    return !this.limited || (this.stagesWithin < this.rules.stages && this.levelsWithin < this.rules.levels);
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
        roomWidth[i] = across < longest ? across : longest;
        roomHeight[i] = down < longest ? down : longest;
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
    const { sheetWidth, sheetHeight, longest, limited } = this;
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
      if (limited && !this.hasStageAbove()) return;
      if (isColumn && this.mayDivideHeight && below >= leastHeight)
        this.addPlace(0, BELOW, sheetWidth, below, 0);
      if (!isColumn && this.mayDivideWidth && right >= leastWidth)
        this.addPlace(0, BESIDE, right, sheetHeight, 0);
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
    return at === 0 && this.mayDivideWidth ? this.sheetHeight : (this.height[at] as number);
  }

  private filledAcross(at: number): number {
    return at === 0 && this.mayDivideHeight ? this.sheetWidth : (this.width[at] as number);
  }

  private addPlace(node: number, how: number, width: number, height: number, exact: number): void {
    const at = this.places++;
    this.placeNode[at] = node;
    this.placeHow[at] = how;
    this.placeWidth[at] = width;
    this.placeHeight[at] = height;
    this.placeExact[at] = exact;
    if (width > this.widestPlace) this.widestPlace = width;
    if (height > this.highestPlace) this.highestPlace = height;
  }

  private widenAncestors(at: number, nodes: number): void {
    const { parent, size } = this;
    for (let i = parent[at] as number; i >= 0; i = parent[i] as number) size[i] = (size[i] as number) + nodes;
  }

  /** Moves all nodes from a place on to the right, or with a negative distance to the left. */
  private shift(from: number, distance: number): void {
    const { item, size, count } = this;
    if (distance > 0) {
      for (let i = count - 1; i >= from; i--) {
        item[i + distance] = item[i] as number;
        size[i + distance] = size[i] as number;
      }
    } else {
      for (let i = from; i < count; i++) {
        item[i + distance] = item[i] as number;
        size[i + distance] = size[i] as number;
      }
    }
    this.count = count + distance;
  }

  private linkParents(): void {
    const { item, size, parent, count } = this;
    if (count > 0) parent[0] = -1;
    for (let i = 0; i < count; i++) {
      if ((item[i] as number) >= 0) continue;
      const end = i + (size[i] as number);
      for (let child = i + 1; child < end; child += size[child] as number) parent[child] = i;
    }
  }

  private grow(): void {
    const nodes = 2 * this.item.length;
    // A level and a piece each have one place, the root two more.
    const places = nodes + 4;
    this.item = longer(this.item, nodes);
    this.size = longer(this.size, nodes);
    this.parent = longer(this.parent, nodes);
    this.depth = longer(this.depth, nodes);
    this.width = longerExtents(this.width, nodes);
    this.height = longerExtents(this.height, nodes);
    this.roomWidth = longerExtents(this.roomWidth, nodes);
    this.roomHeight = longerExtents(this.roomHeight, nodes);
    this.givenWidth = longerExtents(this.givenWidth, nodes);
    this.givenHeight = longerExtents(this.givenHeight, nodes);
    this.placeNode = longer(this.placeNode, places);
    this.placeHow = longer(this.placeHow, places);
    this.placeExact = longer(this.placeExact, places);
    this.placeWidth = longerExtents(this.placeWidth, places);
    this.placeHeight = longerExtents(this.placeHeight, places);
  }
}

function longer(list: Int32Array, length: number): Int32Array<ArrayBuffer> {
  const copy = new Int32Array(length);
  copy.set(list);
  return copy;
}

function longerExtents(list: Float64Array, length: number): Float64Array<ArrayBuffer> {
  const copy = new Float64Array(length);
  copy.set(list);
  return copy;
}

/** One level of cuts with what it has left over; the only part of a level that it fills stands for itself. */
function splitOf(axis: "x" | "y", extent: number, kerf: number, parts: readonly SplitPart[]): CutNode {
  const used = parts.reduce((sum, part) => sum + part.size + kerf, 0);
  const only = parts[0];
  if (only && parts.length === 1 && only.size === extent) return only.node;
  const rest = extent - used;
  return {
    type: "split",
    axis,
    parts: rest > 0 ? [...parts, { size: rest, node: { type: "waste" } }] : parts,
  };
}
