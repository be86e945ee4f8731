import type { CutNode, PieceLeaf, Split } from "../model.js";

const ranks: Readonly<Record<CutNode["type"], number>> = {
  piece: 0,
  split: 1,
  stopped: 2,
  offcut: 3,
  waste: 4,
};

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function comparePieces(a: PieceLeaf, b: PieceLeaf): number {
  for (let i = 0; i < a.shares.length && i < b.shares.length; i++) {
    const first = a.shares[i]!;
    const second = b.shares[i]!;
    const order =
      compareText(first.kind, second.kind) ||
      first.form - second.form ||
      Number(first.turned) - Number(second.turned) ||
      second.count - first.count;
    if (order !== 0) return order;
  }
  if (a.shares.length !== b.shares.length) return a.shares.length - b.shares.length;
  if (a.window === undefined || b.window === undefined) {
    return Number(a.window !== undefined) - Number(b.window !== undefined);
  }
  return (
    a.window.x - b.window.x ||
    a.window.y - b.window.y ||
    a.window.width - b.window.width ||
    a.window.height - b.window.height ||
    compareText(a.window.tool, b.window.tool) ||
    compareNodes(a.window.tree, b.window.tree)
  );
}

function compareSplits(a: Split, b: Split): number {
  if (a.axis !== b.axis) return compareText(a.axis, b.axis);
  for (let i = 0; i < a.parts.length && i < b.parts.length; i++) {
    const first = a.parts[i]!;
    const second = b.parts[i]!;
    const order = second.size - first.size || compareNodes(first.node, second.node);
    if (order !== 0) return order;
  }
  return b.parts.length - a.parts.length;
}

/**
 * Puts cut trees of one size in a fixed order: pieces by kind, then splits (those with the larger parts first), then
 * leftovers. Equal trees compare as 0, so that a sort brings them together whatever order they came in.
 */
export function compareNodes(a: CutNode, b: CutNode): number {
  if (a === b) return 0;
  if (a.type === "piece" && b.type === "piece") return comparePieces(a, b);
  if (a.type === "split" && b.type === "split") return compareSplits(a, b);
  if (a.type === "stopped" && b.type === "stopped") {
    return (
      compareText(a.hand, b.hand) ||
      a.x1 - b.x1 ||
      a.x2 - b.x2 ||
      a.y1 - b.y1 ||
      a.y2 - b.y2 ||
      compareNodes(a.top, b.top) ||
      compareNodes(a.right, b.right) ||
      compareNodes(a.bottom, b.bottom) ||
      compareNodes(a.left, b.left) ||
      compareNodes(a.centre, b.centre)
    );
  }
  return ranks[a.type] - ranks[b.type];
}
