import { inches } from "@sheetwright/measure";
import { expect, test } from "vitest";
import type { ListedPiece } from "../../src/listed-piece.js";
import { measureSet } from "../../src/waste/measure-set.js";

const piece = (width: number, height: number, quantity: number, turn = false): ListedPiece => ({
  name: `${width} x ${height}`,
  width: inches(width),
  height: inches(height),
  quantity,
  turn,
});
const measure = (width: number, height: number, pieces: readonly ListedPiece[]) => {
  let clock = 0;
  const now = (): number => clock++;
  const set = { family: "by hand", id: "by hand 1", pieces };
  const sheet = { id: "sheet", width: inches(width), height: inches(height) };
  return measureSet(sheet, set, { effort: "quick", seed: 1, now });
};

// By hand: each 3 x 2 with a 1 x 2 beside it fills a sheet of 4 x 2; by the grid, four 1 x 2 take one sheet alone.
test("pieces that fill two sheets whole take two, proven; the grid by kind takes three", () => {
  const { guillotine, shelf, firstFitShelves, gridByKind, ...rest } = measure(4, 2, [
    piece(3, 2, 2),
    piece(1, 2, 2),
  ]);
  const plan = { sheets: 2, bound: 2, proven: true, verified: true, seconds: 1 };
  expect({ guillotine, shelf }).toEqual({ guillotine: plan, shelf: plan });
  expect({ firstFitShelves, gridByKind }).toEqual({ firstFitShelves: 2, gridByKind: 3 });
  expect(rest).toMatchObject({ kinds: 2, copies: 4, missing: [], faults: [] });
  expect(rest.area).toBe(16n * BigInt(inches(1)) * BigInt(inches(1)));
});

test("a piece that fits no way is named with its size, and nothing is counted for the set", () => {
  const found = measure(4, 2, [piece(2, 3, 1), piece(1, 1, 1)]);
  expect(found.missing).toEqual(["2 x 3 (2 x 3 in, not to be turned)"]);
  expect(found.guillotine).toMatchObject({ sheets: null, bound: null, proven: false, verified: true });
  expect([found.firstFitShelves, found.gridByKind]).toEqual([null, null]);
});

test("kinds of which none is wanted count nowhere", () => {
  expect(measure(4, 2, [piece(9, 9, 0), piece(1, 1, 3)])).toMatchObject({
    kinds: 1,
    copies: 3,
    gridByKind: 1,
  });
});
