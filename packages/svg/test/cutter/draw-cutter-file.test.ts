import { TICKS_PER_MM } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CutterFileOptions, drawCutterFile } from "../../src/cutter/draw-cutter-file.js";
import { layOut } from "../../src/layout/lay-out.js";
import { inch, kind, type Plan, piece, plan, repeat, split } from "../plans/build.js";
import { type Example, examples } from "../plans/examples.js";
import { randomPlan } from "../plans/random-plan.js";
import {
  attributeOf,
  everyElement,
  numberOf,
  type ReadElement,
  readStrictly,
  readWithSvgson,
} from "../read-svg.js";
import { expectCutterRules, type Point, pathsOf, type Subpath, subpathsOf } from "./cutter-paths.js";

/** Whole thousandths, in which coordinates are written. */
const thousandths = (value: number) => Math.round(value * 1000);

interface Segment {
  /** The line it lies on, upright or level. */
  readonly line: string;
  readonly from: number;
  readonly to: number;
}

function segment([x1, y1]: Point, [x2, y2]: Point): Segment {
  const [a, b, c, d] = [x1, y1, x2, y2].map(thousandths) as [number, number, number, number];
  if (a === c) return { line: `x ${a}`, from: Math.min(b, d), to: Math.max(b, d) };
  if (b === d) return { line: `y ${b}`, from: Math.min(a, c), to: Math.max(a, c) };
  throw new Error(`A cut runs askew: ${[x1, y1, x2, y2].join(" ")}`);
}

function segmentsOf({ points, closed }: Subpath): readonly Segment[] {
  const ends = closed ? [...points.slice(1), points[0] as Point] : points.slice(1);
  return ends.map((end, i) => segment(points[i] as Point, end));
}

function rectangleSegments({ x, y, width, height }: { x: number; y: number; width: number; height: number }) {
  const [left, top, right, bottom] = [x, y, x + width, y + height].map((ticks) => ticks / TICKS_PER_MM) as [
    number,
    number,
    number,
    number,
  ];
  return [
    segment([left, top], [right, top]),
    segment([right, top], [right, bottom]),
    segment([left, bottom], [right, bottom]),
    segment([left, top], [left, bottom]),
  ];
}

/** Stretches of each line, sorted, so that cover and overlap can be told. */
function byLine(segments: readonly Segment[]): ReadonlyMap<string, readonly Segment[]> {
  const lines = new Map<string, Segment[]>();
  for (const found of segments) {
    const others = lines.get(found.line);
    if (others === undefined) lines.set(found.line, [found]);
    else others.push(found);
  }
  for (const list of lines.values()) list.sort((a, b) => a.from - b.from);
  return lines;
}

/** What of `wanted` the sorted stretches leave uncovered. */
function uncovered(wanted: Segment, stretches: readonly Segment[]): number {
  let at = wanted.from;
  let missing = 0;
  for (const { from, to } of stretches) {
    if (to <= at || from >= wanted.to) continue;
    if (from > at) missing += from - at;
    at = Math.max(at, to);
  }
  return missing + Math.max(0, wanted.to - at);
}

function draw({ problem, packing }: Plan, options: CutterFileOptions = {}): ReadElement {
  return readStrictly(drawCutterFile(problem, packing, 0, options));
}

function laidOutOf({ problem, packing }: Plan) {
  const [layout] = packing.layouts;
  const sheet = problem.sheets.find(({ id }) => id === layout?.sheet);
  if (layout === undefined || sheet === undefined) throw new Error("A plan has a layout and its sheet.");
  return layOut(sheet, layout, problem.kerf ?? 0);
}

describe("the examples", () => {
  test.each(examples)(
    "$name: is the committed cutter file, read alike by both parsers",
    async (example: Example) => {
      const { marks } = example;
      const svg = drawCutterFile(example.problem, example.packing, 0, marks === undefined ? {} : { marks });
      await expect(svg).toMatchFileSnapshot(`../examples/${example.name}.cutter.svg`);
      const root = readStrictly(svg);
      expectCutterRules(root);
      const pathsBySvgson = readWithSvgson(svg)
        .children.filter(({ name }) => name === "g")
        .flatMap(({ children }) =>
          children.filter(({ name }) => name === "path").map(({ attributes }) => attributes),
        );
      expect(pathsBySvgson).toEqual(
        everyElement(root)
          .filter(({ name }) => name === "path")
          .map(({ attributes }) => attributes),
      );
    },
  );
});

