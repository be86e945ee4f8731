import { inches } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { scaleSet } from "../../src/sets/scale-set.js";

const half = inches(6);

describe("a set of any number of kinds and copies", () => {
  test("has exactly the copies asked for, and kinds that fit half a sheet", () => {
    const property = fc.property(
      fc.integer({ min: 1, max: 300 }),
      fc.integer({ min: 1, max: 100_000 }),
      fc.nat(1000),
      (kinds, copies, seed) => {
        const set = scaleSet(kinds, copies, seed);
        expect(set.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(copies);
        expect(set.length).toBeLessThanOrEqual(kinds);
        for (const { width, height, quantity } of set) {
          expect(Math.max(width, height)).toBeLessThanOrEqual(half);
          expect(quantity).toBeGreaterThan(0);
        }
      },
    );
    fc.assert(property);
  });

  test("has the same kinds whatever the copies, and the first ones of a larger set", () => {
    const sizes = (kinds: number, copies: number) =>
      scaleSet(kinds, copies, 1).map(({ name, width, height, turn }) => [name, width, height, turn]);
    expect(sizes(20, 100_000)).toEqual(sizes(20, 1_000));
    expect(sizes(200, 10_000).slice(0, 20)).toEqual(sizes(20, 1_000));
  });

  test("is another one with another seed, and refuses nothing at all", () => {
    expect(scaleSet(20, 100, 2)).not.toEqual(scaleSet(20, 100, 1));
    expect(() => scaleSet(0, 100, 1)).toThrow(RangeError);
    expect(() => scaleSet(20, 0, 1)).toThrow(RangeError);
  });
});
