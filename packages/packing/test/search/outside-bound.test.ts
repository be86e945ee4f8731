import fc from "fast-check";
import { expect, test } from "vitest";
import { fillRaster, type RasterPiece } from "../../src/search/fill-raster.js";
import { outsideBound } from "../../src/search/outside-bound.js";
import { extentSums, PointFinder, rasterPoints } from "../../src/search/raster-points.js";
import { valuesByAllLengths } from "./all-lengths.js";

test("what is left around a part is bounded as if every length were looked at", () => {
  const extent = fc.integer({ min: 3, max: 12 });
  const piece = fc.record({ width: extent, height: extent, value: fc.integer({ min: 1, max: 150 }) });
  const side = fc.integer({ min: 12, max: 24 });
  fc.assert(
    fc.property(side, side, fc.array(piece, { minLength: 1, maxLength: 4 }), (width, height, pieces) => {
      const bound = boundByRaster(width, height, pieces);
      const inside = valuesByAllLengths(width, height, 0, pieces);
      // What surrounds a part, from the whole sheet down: one block beside or below it, or a wider or higher part.
      const outside = Array.from({ length: width + 1 }, () => new Array<number>(height + 1).fill(0));
      const around = (w: number, h: number): number => (outside[w] as number[])[h] as number;
      for (let w = width; w > 0; w--) {
        for (let h = height; h > 0; h--) {
          let best = 0;
          for (let more = 1; w + more <= width; more++) {
            best = Math.max(best, around(w + more, h) + (inside[more]?.[h] ?? 0));
          }
          for (let more = 1; h + more <= height; more++) {
            best = Math.max(best, around(w, h + more) + (inside[w]?.[more] ?? 0));
          }
          (outside[w] as number[])[h] = best;
        }
      }
      for (const w of bound.widths) {
        for (const h of bound.heights) expect(bound.of(w, h)).toBe(around(w, h));
      }
    }),
  );
});

/** The bound, and the sides that parts made from pieces may have. */
function boundByRaster(
  width: number,
  height: number,
  pieces: readonly RasterPiece[],
): {
  readonly of: (w: number, h: number) => number;
  readonly widths: readonly number[];
  readonly heights: readonly number[];
} {
  const widths = extentSums(
    width,
    pieces.map((piece) => piece.width),
    1000,
  );
  const heights = extentSums(
    height,
    pieces.map((piece) => piece.height),
    1000,
  );
  const raster = {
    x: new PointFinder(rasterPoints(widths, widths.sums.length)),
    y: new PointFinder(rasterPoints(heights, heights.sums.length)),
  };
  const run = fillRaster(raster, pieces, 1000, Number.POSITIVE_INFINITY, { steps: 1_000_000 });
  let step = run.next();
  while (!step.done) step = run.next();
  if (step.value === undefined) throw new Error("The raster is small.");
  return {
    of: outsideBound(raster, step.value),
    widths: widths.sums.slice(1),
    heights: heights.sums.slice(1),
  };
}
