import { TICKS_PER_MM } from "@sheetwright/measure";
import type { FoldDirection, FormMarks, LayoutMarks, SheetMarks } from "@sheetwright/planner";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Box, segmentCrossesBox } from "../../src/drawing/box.js";
import { drawLayout } from "../../src/drawing/draw-layout.js";
import { type DrawnLayout, readLayout } from "../../src/reading/read-layout.js";
import { inch, kind, type Plan, piece, plan, repeat, split } from "../plans/build.js";
import { type Example, examples } from "../plans/examples.js";
import {
  type ExpectedScore,
  type ExpectedSlit,
  expectedScores,
  expectedSlits,
  laidOutOf,
} from "../plans/expected-scores.js";
import { plainCutOrder } from "../plans/plain-cut-order.js";
import { type MarkedPlan, randomMarkedPlan } from "../plans/random-marks.js";
import { attributeOf, byId, everyElement, type ReadElement, readStrictly } from "../read-svg.js";
import { expectWellSet } from "./expect-well-set.js";
import { rectBox, textBoxes } from "./text-boxes.js";

/** One piece that fills its sheet, with the marks of its form and sheet. */
function onePiece(
  width: number,
  height: number,
  form: Partial<FormMarks>,
  options: { readonly turned?: boolean; readonly sheet?: SheetMarks; readonly name?: string } = {},
): MarkedPlan {
  const { turned = false, sheet, name = "3b mat" } = options;
  const size = turned ? { width: height, height: width } : { width, height };
  const marks: LayoutMarks = {
    sheets: sheet === undefined ? {} : { s: sheet },
    forms: { "3b": [{ scores: [], topOn: [], backOn: [], ...form }] },
  };
  const made = plan(
    [kind("3b", width, height, name)],
    [{ id: "s", name: "Night", ...size }],
    [{ sheet: "s", run: 1, tree: piece({ kind: "3b", turned }) }],
  );
  return { ...made, marks };
}

function drawn(
  marked: MarkedPlan,
  more: { readonly unit?: "in" | "mm"; readonly title?: string } = {},
): ReadElement {
  const root = readStrictly(drawLayout(marked.problem, marked.packing, 0, { marks: marked.marks, ...more }));
  expectWellSet(root);
  return root;
}

function wordsOf(root: ReadElement): readonly string[] {
  return textBoxes(root).map(({ text }) => text);
}

const plainSheet: SheetMarks = { grain: "none", pattern: "none", colour: "#22304f" };

