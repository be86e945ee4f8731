import type {
  CutNode,
  Layout,
  LeftoverLeaf,
  PieceLeaf,
  Rectangle,
  Sheet,
  Size,
  Split,
  StoppedCuts,
} from "./model.js";

/** Where one leaf of a cut tree lies, in coordinates of the whole sheet (trim included), in the caller's unit. */
export interface Placement extends Rectangle {
  /**
   * The way down from the layout's tree: an index into `parts` at a split; 0 to 4 for top, right, bottom, left and
   * centre at stopped cuts. Inside a window the path of its piece goes on with the path in the window's own tree.
   */
  readonly path: readonly number[];
  readonly node: PieceLeaf | LeftoverLeaf;
  /** 0 on the sheet itself, 1 in the window of a piece, 2 in the window of a piece cut from a window, and so on. */
  readonly depth: number;
}

/** A node of a cut tree with the rectangle it takes. */
export interface PlacedNode extends Rectangle {
  readonly node: CutNode;
}

/** The sheet inside its trim: the rectangle that a layout's cut tree divides. */
export function usablePart(sheet: Sheet): Rectangle {
  const { left = 0, right = 0, top = 0, bottom = 0 } = sheet.trim ?? {};
  return { x: left, y: top, width: sheet.width - left - right, height: sheet.height - top - bottom };
}

function blocksOf(node: StoppedCuts, part: Size, kerf: number): PlacedNode[] {
  const { x1, x2, y1, y2 } = node;
  const span = (x: number, toX: number, y: number, toY: number, block: CutNode): PlacedNode => ({
    x,
    y,
    width: toX - x,
    height: toY - y,
    node: block,
  });
  // Each line is the near side of its cut, so what lies beyond it starts one kerf further on.
  const centre = span(x1 + kerf, x2, y1 + kerf, y2, node.centre);
  return node.hand === "clockwise"
    ? [
        span(0, x2, 0, y1, node.top),
        span(x2 + kerf, part.width, 0, y2, node.right),
        span(x1 + kerf, part.width, y2 + kerf, part.height, node.bottom),
        span(0, x1, y1 + kerf, part.height, node.left),
        centre,
      ]
    : [
        span(x1 + kerf, part.width, 0, y1, node.top),
        span(x2 + kerf, part.width, y1 + kerf, part.height, node.right),
        span(0, x2, y2 + kerf, part.height, node.bottom),
        span(0, x1, 0, y2, node.left),
        centre,
      ];
}

/**
 * The children of a split or of stopped cuts with their rectangles, in the order of their path indices, measured from
 * the top left corner of the part. A remainder that vanishes in the last cut of a split belongs to no child.
 */
export function childrenOf(node: Split | StoppedCuts, part: Size, kerf: number): PlacedNode[] {
  if (node.type === "stopped") return blocksOf(node, part, kerf);
  const children: PlacedNode[] = [];
  let at = 0;
  for (const { size, node: child } of node.parts) {
    children.push(
      node.axis === "x"
        ? { x: at, y: 0, width: size, height: part.height, node: child }
        : { x: 0, y: at, width: part.width, height: size, node: child },
    );
    at += size + kerf;
  }
  return children;
}

/**
 * Lists every leaf of a layout with its rectangle on the sheet, in tree order: left before right, top before bottom,
 * and what lies in a window directly after its piece. The tree is taken as it is; {@link verify} judges it.
 *
 * @param kerf Width lost by each cut, in the caller's unit (default 0); inside windows too.
 *
 * @example
 * const mat = { type: "piece", shares: [{ kind: "mat", form: 0, turned: false, count: 1 }] };
 * const sizes = [[2, { type: "waste" }], [5, mat], [5, mat]];
 * const tree = { type: "split", axis: "x", parts: sizes.map(([size, node]) => ({ size, node })) };
 * const sheet = { id: "cream", width: 13, height: 7, trim: { left: 1 } };
 * const found = placements(sheet, { sheet: "cream", run: 1, tree });
 * found.map(({ node, x, width }) => [node.type, x, width]) // => [["waste", 1, 2], ["piece", 3, 5], ["piece", 8, 5]]
 */
export function placements(sheet: Sheet, layout: Layout, kerf = 0): readonly Placement[] {
  const found: Placement[] = [];
  // A stack of our own: a layout may be as deep as it has pieces.
  const ahead: { at: PlacedNode; path: readonly number[]; depth: number }[] = [
    { at: { ...usablePart(sheet), node: layout.tree }, path: [], depth: 0 },
  ];
  for (let next = ahead.pop(); next !== undefined; next = ahead.pop()) {
    const { at, path, depth } = next;
    const { x, y, width, height, node } = at;
    if (node.type === "split" || node.type === "stopped") {
      const children = childrenOf(node, at, kerf);
      for (let i = children.length - 1; i >= 0; i--) {
        const child = children[i]!;
        ahead.push({ at: { ...child, x: x + child.x, y: y + child.y }, path: [...path, i], depth });
      }
      continue;
    }
    found.push({ x, y, width, height, path, node, depth });
    if (node.type === "piece" && node.window !== undefined) {
      const { window } = node;
      const opening = { ...window, x: x + window.x, y: y + window.y, node: window.tree };
      ahead.push({ at: opening, path, depth: depth + 1 });
    }
  }
  return found;
}
