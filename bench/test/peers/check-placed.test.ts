import { expect, test } from "vitest";
import { checkPlaced } from "../../src/peers/check-placed.js";
import type { PlacedPiece } from "../../src/peers/placed-piece.js";

const sheet = { width: 10, height: 10 };
const pieces = [
  { width: 6, height: 5 },
  { width: 4, height: 5 },
  { width: 10, height: 5 },
];
const right: readonly PlacedPiece[] = [
  { piece: 0, sheet: 0, x: 0, y: 0, width: 6, height: 5 },
  { piece: 1, sheet: 0, x: 6, y: 0, width: 4, height: 5 },
  { piece: 2, sheet: 0, x: 0, y: 5, width: 10, height: 5 },
];
const changed = (piece: number, fields: Partial<PlacedPiece>): readonly PlacedPiece[] =>
  right.map((one) => (one.piece === piece ? { ...one, ...fields } : one));

test("a layout whose pieces touch but do not overlap is right", () => {
  expect(checkPlaced(pieces, right, sheet, false)).toEqual([]);
});

test.each<[string, readonly PlacedPiece[], RegExp]>([
  ["an overlap of one", changed(1, { x: 5 }), /^pieces 0 and 1 lie over each other on sheet 0\.$/],
  ["a piece within another", changed(1, { x: 1, y: 6, width: 4, height: 5 - 1 }), /expected 4 x 5/],
  ["a piece over the right edge", changed(1, { x: 7 }), /^piece 1 leaves sheet 0\.$/],
  ["a piece over the lower edge", changed(2, { y: 6 }), /^piece 2 leaves sheet 0\.$/],
  ["a piece before the corner", changed(0, { x: -1 }), /^piece 0 leaves sheet 0\.$/],
  ["a coordinate that is no number", changed(0, { x: Number.NaN }), /^piece 0 leaves sheet 0\.$/],
  ["a piece of another size", changed(0, { width: 5 }), /^piece 0 is 5 x 5 on its sheet, expected 6 x 5\.$/],
  ["a missing piece", right.slice(1), /^piece 0 is placed 0 times, expected once\.$/],
  [
    "a piece placed twice",
    [...right, { ...(right[0] as PlacedPiece), sheet: 1 }],
    /^piece 0 is placed 2 times, expected once\.$/,
  ],
  [
    "a piece that was not given",
    [...right, { ...(right[0] as PlacedPiece), piece: 9, sheet: 1 }],
    /^piece 9 was never given\.$/,
  ],
])("%s is found", (_, placed, expected) => {
  expect(checkPlaced(pieces, placed, sheet, false).some((fault) => expected.test(fault))).toBe(true);
});

test("a turned piece is right only where pieces may be turned", () => {
  const placed = [{ piece: 0, sheet: 0, x: 0, y: 0, width: 5, height: 6 }];
  expect(checkPlaced([{ width: 6, height: 5 }], placed, sheet, true)).toEqual([]);
  expect(checkPlaced([{ width: 6, height: 5 }], placed, sheet, false)).toEqual([
    "piece 0 is 5 x 6 on its sheet, expected 6 x 5.",
  ]);
});

test("pieces on different sheets do not overlap", () => {
  const placed = changed(1, { sheet: 1, x: 0 });
  expect(checkPlaced(pieces, placed, sheet, false)).toEqual([]);
});