describe("scores", () => {
  test("run from edge to edge at their distance, upright ones along the width and level ones along the height", () => {
    const both = onePiece(inch(8), inch(6), {
      scores: [
        { along: "width", at: inch(4.25) },
        { along: "height", at: inch(2) },
      ],
    });
    const [upright, level] = readLayout(drawn(both)).scores;
    expect(upright).toMatchObject({ piece: 0, edge: "left", distance: inch(4.25) });
    expect(upright?.dashes[0]).toMatchObject({ x1: 107.95, y1: 0, x2: 107.95 });
    expect(upright?.dashes.at(-1)).toMatchObject({ x1: 107.95, x2: 107.95, y2: 152.4 });
    expect(level).toMatchObject({ edge: "top", distance: inch(2) });
    expect(level?.dashes[0]).toMatchObject({ x1: 0, y1: 50.8, y2: 50.8 });
    expect(level?.dashes.at(-1)).toMatchObject({ y1: 50.8, x2: 203.2, y2: 50.8 });
  });

  test("turn with their piece a quarter clockwise, and are measured from the edge they were measured from", () => {
    const turned = onePiece(
      inch(8),
      inch(6),
      {
        scores: [
          { along: "width", at: inch(3) },
          { along: "height", at: inch(2) },
        ],
      },
      { turned: true },
    );
    // The point (x, y) of an upright piece 6 in high comes to (6 - y, x).
    const [upright, level] = readLayout(drawn(turned)).scores;
    expect(upright).toMatchObject({ edge: "right", distance: inch(2) });
    expect(upright?.dashes[0]?.x1).toBe(101.6);
    expect(level).toMatchObject({ edge: "top", distance: inch(3) });
    expect(level?.dashes[0]?.y1).toBe(76.2);
  });

  test("are dimensioned in words beside a line from the edge, and the label gives way to them", () => {
    const root = drawn(onePiece(inch(8.5), inch(5.5), { scores: [{ along: "width", at: inch(4.25) }] }));
    expect(wordsOf(root)).toEqual(expect.arrayContaining(["score at 4 1/4 in", "3b mat | 8 1/2 x 5 1/2 in"]));
    const dimension = byId(root, "score-1-at").children.find(({ name }) => name === "line");
    const sheet = rectBox(byId(root, "sheet-1"));
    const [x1, x2] = ["x1", "x2"].map((name) => Number(dimension?.attributes[name]) - sheet.x);
    expect(x1).toBeCloseTo(0, 9);
    expect(x2).toBeCloseTo(4.25 * 25.4, 9);
    const label = textBoxes(root).find(({ text }) => text.startsWith("3b mat |"));
    expect(label?.x).toBeGreaterThan(sheet.x + 4.25 * 25.4);
  });

  test("are dimensioned in the list alone where the piece is small", () => {
    const root = drawn(onePiece(inch(0.75), inch(0.75), { scores: [{ along: "width", at: inch(3 / 8) }] }));
    expect(wordsOf(root)).not.toContain("score at 3/8 in");
    expect(wordsOf(root)).toContain("score at 3/8 in from the left edge");
    expect(wordsOf(root)).toContain("score: distance in the list of pieces");
    expect(readLayout(root).scores).toHaveLength(1);
  });

  test("are listed with their piece, and apart for copies that lie turned", () => {
    const marked: MarkedPlan = {
      ...plan(
        [kind("3a", inch(4), inch(2), "3a base")],
        [{ id: "s", width: inch(4), height: inch(6) }],
        [
          {
            sheet: "s",
            run: 1,
            tree: split("y", inch(6), [
              [inch(2), piece({ kind: "3a" })],
              [inch(4), split("x", inch(4), repeat(2, inch(2), piece({ kind: "3a", turned: true })))],
            ]),
          },
        ],
      ),
      marks: {
        sheets: {},
        forms: { "3a": [{ scores: [{ along: "height", at: inch(0.5) }], topOn: [], backOn: [] }] },
      },
    };
    expect(wordsOf(drawn(marked)).join(" ")).toContain(
      "score at 1/2 in from the top edge; where it lies turned, at 1/2 in from the right edge",
    );
  });

  test("are drawn on a shared place where every piece from it has them, and listed for each", () => {
    const shared = (other: number): MarkedPlan => ({
      ...plan(
        [kind("3a", inch(4), inch(3), "3a base"), kind("5a", inch(4), inch(3), "5a base")],
        [{ id: "s", width: inch(4), height: inch(3) }],
        [{ sheet: "s", run: 5, tree: piece({ kind: "3a", count: 2 }, { kind: "5a", count: 3 }) }],
      ),
      marks: {
        sheets: {},
        forms: {
          "3a": [{ scores: [{ along: "width", at: inch(2) }], topOn: [], backOn: [] }],
          "5a": [{ scores: [{ along: "width", at: other }], topOn: [], backOn: [] }],
        },
      },
    });
    expect(readLayout(drawn(shared(inch(2)))).scores).toHaveLength(1);
    const unlike = drawn(shared(inch(1)));
    expect(readLayout(unlike).scores).toHaveLength(0);
    expect(wordsOf(unlike)).toEqual(
      expect.arrayContaining([
        "3a base: score at 2 in from the left edge",
        "5a base: score at 1 in from the left edge",
      ]),
    );
  });
});

