import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatSize, inches, millimetres, parseSize, type Unit } from "../src/index.js";

describe("printing a size", () => {
  test("width comes first, the unit last and once", () => {
    expect(formatSize(inches(8.5), inches(11), { unit: "in" })).toBe("8 1/2 x 11 in");
    expect(formatSize(inches(11), inches(8.5), { unit: "in" })).toBe("11 x 8 1/2 in");
    expect(formatSize(millimetres(210), millimetres(297), { unit: "mm" })).toBe("210 x 297 mm");
  });

  test("the unit can be left out, or be the inch mark at both", () => {
    expect(formatSize(inches(5.5), inches(7), { unit: "in", mark: false })).toBe("5 1/2 x 7");
    expect(formatSize(inches(5.5), inches(7), { unit: "in", mark: '"' })).toBe('5 1/2" x 7"');
    expect(formatSize(1600, 3200, { unit: "mm", mark: '"' })).toBe("1 x 2 mm");
  });

  test("each length that is off the grid is marked", () => {
    expect(formatSize(millimetres(216), inches(11), { unit: "in" })).toBe("~8 1/2 x 11 in");
    expect(formatSize(millimetres(216), inches(11), { unit: "in", approximate: false })).toBe(
      "8 1/2 x 11 in",
    );
  });

  test("a size on the grid reads back the same", () => {
    const steps = fc.integer({ min: 1, max: 25_000 });
    const units = fc.constantFrom<Unit>("in", "mm");
    fc.assert(
      fc.property(
        steps,
        steps,
        units,
        fc.constantFrom<boolean | '"'>(true, false, '"'),
        (w, h, unit, mark) => {
          const step = unit === "in" ? 635 : 16;
          const [width, height] = [w * step, h * step];
          const text = formatSize(width, height, { unit, mark });
          expect(parseSize(text, { unit })).toEqual({ width, height, unit, exact: true });
        },
      ),
    );
  });
});
