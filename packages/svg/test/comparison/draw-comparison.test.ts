import { fileURLToPath } from "node:url";
import { inches } from "@sheetwright/measure";
import {
  type ComparedSize,
  type Comparison,
  type ComparisonRow,
  compareSizes,
  pieceCases,
} from "@sheetwright/planner";
import { describe, expect, test } from "vitest";
import { drawComparison } from "../../src/comparison/draw-comparison.js";
import { roundScale } from "../../src/comparison/round-scale.js";
import { SEVEN_POINTS } from "../drawing/expect-well-set.js";
import { excessOf, overlappingPairs, rectBox, textBoxes } from "../drawing/text-boxes.js";
import { attributeOf, byId, everyElement, type ReadElement, readStrictly } from "../read-svg.js";

function size(name: string, width: number, height: number): ComparedSize {
  return { id: name, name, width: inches(width), height: inches(height), cost: null };
}

function row(
  of: ComparedSize,
  copies: number,
  sheets: number,
  waste: number,
  atLeast = sheets,
): ComparisonRow {
  return {
    size: of.id,
    copies,
    tooLarge: [],
    sheets,
    atLeast,
    sheetArea: `${sheets * 1000}`,
    pieceArea: `${sheets * (1000 - 10 * waste)}`,
    wastePercent: waste,
    keptPercent: 0,
    cuts: 1,
    layouts: 1,
    plannedFor: copies,
    cost: null,
  };
}

function comparison(
  sizes: readonly ComparedSize[],
  copies: readonly number[],
  rows: readonly ComparisonRow[],
): Comparison {
  return { sizes, copies, rows, search: { effort: "quick", seed: 1 } };
}

/** The layers of a card of 4 1/4 x 5 1/2 in, by common practice. */
const CARD = {
  kinds: [
    { id: "base", quantity: 1, forms: [{ width: inches(8.5), height: inches(5.5) }] },
    { id: "mat", quantity: 1, forms: [{ width: inches(4), height: inches(5.25) }] },
    { id: "panel", quantity: 1, forms: [{ width: inches(3.75), height: inches(5) }] },
  ],
  sheets: [{ id: "any", width: 1, height: 1 }],
  mode: "guillotine",
  aim: "all",
} as const;

const panelsOf = (root: ReadElement) =>
  root.children.filter((element) => attributeOf(element, "data-role") === "size");

function expectWellSet(root: ReadElement): void {
  const texts = textBoxes(root);
  expect(overlappingPairs(texts, 0.002)).toEqual([]);
  for (const text of texts) {
    expect(text.size).toBeGreaterThanOrEqual(SEVEN_POINTS);
    expect(excessOf(text, rectBox(byId(root, "page")))).toBeLessThanOrEqual(0);
  }
}

