import { Resvg } from "@resvg/resvg-js";
import { inches, millimetres, TICKS_PER_MM } from "@sheetwright/measure";
import { arcOf, areaOf, boxOf, type Outline, outlineOf, ringsOf, spansOf, stitch } from "@sheetwright/shapes";
import { readOutlines } from "@sheetwright/shapes/svg";
import { describe, expect, test } from "vitest";
import { drawShape } from "../../src/shape/draw-shape.js";
import { arcCurves } from "../../src/writer/path-data.js";
import { expectCutterRules, pathsOf } from "../cutter/cutter-paths.js";
import { attributeOf, readStrictly } from "../read-svg.js";
import { exampleShapes } from "./example-shapes.js";

const total = (outlines: readonly Outline[]) => outlines.reduce((sum, outline) => sum + areaOf(outline), 0);
const titleOf = (svg: string) => readStrictly(svg).children[0]?.text;

describe("A shape as a file", () => {
  test.each(exampleShapes)("reads back to the area and the box of the $name", ({ shape }) => {
    const outline = outlineOf(shape);
    const margin = millimetres(3);
    for (const arcs of ["curves", "lines"] as const) {
      const { outlines, box } = readOutlines(drawShape(outline, { arcs, margin }));
      const { width, height } = boxOf(outline);
      for (const [found, expected] of [
        [box.x, margin],
        [box.y, margin],
        [box.width, width],
        [box.height, height],
      ] as const)
        expect(Math.abs(found - expected)).toBeLessThanOrEqual(arcs === "curves" ? 4 : 70);
      expect(outlines.length).toBe(1);
      expect(outlines[0]?.windows.length).toBe(outline.windows.length);
      const allowed = arcs === "curves" ? 2e-5 : 2e-3;
      expect(Math.abs(total(outlines) / areaOf(outline) - 1)).toBeLessThan(allowed);
    }
  });

  test.each(exampleShapes)("covers the pixels of the $name in another renderer (resvg)", ({ shape }) => {
    const outline = outlineOf(shape);
    const root = readStrictly(drawShape(outline));
    const d = pathsOf(root, "cut")
      .map((path) => attributeOf(path, "d"))
      .join("");
    const page = `viewBox="${attributeOf(root, "viewBox")}" width="${attributeOf(root, "width")}" height="${attributeOf(root, "height")}"`;
    // By the rule of directions: a window that ran the same way as its outline would be filled.
    const filled = `<svg xmlns="http://www.w3.org/2000/svg" ${page}><path d="${d}" fill="#000" fill-rule="nonzero"/></svg>`;
    const { pixels } = new Resvg(filled, { dpi: 254, background: "#fff" }).render();
    let covered = 0;
    for (let i = 0; i < pixels.length; i += 4) covered += 1 - (pixels[i] as number) / 255;
    const expected = areaOf(outline) / TICKS_PER_MM ** 2;
    expect(Math.abs(covered / 100 / expected - 1)).toBeLessThan(0.005);
  });

  test("has a page of the shape with its margin, in the user units that are asked for", () => {
    const disc = outlineOf({ shape: "circle", diameter: inches(2) });
    for (const [userUnit, viewBox] of [
      ["mm", "0 0 60.8 60.8"],
      ["1/96 in", "0 0 229.795 229.795"],
      ["1/72 in", "0 0 172.346 172.346"],
    ] as const) {
      const svg = drawShape(disc, { margin: millimetres(5), userUnit, title: "A disc" });
      const root = readStrictly(svg);
      expectCutterRules(root);
      expect(attributeOf(root, "width")).toBe("60.8mm");
      expect(attributeOf(root, "viewBox")).toBe(viewBox);
      expect(titleOf(svg)).toBe("A disc");
      const { box } = readOutlines(svg);
      expect(Math.abs(box.width - inches(2))).toBeLessThanOrEqual(3);
    }
  });

  test("has the stitches before the cut, each dash a line and each hole a circle", () => {
    const square = outlineOf({ shape: "square", side: inches(2) });
    const { dashes } = stitch(square);
    const { holes } = stitch(square, { marks: "holes" });
    const root = readStrictly(drawShape(square, { stitches: { dashes, holes } }));
    expectCutterRules(root);
    expect(root.children.map(({ attributes }) => attributes.id)).toEqual([undefined, "stitch", "cut"]);
    const stitches = pathsOf(root, "stitch").map((path) => attributeOf(path, "d"));
    expect(stitches.filter((d) => !d.endsWith("Z")).length).toBe(dashes.length);
    expect(stitches.filter((d) => d.endsWith("Z")).length).toBe(holes.length);
    expect(pathsOf(root, "stitch").every((path) => attributeOf(path, "stroke") === "#D55E00")).toBe(true);
    // Read as cut lines, the holes are windows and the dashes cut nothing free.
    const svg = drawShape(square, { stitches: { dashes, holes } });
    const { outlines } = readOutlines(svg, { leaveOut: ["open-paths"] });
    expect(outlines[0]?.windows.length).toBe(holes.length);
  });

  test("cuts windows before what they are in, and keeps parts in their places", () => {
    const ring = outlineOf({
      shape: "frame",
      outer: { shape: "circle", diameter: 81280 },
      window: { shape: "circle", diameter: 60960 },
    });
    const cut = pathsOf(readStrictly(drawShape([ring])), "cut");
    const widths = cut.map((path) => {
      const xs = attributeOf(path, "d")
        .split(/[MLCZ ]/)
        .filter((word) => word !== "")
        .filter((_, i) => i % 2 === 0)
        .map(Number);
      return Math.round(Math.max(...xs) - Math.min(...xs));
    });
    expect(widths).toEqual([38, 51]);
  });

  test("has rulers and a square below the shape where they are asked for", () => {
    const root = readStrictly(drawShape(outlineOf({ shape: "star", diameter: inches(3) }), { check: true }));
    expectCutterRules(root);
    expect(pathsOf(root, "check").length).toBe(6);
  });

  test("refuses what makes no sense", () => {
    const disc = outlineOf({ shape: "circle", diameter: inches(2) });
    expect(() => drawShape([])).toThrow(RangeError);
    expect(() => drawShape(disc, { margin: -1 })).toThrow("margin: expected whole ticks from 0");
    expect(() => drawShape(disc, { lineWidth: 0 })).toThrow("lineWidth");
    expect(() => drawShape(disc, { tolerance: 0, arcs: "lines" })).toThrow(RangeError);
  });
});

describe("The curves of an arc", () => {
  test.each(exampleShapes)("keep within 0.0003 mm of the arcs of the $name", ({ shape }) => {
    let most = 0;
    for (const ring of ringsOf(outlineOf(shape)))
      for (const span of spansOf(ring)) {
        const arc = arcOf(span);
        if (arc === null || span.through === null) continue;
        let from = span.from;
        for (const { first, second, to } of arcCurves(span.from, span.through, span.to)) {
          for (let i = 0; i <= 20; i += 1) {
            const t = i / 20;
            const [a, b, c, d] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3] as const;
            const x = a * from.x + b * first.x + c * second.x + d * to.x - arc.centre.x;
            const y = a * from.y + b * first.y + c * second.y + d * to.y - arc.centre.y;
            most = Math.max(most, Math.abs(Math.hypot(x, y) - arc.radius));
          }
          from = to;
        }
        expect(from).toEqual(span.to);
      }
    expect(most).toBeLessThan(0.49);
  });

  test("are those of more than half a circle too", () => {
    const curves = arcCurves({ x: 0, y: 0 }, { x: 1000, y: -1990 }, { x: 2000, y: 0 });
    expect(Math.max(...curves.map(({ to }) => -to.y))).toBeGreaterThan(1900);
  });
});
