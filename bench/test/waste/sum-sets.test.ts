import { expect, test } from "vitest";
import type { SetMeasure } from "../../src/waste/measure-set.js";
import { sumSets } from "../../src/waste/sum-sets.js";

const sheet = { width: 10, height: 10 };
const set = (area: bigint, sheets: number | null, bound: number | null): SetMeasure => {
  const plan = { sheets, bound, proven: sheets === bound, verified: true, seconds: 0.5 };
  return {
    family: "family",
    id: "id",
    kinds: 2,
    copies: 5,
    area,
    guillotine: plan,
    shelf: { ...plan, verified: false },
    firstFitShelves: 4,
    gridByKind: null,
    missing: [],
    faults: [],
  };
};

// By hand: 150 + 250 of area from 2 + 3 sheets of 100 is 80 %; from the bound of 2 + 2 sheets it were 100 %.
test("sheets, bounds and areas of sets add up", () => {
  const sum = sumSets(sheet, [set(150n, 2, 2), set(250n, 3, 2)]);
  expect(sum).toMatchObject({ sets: 2, kinds: 4, copies: 10 });
  expect(sum.ways.guillotine).toEqual({ sheets: 5, usePercent: 80, proven: 1, verified: 2, seconds: 1 });
  expect(sum.ways.shelf.verified).toBe(0);
  expect(sum.ways.firstFitShelves).toEqual({ sheets: 8, usePercent: 50 });
  expect(sum.bound).toEqual({ sheets: 4, usePercent: 100 });
});

test("a way that cannot cut one of the sets has no sum", () => {
  const sum = sumSets(sheet, [set(150n, null, null), set(250n, 3, 2)]);
  expect(sum.ways.guillotine).toMatchObject({ sheets: null, usePercent: null });
  expect(sum.bound).toEqual({ sheets: null, usePercent: null });
  expect(sum.ways.gridByKind).toEqual({ sheets: null, usePercent: null });
});

test("nothing has no sum", () => {
  expect(() => sumSets(sheet, [])).toThrow(RangeError);
});
