import type { CutNode, Layout, LeftoverLeaf, PieceLeaf, Rectangle, Share, Sheet } from "@sheetwright/packing";

/** A finished piece where it lies on the sheet. */
export interface PlacedPiece extends Rectangle {
  readonly shares: readonly Share[];
  /** How many windows it lies in: 0 on the sheet itself. */
  readonly level: number;
  /** Its window in sheet coordinates, or `null`. */
  readonly window: Rectangle | null;
}

/** A leftover where it lies on the sheet. */
interface PlacedLeftover extends Rectangle {
  readonly what: LeftoverLeaf["type"];
  readonly level: number;
}

/** A window opened in a piece, in sheet coordinates. */
interface PlacedWindow extends Rectangle {
  readonly tool: string;
  /** How many windows the piece it is opened in lies in. */
  readonly level: number;
}

/** A squared-off side of the sheet. */
interface PlacedTrim extends Rectangle {
  readonly side: "left" | "right" | "top" | "bottom";
}

/** Everything a layout makes of one sheet, in sheet coordinates (trim included), each in the order of the cut tree. */
export interface LaidOut {
  readonly width: number;
  readonly height: number;
  /** In working order: left, right, top, bottom; absent trims are left out. */
  readonly trims: readonly PlacedTrim[];
  readonly pieces: readonly PlacedPiece[];
  readonly leftovers: readonly PlacedLeftover[];
  readonly windows: readonly PlacedWindow[];
}

/** Works out where everything lies on the sheet. Lengths are in the packing's unit; the kerf lies between parts. */
export function layOut(sheet: Sheet, layout: Layout, kerf: number): LaidOut {
  const trim = {
    left: sheet.trim?.left ?? 0,
    right: sheet.trim?.right ?? 0,
    top: sheet.trim?.top ?? 0,
    bottom: sheet.trim?.bottom ?? 0,
  };
  const usable = {
    x: trim.left,
    y: trim.top,
    width: sheet.width - trim.left - trim.right,
    height: sheet.height - trim.top - trim.bottom,
  };
  const trims: readonly PlacedTrim[] = [
    { side: "left", x: 0, y: 0, width: trim.left, height: sheet.height },
    { side: "right", x: sheet.width - trim.right, y: 0, width: trim.right, height: sheet.height },
    { side: "top", x: usable.x, y: 0, width: usable.width, height: trim.top },
    { side: "bottom", x: usable.x, y: sheet.height - trim.bottom, width: usable.width, height: trim.bottom },
  ];

  const pieces: PlacedPiece[] = [];
  const leftovers: PlacedLeftover[] = [];
  const windows: PlacedWindow[] = [];

  function walk(node: CutNode, part: Rectangle, level: number): void {
    switch (node.type) {
      case "piece":
        placePiece(node, part, level);
        return;
      case "offcut":
      case "waste":
        leftovers.push({ ...part, what: node.type, level });
        return;
      case "split": {
        let at = 0;
        for (const { size, node: child } of node.parts) {
          const place =
            node.axis === "x"
              ? { ...part, x: part.x + at, width: size }
              : { ...part, y: part.y + at, height: size };
          walk(child, place, level);
          at += size + kerf;
        }
        return;
      }
      case "stopped": {
        const { x1, x2, y1, y2 } = node;
        // Each line is the near side of its cut: what lies beyond it starts one kerf further on.
        const far = { x1: x1 + kerf, x2: x2 + kerf, y1: y1 + kerf, y2: y2 + kerf };
        const block = (left: number, top: number, right: number, bottom: number): Rectangle => ({
          x: part.x + left,
          y: part.y + top,
          width: right - left,
          height: bottom - top,
        });
        const { width, height } = part;
        const clockwise = node.hand === "clockwise";
        walk(node.top, clockwise ? block(0, 0, x2, y1) : block(far.x1, 0, width, y1), level);
        walk(
          node.right,
          clockwise ? block(far.x2, 0, width, y2) : block(far.x2, far.y1, width, height),
          level,
        );
        walk(
          node.bottom,
          clockwise ? block(far.x1, far.y2, width, height) : block(0, far.y2, x2, height),
          level,
        );
        walk(node.left, clockwise ? block(0, far.y1, x1, height) : block(0, 0, x1, y2), level);
        walk(node.centre, block(far.x1, far.y1, x2, y2), level);
        return;
      }
    }
  }

  function placePiece(leaf: PieceLeaf, part: Rectangle, level: number): void {
    const opened = leaf.window;
    const window =
      opened === undefined
        ? null
        : { x: part.x + opened.x, y: part.y + opened.y, width: opened.width, height: opened.height };
    pieces.push({ ...part, shares: leaf.shares, level, window });
    if (opened === undefined || window === null) return;
    windows.push({ ...window, tool: opened.tool, level });
    walk(opened.tree, window, level + 1);
  }

  walk(layout.tree, usable, 0);
  return {
    width: sheet.width,
    height: sheet.height,
    trims: trims.filter(({ width, height }) => width > 0 && height > 0),
    pieces,
    leftovers,
    windows,
  };
}
