import { inches, millimetres } from "@sheetwright/measure";
import fc from "fast-check";
import { expect, test } from "vitest";
import { seededSets } from "../../src/sets/seeded-sets.js";

const square = { width: inches(12), height: inches(12) };
const SIXTEENTH = inches(1) / 16;

test("there are sets of four families, numbered from 1", () => {
  expect(seededSets(square, 1, 2).map(({ id }) => id)).toEqual([
    "many small 1",
    "many small 2",
    "few large 1",
    "few large 2",
    "strips 1",
    "strips 2",
    "card layers 1",
    "card layers 2",
  ]);
});

test("every piece fits its sheet as it is allowed to lie, on the 1/16 in grid, in 1 to 13 copies", () => {
  const side = fc.integer({ min: inches(1), max: inches(40) });
  fc.assert(
    fc.property(side, side, fc.nat(), (width, height, seed) => {
      const pieces = seededSets({ width, height }, seed, 1).flatMap((set) => set.pieces);
      const amiss = pieces.filter((piece) => {
        const upright = piece.width <= width && piece.height <= height;
        const turned = piece.turn && piece.height <= width && piece.width <= height;
        const onGrid = piece.width % SIXTEENTH === 0 && piece.height % SIXTEENTH === 0;
        const positive = piece.width > 0 && piece.height > 0;
        return !((upright || turned) && onGrid && positive && piece.quantity >= 1 && piece.quantity <= 13);
      });
      expect(amiss).toEqual([]);
    }),
  );
});

test("the kinds of a set have names of their own", () => {
  for (const { pieces } of seededSets(square, 1, 5)) {
    expect(new Set(pieces.map(({ name }) => name)).size).toBe(pieces.length);
  }
});

test("a set is the same however many others are made, and another for another seed or sheet", () => {
  const [first] = seededSets(square, 1, 1);
  expect(seededSets(square, 1, 5)[0]).toEqual(first);
  expect(seededSets(square, 2, 1)[0]).not.toEqual(first);
  expect(seededSets({ width: inches(12), height: inches(11) }, 1, 1)[0]).not.toEqual(first);
});

test("both kinds that may turn and kinds that may not occur", () => {
  const turns = seededSets(square, 1, 5).flatMap(({ pieces }) => pieces.map(({ turn }) => turn));
  const share = turns.filter((turn) => turn).length / turns.length;
  expect(share).toBeGreaterThan(0.5);
  expect(share).toBeLessThan(0.85);
});

test("a sheet that no card front fits gets no card layers", () => {
  const families = seededSets({ width: inches(2.5), height: millimetres(200) }, 1, 1).map(
    ({ family }) => family,
  );
  expect(families).toEqual(["many small", "few large", "strips"]);
});

test("a sheet under half an inch is refused", () => {
  expect(() => seededSets({ width: inches(12), height: inches(0.25) }, 1, 1)).toThrow(RangeError);
});
