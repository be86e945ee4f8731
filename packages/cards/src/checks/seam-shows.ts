import type { Ticks } from "@sheetwright/measure";
import type { CardLayer, CardSeam } from "../expansion.js";

/**
 * Whether some part of a seam shows, since no layer above lies across it there.
 *
 * @internal
 */
export function seamShows(seam: CardSeam, layers: readonly CardLayer[]): boolean {
  const lying = seam.runs === "across" ? seam : transposed(seam);
  // A layer whose edge lies on the seam does not hide it: only one that reaches over both parts does.
  const covers = layers
    .slice(seam.above)
    .filter(({ surface }) => surface === seam.surface)
    .map((layer) => (seam.runs === "across" ? layer : transposed(layer)))
    .filter(({ y, height }) => y < lying.y && lying.y + lying.height < y + height);
  return !isCovered(lying.x, lying.x + lying.width, covers);
}

function isCovered(start: Ticks, end: Ticks, covers: readonly Pick<CardLayer, "x" | "width">[]): boolean {
  let reached = start;
  for (const { x, width } of [...covers].sort((a, b) => a.x - b.x)) {
    if (x > reached) break;
    reached = Math.max(reached, x + width);
  }
  return reached >= end;
}

function transposed({ x, y, width, height }: Pick<CardLayer, "x" | "y" | "width" | "height">) {
  return { x: y, y: x, width: height, height: width };
}
