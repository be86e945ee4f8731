import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { angleOf, cosine, cosineAndSine, sine, TURN } from "../../src/outline/sines.js";

describe("sines of our own", () => {
  test("give the values of the table of the special angles", () => {
    // Cosine and sine of 0, 30, 45, 60 and 90 degrees: any table of exact trigonometric values.
    expect(cosineAndSine(0)).toEqual([1, 0]);
    expect(sine(TURN / 12)).toBeCloseTo(0.5, 15);
    expect(cosine(TURN / 8)).toBeCloseTo(Math.sqrt(2) / 2, 15);
    expect(sine(TURN / 6)).toBeCloseTo(Math.sqrt(3) / 2, 15);
    expect(cosine(TURN / 4)).toBe(0);
    expect(sine(TURN / 4)).toBe(1);
    // Gauss: cos(2 pi / 17), rounded from its square roots.
    expect(cosine(TURN / 17)).toBeCloseTo(0.9324722294043558, 15);
  });

  test("agree with the machine's to the last bits for some turns", () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), (angle) => {
        expect(Math.abs(sine(angle) - Math.sin(angle))).toBeLessThan(2e-15);
        expect(Math.abs(cosine(angle) - Math.cos(angle))).toBeLessThan(2e-15);
      }),
    );
  });

  test("find an angle from its direction, in all quarters", () => {
    expect(angleOf(1, 0)).toBe(0);
    expect(angleOf(0, 5)).toBe(TURN / 4);
    expect(angleOf(-3, 0)).toBe(TURN / 2);
    expect(angleOf(0, -5)).toBe(-TURN / 4);
    expect(angleOf(0, 0)).toBe(0);
    fc.assert(
      fc.property(fc.integer({ min: -1e6, max: 1e6 }), fc.integer({ min: -1e6, max: 1e6 }), (x, y) => {
        fc.pre(x !== 0 || y !== 0);
        expect(Math.abs(angleOf(x, y) - Math.atan2(y, x))).toBeLessThan(2e-15);
      }),
    );
  });
});
