import type { Size } from "../src/index.js";

/** A piece for the oracle: the ways it may lie. */
export type OraclePiece = readonly Size[];

/**
 * The fewest sheets for a handful of pieces by edge-to-edge cuts, by looking at everything: the smallest boxes that a set
 * of pieces can be cut from (any division of the set in two, side by side or one below the other), then the smallest
 * number of sets that fit a sheet. Up to five or six pieces.
 */
export function fewestSheets(sheet: Size, pieces: readonly OraclePiece[], kerf: number): number {
  return cheapestSheets([{ ...sheet, cost: 1 }], pieces, kerf);
}

/** The least cost of sheets of several sizes, each in plenty, for a handful of pieces that may lie alike on all of them. */
export function cheapestSheets(
  sheets: readonly (Size & { readonly cost: number })[],
  pieces: readonly OraclePiece[],
  kerf: number,
): number {
  const all = (1 << pieces.length) - 1;
  const boxes = new Map<number, readonly Size[]>();
  const costs = new Map<number, number>();
  for (let set = 1; set <= all; set++) {
    const found: Size[] = [];
    const single = pieces.findIndex((_, i) => set === 1 << i);
    if (single >= 0) found.push(...(pieces[single] as OraclePiece));
    for (let part = (set - 1) & set; part > 0; part = (part - 1) & set) {
      const other = set ^ part;
      if (part < other) continue;
      for (const a of boxes.get(part) as readonly Size[]) {
        for (const b of boxes.get(other) as readonly Size[]) {
          found.push({ width: a.width + kerf + b.width, height: Math.max(a.height, b.height) });
          found.push({ width: Math.max(a.width, b.width), height: a.height + kerf + b.height });
        }
      }
    }
    boxes.set(set, smallest(found));
    const able = sheets.filter((sheet) =>
      found.some((box) => box.width <= sheet.width && box.height <= sheet.height),
    );
    if (able.length > 0) costs.set(set, Math.min(...able.map(({ cost }) => cost)));
  }
  const least = [0];
  for (let set = 1; set <= all; set++) {
    let best = Number.POSITIVE_INFINITY;
    for (let part = set; part > 0; part = (part - 1) & set) {
      const cost = costs.get(part);
      if (cost !== undefined) best = Math.min(best, cost + (least[set ^ part] as number));
    }
    least.push(best);
  }
  return least[all] as number;
}

function smallest(boxes: readonly Size[]): readonly Size[] {
  return boxes.filter(
    (box, i) =>
      !boxes.some(
        (other, j) =>
          other.width <= box.width &&
          other.height <= box.height &&
          (other.width < box.width || other.height < box.height || j < i),
      ),
  );
}
