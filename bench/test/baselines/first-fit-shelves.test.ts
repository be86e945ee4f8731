import { howMany } from "@sheetwright/packing";
import fc from "fast-check";
import { expect, test } from "vitest";
import { bestGrid } from "../../src/baselines/best-grid.js";
import { countByShelves, sheetsByShelves } from "../../src/baselines/first-fit-shelves.js";
import type { ListedPiece } from "../../src/listed-piece.js";

const piece = (width: number, height: number, quantity: number, turn = false): ListedPiece => ({
  name: `${width} x ${height}`,
  width,
  height,
  quantity,
  turn,
});

// By hand: the two 6 x 5 make two shelves of 5; a 4 x 3 ends each of them; the third finds the sheet full.
test("smaller pieces fill up the shelves of taller ones before a new sheet is taken", () => {
  const sheet = { width: 10, height: 10 };
  expect(sheetsByShelves(sheet, [piece(4, 3, 2), piece(6, 5, 2)])).toBe(1);
  expect(sheetsByShelves(sheet, [piece(4, 3, 3), piece(6, 5, 2)])).toBe(2);
});

// By hand: 7 x 6, then 8 x 4 on a shelf of its own, then 3 x 3 back on the first shelf; a second one finds no room.
test("a piece goes on the first shelf with room, not on the last one", () => {
  const sheet = { width: 10, height: 10 };
  expect(sheetsByShelves(sheet, [piece(7, 6, 1), piece(8, 4, 1), piece(3, 3, 1)])).toBe(1);
  expect(sheetsByShelves(sheet, [piece(7, 6, 1), piece(8, 4, 1), piece(3, 3, 2)])).toBe(2);
});

// By hand: of 2 1/2 x 3 1/2 on 8 1/2 x 11, flat gives 4 shelves of 2, standing 3 shelves of 3. In half inches.
test("one size counts the better of flat and standing shelves", () => {
  expect(countByShelves({ width: 17, height: 22 }, { width: 5, height: 7, turn: true })).toBe(9);
});

// By hand: of 4 1/2 x 6 1/4 on 12 x 12, two stand side by side and one lies flat below. In quarter inches.
test("the last shelf may lie the other way", () => {
  expect(countByShelves({ width: 48, height: 48 }, { width: 18, height: 25, turn: true })).toBe(3);
  expect(countByShelves({ width: 48, height: 48 }, { width: 18, height: 25, turn: false })).toBe(2);
});

test("a piece is turned where it fits one way only, and has no number of sheets where it fits none", () => {
  const sheet = { width: 10, height: 4 };
  expect(sheetsByShelves(sheet, [piece(4, 10, 2, true)])).toBe(2);
  expect(sheetsByShelves(sheet, [piece(4, 10, 2)])).toBeNull();
  expect(sheetsByShelves(sheet, [piece(4, 10, 0), piece(1, 1, 1)])).toBe(1);
});

test("shelves give at least the grid, and at most what the shelf mode of packing gives", () => {
  const side = fc.integer({ min: 1, max: 40 });
  fc.assert(
    fc.property(side, side, side, side, (width, height, w, h) => {
      const sheet = { width, height };
      const count = countByShelves(sheet, { width: w, height: h, turn: true });
      expect(count).toBeGreaterThanOrEqual(bestGrid(sheet, { width: w, height: h, turn: true }));
      expect(count).toBeLessThanOrEqual(howMany(sheet, { width: w, height: h }, { mode: "shelf" }).count);
    }),
  );
});

test("all copies of all pieces find a place, and no sheet holds more than its area", () => {
  const side = fc.integer({ min: 1, max: 20 });
  const pieces = fc.array(fc.tuple(side, side, fc.integer({ min: 0, max: 13 }), fc.boolean()), {
    maxLength: 8,
  });
  fc.assert(
    fc.property(pieces, (rows) => {
      const sheet = { width: 20, height: 20 };
      const listed = rows.map((row) => piece(...row));
      const copies = listed.reduce((sum, { quantity }) => sum + quantity, 0);
      const area = listed.reduce((sum, { width, height, quantity }) => sum + width * height * quantity, 0);
      const sheets = sheetsByShelves(sheet, listed) ?? Number.NaN;
      expect(sheets * 400).toBeGreaterThanOrEqual(area);
      expect(sheets).toBeLessThanOrEqual(copies);
    }),
  );
});