describe("tops and printed backs", () => {
  test("a triangle points to the top edge of an upright piece, to the right edge of a turned one", () => {
    const upright = readLayout(drawn(onePiece(inch(3), inch(2), { topOn: ["s"] })));
    expect(upright.pieces[0]?.top).toBe("top");
    const turned = readLayout(drawn(onePiece(inch(3), inch(2), { topOn: ["s"] }, { turned: true })));
    expect(turned.pieces[0]?.top).toBe("right");
    const other = readLayout(drawn(onePiece(inch(3), inch(2), { topOn: ["another sheet"] })));
    expect(other.pieces[0]?.top).toBe(null);
  });

  test("turned copies follow their own lists where these differ", () => {
    const form = { topOn: ["s"], backOn: [], turned: { topOn: [], backOn: ["s"] } };
    const [upright] = readLayout(drawn(onePiece(inch(3), inch(2), form))).pieces;
    expect(upright).toMatchObject({ top: "top", backUp: [false] });
    const [turned] = readLayout(drawn(onePiece(inch(3), inch(2), form, { turned: true }))).pieces;
    expect(turned).toMatchObject({ top: null, backUp: [true] });
  });

  test("stand on the smallest piece too, and the key tells what they are", () => {
    const root = drawn(onePiece(inch(1 / 8), inch(1 / 8), { topOn: ["s"] }));
    expect(readLayout(root).pieces[0]?.top).toBe("top");
    expect(wordsOf(root)).toContain("top of the pattern");
  });

  test("a piece that shows the printed back says so after its name", () => {
    const root = drawn(onePiece(inch(3), inch(2), { backOn: ["s"] }));
    expect(wordsOf(root)).toEqual(
      expect.arrayContaining(["3b mat (back up) | 3 x 2 in", "3b mat (back up)"]),
    );
    expect(wordsOf(root).join(" ")).toContain("(back up): the printed back of the paper shows on the card");
    const plainly = drawn(onePiece(inch(3), inch(2), { backOn: ["another sheet"] }));
    expect(wordsOf(plainly).join(" ")).not.toContain("back up");
  });
});

describe("the sheet's marks", () => {
  const withSheet = (sheet: Partial<SheetMarks>) =>
    drawn(onePiece(inch(4), inch(3), {}, { sheet: { ...plainSheet, ...sheet } }));
  const idsOf = (root: ReadElement) => everyElement(root).map((element) => attributeOf(element, "id"));
  /** Heads and lines of an arrow. */
  const partsOf = (root: ReadElement, id: string) => {
    const { children } = byId(root, id);
    const lines = children.filter(({ name }) => name === "line");
    return {
      heads: children.filter(({ name }) => name === "path").length,
      level: lines.every(({ attributes }) => attributes.y1 === attributes.y2),
      upright: lines.every(({ attributes }) => attributes.x1 === attributes.x2),
      words: children.filter(({ name }) => name === "text").map(({ text }) => text),
    };
  };

  test("a double arrow shows the grain, along the width or along the height", () => {
    expect(partsOf(withSheet({ grain: "width" }), "grain")).toMatchObject({
      heads: 2,
      level: true,
      words: ["grain"],
    });
    expect(partsOf(withSheet({ grain: "height" }), "grain")).toMatchObject({
      heads: 2,
      upright: true,
      words: ["grain"],
    });
  });

  test("the arrow of a grain that is assumed says so", () => {
    for (const grain of ["width", "height"] as const) {
      const root = withSheet({ grain, grainIsAssumed: true });
      expect(partsOf(root, "grain")).toMatchObject({ heads: 2, words: ["grain (assumed)"] });
    }
  });

  test("words tell of a grain that is not known, and of paper without, where something is folded", () => {
    const folded = (grain: SheetMarks["grain"]) => {
      const form = { scores: [{ along: "width" as const, at: inch(2) }] };
      return wordsOf(drawn(onePiece(inch(4), inch(3), form, { sheet: { ...plainSheet, grain } })));
    };
    expect(folded("unknown")).toContain("grain unknown: bend test");
    expect(folded("none")).toContain("paper without grain");
    expect(wordsOf(withSheet({ grain: "unknown" }))).not.toContain("grain unknown: bend test");
    expect(wordsOf(withSheet({ grain: "none" }))).not.toContain("paper without grain");
  });

  test("a single arrow shows a pattern that runs one way, a double arrow one that runs two ways", () => {
    expect(partsOf(withSheet({ pattern: "one-way" }), "pattern")).toMatchObject({
      heads: 1,
      upright: true,
      words: ["pattern up"],
    });
    expect(partsOf(withSheet({ pattern: "two-way" }), "pattern")).toMatchObject({
      heads: 2,
      upright: true,
      words: ["pattern"],
    });
    expect(idsOf(withSheet({ pattern: "none" }))).not.toContain("pattern");
  });

  test("the paper's colour is a patch beside the title, and nowhere else painted", () => {
    const root = withSheet({ colour: "#22304f" });
    expect(attributeOf(byId(root, "swatch"), "fill")).toBe("#22304f");
    expect(everyElement(root).filter(({ attributes }) => attributes.fill === "#22304f")).toHaveLength(1);
  });

  test("no marks, nothing of it: the bytes are those of the bare layout", () => {
    for (const { problem, packing } of examples) {
      const bare = drawLayout(problem, packing, 0);
      expect(drawLayout(problem, packing, 0, { marks: { sheets: {}, forms: {} } })).toBe(bare);
      expect(bare).not.toMatch(/grain|swatch|score/);
    }
  });

  test("the name of the project stands under the sheet's size, broken where it is long", () => {
    const marked = onePiece(inch(4), inch(3), {}, { sheet: plainSheet });
    expect(wordsOf(drawn(marked, { title: "Lantern Night workshop" }))).toContain("Lantern Night workshop");
    const long =
      "Lantern Night workshop for twelve guests and everybody else who cares to come in ẍ̧̣ from the cold";
    const words = wordsOf(drawn(marked, { title: long }));
    expect(words.join(" ").replaceAll("\u0323", "")).toContain("who cares to come in");
    expect(words).not.toContain(long);
  });
});

