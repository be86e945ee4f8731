import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatNumber } from "../../src/writer/format-number.js";

describe("formatNumber", () => {
  test.each([
    [215.9, "215.9"],
    [0, "0"],
    [-0, "0"],
    [-0.0004, "0"],
    [0.0005, "0.001"],
    [-1.5, "-1.5"],
    [1e-7, "0"],
    [999_999_999.9994, "999999999.999"],
    [100, "100"],
    [0.05, "0.05"],
    [2.0009, "2.001"],
  ])("writes %d as %s", (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, -1e9, 1e21])("refuses %d", (value) => {
    expect(() => formatNumber(value)).toThrow(RangeError);
  });

  test("writes every number in plain decimals, within half a thousandth, and never -0", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        const text = formatNumber(value);
        expect(text).toMatch(/^(0|-?(?:0\.\d{0,2}[1-9]|[1-9]\d*(?:\.\d{0,2}[1-9])?))$/);
        expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.0005000001);
      }),
    );
  });
});
