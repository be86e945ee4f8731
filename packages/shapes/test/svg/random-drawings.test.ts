// A renderer as an outside opinion on random drawings: crossings, fill rules, transforms and shapes that overlap.
import { TICKS_PER_MM } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaOf, perimeterOf } from "../../src/measure/area.js";
import { checkOutline } from "../../src/outline/check-outline.js";
import { type OutlineReadError, type ReadOutlines, readOutlines } from "../../src/svg/index.js";
import { pixelArea } from "./pixel-area.js";
import { anyCommand } from "./random-path.js";

const PAGE = 400;

const anyShape = fc.oneof(
  {
    weight: 3,
    arbitrary: fc
      .array(anyCommand, { minLength: 2, maxLength: 7 })
      .map((commands) => `<path d="M0 0${commands.join("")}Z"`),
  },
  fc
    .tuple(fc.integer({ min: 1, max: 90 }), fc.integer({ min: 1, max: 90 }), fc.nat(40))
    .map(([width, height, rx]) => `<rect x="-20" y="-30" width="${width}" height="${height}" rx="${rx}"`),
  fc
    .tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }))
    .map(([rx, ry]) => `<ellipse cx="20" cy="-10" rx="${rx}" ry="${ry}"`),
);
const anyTransform = fc.constantFrom(
  "",
  "rotate(30)",
  "scale(-1 .5)",
  "skewX(40) rotate(-77)",
  "translate(20 10)scale(1.3)",
);
const anyDrawing = fc
  .array(fc.tuple(anyShape, anyTransform, fc.constantFrom("nonzero", "evenodd")), {
    minLength: 1,
    maxLength: 3,
  })
  .map((shapes) => {
    const lines = shapes.map(
      ([shape, transform, rule]) => `${shape} transform="${transform}" fill-rule="${rule}"/>`,
    );
    return `<svg xmlns="http://www.w3.org/2000/svg" width="${PAGE}mm" height="${PAGE}mm" viewBox="${-PAGE / 2} ${-PAGE / 2} ${PAGE} ${PAGE}">
${lines.join("\n")}
</svg>`;
  });

describe("any drawing", () => {
  test("covers what a renderer fills, with right outlines", () => {
    let compared = 0;
    fc.assert(
      fc.property(anyDrawing, (svg) => {
        let read: ReadOutlines;
        try {
          read = readOutlines(svg, { mergeCrossings: true, specks: 0 });
        } catch (error) {
          // A path that goes there and back covers nothing.
          expect((error as OutlineReadError).code).toBe("no-outline");
          return;
        }
        const { outlines, notes } = read;
        expect(outlines.flatMap(checkOutline)).toEqual([]);
        if (notes.some(({ code }) => code === "beyond-page")) return;
        const found = outlines.reduce((sum, outline) => sum + areaOf(outline), 0) / TICKS_PER_MM ** 2;
        const pixels = pixelArea(svg, [PAGE, PAGE]);
        // Of parts about as thin as a pixel a renderer's shades tell little.
        const edges = outlines.reduce((sum, outline) => sum + perimeterOf(outline), 0) / TICKS_PER_MM;
        if ((4 * found) / edges < 5) return;
        expect(Math.abs(found - pixels)).toBeLessThan(5e-3 * found + edges * (PAGE / 600 / 20));
        compared += 1;
      }),
      { numRuns: 25 },
    );
    expect(compared).toBeGreaterThan(10);
  });
});