describe("marks that do not go with the problem", () => {
  const refused = (marks: unknown) => () => {
    const { problem, packing } = onePiece(inch(4), inch(3), {});
    drawLayout(problem, packing, 0, { marks: marks as LayoutMarks });
  };
  const score = (along: string, at: number) => ({
    sheets: {},
    forms: { "3b": [{ scores: [{ along, at }], topOn: [], backOn: [] }] },
  });

  test("are refused with what is wrong and where", () => {
    expect(refused(score("width", inch(4)))).toThrow(
      'marks.forms["3b"][0].scores[0].at: expected whole ticks over 0 and under 162560, the width of the form; found 162560.',
    );
    expect(refused(score("height", 0))).toThrow(RangeError);
    expect(refused(score("height", 0.5))).toThrow(RangeError);
    expect(refused({ sheets: {}, forms: { "3b": [] } })).toThrow(
      'marks.forms["3b"]: expected marks for each form of the kind, found none for form 0.',
    );
    expect(refused({ sheets: { s: { ...plainSheet, colour: "url(#x)" } }, forms: {} })).toThrow(
      'marks.sheets["s"].colour: expected a colour as #rrggbb, found "url(#x)".',
    );
  });

  test("names that objects have of themselves are no marks", () => {
    const odd = plan(
      [kind("constructor", inch(2), inch(2))],
      [{ id: "toString", width: inch(2), height: inch(2) }],
      [{ sheet: "toString", run: 1, tree: piece({ kind: "constructor" }) }],
    );
    expect(drawLayout(odd.problem, odd.packing, 0, { marks: { sheets: {}, forms: {} } })).toBe(
      drawLayout(odd.problem, odd.packing, 0),
    );
  });
});

/** The scores of a drawing in ticks, each where its edge and distance say it is. */
function drawnScores({ scores }: DrawnLayout, plan: Plan): readonly ExpectedScore[] {
  const { pieces } = laidOutOf(plan);
  return scores.map(({ piece: index, edge, distance, folds, dashes }) => {
    const placed = pieces[index];
    const first = dashes[0];
    const last = dashes.at(-1);
    if (placed === undefined || first === undefined || last === undefined)
      throw new Error("A score has a piece and dashes.");
    const { x, y } = placed;
    const [right, bottom] = [x + placed.width, y + placed.height];
    const line =
      edge === "top"
        ? { x1: x, y1: y + distance, x2: right, y2: y + distance }
        : edge === "left"
          ? { x1: x + distance, y1: y, x2: x + distance, y2: bottom }
          : { x1: right - distance, y1: y, x2: right - distance, y2: bottom };
    // The dashes are where these say, to the last written decimal.
    const off = [
      first.x1 - line.x1 / TICKS_PER_MM,
      first.y1 - line.y1 / TICKS_PER_MM,
      last.x2 - line.x2 / TICKS_PER_MM,
      last.y2 - line.y2 / TICKS_PER_MM,
    ];
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.0011);
    return { piece: index, ...line, folds };
  });
}

