import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type FormatOptions,
  formatLength,
  inches,
  millimetres,
  parseLength,
  parseLengthExact,
  type Ticks,
  type Unit,
} from "../src/index.js";

describe("printing a length", () => {
  test.each<[Ticks, FormatOptions, string]>([
    [inches(8.5), { unit: "in" }, "8 1/2 in"],
    [inches(0.375), { unit: "in" }, "3/8 in"],
    [inches(11), { unit: "in" }, "11 in"],
    [0, { unit: "in" }, "0 in"],
    [inches(63 / 64), { unit: "in" }, "63/64 in"],
    [inches(1 + 32 / 64), { unit: "in" }, "1 1/2 in"],
    [inches(8.5), { unit: "in", mark: false }, "8 1/2"],
    [inches(8.5), { unit: "in", mark: '"' }, '8 1/2"'],
    [inches(-0.125), { unit: "in" }, "-1/8 in"],
    [millimetres(210), { unit: "mm" }, "210 mm"],
    [millimetres(215.9), { unit: "mm" }, "215.9 mm"],
    [millimetres(0.05), { unit: "mm" }, "0.05 mm"],
    [millimetres(0.5), { unit: "mm", mark: false }, "0.5"],
    [millimetres(20), { unit: "mm", mark: '"' }, "20 mm"],
    [millimetres(-1.25), { unit: "mm" }, "-1.25 mm"],
  ])("%i ticks with %j print as %s", (ticks, options, text) => {
    expect(formatLength(ticks, options)).toBe(text);
  });

  test("off the grid the nearest is printed and marked, unless the mark is left out", () => {
    expect(formatLength(millimetres(216), { unit: "in" })).toBe("~8 1/2 in");
    expect(formatLength(millimetres(216), { unit: "in", approximate: false })).toBe("8 1/2 in");
    expect(formatLength(inches(1 / 64), { unit: "mm" })).toBe("~0.4 mm");
    expect(formatLength(1, { unit: "in" })).toBe("~0 in");
    expect(formatLength(-1, { unit: "in" })).toBe("~0 in");
    expect(formatLength(-8, { unit: "mm" })).toBe("~-0.01 mm");
    expect(formatLength(8, { unit: "mm" })).toBe("~0.01 mm");
    expect(formatLength(7, { unit: "mm" })).toBe("~0 mm");
  });

  test("what is no whole number of ticks, or no unit, is a programming fault", () => {
    expect(() => formatLength(0.5, { unit: "in" })).toThrow(RangeError);
    expect(() => formatLength(Number.NaN, { unit: "mm" })).toThrow(RangeError);
    expect(() => formatLength(1, { unit: "cm" as Unit })).toThrow(TypeError);
  });
});

describe("printing and reading back", () => {
  const marks = fc.constantFrom<boolean | '"'>(true, false, '"');

  test("gives the same ticks for every 64th of an inch", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 25_196 }), marks, (n, mark) => {
        const text = formatLength(n * 635, { unit: "in", mark });
        expect(text).not.toContain("~");
        expect(parseLengthExact(text, { unit: "in" })).toEqual({ ticks: n * 635, exact: true, unit: "in" });
      }),
    );
  });

  test("gives the same ticks for every hundredth of a millimetre", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), marks, (n, mark) => {
        const text = formatLength(n * 16, { unit: "mm", mark });
        expect(text).toMatch(/^\d+(\.\d?[1-9])?( mm)?$/);
        expect(parseLengthExact(text, { unit: "mm" })).toEqual({ ticks: n * 16, exact: true, unit: "mm" });
      }),
    );
  });

  test("is off by at most half a step, and marked, where the value is off the grid", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 16_000_000 }),
        fc.constantFrom<Unit>("in", "mm"),
        (ticks, unit) => {
          const step = unit === "in" ? 635 : 16;
          const text = formatLength(ticks, { unit });
          expect(text.startsWith("~")).toBe(ticks % step !== 0);
          const back = parseLength(text.replace("~", ""), { unit, allowZero: true, longest: 20_000_000 });
          expect(back % step).toBe(0);
          expect(2 * Math.abs(back - ticks)).toBeLessThanOrEqual(step);
        },
      ),
    );
  });

  test("prints fractions reduced, with a power of two up to 64 below the line", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 25_196 }), (n) => {
        const fraction = /(\d+)\/(\d+)/.exec(formatLength(n * 635, { unit: "in" }));
        expect(fraction === null).toBe(n % 64 === 0);
        if (fraction === null) return;
        const [numerator, denominator] = [Number(fraction[1]), Number(fraction[2])];
        expect(numerator % 2).toBe(1);
        expect(numerator).toBeLessThan(denominator);
        expect([2, 4, 8, 16, 32, 64]).toContain(denominator);
      }),
    );
  });
});
