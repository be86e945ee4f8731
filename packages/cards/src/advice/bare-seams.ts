import type { Ticks } from "@sheetwright/measure";
import type { CardLayer } from "../expansion.js";
import type { Bands } from "../project.js";

/**
 * The seams of bands of which some part shows, since no layer above lies across it there: distances from the start of the
 * bands, in ticks. `first` is the index of the first band among the card's layers.
 *
 * @internal
 */
export function bareSeams(bands: Bands, layers: readonly CardLayer[], first: number): readonly Ticks[] {
  const across = bands.runs === "across";
  const [start] = layers.slice(first, first + 1).map((band) => (across ? band.y : band.x));
  const seams = layers.slice(first + 1, first + bands.ratios.length);
  const above = layers.slice(first + bands.ratios.length);
  return seams.flatMap((band) => {
    const seam = across ? band.y : band.x;
    // A layer whose edge lies on the seam does not hide it: only one that reaches over both bands does.
    const covers = above
      .map((layer) => (across ? layer : transposed(layer)))
      .filter(({ y, height }) => y < seam && seam < y + height);
    const { x, width } = across ? band : transposed(band);
    return isCovered(x, x + width, covers) || start === undefined ? [] : [seam - start];
  });
}

function isCovered(start: Ticks, end: Ticks, covers: readonly Pick<CardLayer, "x" | "width">[]): boolean {
  let reached = start;
  for (const { x, width } of [...covers].sort((a, b) => a.x - b.x)) {
    if (x > reached) break;
    reached = Math.max(reached, x + width);
  }
  return reached >= end;
}

function transposed({ x, y, width, height }: CardLayer) {
  return { x: y, y: x, width: height, height: width };
}