/** The slits of a drawing in ticks, each where its edges and distances say it is. */
function drawnSlits({ slits }: DrawnLayout, plan: Plan): readonly ExpectedSlit[] {
  const { pieces } = laidOutOf(plan);
  return slits.map(({ piece: index, edge, distance, endsFrom, ends: [near, far], stretches }) => {
    const placed = pieces[index];
    if (placed === undefined) throw new Error("A slit has a piece.");
    const { x, y } = placed;
    const right = x + placed.width;
    const along = endsFrom === "right" ? [right - far, right - near] : [near, far];
    const [from = 0, to = 0] =
      endsFrom === "right" ? along : along.map((each) => each + (endsFrom === "left" ? x : y));
    const line =
      edge === "top"
        ? { x1: from, y1: y + distance, x2: to, y2: y + distance }
        : edge === "left"
          ? { x1: x + distance, y1: from, x2: x + distance, y2: to }
          : { x1: right - distance, y1: from, x2: right - distance, y2: to };
    // All that is drawn lies on this line; a window may take some of it.
    const off = 0.0011;
    for (const { x1, y1, x2, y2 } of stretches) {
      expect(Math.min(x1 - line.x1 / TICKS_PER_MM, y1 - line.y1 / TICKS_PER_MM)).toBeGreaterThan(-off);
      expect(Math.max(x2 - line.x2 / TICKS_PER_MM, y2 - line.y2 / TICKS_PER_MM)).toBeLessThan(off);
      expect(x1 === x2 || y1 === y2).toBe(true);
    }
    if (placed.window === null) {
      const [only] = stretches;
      expect(stretches).toHaveLength(1);
      expect(Math.abs((only?.x2 ?? 0) - line.x2 / TICKS_PER_MM)).toBeLessThan(off);
      expect(Math.abs((only?.y1 ?? 0) - line.y1 / TICKS_PER_MM)).toBeLessThan(off);
    }
    return { piece: index, ...line };
  });
}

const inOrder = (scores: readonly (ExpectedSlit & { readonly folds?: string })[]) =>
  scores
    .map(({ piece: index, x1, y1, x2, y2, folds = "" }) => `${index}: ${x1} ${y1} to ${x2} ${y2} ${folds}`)
    .sort();

/** Whether the window of its piece leaves nothing of a slit. */
function isHidden({ piece: index, x1, y1, x2, y2 }: ExpectedSlit, plan: Plan): boolean {
  const window = laidOutOf(plan).pieces[index]?.window ?? null;
  if (window === null) return false;
  const [right, bottom] = [window.x + window.width, window.y + window.height];
  return x1 === x2
    ? x1 > window.x && x1 < right && y1 >= window.y && y2 <= bottom
    : y1 > window.y && y1 < bottom && x1 >= window.x && x2 <= right;
}

/** A window less what rounding to written decimals may take. */
function inside({ x, y, width, height }: Box): Box {
  const off = 0.002;
  return { x: x + off, y: y + off, width: width - 2 * off, height: height - 2 * off };
}

