import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CUTTING_PRECISION, inches, millimetres, roundToPrecision } from "../src/index.js";

describe("rounding to a precision", () => {
  test("the cutting precision is 1/16 in or 0.5 mm", () => {
    expect(CUTTING_PRECISION).toEqual({ in: inches(1 / 16), mm: millimetres(0.5) });
  });

  test("the nearest multiple is taken, half up", () => {
    expect(roundToPrecision(inches(1 / 32), CUTTING_PRECISION.in)).toBe(inches(1 / 16));
    expect(roundToPrecision(inches(1 / 32) - 1, CUTTING_PRECISION.in)).toBe(0);
    expect(roundToPrecision(inches(2.9), CUTTING_PRECISION.in)).toBe(inches(2 + 7 / 8));
    expect(roundToPrecision(millimetres(99.25), CUTTING_PRECISION.mm)).toBe(millimetres(99.5));
    expect(roundToPrecision(millimetres(-0.25), CUTTING_PRECISION.mm)).toBe(0);
    expect(Object.is(roundToPrecision(-1, 1600), 0)).toBe(true);
    expect(roundToPrecision(millimetres(-0.3), CUTTING_PRECISION.mm)).toBe(millimetres(-0.5));
  });

  test("what is no whole number, or no precision, is a programming fault", () => {
    expect(() => roundToPrecision(0.5, 16)).toThrow(RangeError);
    expect(() => roundToPrecision(16, 0)).toThrow(RangeError);
    expect(() => roundToPrecision(16, -16)).toThrow(RangeError);
    expect(() => roundToPrecision(16, 1.5)).toThrow(RangeError);
  });

  test("gives a multiple, at most half the precision away, and stays where it is on one", () => {
    const ticks = fc.integer({ min: -16_000_000, max: 16_000_000 });
    const precision = fc.oneof(
      fc.constantFrom(1, 2, 16, 635, 800, 2540),
      fc.integer({ min: 1, max: 100_000 }),
    );
    fc.assert(
      fc.property(ticks, precision, (length, step) => {
        const rounded = roundToPrecision(length, step);
        expect(Math.abs(rounded % step)).toBe(0);
        expect(2 * (rounded - length)).toBeLessThanOrEqual(step);
        expect(2 * (length - rounded)).toBeLessThan(step);
        expect(roundToPrecision(rounded, step)).toBe(rounded);
      }),
    );
  });
});
