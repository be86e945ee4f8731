import { TICKS_PER_MM } from "@sheetwright/measure";
import type { Rectangle } from "@sheetwright/packing";
import type { LayoutMarks } from "@sheetwright/planner";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CutterFileOptions, drawCutterFile } from "../../src/cutter/draw-cutter-file.js";
import { type Box, boxesOverlap, segmentCrossesBox } from "../../src/drawing/box.js";
import { toMillimetres } from "../../src/drawing/to-millimetres.js";
import { inch, kind, piece, plan, split } from "../plans/build.js";
import { type ExpectedScore, expectedScores, expectedSlits, laidOutOf } from "../plans/expected-scores.js";
import { type MarkedPlan, randomMarkedPlan } from "../plans/random-marks.js";
import { attributeOf, type ReadElement, readStrictly } from "../read-svg.js";
import { expectCutterRules, type Point, pathsOf, subpathsOf } from "./cutter-paths.js";

const folded: MarkedPlan = {
  ...plan(
    [kind("a", inch(4), inch(3), "1a base"), kind("b", inch(2), inch(3), "1b mat")],
    [{ id: "s", name: "Cream", width: inch(6), height: inch(3) }],
    [
      {
        sheet: "s",
        run: 1,
        tree: split("x", inch(6), [
          [inch(4), piece({ kind: "a" })],
          [inch(2), piece({ kind: "b" })],
        ]),
      },
    ],
  ),
  marks: {
    sheets: {},
    forms: {
      a: [{ scores: [{ along: "width", at: inch(2) }], topOn: [], backOn: [] }],
      b: [{ scores: [], topOn: ["s"], backOn: [] }],
    },
  },
};

function draw({ problem, packing, marks }: MarkedPlan, options: CutterFileOptions = {}): ReadElement {
  return readStrictly(drawCutterFile(problem, packing, 0, { marks, ...options }));
}

function groupsOf(root: ReadElement): readonly string[] {
  return root.children.filter(({ name }) => name === "g").map((group) => attributeOf(group, "id"));
}

