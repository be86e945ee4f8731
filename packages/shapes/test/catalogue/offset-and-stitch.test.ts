import { inches } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { isInside, type Outline, offset, outlineOf, type Shape, stitch } from "../../src/index.js";
import { distanceTo, lengthByArcs, samplesOf } from "../dense-samples.js";
import { SIZES, shapesOfSize } from "./sized-shapes.js";

/** 0.01 mm. */
const HUNDREDTH = 16;

/** Every shape of the catalogue once; which of its variants, goes round with the number of the size. */
function eachShape(size: number, number: number): readonly Shape[] {
  const bySort = new Map<string, Shape[]>();
  for (const shape of shapesOfSize(size))
    bySort.set(shape.shape, [...(bySort.get(shape.shape) ?? []), shape]);
  return [...bySort.values()].map((variants) => variants[number % variants.length] as Shape);
}

/** About so many points along all lines. */
function somePoints(outlines: readonly Outline[], count: number) {
  return outlines.flatMap((outline) => samplesOf(outline, lengthByArcs(outline) / count).slice(0, 4 * count));
}

describe.each(SIZES.map((size, number) => ({ size, number })))(
  "shapes of $size ticks",
  ({ size, number }) => {
    const inset = Math.min(inches(1 / 8), Math.round(size / 20));

    test("grow and shrink by a distance that holds everywhere to 0.01 mm", () => {
      for (const shape of eachShape(size, number)) {
        const outline = outlineOf(shape);
        for (const by of [inset, -inset]) {
          const { outlines, vanished } = offset([outline], by);
          expect(vanished, shape.shape).toBe(0);
          const off = somePoints(outlines, 30).map((point) => Math.abs(distanceTo(outline, point) - inset));
          expect(Math.max(...off), `${shape.shape} by ${by}`).toBeLessThan(HUNDREDTH);
        }
      }
    });

    test("are stitched by whole and equal stitches inside", () => {
      for (const shape of eachShape(size, number)) {
        const outline = outlineOf(shape);
        const { dashes, pitch, line } = stitch(outline, { inset });
        expect(line, shape.shape).not.toBe("vanished");
        const step = Math.ceil(dashes.length / 12);
        for (const [index, dash] of dashes.entries()) {
          if (index % step > 0) continue;
          for (const point of dash) {
            expect(isInside(outline, point), shape.shape).toBe(true);
            expect(Math.abs(distanceTo(outline, point) - inset), shape.shape).toBeLessThan(HUNDREDTH);
          }
        }
        // That those of one stretch are alike is a property of its own; of these shapes all stretches are alike.
        if (!["circle", "oval", "polygon"].includes(shape.shape) || pitch === null) continue;
        const lengths = dashes.map((dash) =>
          dash.slice(1).reduce((sum, to, at) => {
            const from = dash[at] ?? to;
            return sum + Math.hypot(to.x - from.x, to.y - from.y);
          }, 0),
        );
        expect(Math.max(...lengths) - Math.min(...lengths), shape.shape).toBeLessThan(6);
        expect(pitch.most - pitch.least, shape.shape).toBeLessThan(6);
      }
    });
  },
);
