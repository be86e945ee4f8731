import type { FormMarks } from "@sheetwright/planner";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formMarksOf, lyingScores, lyingSlits, placeMarks, topOf } from "../../src/layout/lying-marks.js";
import { kind } from "../plans/build.js";

const form = { width: 800, height: 500 };

function scored(...scores: FormMarks["scores"]): FormMarks {
  return { scores, topOn: [], backOn: [] };
}

describe("lyingScores", () => {
  test("measures scores of an upright piece from its left and top edges", () => {
    const marks = scored({ along: "height", at: 200 }, { along: "width", at: 300 });
    expect(lyingScores(marks, form, false)).toEqual([
      { upright: true, at: 300, edge: "left", distance: 300, folds: "mountain" },
      { upright: false, at: 200, edge: "top", distance: 200, folds: "mountain" },
    ]);
  });

  test("turns them with the piece: its left edge comes to lie at the top, its top edge at the right", () => {
    const marks = scored({ along: "height", at: 200 }, { along: "width", at: 300 });
    expect(lyingScores(marks, form, true)).toEqual([
      { upright: true, at: 300, edge: "right", distance: 200, folds: "mountain" },
      { upright: false, at: 300, edge: "top", distance: 300, folds: "mountain" },
    ]);
    expect(topOf({ turned: false })).toBe("top");
    expect(topOf({ turned: true })).toBe("right");
  });

  test("measures a score in the middle from the left, whichever edge it was", () => {
    expect(lyingScores(scored({ along: "height", at: 250 }), form, true)).toEqual([
      { upright: true, at: 250, edge: "left", distance: 250, folds: "mountain" },
    ]);
  });

  test("gives a score once however often it is named, in order from left to right and from top to bottom", () => {
    const marks = scored(
      { along: "width", at: 600 },
      { along: "width", at: 100 },
      { along: "width", at: 600 },
    );
    expect(lyingScores(marks, form, false).map(({ at }) => at)).toEqual([100, 600]);
  });

  test("keeps which way a score folds, the usual way where nothing says it", () => {
    const marks = scored(
      { along: "width", at: 200, folds: "valley" },
      { along: "width", at: 300, folds: "both" },
      { along: "height", at: 100 },
    );
    for (const turned of [false, true]) {
      const found = lyingScores(marks, form, turned).map(({ distance, folds }) => [distance, folds]);
      expect(found.sort()).toEqual([
        [100, "mountain"],
        [200, "valley"],
        [300, "both"],
      ]);
    }
  });

  test("a quarter turn keeps every score as far from its edge as it was", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 500_000 }),
        fc.integer({ min: 2, max: 500_000 }),
        fc.constantFrom("width", "height"),
        fc.nat(),
        (width, height, along, seed) => {
          const size = { width, height };
          const at = 1 + (seed % (size[along as "width"] - 1));
          const [score] = lyingScores(scored({ along: along as "width", at }), size, true);
          expect(score?.distance).toBe(at);
          expect(score?.upright).toBe(along === "height");
          const lying = along === "height" ? height : width;
          expect(score?.edge === "right" ? lying - at : at).toBe(score?.at);
        },
      ),
    );
  });
});

