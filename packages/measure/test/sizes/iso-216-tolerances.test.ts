import { describe, expect, test } from "vitest";
import { ISO_216_TOLERANCES, iso216Tolerance, millimetres } from "../../src/index.js";

describe("ISO 216 tolerances", () => {
  // ISO 216: 1.5 mm for dimensions up to 150 mm, 2 mm above 150 and up to 600 mm, 3 mm above 600 mm.
  test.each([
    [52, 1.5],
    [150, 1.5],
    [150.01, 2],
    [297, 2],
    [600, 2],
    [600.01, 3],
    [1189, 3],
  ])("a dimension of %f mm may be off by %f mm", (dimension, tolerance) => {
    expect(iso216Tolerance(millimetres(dimension))).toBe(millimetres(tolerance));
  });

  test("the ranges follow each other without a gap", () => {
    ISO_216_TOLERANCES.forEach(({ above }, index) => {
      expect(above).toBe(index === 0 ? 0 : ISO_216_TOLERANCES[index - 1]?.upTo);
    });
    expect(ISO_216_TOLERANCES.at(-1)).not.toHaveProperty("upTo");
  });

  test("what is no dimension is a programming fault", () => {
    for (const dimension of [0, -1600, 0.5, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => iso216Tolerance(dimension)).toThrow(RangeError);
    }
  });
});
