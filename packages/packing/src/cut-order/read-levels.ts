import type { CutNode, Rectangle, Split } from "../model.js";
import { CutOrderError } from "./cut-order-error.js";

/** One part of a level, as it lies on the sheet. */
export interface LevelPart extends Rectangle {
  readonly path: readonly number[];
  readonly node: CutNode;
  /** The level of cuts that is made on it; absent for a leaf. */
  readonly level?: Level | undefined;
}

/** One level of parallel cuts on one part, in tree order; lengths in the caller's unit. */
export interface Level {
  readonly axis: "x" | "y";
  /** Place among all levels of the layout, parents before children. */
  readonly index: number;
  readonly parts: readonly LevelPart[];
  /** What the last part leaves over: at most one kerf, gone with the cut that frees that part; 0 where it reaches the end. */
  readonly remainder: number;
}

function pathText(path: readonly number[]): string {
  return ["tree", ...path.map((index) => `parts[${index}].node`)].join(".");
}

interface Found extends Rectangle {
  readonly path: readonly number[];
  readonly node: CutNode;
}

function extentAlong(axis: "x" | "y", part: Rectangle): number {
  return axis === "x" ? part.width : part.height;
}

function remainderOf(split: Split, part: Found, kerf: number): number {
  const needed = split.parts.reduce((sum, { size }) => sum + size, kerf * (split.parts.length - 1));
  const extent = extentAlong(split.axis, part);
  const remainder = extent - needed;
  const empty = split.parts.length === 0 || split.parts.some(({ size }) => size < 1);
  if (remainder < 0 || remainder > kerf || empty) {
    const text = `the parts and the cuts between them take ${needed} along ${split.axis}, and the part has ${extent}`;
    const help = "sizes are whole numbers from 1, and at most one kerf may remain";
    throw new CutOrderError("does-not-add-up", pathText(part.path), `${text}; ${help}`, {
      found: needed,
      expected: extent,
    });
  }
  return remainder;
}

function directChildren(split: Split, part: Found, kerf: number): Found[] {
  let at = split.axis === "x" ? part.x : part.y;
  return split.parts.map(({ size, node }, i) => {
    const start = at;
    at += size + kerf;
    const path = [...part.path, i];
    return split.axis === "x"
      ? { x: start, y: part.y, width: size, height: part.height, path, node }
      : { x: part.x, y: start, width: part.width, height: size, path, node };
  });
}

/**
 * The parts of a level. A child split along the same axis that fills its place belongs to the level; one with a
 * remainder of its own is trimmed on its own.
 */
function partsOfLevel(split: Split, part: Found, kerf: number): Found[] {
  const parts: Found[] = [];
  const ahead = directChildren(split, part, kerf).reverse();
  for (let next = ahead.pop(); next !== undefined; next = ahead.pop()) {
    const { node } = next;
    if (node.type === "split" && node.axis === split.axis && remainderOf(node, next, kerf) === 0) {
      ahead.push(...directChildren(node, next, kerf).reverse());
    } else parts.push(next);
  }
  return parts;
}

/**
 * Reads the levels of cuts from a cut tree. A split with a single part that needs no cut is no level. Windows are not
 * entered.
 *
 * @returns The root as a part, and every level, parents before children.
 * @throws CutOrderError for stopped cuts, and where the sizes of a split do not add up.
 */
export function readLevels(
  tree: CutNode,
  usable: Rectangle,
  kerf: number,
): { readonly root: LevelPart; readonly levels: readonly Level[] } {
  const levels: Level[] = [];
  // The parts of a level are filled in when their turn comes: deep trees must not need a deep stack.
  const ahead: { found: Found; put: (part: LevelPart) => void }[] = [];
  let root: LevelPart | undefined;
  ahead.push({
    found: { ...usable, path: [], node: tree },
    put: (part) => {
      root = part;
    },
  });
  for (let next = ahead.pop(); next !== undefined; next = ahead.pop()) {
    let { found } = next;
    let inner: Found[] = [];
    let remainder = 0;
    while (found.node.type === "split") {
      remainder = remainderOf(found.node, found, kerf);
      inner = partsOfLevel(found.node, found, kerf);
      const only = inner[0]!;
      if (inner.length > 1 || remainder > 0) break;
      found = only;
    }
    if (found.node.type === "stopped") {
      throw new CutOrderError(
        "not-yet",
        pathText(found.path),
        "the order of cuts that stop inside a part is not worked out yet; use a layout with edge-to-edge cuts",
        {},
      );
    }
    if (found.node.type !== "split") {
      next.put(found);
      continue;
    }
    const parts: LevelPart[] = [];
    const level: Level = { axis: found.node.axis, index: levels.length, parts, remainder };
    levels.push(level);
    next.put({ ...found, level });
    for (let i = inner.length - 1; i >= 0; i--) {
      ahead.push({
        found: inner[i]!,
        put: (part) => {
          parts[i] = part;
        },
      });
    }
  }
  return { root: root!, levels };
}
