import { millimetres, TICKS_PER_MM } from "@sheetwright/measure";
import type { FormMarks, LayoutMarks } from "@sheetwright/planner";
import { areaOf, boxOf, outlineOf, type Shape } from "@sheetwright/shapes";
import { outlinesOfPath } from "@sheetwright/shapes/svg";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawCutterFile } from "../../src/cutter/draw-cutter-file.js";
import { drawLayout } from "../../src/drawing/draw-layout.js";
import { type DrawnLine, type DrawnPiece, readLayout } from "../../src/reading/read-layout.js";
import { expectCutterRules, pathsOf } from "../cutter/cutter-paths.js";
import { type Plan, piece, plan, split, waste } from "../plans/build.js";
import { dieExamples, shaped } from "../plans/die-examples.js";
import { attributeOf, readStrictly } from "../read-svg.js";
import { exampleShapes } from "../shape/example-shapes.js";
import { expectWellSet } from "./expect-well-set.js";
import { textBoxes } from "./text-boxes.js";

const [example] = dieExamples;

/** The outlines of lines read from a drawing, in ticks. */
function outlinesOf(lines: readonly DrawnLine[]) {
  const d = lines
    .map(({ x, y, steps }) =>
      [
        `M${x} ${y}`,
        ...steps.map(({ x, y, handles }) =>
          handles === null ? `L${x} ${y}` : `C${handles.join(" ")} ${x} ${y}`,
        ),
        "Z",
      ].join(""),
    )
    .join("");
  return outlinesOfPath(d, { unitsPerInch: 25.4, fillRule: "evenodd" });
}

function middleOf({ x, y, width, height }: Pick<DrawnPiece, "x" | "y" | "width" | "height">) {
  return [x + width / 2, y + height / 2] as const;
}

/** One die blank on a sheet, upright or turned. */
function single(
  marks: FormMarks,
  blank: { width: number; height: number },
  turned: boolean,
): Plan & { marks: LayoutMarks } {
  const [width, height] = turned ? [blank.height, blank.width] : [blank.width, blank.height];
  const sheet = { id: "s", name: "Cream", width: width + 16000, height: height + 16000 };
  const tree = split(
    "y",
    sheet.height,
    [[height, split("x", sheet.width, [[width, piece({ kind: "a", turned })]], waste)]],
    waste,
  );
  const kinds = [{ id: "a", name: "1b moon", quantity: 1, forms: [blank] }];
  return {
    ...plan(kinds, [sheet], [{ sheet: "s", run: 1, tree }]),
    marks: { sheets: {}, forms: { a: [marks] } },
  };
}

function readBack({ problem, packing, marks }: Plan & { readonly marks: LayoutMarks }) {
  return readLayout(readStrictly(drawLayout(problem, packing, 0, { marks })));
}

