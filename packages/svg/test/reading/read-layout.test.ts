import type { LayoutMarks } from "@sheetwright/planner";
import { describe, expect, test } from "vitest";
import { drawLayout } from "../../src/drawing/draw-layout.js";
import { LayoutReadError } from "../../src/reading/layout-read-error.js";
import { readLayout } from "../../src/reading/read-layout.js";
import { inch, kind, piece, plan, split } from "../plans/build.js";
import { type Example, examples } from "../plans/examples.js";
import { plainCutOrder } from "../plans/plain-cut-order.js";
import { readStrictly, readWithSvgson } from "../read-svg.js";

const shared = plan(
  [kind('a "&" <b>', inch(2), inch(3)), kind("c", inch(3), inch(2))],
  [{ id: "s & t", width: inch(5), height: inch(3), trim: { left: inch(1) } }],
  [
    {
      sheet: "s & t",
      run: 4,
      tree: split("x", inch(4), [
        [inch(2), piece({ kind: 'a "&" <b>', count: 3 }, { kind: "c", turned: true, count: 1 })],
      ]),
    },
  ],
);
const svg = drawLayout(shared.problem, shared.packing, 0, { cuts: plainCutOrder(shared, 0) });

function codeOf(read: () => unknown): unknown {
  try {
    read();
  } catch (error) {
    return error instanceof LayoutReadError ? { code: error.code, path: error.path } : error;
  }
  return "no error";
}

describe("readLayout", () => {
  test("gives back sheet, pieces, offcuts, trims and cuts, measured from the sheet's corner", () => {
    const expected = {
      sheet: { id: "s & t", run: 4, width: 127, height: 76.2, marks: null },
      pieces: [
        {
          x: 25.4,
          y: 0,
          width: 50.8,
          height: 76.2,
          number: 1,
          shares: [
            { kind: 'a "&" <b>', form: 0, turned: false, count: 3 },
            { kind: "c", form: 0, turned: true, count: 1 },
          ],
          backUp: [false, false],
          top: null,
        },
      ],
      offcuts: [{ x: 76.2, y: 0, width: 50.8, height: 76.2 }],
      waste: [],
      trims: [{ x: 0, y: 0, width: 25.4, height: 76.2 }],
      windows: [],
      cuts: [
        { number: 1, x1: 25.4, y1: 0, x2: 25.4, y2: 76.2 },
        { number: 2, x1: 76.2, y1: 0, x2: 76.2, y2: 76.2 },
      ],
      scores: [],
      slits: [],
      shapes: [],
      stitches: [],
      straightCuts: [],
    };
    expect(readLayout(readStrictly(svg))).toEqual(expected);
    expect(readLayout(readWithSvgson(svg))).toEqual(expected);
  });

  test("says what is wrong and where", () => {
    const damaged = (from: string | RegExp, to: string) => () =>
      readLayout(readStrictly(svg.replace(from, to)));
    expect(codeOf(() => readLayout(readStrictly("<svg/>")))).toEqual({ code: "not-a-layout", path: "svg" });
    expect(codeOf(damaged('data-role="sheet"', ""))).toEqual({ code: "no-sheet", path: "svg" });
    expect(codeOf(damaged('data-run="4"', ""))).toMatchObject({ code: "missing-attribute" });
    expect(codeOf(damaged('data-run="4"', 'data-run="four"'))).toMatchObject({ code: "malformed-value" });
    expect(codeOf(damaged('data-turned="no"', 'data-turned="maybe"'))).toMatchObject({
      code: "malformed-value",
    });
    expect(damaged('data-run="4"', 'data-run="four"')).toThrow(
      /^data-run at svg\.children\[\d+\]\.children\[0\] is "four"; expected a whole number\.$/,
    );
  });

  test("gives back grain, pattern, colour, scores and tops, and refuses them malformed", () => {
    const example = examples.find(({ name }) => name === "scored-bases-on-letter") as Example;
    const { problem, packing } = example;
    const marks: LayoutMarks = {
      sheets: { cream: { grain: "unknown", pattern: "one-way", colour: "#f3ead3" } },
      forms: {
        "1a": [0, 1].map(() => ({
          scores: [{ along: "height" as const, at: inch(1) }],
          topOn: ["cream"],
          backOn: ["cream"],
        })),
      },
    };
    const drawing = drawLayout(problem, packing, 0, { marks });
    const read = readLayout(readWithSvgson(drawing));
    expect(read).toEqual(readLayout(readStrictly(drawing)));
    expect(read.sheet.marks).toEqual(marks.sheets.cream);
    expect(read.pieces.map(({ top, backUp }) => [top, backUp])).toEqual([
      ["top", [true]],
      [null, [false]],
      ["right", [true]],
      [null, [false]],
    ]);
    expect(read.scores.map(({ piece: index, edge, distance }) => [index, edge, distance])).toEqual([
      [0, "top", inch(1)],
      [2, "right", inch(1)],
    ]);

    const damaged = (from: string | RegExp, to: string) => () =>
      readLayout(readStrictly(drawing.replace(from, to)));
    const malformed = { code: "malformed-value" };
    expect(codeOf(damaged('data-grain="unknown"', 'data-grain="askew"'))).toMatchObject(malformed);
    expect(codeOf(damaged('data-pattern="one-way"', 'data-pattern=""'))).toMatchObject(malformed);
    expect(codeOf(damaged(/(data-role="score" data-piece=")piece-1/, "$1piece-99"))).toMatchObject(malformed);
    expect(codeOf(damaged('data-edge="top"', 'data-edge="bottom"'))).toMatchObject(malformed);
    expect(codeOf(damaged(/(data-role="score".*? d=")M/, "$1C"))).toMatchObject(malformed);
    expect(damaged('data-grain="unknown"', 'data-grain="askew"')).toThrow(
      /is "askew"; expected one of width, height, none, unknown\.$/,
    );
  });
});
