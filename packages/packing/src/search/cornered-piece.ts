import type { CutNode, Size, SplitPart } from "../model.js";

/** A piece cut out of the corner of a part that it fits; what it leaves is waste. */
export function corneredPiece(part: Size, kerf: number, piece: Size, leaf: CutNode): CutNode {
  const strip = trimmed("y", part.height, kerf, piece.height, leaf);
  return trimmed("x", part.width, kerf, piece.width, strip);
}

function trimmed(axis: "x" | "y", extent: number, kerf: number, size: number, node: CutNode): CutNode {
  if (size === extent) return node;
  const rest = extent - size - kerf;
  const parts: SplitPart[] = [{ size, node }];
  if (rest > 0) parts.push({ size: rest, node: { type: "waste" } });
  return { type: "split", axis, parts };
}