describe("a die blank on a sheet", () => {
  test("shows the true shape in its middle, turned as the blank is, for every shape", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...exampleShapes),
        fc.boolean(),
        fc.boolean(),
        fc.nat(millimetres(20)),
        fc.nat(millimetres(20)),
        ({ shape }, byDie, turned, more, higher) => {
          const outline = outlineOf(shape);
          const box = boxOf(outline);
          const blank = { width: box.width + more, height: box.height + higher };
          const drawn = readBack(single(shaped(shape, byDie ? { die: "moon" } : {}), blank, turned));
          const [found] = drawn.shapes;
          const [on] = drawn.pieces;
          if (found === undefined || on === undefined || drawn.shapes.length > 1)
            throw new Error("One is drawn.");
          expect(found).toMatchObject({ piece: 0, by: byDie ? "die" : "machine" });
          const { outlines, box: drawnBox } = outlinesOf(found.lines);
          const area = outlines.reduce((sum, one) => sum + areaOf(one), 0);
          expect(Math.abs(area / areaOf(outline) - 1)).toBeLessThan(2e-5);
          const [x, y] = middleOf(drawnBox);
          const [middleX, middleY] = middleOf(on);
          expect(Math.abs(x / TICKS_PER_MM - middleX)).toBeLessThan(0.005);
          expect(Math.abs(y / TICKS_PER_MM - middleY)).toBeLessThan(0.005);
          const sides = turned ? [box.height, box.width] : [box.width, box.height];
          expect(Math.abs(drawnBox.width - (sides[0] ?? 0))).toBeLessThan(5);
          expect(Math.abs(drawnBox.height - (sides[1] ?? 0))).toBeLessThan(5);
        },
      ),
      { numRuns: 40 },
    );
  });

  test("turns a quarter to the right: what is on the left of the shape comes to the top", () => {
    const left: Shape = { shape: "banner", width: millimetres(60), height: millimetres(20), tail: "left" };
    const blank = { width: millimetres(70), height: millimetres(30) };
    const { shapes } = readBack(single(shaped(left, { die: "flag" }), blank, true));
    const points = (shapes[0]?.lines[0]?.steps ?? []).map(({ x, y }) => [x, y]);
    // The notch, 10 mm deep, lies below the upper edge, in the middle of the piece.
    expect(points).toContainEqual([15, 15]);
    expect(Math.min(...points.map(([, y = 0]) => y))).toBe(5);
  });

  test("shows all shapes of a strip where the marks say, upright or turned", () => {
    const cut = { width: millimetres(20), height: millimetres(10) };
    const own = shaped({ shape: "rectangle", ...cut }, { die: "flag", bottomOff: millimetres(2) });
    const shapesAt = [5, 28, 51].map((x) => ({ x: millimetres(x), y: millimetres(5) }));
    const strip = { width: millimetres(76), height: millimetres(20) };
    for (const turned of [false, true]) {
      const { shapes, straightCuts } = readBack(single({ ...own, shapesAt }, strip, turned));
      const boxes = (shapes[0]?.lines ?? []).map(({ steps }) => {
        const [xs, ys] = [steps.map(({ x }) => x), steps.map(({ y }) => y)];
        return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
      });
      // A quarter to the right: what is 5 mm from the left is as far from the top.
      const expected = [5, 28, 51].map((at) => (turned ? [5, at, 15, at + 20] : [at, 5, at + 20, 15]));
      expect(boxes).toEqual(expected);
      expect(straightCuts).toHaveLength(3);
    }
  });

  test("refuses shapes that do not lie in their strip", () => {
    const own = shaped({ shape: "circle", diameter: millimetres(10) }, { die: "disc" });
    const strip = { width: millimetres(30), height: millimetres(12) };
    const wrong = {
      ...own,
      shapesAt: [
        { x: millimetres(1), y: 0 },
        { x: millimetres(21), y: 0 },
      ],
    };
    expect(() => readBack(single(wrong, strip, false))).toThrow(/shapesAt\[1\]: expected whole ticks/);
  });

  test("shows stitches, and where it is cut straight afterwards, in the words of its list as well", () => {
    const { problem, packing, marks } = example;
    const svg = drawLayout(problem, packing, 0, { marks });
    const root = readStrictly(svg);
    expectWellSet(root);
    const drawn = readLayout(root);
    expect(drawn.shapes.map(({ by }) => by)).toEqual([
      "die",
      "die",
      "machine",
      "die",
      "die",
      "die",
      "machine",
    ]);
    const blanks = drawn.stitches.map(({ piece, marks: made, lines }) => [
      piece,
      made,
      lines.every(({ closed }) => closed),
    ]);
    expect(blanks.map(([, made]) => made)).toEqual(["dashes", "dashes", "holes"]);
    expect(blanks.map(([, , closed]) => closed)).toEqual([false, false, true]);
    expect(drawn.straightCuts.length).toBe(2);
    const [upright, level] = drawn.straightCuts;
    // 1 in off the bottom of a disc of 2 1/2 in; turned, its bottom lies to the left.
    for (const cut of [upright, level]) {
      const on = drawn.pieces[cut?.piece ?? -1] as DrawnPiece;
      const isUpright = cut?.x1 === cut?.x2;
      expect(isUpright ? (cut?.x1 ?? 0) - on.x : on.y + on.height - (cut?.y1 ?? 0)).toBeCloseTo(
        (0.25 + 1) * 25.4,
        2,
      );
    }
    expect([upright, level].map((cut) => cut?.x1 === cut?.x2)).toEqual([true, false]);
    const words = textBoxes(root)
      .map(({ text }) => text)
      .join(" ");
    expect(words).toContain("cut by the die disc, 2 1/2 in across; then cut straight, 1 in off the bottom");
    expect(words).toContain("what the die cuts, in the middle of its");
  });

  test("keeps its label off the lines of straight cuts", () => {
    const { problem, packing, marks } = example;
    const root = readStrictly(drawLayout(problem, packing, 0, { marks }));
    const { straightCuts } = readLayout(root);
    const sheet = root.children
      .flatMap(({ children }) => children)
      .find((found) => attributeOf(found, "id") === "sheet-1");
    const [left, top] = [Number(sheet?.attributes.x), Number(sheet?.attributes.y)];
    for (const text of textBoxes(root))
      for (const { x1, y1, x2, y2 } of straightCuts) {
        const crosses =
          text.x < left + x2 &&
          left + x1 < text.x + text.width &&
          text.y < top + y2 &&
          top + y1 < text.y + text.height;
        expect(crosses, text.text).toBe(false);
      }
  });

  test("draws nothing where only the size of the die is known, or where pieces of a place differ", () => {
    const { shapes, pieces } = readBack(example);
    const numbers = pieces.map(({ shares }) => shares[0]?.kind);
    expect(shapes.some(({ piece }) => numbers[piece] === "1g")).toBe(false);
    const blank = { width: millimetres(60), height: millimetres(60) };
    const sheet = { id: "s", name: "Cream", ...blank };
    const disc = shaped({ shape: "circle", diameter: millimetres(50) }, { die: "disc" });
    const star = shaped({ shape: "star", diameter: millimetres(50) }, { die: "star" });
    const kinds = ["a", "b"].map((id) => ({ id, name: id, quantity: 1, forms: [blank] }));
    const shared = plan(
      kinds,
      [sheet],
      [{ sheet: "s", run: 2, tree: piece({ kind: "a", count: 1 }, { kind: "b", count: 1 }) }],
    );
    const of = (b: FormMarks) => readBack({ ...shared, marks: { sheets: {}, forms: { a: [disc], b: [b] } } });
    expect(of(star).shapes).toEqual([]);
    expect(of(disc).shapes.length).toBe(1);
  });
});