describe("the chart of a comparison", () => {
  test.each([
    [[3], "for 3 copies;"],
    [[1], "for one copy;"],
    [[1, 2, 3], "for 1 to 3 copies;"],
    [[1, 6, 12], "for 1, 6 and 12 copies;"],
    [Array.from({ length: 20 }, (_, i) => 2 * i + 2), "for 20 numbers of copies from 2 to 40;"],
  ])("names the copies %j that were looked at, and no others", (copies, words) => {
    const letter = size("US Letter", 8.5, 11);
    const rows = copies.map((count) => row(letter, count, 1, 20));
    const told = drawComparison(comparison([letter], copies, rows), { title: "Cards" }).replace(
      /<[^>]*>|\s+/g,
      " ",
    );
    expect(told.replace(/ +/g, " ")).toContain(words);
  });

  const letter = size("US letter", 8.5, 11);
  const square = size("12 x 12 in", 12, 12);
  const small = size("A6", 4.13, 5.83);

  test("has the size with the least waste first, and those that are too small last", () => {
    const rows = [
      row(square, 1, 1, 40),
      row(square, 2, 1, 20),
      { ...row(small, 1, 1, 0), sheets: null, wastePercent: null, tooLarge: ["1a base"] },
      { ...row(small, 2, 1, 0), sheets: null, wastePercent: null, tooLarge: ["1a base"] },
      row(letter, 1, 1, 10),
      row(letter, 2, 1, 15),
    ];
    const root = readStrictly(drawComparison(comparison([square, small, letter], [1, 2], rows)));
    expect(panelsOf(root).map((panel) => attributeOf(panel, "data-size"))).toEqual([
      "US letter",
      "12 x 12 in",
      "A6",
    ]);
    const texts = textBoxes(root).map(({ text }) => text);
    expect(texts).toContain("mean 12.5 %");
    expect(texts).toContain("Too small for 1a base.");
    expectWellSet(root);
  });

  test("draws the waste to scale, and what no plan could save below it", () => {
    // Of two sheets one at least is needed: of their waste of 60 % that of one sheet, 20 %, cannot be saved.
    const rows = [row(letter, 1, 1, 20), row(letter, 11, 2, 60, 1)];
    const root = readStrictly(drawComparison(comparison([letter], [1, 11], rows)));
    const [panel] = panelsOf(root);
    const path = (role: string) =>
      attributeOf(everyElement(panel!).find((one) => one.attributes["data-role"] === role)!, "d")
        .replace(/[MLZ]/g, " ")
        .trim()
        .split(/\s+/)
        .map(Number);
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = path("waste");
    const [, bottom = 0, , left = 0, , right = 0] = path("unavoidable");
    expect(x2).toBeGreaterThan(x1);
    expect((bottom - y2) / (bottom - y1)).toBeCloseTo(3, 2);
    expect(left).toBeCloseTo(y1, 3);
    expect((bottom - right) / (bottom - y1)).toBeCloseTo(1, 2);
    expectWellSet(root);
  });

  test("has a bar a size for one number of copies", () => {
    const rows = [row(letter, 12, 6, 7.4), row(square, 12, 4, 15.8)];
    const root = readStrictly(
      drawComparison(comparison([letter, square], [12], rows), { title: "Harbour cards" }),
    );
    const widths = panelsOf(root).map((panel) =>
      Number(attributeOf(panel.children.find(({ name }) => name === "rect")!, "width")),
    );
    expect(widths[1]! / widths[0]!).toBeCloseTo(15.8 / 7.4, 2);
    expect(textBoxes(root).map(({ text }) => text)).toEqual(
      expect.arrayContaining(["7.4 %", "15.8 %", "6 sheets", "4 sheets"]),
    );
    expectWellSet(root);
  });

  test("stays legible with thirty sizes and fifty numbers of copies", () => {
    const sizes = Array.from({ length: 30 }, (_, i) =>
      size(`${6 + i} x ${11 + i} in, a long name of its own`, 6 + i, 11 + i),
    );
    const copies = Array.from({ length: 50 }, (_, i) => i + 1);
    const rows = sizes.flatMap((one, i) =>
      copies.map((count) => row(one, count, count, (7 * i + 13 * count) % 97)),
    );
    const root = readStrictly(drawComparison(comparison(sizes, copies, rows)));
    expect(panelsOf(root)).toHaveLength(30);
    expectWellSet(root);
  });

  test("is the one in the documentation", async () => {
    const sizes = [
      size("US letter, 8 1/2 x 11 in", 8.5, 11),
      size("US tabloid, 11 x 17 in", 11, 17),
      size("12 x 12 in", 12, 12),
      { ...size("A4, 210 x 297 mm", 1, 1), width: 336_000, height: 475_200 },
      size("6 x 6 in", 6, 6),
    ];
    const copies = Array.from({ length: 12 }, (_, i) => i + 1);
    const drawn = drawComparison(compareSizes(pieceCases(CARD, sizes, copies)), {
      title: "A card and its layers",
    });
    expectWellSet(readStrictly(drawn));
    const page = fileURLToPath(new URL("../../../../docs/images/sheet-sizes.svg", import.meta.url));
    await expect(drawn).toMatchFileSnapshot(page);
  });
});

describe("a round scale", () => {
  test.each([
    [0, 4, [0, 1]],
    [3, 4, [0, 1, 2, 3]],
    [47, 4, [0, 20, 40, 60]],
    [50, 5, [0, 10, 20, 30, 40, 50]],
    [100, 4, [0, 50, 100]],
    [230, 4, [0, 100, 200, 300]],
  ])("holds %d with at most %d steps", (largest, steps, marks) => {
    expect(roundScale(largest, steps).marks).toEqual(marks);
    expect(roundScale(largest, steps).most).toBe(marks.at(-1));
  });
});