const grid = plan(
  [kind("a", inch(2), inch(2), "Mat")],
  [{ id: "s", name: "Cream", width: inch(7), height: inch(4) }],
  [
    {
      sheet: "s",
      run: 1,
      tree: split(
        "y",
        inch(4),
        repeat(2, inch(2), split("x", inch(7), repeat(3, inch(2), piece({ kind: "a" })))),
      ),
    },
  ],
);

describe("drawCutterFile", () => {
  test("cuts shared edges once, joined to whole lines, and leaves the sheet's own edges alone", () => {
    const cuts = pathsOf(draw(grid), "cut").map((path) => attributeOf(path, "d"));
    // Three by two pieces on the left of the sheet: the lines between them from the nearest on, then the far side.
    expect(cuts).toEqual([
      "M50.8 0L50.8 101.6",
      "M101.6 101.6L101.6 0",
      "M152.4 50.8L0 50.8",
      "M152.4 0L152.4 101.6",
    ]);
  });

  test("cuts between pieces before it cuts round them", () => {
    const cuts = pathsOf(draw(grid), "cut").map((path) => attributeOf(path, "d"));
    expect(cuts.at(-1)).toMatch(/^M152\.4 /);
  });

  test("gives every piece a closed outline when asked", () => {
    const paths = pathsOf(draw(grid, { edges: "closed" }), "cut");
    expect(paths).toHaveLength(6);
    for (const path of paths) expect(attributeOf(path, "d")).toMatch(/^M[^MZ]+Z$/);
  });

  test("keeps the closed outline of a piece that touches no other and no edge", () => {
    const trim = { left: inch(1), right: inch(1), top: inch(1), bottom: inch(1) };
    const alone = plan(
      [kind("a", inch(2), inch(2))],
      [{ id: "s", width: inch(4), height: inch(4), trim }],
      [{ sheet: "s", run: 1, tree: piece({ kind: "a" }) }],
    );
    const cuts = pathsOf(draw(alone), "cut").map((path) => attributeOf(path, "d"));
    expect(cuts).toEqual(["M25.4 25.4L76.2 25.4L76.2 76.2L25.4 76.2Z"]);
  });

  test("cuts windows first, then what lies in them, then the pieces round them", () => {
    const example = examples.find(({ name }) => name === "window-in-a-piece") as Example;
    for (const edges of ["once", "closed"] as const) {
      const paths = pathsOf(draw(example, { edges }), "cut").flatMap(subpathsOf);
      const window = { left: 25.4, top: 25.4, right: 101.6, bottom: 152.4 };
      const inWindow = paths.map(({ points }) =>
        points.every(
          ([x, y]) => x >= window.left && x <= window.right && y >= window.top && y <= window.bottom,
        ),
      );
      expect(inWindow.lastIndexOf(true)).toBe(inWindow.indexOf(false) - 1);
      expect(paths[0]).toEqual({
        closed: true,
        points: [
          [window.left, window.top],
          [window.left, window.bottom],
          [window.right, window.bottom],
          [window.right, window.top],
        ],
      });
    }
  });

  test("has a group an operation in working order, told by colour as well", () => {
    const root = draw(grid);
    const groups = root.children.filter(({ name }) => name === "g");
    expect(groups.map((group) => attributeOf(group, "id"))).toEqual(["mark", "cut", "check"]);
    // Okabe & Ito, Color Universal Design (2008): blue 0 114 178, black 0 0 0.
    expect(attributeOf(pathsOf(root, "mark")[0] as ReadElement, "stroke")).toBe("#0072B2");
    expect(attributeOf(pathsOf(root, "cut")[0] as ReadElement, "stroke")).toBe("#000000");
  });

  test("takes other colours, another line width and fewer operations", () => {
    const root = draw(grid, { colours: { cut: "red" }, lineWidth: 0.25, operations: ["cut"] });
    expect(root.children.filter(({ name }) => name === "g")).toHaveLength(1);
    for (const path of pathsOf(root, "cut")) {
      expect(attributeOf(path, "stroke")).toBe("red");
      expect(attributeOf(path, "stroke-width")).toBe("0.25");
    }
  });

  test("is exactly the sheet without the check group", () => {
    const root = draw(grid, { operations: ["mark", "cut"] });
    expect(root.attributes).toMatchObject({
      width: "177.8mm",
      height: "101.6mm",
      viewBox: "0 0 177.8 101.6",
    });
  });

  test("has a 100 mm and a 4 in ruler and a 50 mm square below the sheet", () => {
    for (const example of [grid, ...examples]) {
      const root = draw(example);
      const { height } = laidOutOf(example);
      const paths = pathsOf(root, "check").map(subpathsOf);
      for (const [, y] of paths.flat().flatMap(({ points }) => points))
        expect(y).toBeGreaterThan(height / TICKS_PER_MM);
      const [mm, inches, square] = paths;
      const lengthOf = (subpath: Subpath | undefined) => {
        const [[x1] = [0], [x2] = [0]] = subpath?.points ?? [];
        return x2 - x1;
      };
      expect(lengthOf(mm?.[0])).toBeCloseTo(100, 9);
      expect(lengthOf(inches?.[0])).toBeCloseTo(101.6, 9);
      expect(square?.[0]?.closed).toBe(true);
      expect(square?.[0]?.points).toHaveLength(4);
      expect(lengthOf(square?.[0])).toBeCloseTo(50, 9);
    }
  });

  test.each([
    ["1/96 in", 96],
    ["1/72 in", 72],
  ] as const)(
    "writes coordinates in %s for readers that ignore the size of a document",
    (userUnit, perInch) => {
      const root = draw(grid, { userUnit, operations: ["cut"] });
      expect(root.attributes).toMatchObject({
        width: "177.8mm",
        height: "101.6mm",
        viewBox: `0 0 ${7 * perInch} ${4 * perInch}`,
      });
      const xs = pathsOf(root, "cut")
        .flatMap(subpathsOf)
        .flatMap(({ points }) => points.map(([x]) => x));
      expect([...new Set(xs)].sort((a, b) => a - b)).toEqual([0, 2, 4, 6].map((inches) => inches * perInch));
    },
  );

  test("writes labels as strokes inside their pieces: the name, or the number of the printed list", () => {
    const labelled = (name: string) =>
      draw(
        plan(
          [kind("a", inch(2), inch(2), name)],
          [{ id: "s", width: inch(2), height: inch(2) }],
          [{ sheet: "s", run: 1, tree: piece({ kind: "a" }) }],
        ),
      );
    const strokes = (name: string) => attributeOf(pathsOf(labelled(name), "mark")[0] as ReadElement, "d");
    expect(strokes("Étoile")).toBe(strokes("Etoile"));
    expect(strokes("灯籠")).toBe(strokes("1"));
    expect(strokes("Straßenlaternenbeleuchtungsanlagenwärterhaus")).toBe(strokes("1"));
  });

  test("refuses options without meaning", () => {
    const { problem, packing } = grid;
    const withOptions = (options: object) => () =>
      drawCutterFile(problem, packing, 0, options as CutterFileOptions);
    expect(withOptions({ userUnit: "px" })).toThrow(
      'userUnit: expected one of mm, 1/96 in, 1/72 in; found "px".',
    );
    expect(withOptions({ edges: "both" })).toThrow(RangeError);
    expect(withOptions({ operations: ["engrave"] })).toThrow(RangeError);
    expect(withOptions({ lineWidth: 0 })).toThrow("lineWidth");
    expect(() => drawCutterFile(problem, packing, 1)).toThrow("layouts[1]");
  });

  test("keeps the rules of cutter files for every plan", () => {
    fc.assert(
      fc.property(
        randomPlan({ windows: true }),
        fc.constantFrom("once", "closed"),
        fc.constantFrom("mm", "1/96 in", "1/72 in"),
        (random, edges, userUnit) => {
          expectCutterRules(draw(random, { edges: edges as "once", userUnit: userUnit as "mm" }));
        },
      ),
    );
  });

  test("cuts every edge of every piece but the sheet's own, each exactly once, and nothing else", () => {
    fc.assert(
      fc.property(randomPlan({ windows: true }), (random) => {
        const laidOut = laidOutOf(random);
        const cut = pathsOf(draw(random, { operations: ["cut"] }), "cut")
          .flatMap(subpathsOf)
          .flatMap(segmentsOf);
        const lines = byLine(cut);
        for (const stretches of lines.values()) {
          stretches.slice(1).forEach(({ from }, i) => {
            expect(from).toBeGreaterThanOrEqual((stretches[i] as Segment).to);
          });
        }
        const sheetEdges = rectangleSegments({ x: 0, y: 0, width: laidOut.width, height: laidOut.height });
        const own = new Set(sheetEdges.map(({ line }) => line));
        for (const { line } of cut) expect(own.has(line)).toBe(false);

        const wanted = [...laidOut.pieces, ...laidOut.windows].flatMap(rectangleSegments);
        const missing = wanted
          .filter(({ line }) => !own.has(line))
          .map((edge) => uncovered(edge, lines.get(edge.line) ?? []));
        expect(missing.filter((length) => length > 0)).toEqual([]);
        const wantedLines = byLine(wanted);
        const extra = cut.map((edge) => uncovered(edge, wantedLines.get(edge.line) ?? []));
        expect(extra.filter((length) => length > 0)).toEqual([]);
      }),
    );
  });

  test("closes the outline of every piece and window when asked, and nothing else", () => {
    fc.assert(
      fc.property(randomPlan({ windows: true }), (random) => {
        const laidOut = laidOutOf(random);
        const paths = pathsOf(draw(random, { operations: ["cut"], edges: "closed" }), "cut").flatMap(
          subpathsOf,
        );
        expect(paths.every(({ closed, points }) => closed && points.length === 4)).toBe(true);
        const keyOf = (segments: readonly Segment[]) =>
          segments
            .map(({ line, from, to }) => `${line} ${from} ${to}`)
            .sort()
            .join("; ");
        expect(paths.map((path) => keyOf(segmentsOf(path))).sort()).toEqual(
          [...laidOut.pieces, ...laidOut.windows].map((box) => keyOf(rectangleSegments(box))).sort(),
        );
      }),
    );
  });

  test("keeps labels inside their pieces, clear of windows and of each other", () => {
    fc.assert(
      fc.property(randomPlan({ windows: true }), (random) => {
        const laidOut = laidOutOf(random);
        const boxes = laidOut.pieces.map(({ x, y, width, height, window }) => ({
          left: x / TICKS_PER_MM,
          top: y / TICKS_PER_MM,
          right: (x + width) / TICKS_PER_MM,
          bottom: (y + height) / TICKS_PER_MM,
          window,
        }));
        const taken = new Set<number>();
        for (const path of pathsOf(draw(random, { operations: ["mark"] }), "mark")) {
          const points = subpathsOf(path).flatMap((subpath) => subpath.points);
          const home = boxes.findIndex(
            ({ left, top, right, bottom, window }) =>
              points.every(([x, y]) => x > left && x < right && y > top && y < bottom) &&
              !(
                window !== null &&
                points.some(
                  ([x, y]) =>
                    x > window.x / TICKS_PER_MM &&
                    x < (window.x + window.width) / TICKS_PER_MM &&
                    y > window.y / TICKS_PER_MM &&
                    y < (window.y + window.height) / TICKS_PER_MM,
                )
              ),
          );
          expect(home).not.toBe(-1);
          expect(taken.has(home)).toBe(false);
          taken.add(home);
        }
      }),
    );
  });

  test("is written with the line width in the document's units", () => {
    const [path] = pathsOf(draw(grid, { userUnit: "1/72 in", lineWidth: 0.254 }), "cut");
    expect(numberOf(path as ReadElement, "stroke-width")).toBeCloseTo(0.72, 9);
  });
});
