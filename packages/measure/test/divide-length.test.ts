import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  CUTTING_PRECISION,
  DivisionError,
  divideLength,
  formatLength,
  inches,
  LONGEST_LENGTH,
  millimetres,
  roundToPrecision,
} from "../src/index.js";

const sixteenth = CUTTING_PRECISION.in;

describe("dividing a length", () => {
  test("shares that fall on the precision are exact", () => {
    expect(divideLength(inches(4), [1, 3], sixteenth)).toEqual({
      parts: [inches(1), inches(3)],
      boundaries: [0, inches(1), inches(4)],
      roundings: [],
    });
  });

  test("thirds of 8 1/2 in are rounded at their boundaries and still make 8 1/2 in", () => {
    const { parts, boundaries, roundings } = divideLength(inches(8.5), [1, 1, 1], sixteenth);
    expect(parts.map((part) => formatLength(part, { unit: "in" }))).toEqual([
      "2 13/16 in",
      "2 7/8 in",
      "2 13/16 in",
    ]);
    expect(boundaries).toEqual([0, inches(2.8125), inches(5.6875), inches(8.5)]);
    // 2 5/6 in is 1/48 in (846 2/3 ticks) above 2 13/16 in, and 5 2/3 in as much below 5 11/16 in.
    expect(roundings).toEqual([
      { boundary: 1, position: inches(2.8125), by: -2540 / 3 },
      { boundary: 2, position: inches(5.6875), by: 2540 / 3 },
    ]);
  });

  test("rounding the widths instead would not add up", () => {
    const width = roundToPrecision(Math.round(inches(8.5) / 3), sixteenth);
    expect(3 * width).not.toBe(inches(8.5));
  });

  test("A4 in thirds, to half a millimetre, is 99 mm each", () => {
    // DIN long: a third of A4 is 99 mm.
    expect(divideLength(millimetres(297), [1, 1, 1], CUTTING_PRECISION.mm).parts).toEqual(
      [99, 99, 99].map(millimetres),
    );
  });

  test("the ends stay where they are, on the precision or not", () => {
    expect(divideLength(10_001, [1, 1], 800)).toEqual({
      parts: [4800, 5201],
      boundaries: [0, 4800, 10_001],
      roundings: [{ boundary: 1, position: 4800, by: -200.5 }],
    });
  });

  test("one share is the whole", () => {
    expect(divideLength(inches(1), [7], sixteenth)).toEqual({
      parts: [inches(1)],
      boundaries: [0, inches(1)],
      roundings: [],
    });
  });

  test("ratios too large for exact floats are exact", () => {
    const huge = Number.MAX_SAFE_INTEGER;
    expect(divideLength(LONGEST_LENGTH, [huge, huge, huge, huge], 1).parts).toEqual(
      [4, 4, 4, 4].map((share) => LONGEST_LENGTH / share),
    );
  });

  test("a part that vanishes is named", () => {
    const divide = () => divideLength(inches(1 / 16), [1, 1, 1], sixteenth);
    expect(divide).toThrow(DivisionError);
    expect(divide).toThrow(
      "Part 1 of 3 vanishes when 1/16 in is divided 1 : 1 : 1 and rounded to 1/16 in. " +
        "Divide a longer length, or use fewer parts or a finer precision.",
    );
    try {
      divideLength(millimetres(1), [9, 1], CUTTING_PRECISION.mm);
      expect.unreachable();
    } catch (error) {
      expect(error).toMatchObject({
        code: "part-vanishes",
        path: "",
        details: { part: 1, total: 1600, ratios: [9, 1], precision: 800 },
        message: expect.stringContaining("1 mm is divided 9 : 1 and rounded to 0.5 mm"),
      });
    }
  });

  test("a last sliver narrower than half the precision counts as vanished", () => {
    expect(divideLength(1601, [1, 1], 800).parts).toEqual([800, 801]);
    expect(() => divideLength(801, [1, 1], 800)).toThrow(DivisionError);
  });

  test("what is no positive whole number is a programming fault", () => {
    expect(() => divideLength(0, [1], 1)).toThrow(RangeError);
    expect(() => divideLength(1.5, [1], 1)).toThrow(RangeError);
    expect(() => divideLength(100, [], 1)).toThrow(RangeError);
    expect(() => divideLength(100, [1, 0], 1)).toThrow(RangeError);
    expect(() => divideLength(100, [1, 0.5], 1)).toThrow(RangeError);
    expect(() => divideLength(100, [1, 1], 0)).toThrow(RangeError);
  });
});

describe("any division", () => {
  const total = fc.integer({ min: 1, max: LONGEST_LENGTH });
  const ratios = fc.array(fc.oneof(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 1e12 })), {
    minLength: 1,
    maxLength: 12,
  });
  const precision = fc.constantFrom(1, 16, 635, 800, 1270, 2540, 10_160);

  test("adds up, keeps each boundary within half the precision, and tells each rounding", () => {
    fc.assert(
      fc.property(total, ratios, precision, (length, shares, step) => {
        let division: ReturnType<typeof divideLength>;
        try {
          division = divideLength(length, shares, step);
        } catch (error) {
          expect(error).toBeInstanceOf(DivisionError);
          return;
        }
        const { parts, boundaries, roundings } = division;
        expect(parts).toHaveLength(shares.length);
        expect(parts.reduce((sum, part) => sum + part, 0)).toBe(length);
        expect([boundaries[0], boundaries.at(-1)]).toEqual([0, length]);

        const sum = shares.map(BigInt).reduce((all, share) => all + share, 0n);
        let before = 0n;
        const told = new Map(roundings.map(({ boundary, by }) => [boundary, by]));
        shares.forEach((share, index) => {
          const part = parts[index] ?? 0;
          expect(2 * part).toBeGreaterThanOrEqual(step);
          expect((boundaries[index + 1] ?? 0) - (boundaries[index] ?? 0)).toBe(part);
          before += BigInt(share);
          if (index === shares.length - 1) return;
          // Position minus exact position, times the sum of the shares.
          const off = BigInt(boundaries[index + 1] ?? 0) * sum - BigInt(length) * before;
          expect(2n * (off < 0n ? -off : off) <= BigInt(step) * sum).toBe(true);
          expect((boundaries[index + 1] ?? 0) % step).toBe(0);
          expect(told.has(index + 1)).toBe(off !== 0n);
          if (off !== 0n) expect(Math.sign(told.get(index + 1) ?? 0)).toBe(off < 0n ? -1 : 1);
        });
        expect(told.size).toBe(roundings.length);
      }),
    );
  });

  test("succeeds where every share is at least one and a half times the precision", () => {
    const small = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(small, precision, fc.integer({ min: 0, max: 5000 }), (shares, step, more) => {
        const sum = shares.reduce((all, share) => all + share, 0);
        const length = Math.ceil((3 * step) / 2) * sum + more;
        expect(() => divideLength(length, shares, step)).not.toThrow();
      }),
    );
  });

  test("common factors in the ratios change nothing", () => {
    const small = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(
        fc.integer({ min: 100_000, max: 500_000 }),
        small,
        fc.integer({ min: 2, max: 1000 }),
        (length, shares, factor) => {
          const scaled = divideLength(
            length,
            shares.map((share) => share * factor),
            800,
          );
          expect(scaled.parts).toEqual(divideLength(length, shares, 800).parts);
        },
      ),
    );
  });
});
