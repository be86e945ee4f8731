import fc from "fast-check";
import { expect, test } from "vitest";
import { bestGrid, sheetsByGrid } from "../../src/baselines/best-grid.js";
import type { ListedPiece } from "../../src/listed-piece.js";

const piece = (width: number, height: number, quantity: number, turn = false): ListedPiece => ({
  name: `${width} x ${height}`,
  width,
  height,
  quantity,
  turn,
});

// By hand: 12 / 5 = 2 and 12 / 7 = 1 either way; 11 / 4 = 2 and 8 / 3 = 2, turned 11 / 3 = 3 and 8 / 4 = 2.
test("a grid takes the better of the two ways to lie, and only the given one where turning is forbidden", () => {
  expect(bestGrid({ width: 12, height: 12 }, { width: 5, height: 7, turn: true })).toBe(2);
  expect(bestGrid({ width: 11, height: 8 }, { width: 4, height: 3, turn: true })).toBe(6);
  expect(bestGrid({ width: 11, height: 8 }, { width: 4, height: 3, turn: false })).toBe(4);
  expect(bestGrid({ width: 4, height: 3 }, { width: 3, height: 4, turn: false })).toBe(0);
});

// By hand: four 5 x 5 lie on a sheet, so five take two; three 3 x 10 lie side by side, so four take two.
test("cut by the grid, every kind takes sheets of its own", () => {
  const sheet = { width: 10, height: 10 };
  expect(sheetsByGrid(sheet, [piece(5, 5, 5), piece(3, 10, 4)])).toBe(4);
  expect(sheetsByGrid(sheet, [piece(5, 5, 4), piece(3, 10, 3)])).toBe(2);
});

test("a piece that fits no way has no number of sheets, unless none is wanted", () => {
  const sheet = { width: 10, height: 8 };
  expect(sheetsByGrid(sheet, [piece(8, 10, 1)])).toBeNull();
  expect(sheetsByGrid(sheet, [piece(8, 10, 1, true)])).toBe(1);
  expect(sheetsByGrid(sheet, [piece(8, 10, 0), piece(10, 8, 1)])).toBe(1);
});

test("a grid never holds more than its area", () => {
  const side = fc.integer({ min: 1, max: 60 });
  fc.assert(
    fc.property(side, side, side, side, (width, height, w, h) => {
      const count = bestGrid({ width, height }, { width: w, height: h, turn: true });
      expect(count * w * h).toBeLessThanOrEqual(width * height);
    }),
  );
});
