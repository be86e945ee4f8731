import { inches, parseSize } from "@sheetwright/measure";
import { howMany } from "@sheetwright/packing";
import { expect, test } from "vitest";
import { findingsOfYield } from "../../src/waste/findings-of-yield.js";
import { measureYields } from "../../src/waste/measure-yields.js";
import { COMPUTED_YIELDS } from "./computed-yields.js";

const noClock = (): number => 0;

for (const [size, rows] of Object.entries(COMPUTED_YIELDS)) {
  const { width, height } = parseSize(size, { unit: "in" });

  test(`grids and edge-to-edge cuts on ${size} give what was computed, and every layout is verified`, () => {
    const { pieces, faults } = measureYields({ id: size, width, height }, noClock);
    expect(faults).toEqual([]);
    expect(pieces.every(({ verified, exact }) => verified && exact)).toBe(true);
    const found = new Map(pieces.map(({ piece, counts }) => [piece, [counts.bestGrid, counts.guillotine]]));
    for (const [piece, grid, best] of rows) expect([piece, found.get(piece)]).toEqual([piece, [grid, best]]);
  });

  test(`on ${size} grid, first-fit shelves, shelf mode, edge-to-edge cuts and area stand in this order`, () => {
    for (const { counts } of measureYields({ id: size, width, height }, noClock).pieces) {
      const ascending = [
        counts.bestGrid,
        counts.firstFitShelves,
        counts.shelf,
        counts.guillotine,
        counts.area,
      ];
      expect(ascending).toEqual([...ascending].sort((a, b) => a - b));
    }
  });
}

// By hand: 3 x 3 and 2 x 3 fill 6 x 6 whole; eleven others leave one piece (3 x 4 and 3 x 4 1/2: two; 2 1/2 x 3 1/2: three).
test("use is counted by area, and pieces that are too large are left out", () => {
  const yields = measureYields({ id: "pad", width: inches(6), height: inches(6) }, noClock);
  expect(yields.pieces).toHaveLength(13);
  expect(yields.tooLarge).toBe(21);
  const use = Object.fromEntries(yields.pieces.map(({ piece, usePercent }) => [piece, usePercent]));
  expect(use["3 x 3 in"]).toBe(100);
  expect(use["2 1/2 x 3 1/2 in"]).toBe(72.9);
  expect(use["5 x 5 in"]).toBe(69.4);
  expect(yields.meanUsePercent?.guillotine).toBe(70.5);
});

test("a sheet on which no common piece fits has no mean", () => {
  const yields = measureYields({ id: "scrap", width: inches(1), height: inches(12) }, noClock);
  expect(yields).toEqual({
    sheet: "scrap",
    pieces: [],
    tooLarge: 34,
    meanUsePercent: null,
    seconds: 0,
    faults: [],
  });
});

test("a yield that claims a piece more, or pieces of another size, is found out", () => {
  const sheet = { width: inches(12), height: inches(12) };
  const piece = { width: inches(5), height: inches(7) };
  const found = howMany(sheet, piece);
  expect(findingsOfYield(sheet, piece, "guillotine", found)).toEqual([]);
  const more = { ...found, count: found.count + 1 };
  expect(findingsOfYield(sheet, piece, "guillotine", more)).not.toEqual([]);
  const wider = { width: inches(5.0625), height: inches(7) };
  expect(findingsOfYield(sheet, wider, "guillotine", found)).not.toEqual([]);
  expect(findingsOfYield({ ...sheet, width: inches(11) }, piece, "guillotine", found)).not.toEqual([]);
});
