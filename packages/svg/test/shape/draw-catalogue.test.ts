import { fileURLToPath } from "node:url";
import { TICKS_PER_MM } from "@sheetwright/measure";
import { areaOf, catalogue, outlineOf } from "@sheetwright/shapes";
import { outlinesOfPath } from "@sheetwright/shapes/svg";
import { describe, expect, test } from "vitest";
import { catalogueSamples } from "../../src/shape/catalogue-samples.js";
import { drawCatalogue } from "../../src/shape/draw-catalogue.js";
import { SEVEN_POINTS } from "../drawing/expect-well-set.js";
import { excessOf, overlappingPairs, rectBox, textBoxes } from "../drawing/text-boxes.js";
import { attributeOf, byId, everyElement, type ReadElement, readStrictly } from "../read-svg.js";

const cellsOf = (root: ReadElement) =>
  root.children.filter((element) => attributeOf(element, "data-role") === "shape");

describe("The page of the catalogue", () => {
  test.each(["in", "mm"] as const)("shows every shape at the stated scale, in %s", (unit) => {
    const root = readStrictly(drawCatalogue({ unit }));
    const texts = textBoxes(root);
    expect(overlappingPairs(texts, 0.002)).toEqual([]);
    for (const text of texts) {
      expect(text.size).toBeGreaterThanOrEqual(SEVEN_POINTS);
      expect(excessOf(text, rectBox(byId(root, "page")))).toBeLessThanOrEqual(0);
    }
    const cells = cellsOf(root);
    const samples = catalogueSamples(unit);
    expect(cells.length).toBe(samples.length);
    expect([...new Set(cells.map((cell) => attributeOf(cell, "data-shape")))]).toEqual(
      catalogue.map(({ id }) => id),
    );
    expect(texts.some(({ text }) => text.includes("drawn at 1 : 2.5"))).toBe(true);
    cells.forEach((cell, index) => {
      const path = cell.children.find(({ name }) => name === "path") as ReadElement;
      const outlines = outlinesOfPath(attributeOf(path, "d"), {
        unitsPerInch: 25.4,
        fillRule: "evenodd",
      }).outlines;
      const drawn = outlines.reduce((sum, outline) => sum + areaOf(outline), 0) * 2.5 ** 2;
      const sample = samples[index];
      if (sample === undefined) throw new Error("A cell too many.");
      expect(Math.abs(drawn / areaOf(outlineOf(sample.shape)) - 1)).toBeLessThan(2e-4);
    });
  });

  test("keeps shapes off each other and inside the page", () => {
    const root = readStrictly(drawCatalogue());
    const [, , width = 0, height = 0] = attributeOf(root, "viewBox").split(" ").map(Number);
    const boxes = cellsOf(root).map((cell) => {
      const path = cell.children.find(({ name }) => name === "path") as ReadElement;
      const [{ x, y, width: w, height: h }] = [
        outlinesOfPath(attributeOf(path, "d"), { unitsPerInch: 25.4, fillRule: "evenodd" }).box,
      ];
      return [x, y, x + w, y + h].map((ticks) => ticks / TICKS_PER_MM) as [number, number, number, number];
    });
    for (const [left, top, right, bottom] of boxes) {
      expect(left).toBeGreaterThan(10);
      expect(top).toBeGreaterThan(10);
      expect(right).toBeLessThan(width - 10);
      expect(bottom).toBeLessThan(height - 10);
    }
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1))
        expect(a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]).toBe(false);
    });
    // Nor do words stand on shapes.
    for (const text of textBoxes(root))
      for (const [left, top, right, bottom] of boxes)
        expect(
          text.x < right && left < text.x + text.width && text.y < bottom && top < text.y + text.height,
          text.text,
        ).toBe(false);
    expect(everyElement(root).every(({ name }) => name !== "use")).toBe(true);
  });

  test("is the one in the documentation", async () => {
    const page = fileURLToPath(new URL("../../../../docs/images/die-shapes.svg", import.meta.url));
    await expect(drawCatalogue()).toMatchFileSnapshot(page);
  });
});