describe("a shape in a cutter file", () => {
  const cutterFile = (marks: FormMarks, edges: "once" | "closed" = "once") => {
    const blank = { width: millimetres(70), height: millimetres(70) };
    const { problem, packing, marks: all } = single(marks, blank, false);
    const root = readStrictly(drawCutterFile(problem, packing, 0, { marks: all, edges }));
    expectCutterRules(root);
    return root;
  };

  test("is cut along its outline by a machine, after its stitches and its windows, and without its blank", () => {
    const ring: Shape = {
      shape: "frame",
      outer: { shape: "circle", diameter: millimetres(60) },
      window: { shape: "star", diameter: millimetres(30) },
    };
    for (const edges of ["once", "closed"] as const) {
      const root = cutterFile(shaped(ring, { stitched: {} }), edges);
      const ids = root.children.map((group) => attributeOf(group, "id")).filter((id) => id !== "");
      expect(ids).toEqual(["mark", "stitch", "cut", "check"]);
      const cuts = pathsOf(root, "cut").map((path) => attributeOf(path, "d"));
      expect(cuts.length).toBe(2);
      // The star has corners alone, the circle curves alone.
      expect(cuts[0]).toMatch(/^M[^C]*Z$/);
      expect(cuts[1]).toMatch(/^M[^L]*Z$/);
      expect(areaOfCut(cuts.join(""))).toBeCloseTo(areaOf(outlineOf(ring)) / TICKS_PER_MM ** 2, 1);
      expect(pathsOf(root, "stitch").length).toBeGreaterThan(30);
    }
  });

  test("is its blank alone where a die cuts it, and so are the stitches that the die presses", () => {
    const moon: Shape = { shape: "circle", diameter: millimetres(60) };
    const root = cutterFile(shaped(moon, { die: "moon", stitched: {} }), "closed");
    expect(pathsOf(root, "cut").map((path) => attributeOf(path, "d"))).toEqual(["M0 0L70 0L70 70L0 70Z"]);
    expect(root.children.some((group) => attributeOf(group, "id") === "stitch")).toBe(false);
  });

  function areaOfCut(d: string): number {
    const { outlines } = outlinesOfPath(d, { unitsPerInch: 25.4 });
    return outlines.reduce((sum, outline) => sum + areaOf(outline), 0) / TICKS_PER_MM ** 2;
  }
});
