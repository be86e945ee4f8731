import type { Branch } from "./branch.js";
import type { LayTable } from "./lay-table.js";

/** In {@link NodeList.item}: a level whose cuts divide the width, or the height. Anything else is the number of a lay. */
export const ACROSS = -1;
export const DOWN = -2;

/** How a piece comes into a tree: on an uncut sheet, as one more child of a level, or beside or below a node. */
export const FIRST = 0;
export const CHILD = 1;
export const BESIDE = 2;
export const BELOW = 3;

/**
 * The nodes of one cut tree in preorder, pieces and levels alone: extents follow from them. A level has two or more
 * children, and a level below it cuts the other way.
 */
export class NodeList {
  /** Nodes in use; 0 for an uncut sheet. */
  count = 0;
  item = new Int32Array(16);
  /** Nodes of the subtree, its root included. */
  size = new Int32Array(16);
  /** Index of the level above; -1 for the root. */
  parent = new Int32Array(16);

  readonly table: LayTable;

  constructor(table: LayTable) {
    this.table = table;
  }

  /** Puts a lay in at a node, as {@link FIRST}, {@link CHILD}, {@link BESIDE} or {@link BELOW} say. */
  insert(node: number, how: number, lay: number): void {
    if (this.count + 2 > this.item.length) this.grow();
    const { item, size, parent } = this;
    if (how === FIRST) {
      item[0] = lay;
      size[0] = 1;
      parent[0] = -1;
      this.count = 1;
      return;
    }
    const nodes = size[node] as number;
    const end = node + nodes;
    if (how === CHILD) {
      this.shift(end, 1);
      item[end] = lay;
      size[end] = 1;
      size[node] = nodes + 1;
      this.widenAncestors(node, 1);
      return;
    }
    this.widenAncestors(node, 2);
    this.shift(end, 2);
    for (let i = end - 1; i >= node; i--) {
      item[i + 1] = item[i] as number;
      size[i + 1] = size[i] as number;
    }
    item[node] = how === BESIDE ? ACROSS : DOWN;
    size[node] = nodes + 2;
    item[end + 1] = lay;
    size[end + 1] = 1;
  }

  /**
   * Takes a node out with all below it.
   * @param taken is called with the kind of each piece that goes.
   */
  remove(node: number, taken: (kind: number) => void): void {
    const { item, size, parent } = this;
    const nodes = size[node] as number;
    for (let i = node; i < node + nodes; i++) {
      const lay = item[i] as number;
      if (lay >= 0) taken(this.table.kind[lay] as number);
    }
    if (node === 0) {
      this.count = 0;
      return;
    }
    const above = parent[node] as number;
    this.widenAncestors(node, -nodes);
    this.shift(node + nodes, -nodes);
    if ((size[above] as number) === (size[above + 1] as number) + 1) {
      // An only child takes its level's place; a level that comes under one of its own direction joins it.
      const gone = (item[above + 1] as number) < 0 && above > 0 ? 2 : 1;
      this.widenAncestors(above, -gone);
      this.shift(above + gone, -gone);
    }
    this.linkParents();
  }

  /** Calls back with the kind of each piece. */
  eachPiece(found: (kind: number) => void): void {
    for (let i = 0; i < this.count; i++) {
      const lay = this.item[i] as number;
      if (lay >= 0) found(this.table.kind[lay] as number);
    }
  }

  /** Makes these nodes equal to others. */
  copyFrom(other: NodeList): void {
    while (this.item.length < other.count) this.grow();
    const { count } = other;
    this.count = count;
    for (let i = 0; i < count; i++) {
      this.item[i] = other.item[i] as number;
      this.size[i] = other.size[i] as number;
      this.parent[i] = other.parent[i] as number;
    }
  }

  /** Writes a branch, which then is all there is. */
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
    this.linkParents();
  }

  /** Doubles the room for nodes. */
  protected grow(): void {
    const nodes = 2 * this.item.length;
    this.item = longer(this.item, nodes);
    this.size = longer(this.size, nodes);
    this.parent = longer(this.parent, nodes);
  }

  private widenAncestors(node: number, nodes: number): void {
    const { parent, size } = this;
    for (let i = parent[node] as number; i >= 0; i = parent[i] as number)
      size[i] = (size[i] as number) + nodes;
  }

  /** Moves all nodes from one on to the right, or with a negative distance to the left. */
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
}

/** A copy with room for more. */
export function longer(list: Int32Array, length: number): Int32Array<ArrayBuffer> {
  const copy = new Int32Array(length);
  copy.set(list);
  return copy;
}

/** A copy with room for more. */
export function longerExtents(list: Float64Array, length: number): Float64Array<ArrayBuffer> {
  const copy = new Float64Array(length);
  copy.set(list);
  return copy;
}
