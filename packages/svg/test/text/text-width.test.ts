import { describe, expect, test } from "vitest";
import { textWidth } from "../../src/text/text-width.js";

// Advance widths of U+0020 to U+007E in thousandths of the font size, transcribed from the Adobe Core 14 AFM files
// Helvetica.afm and Helvetica-Bold.afm (1997).
const HELVETICA = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278,
  500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469,
  556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500,
  278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];
const HELVETICA_BOLD = [
  278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278,
  556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584,
  556, 333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556,
  333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
];

describe("textWidth", () => {
  test.each([
    ["regular", HELVETICA, false],
    ["bold", HELVETICA_BOLD, true],
  ] as const)("is never less than Helvetica %s, and for running text not a third more", (_, widths, bold) => {
    expect(widths).toHaveLength(95);
    widths.forEach((width, i) => {
      const found = textWidth(String.fromCharCode(0x20 + i), 1000, bold);
      expect(found).toBeGreaterThanOrEqual(width);
    });
    const text = "Rooftops base, Lantern tag, Seam cover: 8 1/2 x 11 in; 12 a sheet, 36 in all";
    const exact = [...text].reduce(
      (sum, character) => sum + (widths[character.charCodeAt(0) - 0x20] ?? 0),
      0,
    );
    expect(textWidth(text, 1000, bold)).toBeLessThanOrEqual(exact * 1.33);
  });

  test("adds up its characters and grows with the size", () => {
    expect(textWidth("ab", 10)).toBeCloseTo(textWidth("a", 10) + textWidth("b", 10), 9);
    expect(textWidth("ab", 20)).toBeCloseTo(2 * textWidth("ab", 10), 9);
    expect(textWidth("", 10)).toBe(0);
  });

  test("takes an accented letter for its base letter, composed or not", () => {
    expect(textWidth("é", 10)).toBe(textWidth("e", 10));
    expect(textWidth("e\u0301", 10)).toBe(textWidth("e", 10));
    expect(textWidth("Å", 10, true)).toBe(textWidth("A", 10, true));
  });

  test("gives full-width characters and emoji their em, and signs that stand for a phrase many", () => {
    expect(textWidth("灯", 10)).toBeGreaterThanOrEqual(10);
    expect(textWidth("🏮", 10)).toBeGreaterThanOrEqual(12.5);
    expect(textWidth("﷽", 10)).toBeGreaterThanOrEqual(100);
  });
});
