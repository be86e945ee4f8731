import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  centimetres,
  inches,
  LONGEST_LENGTH,
  millimetres,
  TICKS_PER_INCH,
  TICKS_PER_MM,
} from "../src/index.js";

describe("ticks", () => {
  // International yard and pound agreement, 1959: 1 yd = 0.9144 m exactly, hence 1 in = 25.4 mm exactly.
  test("an inch is exactly 25.4 mm", () => {
    expect(TICKS_PER_INCH * 10).toBe(TICKS_PER_MM * 254);
    expect(inches(36)).toBe(millimetres(914.4));
    expect(inches(1)).toBe(centimetres(2.54));
  });

  test("the grid holds 1/64 in and 0.01 mm", () => {
    expect(inches(1 / 64)).toBe(635);
    expect(millimetres(0.01)).toBe(16);
    expect(centimetres(0.001)).toBe(16);
  });

  test("a value between two ticks goes to the nearest", () => {
    expect(inches(1 / 3)).toBe(13547);
    expect(millimetres(0.0001)).toBe(0);
    expect(Object.is(millimetres(-0.0001), 0)).toBe(true);
  });

  test("10 m either way is the limit", () => {
    expect(millimetres(10_000)).toBe(LONGEST_LENGTH);
    expect(millimetres(-10_000)).toBe(-LONGEST_LENGTH);
    expect(() => millimetres(10_000.01)).toThrow(RangeError);
    expect(() => inches(-394)).toThrow(RangeError);
    expect(() => centimetres(1e300)).toThrow(RangeError);
  });

  test("what is no finite number is refused", () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(() => inches(value)).toThrow(RangeError);
      expect(() => millimetres(value)).toThrow(RangeError);
      expect(() => centimetres(value)).toThrow(RangeError);
    }
    expect(() => inches("8" as unknown as number)).toThrow(RangeError);
  });

  test("every 64th of an inch up to 10 m is exact", () => {
    fc.assert(fc.property(fc.integer({ min: -25_196, max: 25_196 }), (n) => inches(n / 64) === n * 635));
  });

  test("every hundredth of a millimetre up to 10 m is exact", () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000, max: 1_000_000 }), (n) => {
        expect(millimetres(n / 100)).toBe(n * 16);
        expect(centimetres(n / 1000)).toBe(n * 16);
      }),
    );
  });
});
