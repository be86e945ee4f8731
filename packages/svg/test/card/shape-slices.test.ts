import { boxOf, isInside, outlineOf } from "@sheetwright/shapes";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shapeSlices } from "../../src/card/shape-slices.js";
import { isVisible, type Surface, shownSurfaces, visibleAt } from "../../src/card/visible-part.js";
import { exampleShapes } from "../shape/example-shapes.js";

/** A shape that lies at a place. */
function laid(shape: (typeof exampleShapes)[number]["shape"], x: number, y: number): Surface {
  const outline = outlineOf(shape);
  const { width, height } = boxOf(outline);
  return { x, y, width, height, slices: shapeSlices([outline], { x, y, height }) };
}

describe("the slices of a shape", () => {
  test("hold no more than its paper inside, and all of it outside", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...exampleShapes),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        ({ shape }, across, down) => {
          const outline = outlineOf(shape);
          const { width, height } = boxOf(outline);
          const point = { x: Math.round(across * width), y: Math.round(down * height) };
          const slices = shapeSlices([outline], { x: 0, y: 0, height });
          expect(slices[0]?.from).toBe(0);
          expect(slices.at(-1)?.to).toBe(height);
          const slice = slices.find(({ from, to }) => from <= point.y && point.y <= to);
          // A tick or two are lost to chords.
          const holds = (stretches: readonly { from: number; to: number }[], by: number) =>
            stretches.some(({ from, to }) => from - by <= point.x && point.x <= to + by);
          if (isInside(outline, point)) expect(holds(slice?.outer ?? [], 40)).toBe(true);
          else expect(holds(slice?.inner ?? [], -40)).toBe(false);
        },
      ),
    );
  });

  test("let what lies under a window and beside a round edge be seen", () => {
    const under: Surface = { x: 0, y: 0, width: 130000, height: 130000 };
    const ring = laid(
      {
        shape: "frame",
        outer: { shape: "circle", diameter: 120000 },
        window: { shape: "circle", diameter: 60000 },
      },
      5000,
      5000,
    );
    const at = (surfaces: readonly Surface[], index: number, x: number, y: number) =>
      isVisible(surfaces, index, { x: x - 800, y: y - 800, width: 1600, height: 1600 });
    const both = [under, ring];
    expect(at(both, 0, 65000, 65000)).toBe(true);
    expect(at(both, 0, 12000, 12000)).toBe(true);
    expect(at(both, 0, 20000, 65000)).toBe(false);
    expect(at(both, 1, 20000, 65000)).toBe(true);
    expect(at(both, 1, 65000, 65000)).toBe(false);
    expect(visibleAt(both, 0, 65000).length).toBe(3);
    expect(visibleAt(both, 1, 65000).length).toBe(2);
    expect(shownSurfaces([...both, laid({ shape: "circle", diameter: 124000 }, 3000, 3000)])).toEqual([
      true,
      false,
      true,
    ]);
  });
});