describe("every plan with marks", () => {
  test("is drawn so that its marks can be read back, with nothing over anything or off the page", () => {
    fc.assert(
      fc.property(randomMarkedPlan({ windows: true }), fc.boolean(), (random, numbered) => {
        const cuts = numbered ? { cuts: plainCutOrder(random, 0) } : {};
        const svg = drawLayout(random.problem, random.packing, 0, { marks: random.marks, ...cuts });
        const root = readStrictly(svg);
        expectWellSet(root);
        const read = readLayout(root);
        const [sheet] = random.problem.sheets;
        expect(read.sheet.marks).toEqual(random.marks.sheets[sheet?.id ?? ""] ?? null);
        expect(inOrder(drawnScores(read, random))).toEqual(inOrder(expectedScores(random)));
        expect(inOrder(drawnSlits(read, random))).toEqual(
          inOrder(expectedSlits(random).filter((slit) => !isHidden(slit, random))),
        );
        for (const { shares, top, backUp } of read.pieces) {
          const own = shares.map(({ kind: id, form, turned }) => {
            const marks = random.marks.forms[id]?.[form];
            return turned ? (marks?.turned ?? marks) : marks;
          });
          expect(backUp).toEqual(own.map((marks) => (marks?.backOn ?? []).length > 0));
          const tops = new Set(
            own.flatMap((marks, i) => ((marks?.topOn ?? []).length > 0 ? [shares[i]?.turned] : [])),
          );
          expect(top).toBe(tops.size === 1 ? (tops.has(true) ? "right" : "top") : null);
        }
      }),
      // A whole page each time: half the usual number of cases.
      { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 2) },
    );
  });

  test("is drawn with dashes that begin and end at edges, none over a window", () => {
    fc.assert(
      fc.property(randomMarkedPlan({ windows: true }), (random) => {
        const read = readLayout(
          readStrictly(drawLayout(random.problem, random.packing, 0, { marks: random.marks })),
        );
        const strokes = [
          ...read.scores,
          ...read.slits.map(({ piece: of, stretches }) => ({ piece: of, dashes: stretches })),
        ];
        for (const { piece: index, dashes } of strokes) {
          const home = read.pieces[index];
          if (home === undefined) throw new Error("A score has a piece.");
          const own = read.windows.filter(
            (hole) =>
              hole.x > home.x &&
              hole.y > home.y &&
              hole.x + hole.width < home.x + home.width &&
              hole.y + hole.height < home.y + home.height,
          );
          for (const { x1, y1, x2, y2 } of dashes) {
            expect(x1 === x2 || y1 === y2).toBe(true);
            const over = own.filter((hole) => segmentCrossesBox(x1, y1, x2, y2, inside(hole)));
            expect(over).toEqual([]);
          }
        }
      }),
    );
  });
});

test("scores on the inside have a dash pattern and a line in the key of their own, slits a whole line", () => {
  const score = (at: number, folds: FoldDirection) => ({ along: "width" as const, at: inch(at), folds });
  const scores = [score(2, "mountain"), score(4, "valley")];
  const root = drawn(onePiece(inch(6), inch(5), { scores }));
  const read = readLayout(root);
  expect(read.scores.map(({ folds }) => folds)).toEqual(["mountain", "valley"]);
  const [mountain, valley] = read.scores.map(({ dashes }) => dashes.length);
  expect(valley).toBeGreaterThan(2 * (mountain ?? 0));
  const key = ["score, with its distance from the edge", "score on the inside: turn the piece over"];
  expect(wordsOf(root)).toEqual(expect.arrayContaining(key));
  const text = (each: ReadElement) => wordsOf(each).join(" ");
  expect(text(root)).toContain(
    "score at 2 in from the left edge; on the inside (turn it over from top to bottom) at 4 in from the left edge",
  );
  const alone = drawn(onePiece(inch(6), inch(5), { scores: scores.slice(0, 1) }));
  expect(text(alone)).not.toContain("on the inside");

  const slits = [1, 3].map((at) => ({ along: "width" as const, at: inch(at), from: inch(1), to: inch(5) }));
  const shutter = drawn(onePiece(inch(6), inch(4), { scores: [score(1, "both"), score(5, "both")], slits }));
  expect(readLayout(shutter).slits.map(({ stretches }) => stretches)).toEqual(
    [25.4, 76.2].map((y) => [{ x1: 25.4, y1: y, x2: 127, y2: y }]),
  );
  expect(text(shutter)).toContain(
    "slit at 1 in and 3 in from the top edge, from 1 in to 5 in from the left edge",
  );
  expect(text(shutter)).toContain("slit, cut with a craft knife: it starts and stops inside the piece");
});

test("examples with marks say what they are for: a legend for scores and tops", () => {
  const named = (name: string) => {
    const { problem, packing, marks } = examples.find((each) => each.name === name) as Example;
    return wordsOf(readStrictly(drawLayout(problem, packing, 0, marks === undefined ? {} : { marks })));
  };
  expect(named("scored-bases-on-letter")).toContain("score, with its distance from the edge");
  expect(named("scores-on-a4")).toContain("score, with its distance where there is room");
  expect(named("one-way-pieces-on-pad")).toContain("top of the pattern");
});
