/**
 * How much may still be cut around a part that lies in the corner of a sheet: an upper bound on the value of all that a
 * guillotine layout with this part holds besides, if copies were unlimited.
 *
 *     +------+---------+     The part grows by one block beside or below it at a time, each cut as well as copies without
 *     | part |  block  |     limit allow. From the whole sheet, where nothing is left, down to every smaller part.
 *     +------+---------+
 *     |     block      |
 *     +----------------+
 *
 * Source: K. Viswanathan, A. Bagchi, Best-first search methods for constrained two-dimensional cutting stock problems,
 * Operations Research 41 (1993).
 *
 * Work as for filling the raster, memory 16 bytes a pair of points.
 */
import type { FilledRaster, Raster } from "./fill-raster.js";

/** The most value around a part of a width and a height, kerf added, that are sums of piece extents. */
export type OutsideBound = (width: number, height: number) => number;

/** Bounds what parts leave; the raster must be filled without a limit. */
export function outsideBound({ x: findX, y: findY }: Raster, filled: FilledRaster): OutsideBound {
  const xs = findX.points;
  const ys = findY.points;
  const columns = xs.length;
  const rows = ys.length;
  const lastX = xs[columns - 1] as number;
  const lastY = ys[rows - 1] as number;
  // Flat arrays and mutation from here on, column by column.
  const inside = new Float64Array(columns * rows);
  for (let i = 1; i < columns; i++) {
    for (let j = 1; j < rows; j++) inside[i * rows + j] = filled.valueAt(i, j);
  }
  const outside = new Float64Array(columns * rows);
  for (let i = columns - 1; i > 0; i--) {
    const x = xs[i] as number;
    for (let j = rows - 1; j > 0; j--) {
      const y = ys[j] as number;
      let best = 0;
      if (i + 1 < columns) best = outside[(i + 1) * rows + j] as number;
      if (j + 1 < rows) best = Math.max(best, outside[i * rows + j + 1] as number);
      for (let k = 1; k < columns && x + (xs[k] as number) <= lastX; k++) {
        const target = findX.atLeast(x + (xs[k] as number));
        best = Math.max(best, (inside[k * rows + j] as number) + (outside[target * rows + j] as number));
      }
      for (let k = 1; k < rows && y + (ys[k] as number) <= lastY; k++) {
        const target = findY.atLeast(y + (ys[k] as number));
        best = Math.max(best, (inside[i * rows + k] as number) + (outside[i * rows + target] as number));
      }
      outside[i * rows + j] = best;
    }
  }
  return (width, height) => outside[findX.atLeast(width) * rows + findY.atLeast(height)] as number;
}
