import { Resvg } from "@resvg/resvg-js";
import { describe, expect, test } from "vitest";
import { drawCutterFile } from "../../src/cutter/draw-cutter-file.js";
import { drawLayout } from "../../src/drawing/draw-layout.js";
import { type Example, examples } from "../plans/examples.js";
import { attributeOf, byId, numberOf, readStrictly } from "../read-svg.js";

/** Ten pixels a millimetre. */
const DPI = 254;

/** Draws with a renderer that is no browser, and tells the dark stretch of a row of pixels (ends in millimetres). */
function darkStretch(svg: string, y: number, from: number, to: number): readonly [number, number] {
  const image = new Resvg(svg, {
    dpi: DPI,
    background: "#ffffff",
    font: { loadSystemFonts: false },
  }).render();
  // Each look at the image's pixels copies them all.
  const { pixels } = image;
  const row = Math.round(y * 10) * image.width;
  const dark: number[] = [];
  for (let x = Math.max(0, Math.round(from * 10)); x < Math.min(image.width, to * 10); x += 1) {
    if ((pixels[4 * (row + x)] ?? 255) < 200) dark.push(x);
  }
  return [Math.min(...dark) / 10, (Math.max(...dark) + 1) / 10];
}

describe("another renderer than a browser (resvg)", () => {
  const example = examples.find(({ name }) => name === "tiny-sheet") as Example;

  test("takes the page for its size and paints the ruler of a printable sheet 100 mm long", () => {
    const svg = drawLayout(example.problem, example.packing, 0);
    const root = readStrictly(svg);
    const { width, height } = new Resvg(svg, { dpi: DPI });
    expect(width).toBeCloseTo(Number.parseFloat(attributeOf(root, "width")) * 10, 0);
    expect(height).toBeCloseTo(Number.parseFloat(attributeOf(root, "height")) * 10, 0);
    const ruler = byId(root, "ruler-100-mm");
    const [left, right] = [numberOf(ruler, "x1"), numberOf(ruler, "x2")];
    const [start, end] = darkStretch(svg, numberOf(ruler, "y1"), left - 5, right + 5);
    expect(Math.abs(start - left)).toBeLessThan(0.2);
    expect(Math.abs(end - start - 100)).toBeLessThan(0.3);
  });

  test.each(["mm", "1/96 in", "1/72 in"] as const)(
    "paints the ruler of a cutter file in %s 100 mm long",
    (userUnit) => {
      const svg = drawCutterFile(example.problem, example.packing, 0, { userUnit, lineWidth: 0.2 });
      const perMillimetre = { mm: 1, "1/96 in": 96 / 25.4, "1/72 in": 72 / 25.4 }[userUnit];
      const check = byId(readStrictly(svg), "check").children.find(({ name }) => name === "path");
      const [, x1 = 0, y = 0] =
        attributeOf(check ?? { attributes: {} }, "d")
          .match(/^M([\d.]+) ([\d.]+)L/)
          ?.map(Number) ?? [];
      const left = x1 / perMillimetre;
      const [start, end] = darkStretch(svg, y / perMillimetre, left - 3, left + 102);
      expect(Math.abs(start - left)).toBeLessThan(0.2);
      expect(Math.abs(end - start - 100)).toBeLessThan(0.3);
    },
  );
});
