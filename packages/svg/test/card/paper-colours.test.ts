import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { edgeColour, inkOn, mixColours } from "../../src/card/paper-colours.js";

const colour = fc
  .integer({ min: 0, max: 0xffffff })
  .map((value) => `#${value.toString(16).padStart(6, "0")}`);

/** Contrast ratio: WCAG 2.2, definitions of relative luminance and contrast ratio. */
function contrast(a: string, b: string): number {
  const luminance = (text: string) => {
    const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
      const share = Number.parseInt(text.slice(at, at + 2), 16) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

describe("inkOn", () => {
  test("is dark on cream and white on night blue", () => {
    expect(inkOn("#f6efdc")).toBe("#1d2730");
    expect(inkOn("#22304f")).toBe("#ffffff");
  });

  test("can be read on any paper: 4.5 : 1 or more", () => {
    // WCAG 2.2, success criterion 1.4.3.
    fc.assert(fc.property(colour, (paper) => contrast(inkOn(paper), paper) > 4.5));
  });
});

test("the edge of a layer differs from its paper", () => {
  fc.assert(fc.property(colour, (paper) => contrast(edgeColour(paper), paper) > 1.2));
});

test("mixing goes from one colour to the other, and knows only #rrggbb", () => {
  expect(mixColours("#000000", "#ff8040", 0)).toBe("#000000");
  expect(mixColours("#000000", "#ff8040", 256)).toBe("#ff8040");
  expect(mixColours("#000000", "#ff8040", 128)).toBe("#804020");
  expect(() => mixColours("red", "#000000", 1)).toThrow('Expected a colour as #rrggbb, found "red".');
});
