import type { CutNode } from "../../src/index.js";

/** A size as it lies, with what a copy is worth. */
export interface WorthyPiece {
  readonly width: number;
  readonly height: number;
  readonly value: number;
}

/** The most value that edge-to-edge cuts give from one sheet with copies without limit; see {@link valuesByAllLengths}. */
export function mostValueByAllLengths(
  width: number,
  height: number,
  kerf: number,
  pieces: readonly WorthyPiece[],
): number {
  return valuesByAllLengths(width, height, kerf, pieces)[width]?.[height] ?? 0;
}

/**
 * The most value of every part of whole lengths, by width and height, from a look at every cut of every part (Gilmore and
 * Gomory 1966, without patterns). Kerf is lost in each cut, not added to sizes.
 */
export function valuesByAllLengths(
  width: number,
  height: number,
  kerf: number,
  pieces: readonly WorthyPiece[],
): readonly (readonly number[])[] {
  const best = Array.from({ length: width + 1 }, () => new Array<number>(height + 1).fill(0));
  const at = (w: number, h: number): number => (best[w] as number[])[h] as number;
  for (let w = 1; w <= width; w++) {
    for (let h = 1; h <= height; h++) {
      let value = 0;
      for (const piece of pieces) {
        if (piece.width <= w && piece.height <= h) value = Math.max(value, piece.value);
      }
      for (let first = 1; first < w; first++) {
        value = Math.max(value, at(first, h) + at(Math.max(0, w - first - kerf), h));
      }
      for (let first = 1; first < h; first++) {
        value = Math.max(value, at(w, first) + at(w, Math.max(0, h - first - kerf)));
      }
      (best[w] as number[])[h] = value;
    }
  }
  return best;
}

/**
 * Copies of each kind that a tree yields, by the id of the kind. Throws where a part is not its children plus the kerf
 * between them, or a leaf has not the size of its kind.
 */
export function countCut(
  tree: CutNode,
  width: number,
  height: number,
  kerf: number,
  sizes: ReadonlyMap<string, WorthyPiece>,
): Map<string, number> {
  const counts = new Map<string, number>();
  const visit = (node: CutNode, w: number, h: number): void => {
    if (node.type === "piece") {
      for (const { kind, count } of node.shares) {
        const size = sizes.get(kind);
        if (size?.width !== w || size.height !== h) throw new Error(`${kind} lies on ${w} x ${h}`);
        counts.set(kind, (counts.get(kind) ?? 0) + count);
      }
    } else if (node.type === "split") {
      const extent = node.axis === "x" ? w : h;
      let used = -kerf;
      for (const { size, node: child } of node.parts) {
        if (size < 1) throw new Error(`a part of ${size}`);
        used += size + kerf;
        if (node.axis === "x") visit(child, size, h);
        else visit(child, w, size);
      }
      // A remainder narrower than the kerf vanishes in the last cut.
      const left = extent - used;
      if (left < 0 || left > kerf) throw new Error(`${used} of ${extent} used`);
    }
  };
  visit(tree, width, height);
  return counts;
}
