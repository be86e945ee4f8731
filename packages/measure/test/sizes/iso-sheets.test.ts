import { describe, expect, test } from "vitest";
import { findNamedSize, type Size, TICKS_PER_MM } from "../../src/index.js";

const inMillimetres = (id: string): Size => {
  const size = findNamedSize(id, "sheet");
  if (size === undefined) throw new Error(`There is no sheet ${id}.`);
  return { width: size.width / TICKS_PER_MM, height: size.height / TICKS_PER_MM };
};

const numbers = Array.from({ length: 11 }, (_, n) => n);

describe("ISO 216 and ISO 269 series", () => {
  // ISO 216: A0 has an area of 1 square metre and sides as 1 to the square root of 2, to the whole millimetre.
  test("A0 is a square metre with sides as 1 to the square root of 2", () => {
    const { width, height } = inMillimetres("iso-a0");
    expect({ width, height }).toEqual({ width: 841, height: 1189 });
    expect(Math.abs(width * width * Math.SQRT2 - 1_000_000) / 1_000_000).toBeLessThan(0.001);
    expect(Math.abs(height - width * Math.SQRT2)).toBeLessThan(0.5);
  });

  // ISO 216, definition of the series: halve the long side, rounding down to the whole millimetre. The C series
  // (ISO 269) is made the same way.
  test.each(["a", "b", "c"])(
    "each size of the %s series is half of the one before, rounded down",
    (series) => {
      for (const n of numbers.slice(1)) {
        const larger = inMillimetres(`iso-${series}${n - 1}`);
        expect(inMillimetres(`iso-${series}${n}`)).toEqual({
          width: Math.floor(larger.height / 2),
          height: larger.width,
        });
      }
    },
  );

  // ISO 216: B n is the geometric mean of A n and A n-1. Above A0 stands 2A0, 1189 x 1682 mm.
  test("each B size is the geometric mean of two A sizes, within 1 mm", () => {
    for (const n of numbers) {
      const [a, larger] = [
        inMillimetres(`iso-a${n}`),
        n === 0 ? { width: 1189, height: 1682 } : inMillimetres(`iso-a${n - 1}`),
      ];
      const b = inMillimetres(`iso-b${n}`);
      expect(Math.abs(b.width - Math.sqrt(a.width * larger.width))).toBeLessThan(1);
      expect(Math.abs(b.height - Math.sqrt(a.height * larger.height))).toBeLessThan(1);
    }
  });

  // ISO 269: C n is the geometric mean of A n and B n.
  test("each C size is the geometric mean of the A and the B size, within 1 mm", () => {
    for (const n of numbers) {
      const [a, b, c] = ["a", "b", "c"].map((series) => inMillimetres(`iso-${series}${n}`)) as [
        Size,
        Size,
        Size,
      ];
      expect(Math.abs(c.width - Math.sqrt(a.width * b.width))).toBeLessThan(1);
      expect(Math.abs(c.height - Math.sqrt(a.height * b.height))).toBeLessThan(1);
    }
  });

  // ISO 216 and ISO 269 tables, as copied in encyclopaedias.
  test.each([
    ["iso-a3", 297, 420],
    ["iso-a4", 210, 297],
    ["iso-a5", 148, 210],
    ["iso-a6", 105, 148],
    ["iso-a7", 74, 105],
    ["iso-a10", 26, 37],
    ["iso-b0", 1000, 1414],
    ["iso-b5", 176, 250],
    ["iso-b10", 31, 44],
    ["iso-c0", 917, 1297],
    ["iso-c4", 229, 324],
    ["iso-c6", 114, 162],
    ["iso-c10", 28, 40],
  ])("%s is %i x %i mm", (id, width, height) => {
    expect(inMillimetres(id)).toEqual({ width, height });
  });
});

describe("ISO 217 untrimmed sizes", () => {
  // From memory: ISO 217 makes RA about 105 % and SRA about 115 % of the area of the A size.
  test.each([
    ["ra", 1.05],
    ["sra", 1.15],
  ])("the %s sizes are %f times the A sizes in area, to 1 %", (series, times) => {
    for (const n of [0, 1, 2, 3, 4]) {
      const [untrimmed, a] = [inMillimetres(`iso-${series}${n}`), inMillimetres(`iso-a${n}`)];
      const ratio = (untrimmed.width * untrimmed.height) / (a.width * a.height);
      expect(Math.abs(ratio / times - 1)).toBeLessThan(0.01);
      expect(untrimmed.width).toBeGreaterThan(a.width);
      expect(untrimmed.height).toBeGreaterThan(a.height);
    }
  });

  test.each(["ra", "sra"])("each %s size is half of the one before", (series) => {
    for (const n of [1, 2, 3, 4]) {
      const larger = inMillimetres(`iso-${series}${n - 1}`);
      expect(inMillimetres(`iso-${series}${n}`)).toEqual({ width: larger.height / 2, height: larger.width });
    }
  });
});