describe("lyingSlits", () => {
  const slit = (...slits: NonNullable<FormMarks["slits"]>): FormMarks => ({ ...scored(), slits });

  test("measures line and ends of an upright piece from its left and top edges", () => {
    expect(lyingSlits(slit({ along: "width", at: 100, from: 200, to: 700 }), form, false)).toEqual([
      {
        upright: false,
        at: 100,
        edge: "top",
        distance: 100,
        from: 200,
        to: 700,
        endsFrom: "left",
        ends: [200, 700],
      },
    ]);
    expect(lyingSlits(slit({ along: "height", at: 300, from: 50, to: 450 }), form, false)).toEqual([
      {
        upright: true,
        at: 300,
        edge: "left",
        distance: 300,
        from: 50,
        to: 450,
        endsFrom: "top",
        ends: [50, 450],
      },
    ]);
  });

  test("turns them with the piece", () => {
    expect(lyingSlits(slit({ along: "width", at: 100, from: 200, to: 700 }), form, true)).toEqual([
      {
        upright: true,
        at: 400,
        edge: "right",
        distance: 100,
        from: 200,
        to: 700,
        endsFrom: "top",
        ends: [200, 700],
      },
    ]);
    expect(lyingSlits(slit({ along: "height", at: 300, from: 50, to: 400 }), form, true)).toEqual([
      {
        upright: false,
        at: 300,
        edge: "top",
        distance: 300,
        from: 100,
        to: 450,
        endsFrom: "right",
        ends: [50, 400],
      },
    ]);
  });

  test("refuses one that leaves its form, with its path", () => {
    const marks = (at: number, from: number, to: number) => ({
      sheets: {},
      forms: { a: [slit({ along: "width", at, from, to })] },
    });
    const read = (at: number, from: number, to: number) => () =>
      formMarksOf(marks(at, from, to), kind("a", 800, 500), 0);
    expect(read(100, 200, 700)).not.toThrow();
    expect(read(100, 0, 800)).not.toThrow();
    for (const [at, from, to] of [
      [0, 200, 700],
      [500, 200, 700],
      [100, 700, 200],
      [100, 200, 801],
      [100, -1, 700],
      [100.5, 200, 700],
    ] as const) {
      expect(read(at, from, to)).toThrow(
        /^marks\.forms\["a"\]\[0\]\.slits\[0\]: expected whole ticks inside the form/,
      );
    }
  });
});

describe("placeMarks", () => {
  const kinds = new Map([
    ["a", kind("a", 800, 500)],
    ["b", kind("b", 500, 800)],
  ]);
  const place = (turned: boolean) => ({
    x: 0,
    y: 0,
    width: 800,
    height: 500,
    level: 0,
    window: null,
    shares: [
      { kind: "a", form: 0, turned: false, count: 1 },
      { kind: "b", form: 0, turned, count: 2 },
    ],
  });

  test("marks a shared place with the scores that all its pieces have as they lie", () => {
    // Both are the same line of the place: 300 from the left, and 200 from the right of the other kind turned.
    const forms = {
      a: [scored({ along: "width", at: 300 }, { along: "height", at: 100 })],
      b: [scored({ along: "height", at: 500 })],
    };
    const [marks] = placeMarks([place(true)], kinds, "s", { sheets: {}, forms });
    expect(marks?.scores).toEqual([
      { upright: true, at: 300, edge: "left", distance: 300, folds: "mountain" },
    ]);
  });

  test("marks neither scores that fold another way in another piece of the place, nor slits that it has not", () => {
    const slit = { along: "width" as const, at: 100, from: 200, to: 700 };
    const valley = scored({ along: "width", at: 300, folds: "valley" });
    const forms = {
      a: [{ ...valley, slits: [slit] }],
      b: [scored({ along: "height", at: 500 })],
    };
    expect(placeMarks([place(true)], kinds, "s", { sheets: {}, forms })[0]).toMatchObject({
      scores: [],
      slits: [],
    });
    const alone = { sheets: {}, forms: { a: forms.a, b: [valley] } };
    expect(placeMarks([place(false)], kinds, "s", alone)[0]).toMatchObject({
      scores: [{ folds: "valley" }],
      slits: [],
    });
  });

  test("marks no top where the pieces of a place have theirs at different edges", () => {
    const topped = { scores: [], topOn: ["s"], backOn: [] };
    const both = { sheets: {}, forms: { a: [topped], b: [topped] } };
    expect(placeMarks([place(true)], kinds, "s", both)[0]?.top).toBe(null);
    const one = { sheets: {}, forms: { b: [topped] } };
    expect(placeMarks([place(true)], kinds, "s", one)[0]?.top).toBe("right");
  });
});
