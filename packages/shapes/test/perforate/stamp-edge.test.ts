import { millimetres, TICKS_PER_MM } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaOf, boxOf, stampEdge } from "../../src/index.js";
import { areaBySegments, distanceTo } from "../dense-samples.js";
import { box, disc, pierced } from "../plain-outlines.js";
import { anyOutline } from "../random-outline.js";

describe("a stamp edge", () => {
  const label = box(0, 0, millimetres(40), millimetres(30));

  test("bites half circles out of the sides of a rectangle and quarters out of its corners", () => {
    const { outlines, holes, pitch, tooShort } = stampEdge(label, { gauge: 10 });
    expect(pitch).toEqual({ least: millimetres(2), most: millimetres(2) });
    expect(holes.length).toBe(70);
    expect(tooShort).toBe(0);
    expect(outlines.length).toBe(1);
    // 66 half circles and 4 quarters of a radius of 0.5 mm.
    const bites = (66 / 2 + 4 / 4) * Math.PI * 0.25;
    const area = areaBySegments(outlines[0] ?? label) / TICKS_PER_MM ** 2;
    expect(Math.abs(area / (1200 - bites) - 1)).toBeLessThan(1e-5);
    expect(boxOf(outlines[0] ?? label)).toEqual({ x: 0, y: 0, width: 64000, height: 48000 });
  });

  test("bites round a disc in a whole number", () => {
    const { holes, outlines, pitch } = stampEdge(disc(0, 0, millimetres(18)), { gauge: 7 });
    expect(holes.length).toBe(Math.round((36 * Math.PI) / (20 / 7)));
    expect((pitch?.least as number) / TICKS_PER_MM).toBeCloseTo((36 * Math.PI) / holes.length, 3);
    expect(outlines.length).toBe(1);
  });

  test("may go round windows too, and have holes of any size", () => {
    const frame = pierced(label, box(millimetres(10), millimetres(10), millimetres(30), millimetres(20)));
    expect(stampEdge(frame, { gauge: 10 }).holes.length).toBe(70);
    expect(stampEdge(frame, { gauge: 10, windows: true }).holes.length).toBe(100);
    const small = stampEdge(label, { gauge: 10, diameter: 800 });
    expect(new Set(small.holes.map(({ diameter }) => diameter))).toEqual(new Set([800]));
    expect(() => stampEdge(label, { gauge: 10, diameter: 3200 })).toThrow("less than their pitch");
  });

  test("puts one hole where a side is too short for two", () => {
    const chamfer = {
      outer: [
        { to: { x: millimetres(40), y: 0 } },
        { to: { x: millimetres(40), y: millimetres(29.5) } },
        { to: { x: millimetres(39.5), y: millimetres(30) } },
        { to: { x: 0, y: millimetres(30) } },
        { to: { x: 0, y: 0 } },
      ],
      windows: [],
    };
    const { holes, tooShort } = stampEdge(chamfer, { gauge: 10 });
    expect(tooShort).toBe(1);
    expect(holes.length).toBe(70);
    expect(holes.map(({ centre }) => centre)).toContainEqual({
      x: millimetres(39.75),
      y: millimetres(29.75),
    });
  });

  test("has smaller holes where a short side would let them run together", () => {
    // Two holes on sides of 1.1 mm: half of the pitch, 1 mm, would leave a tenth of a millimetre.
    const slim = stampEdge(box(0, 0, millimetres(40), millimetres(1.1)), { gauge: 10 });
    expect(slim.pitch?.least).toBe(millimetres(1.1));
    expect(slim.holes[0]?.diameter).toBe(millimetres(0.88));
    expect(() => stampEdge(box(0, 0, 64000, 1760), { gauge: 10, diameter: 1760 })).toThrow("found 1760");
  });

  test("has its holes on the edge of any outline and takes nothing but them away", () => {
    fc.assert(
      fc.property(anyOutline, fc.integer({ min: 6, max: 20 }), (outline, half) => {
        const { outlines, holes, pitch } = stampEdge(outline, { gauge: half / 2 });
        const off = holes.map(({ centre }) => distanceTo(outline, centre));
        expect(Math.max(0, ...off)).toBeLessThanOrEqual(1.5);
        if (pitch !== null && holes.length > 2) {
          expect(pitch.most / (40 * TICKS_PER_MM)).toBeLessThan(1.5 / half);
          expect(pitch.least / (40 * TICKS_PER_MM)).toBeGreaterThan(0.49 / half);
        }
        const bitten = outlines.reduce((sum, part) => sum + areaOf(part), 0);
        expect(bitten).toBeLessThanOrEqual(areaOf(outline) - (holes.length > 0 ? 1 : 0));
        const taken = holes.reduce((sum, { diameter }) => sum + (Math.PI * diameter ** 2) / 4, 0);
        expect(bitten).toBeGreaterThan(areaOf(outline) - taken);
      }),
    );
  });
});