describe("scores in a cutter file", () => {
  test("have a group and a colour of their own, before the cuts and after the labels", () => {
    const root = draw(folded);
    expect(groupsOf(root)).toEqual(["mark", "score", "cut", "check"]);
    // Okabe & Ito, Color Universal Design (2008): bluish green 0 158 115.
    expect(attributeOf(pathsOf(root, "score")[0] as ReadElement, "stroke")).toBe("#009E73");
    const red = draw(folded, { colours: { score: "red" }, operations: ["score"] });
    expect(groupsOf(red)).toEqual(["score"]);
    expect(attributeOf(pathsOf(red, "score")[0] as ReadElement, "stroke")).toBe("red");
  });

  test("are dashes as strokes of their own that begin and end at the edges of the piece", () => {
    const [path] = pathsOf(draw(folded), "score");
    const dashes = subpathsOf(path as ReadElement);
    // 76.2 mm: (76.2 + 1) / (2 + 1) is 26 dashes to the nearest.
    expect(dashes).toHaveLength(26);
    expect(dashes.every(({ points, closed }) => points.length === 2 && !closed)).toBe(true);
    expect(dashes.flatMap(({ points }) => points.map(([x]) => x)).every((x) => x === 50.8)).toBe(true);
    const ys = dashes.flatMap(({ points }) => points.map(([, y]) => y));
    expect([ys[0], ys.at(-1)]).toEqual([0, 76.2]);
    expect(ys).toEqual([...ys].sort((a, b) => a - b));
  });

  test("are whole lines when asked", () => {
    const [path] = pathsOf(draw(folded, { scores: "solid" }), "score");
    expect(attributeOf(path as ReadElement, "d")).toBe("M50.8 0L50.8 76.2");
    expect(() => draw(folded, { scores: "dotted" as "solid" })).toThrow(
      'scores: expected one of dashed, solid; found "dotted".',
    );
  });

  test("have no group where no piece has any, and a bare layout is written as ever", () => {
    const { problem, packing } = folded;
    expect(groupsOf(draw({ problem, packing, marks: { sheets: {}, forms: {} } }))).toEqual([
      "mark",
      "cut",
      "check",
    ]);
    expect(drawCutterFile(problem, packing, 0, { marks: { sheets: {}, forms: {} } })).toBe(
      drawCutterFile(problem, packing, 0),
    );
    expect(groupsOf(readStrictly(drawCutterFile(problem, packing, 0, { operations: ["score"] })))).toEqual(
      [],
    );
  });

  test("have a group of their own on the inside of a fold, in the same colour", () => {
    const scores = (["mountain", "valley", "both"] as const).map((folds, i) => ({
      along: "width" as const,
      at: inch(i + 1),
      folds,
    }));
    const forms = { ...folded.marks.forms, a: [{ scores, topOn: [], backOn: [] }] };
    const root = draw(
      { ...folded, marks: { sheets: {}, forms } },
      { scores: "solid", colours: { score: "red" } },
    );
    expect(groupsOf(root)).toEqual(["mark", "score", "score-inside", "cut", "check"]);
    expect(pathsOf(root, "score-inside").map((path) => attributeOf(path, "d"))).toEqual([
      "M50.8 0L50.8 76.2",
    ]);
    expect(pathsOf(root, "score")).toHaveLength(2);
    expect(attributeOf(pathsOf(root, "score-inside")[0] as ReadElement, "stroke")).toBe("red");
    const cuts = draw({ ...folded, marks: { sheets: {}, forms } }, { operations: ["cut"] });
    expect(groupsOf(cuts)).toEqual(["cut"]);
  });

  test("are followed by slits, the first of the cuts", () => {
    const slits = [1, 2].map((at) => ({ along: "width" as const, at: inch(at), from: inch(1), to: inch(3) }));
    const forms = { ...folded.marks.forms, a: [{ scores: [], topOn: [], backOn: [], slits }] };
    const root = draw({ ...folded, marks: { sheets: {}, forms } });
    expect(groupsOf(root)).toEqual(["mark", "cut", "check"]);
    const written = pathsOf(root, "cut").map((path) => attributeOf(path, "d"));
    expect(written).toHaveLength(pathsOf(draw(folded), "cut").length + 2);
    expect(written.slice(0, 2)).toEqual(["M25.4 25.4L76.2 25.4", "M76.2 50.8L25.4 50.8"]);
  });

  test("slits lie where they should, for every plan", () => {
    fc.assert(
      fc.property(randomMarkedPlan(), (random) => {
        const bare = Object.fromEntries(
          Object.entries(random.marks.forms).map(([id, forms]) => [
            id,
            forms.map(({ slits: _, ...form }) => form),
          ]),
        );
        const cuts = (marks: LayoutMarks) =>
          pathsOf(draw({ ...random, marks }, { operations: ["cut"] }), "cut").map((path) => subpathsOf(path));
        const all = cuts(random.marks);
        const without = cuts({ ...random.marks, forms: bare });
        const found = all.slice(0, all.length - without.length);
        expect(all.slice(found.length)).toEqual(without);
        const round = (ticks: number) => Math.round((ticks / TICKS_PER_MM) * 1000) / 1000;
        const expected = expectedSlits(random)
          .map(({ x1, y1, x2, y2 }) => [`${round(x1)},${round(y1)}`, `${round(x2)},${round(y2)}`])
          .filter(([start, end]) => start !== end);
        const ends = found.map((strokes) => strokes.flatMap(({ points }) => points.map(String)));
        const inOrder = (lines: readonly (readonly string[])[]) =>
          lines.map((line) => [...line].sort().join(" ")).sort();
        expect(inOrder(ends)).toEqual(inOrder(expected as string[][]));
      }),
    );
  });

  test("labels keep clear of them, and tops are triangles drawn with the labels", () => {
    const labels = pathsOf(draw(folded), "mark").map(subpathsOf);
    const spans = labels.map((strokes) => {
      const xs = strokes.flatMap(({ points }) => points.map(([x]) => x));
      return [Math.min(...xs), Math.max(...xs)] as const;
    });
    expect(spans.every(([from, to]) => to < 50.8 || from > 50.8)).toBe(true);
    const triangles = labels.filter((strokes) => strokes.length === 1 && strokes[0]?.points.length === 4);
    expect(triangles).toHaveLength(1);
    const [[tip, , , back] = []] = triangles.map(([stroke]) => stroke?.points);
    expect(back).toEqual(tip);
    expect(tip?.[0]).toBe(127);
    expect(tip?.[1]).toBeLessThan(1);
  });

  test("a piece that shows its printed back says so on its label where there is room", () => {
    const marks: LayoutMarks = {
      sheets: {},
      forms: { a: [{ scores: [], topOn: [], backOn: ["s"] }], b: [{ scores: [], topOn: [], backOn: [] }] },
    };
    const named = plan(
      [kind("a", inch(4), inch(3), "1a base (back up)"), ...folded.problem.kinds.slice(1)],
      folded.problem.sheets,
      folded.packing.layouts,
    );
    expect(pathsOf(draw({ ...folded, marks }), "mark").length).toBe(2);
    const strokes = (root: ReadElement) => pathsOf(root, "mark").map((path) => subpathsOf(path).length);
    expect(strokes(draw({ ...folded, marks }))).toEqual(
      strokes(readStrictly(drawCutterFile(named.problem, named.packing, 0))),
    );
  });

  test("keep the rules of cutter files, and begin and end where they should, for every plan", () => {
    fc.assert(
      fc.property(
        randomMarkedPlan({ windows: true }),
        fc.constantFrom("dashed" as const, "solid" as const),
        (random, scores) => {
          const root = draw(random, { scores });
          expectCutterRules(root);
          const written = scorePathsOf(root).map((strokes) => {
            const ends = strokes.flatMap(({ points }) => points);
            return [ends[0], ends.at(-1)].map((end) => end?.join(" ")).sort();
          });
          const { pieces } = laidOutOf(random);
          const expected = expectedScores(random).flatMap((score) =>
            offWindow(score, pieces[score.piece]?.window ?? null),
          );
          const ends = expected.map(({ x1, y1, x2, y2 }) =>
            [
              [x1, y1],
              [x2, y2],
            ]
              .map((end) => end.map((ticks) => Math.round((ticks / TICKS_PER_MM) * 1000) / 1000).join(" "))
              .sort(),
          );
          expect(written.map(String).sort()).toEqual(ends.map(String).sort());
        },
      ),
    );
  });

  test("run through no label and no top; these stay in their pieces and off windows, for every plan", () => {
    fc.assert(
      fc.property(randomMarkedPlan({ windows: true }), (random) => {
        const root = draw(random, { scores: "solid", operations: ["mark", "score"] });
        const scores = scorePathsOf(root)
          .flat()
          .map(({ points }) => points as readonly [Point, Point]);
        const pieces = laidOutOf(random).pieces.map((placed) => ({
          box: toMillimetres(placed),
          hole: placed.window === null ? null : toMillimetres(placed.window),
        }));
        for (const path of pathsOf(root, "mark")) {
          const box = boxOf(subpathsOf(path).flatMap(({ points }) => points));
          const crossed = scores.filter(([[x1, y1], [x2, y2]]) => segmentCrossesBox(x1, y1, x2, y2, box));
          expect(crossed).toEqual([]);
          const home = pieces.some(
            (placed) =>
              contains(placed.box, box) && (placed.hole === null || !boxesOverlap(placed.hole, box)),
          );
          expect(home).toBe(true);
        }
      }),
    );
  });
});

function scorePathsOf(root: ReadElement) {
  return ["score", "score-inside"].flatMap((group) =>
    groupsOf(root).includes(group) ? pathsOf(root, group).map(subpathsOf) : [],
  );
}

/** The stretches of a score before and after the window of its piece. */
function offWindow(score: ExpectedScore, window: Rectangle | null): readonly ExpectedScore[] {
  if (window === null) return [score];
  const { x1, y1, x2 } = score;
  const [right, bottom] = [window.x + window.width, window.y + window.height];
  if (x1 === x2) {
    if (x1 <= window.x || x1 >= right) return [score];
    return [
      { ...score, y2: window.y },
      { ...score, y1: bottom },
    ];
  }
  if (y1 <= window.y || y1 >= bottom) return [score];
  return [
    { ...score, x2: window.x },
    { ...score, x1: right },
  ];
}

function boxOf(points: readonly Point[]): Box {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

function contains(outer: Box, { x, y, width, height }: Box): boolean {
  return (
    x > outer.x && y > outer.y && x + width < outer.x + outer.width && y + height < outer.y + outer.height
  );
}
