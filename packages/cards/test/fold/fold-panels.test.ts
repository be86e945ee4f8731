import { inches, type Ticks } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type FoldWish,
  flatsOf,
  frontOfPiece,
  type NamedFold,
  namedFolds,
  surfacesOf,
} from "../../src/index.js";

const inInches = (lengths: readonly Ticks[]) => lengths.map((ticks) => ticks / inches(1));
const FRONT = { width: inches(4.25), height: inches(5.5) };

describe("other folds than one in the middle", () => {
  // Common practice, no source: 5 1/2 x 8 1/2 and so on, scores measured along the long side from one of its ends.
  it.each<[string, FoldWish, number, number, readonly number[]]>([
    ["gate", "gate", 5.5, 8.5, [2.125, 6.375]],
    ["z", "z", 5.5, 8.5, [2.125, 4.25]],
    ["double gate", "double-gate", 5.5, 11, [1.75, 5.5, 9.75]],
    // Computed: three equal panels; one has to be shorter to lie flat.
    ["tri-fold with equal panels", { kind: "tri", shorten: 0 }, 5.5, 12.75, [4.25, 8.5]],
    ["accordion of three", "accordion", 5.5, 12.75, [4.25, 8.5]],
    ["easel", "easel", 4.25, 11, [2.75, 5.5]],
  ])("%s of a US A2 card has the flat and the scores of the trade", (_, fold, short, long, scores) => {
    const [flat] = flatsOf({ front: FRONT, fold });
    if (flat === undefined) throw new Error("No flat.");
    expect([flat.width, flat.height].sort((a, b) => a - b)).toEqual([inches(short), inches(long)]);
    expect(flat[flat.along]).toBe(inches(long));
    const fromOne = inInches(flat.scores.map(({ at }) => at));
    const fromOther = fromOne.map((at) => long - at).reverse();
    expect([fromOne, fromOther]).toContainEqual(scores);
  });

  // Common practice, no source: 5 1/2 x 10 1/2, scores at 1 3/4, 3 1/2, 7 and 8 3/4, strips of 1 1/2 freed between the
  // first and the last score.
  it("shutter has the flat, the scores and the freed strips of the trade", () => {
    const [flat] = flatsOf({ front: { width: inches(3.5), height: inches(5.5) }, fold: "shutter" });
    expect(flat && [flat.width, flat.height]).toEqual([inches(10.5), inches(5.5)]);
    expect(inInches(flat?.scores.map(({ at }) => at) ?? [])).toEqual([1.75, 3.5, 7, 8.75]);
    expect(flat?.slits).toEqual(
      [1.5, 4].map((at) => ({ along: "width", at: inches(at), from: inches(1.75), to: inches(8.75) })),
    );
  });

  // Print-finishing folding guides, with their methods: width / 3 rounded up to 1/32, the third less 1/16; width / 4 +
  // 1/32, short = wide - 1/16; width / 4 + 1/16, - 3/32, - 1/16; equal panels, the inner one shortened by 1/16.
  it.each<[NamedFold, number, readonly number[]]>([
    ["tri", 11, [3.6875, 3.6875, 3.625]],
    ["double-parallel", 17, [4.28125, 4.28125, 4.21875, 4.21875]],
    ["roll", 17, [4.3125, 4.3125, 4.21875, 4.15625]],
    ["tri", 11.9375, [4, 4, 3.9375]],
  ])("%s of a sheet %d in wide has the panels of the guides", (kind, width, panels) => {
    const { front, flat } = frontOfPiece({ width: inches(width), height: inches(8.5) }, { kind });
    expect(inInches(flat.panels).sort((a, b) => b - a)).toEqual(panels);
    expect(flat.width).toBe(inches(width));
    expect(inInches([front.width])).toEqual(panels.slice(0, 1));
  });

  it("a 12 in tri-fold loses what its inner panel is shortened by", () => {
    const [flat] = flatsOf({ front: { width: inches(4), height: inches(8) }, fold: "tri" });
    expect(inInches([flat?.width ?? 0])).toEqual([11.9375]);
  });

  // Print-finishing folding guides: a gap of 1/8 in all between the doors.
  it("a gate has the gap that is asked for between its doors", () => {
    const [flat] = flatsOf({ front: FRONT, fold: { kind: "gate", gap: inches(1 / 8) } });
    const [right = 0, back = 0, left = 0] = flat?.panels ?? [];
    expect(back - left - right).toBe(inches(1 / 8));
  });

  it("the surfaces of a gate are its doors, what lies behind them, and the whole front", () => {
    const [flat] = flatsOf({ front: FRONT, fold: { kind: "gate", along: "height" } });
    const surfaces = flat === undefined ? [] : surfacesOf(flat, FRONT);
    expect(surfaces.map(({ name, height }) => [name, height / inches(1)])).toEqual([
      ["front", 5.5],
      ["inside", 5.5],
      ["back", 5.5],
      ["upper-door", 2.75],
      ["lower-door", 2.75],
    ]);
  });

  it("panels add up, scores lie between them, and folded the card is no larger than its front", () => {
    const side = fc.integer({ min: inches(2), max: inches(20) });
    const along = fc.constantFrom("width" as const, "height" as const);
    fc.assert(
      fc.property(fc.constantFrom(...namedFolds), side, side, along, (kind, width, height, divided) => {
        const front = { width, height };
        const [flat] = flatsOf({ front, fold: { kind, along: divided } });
        if (flat === undefined) throw new Error("No flat.");
        expect(flat.panels.every((panel) => panel > 0 && panel <= front[flat.along])).toBe(true);
        let at = 0;
        const ends = flat.panels.map((panel) => {
          at += panel;
          return at;
        });
        expect(ends.at(-1)).toBe(flat[flat.along]);
        expect(flat.scores.map((score) => score.at)).toEqual(ends.slice(0, -1));
        for (const surface of surfacesOf(flat, front)) {
          expect(surface.width <= width && surface.height <= height).toBe(true);
          expect(surface.width > 0 && surface.height > 0).toBe(true);
        }
      }),
    );
  });

  it("what a piece of paper folds to takes up all of the piece", () => {
    const side = fc.integer({ min: inches(4), max: inches(24) });
    fc.assert(
      fc.property(fc.constantFrom(...namedFolds), side, side, (kind, width, height) => {
        const { front, flat } = frontOfPiece({ width, height }, { kind });
        expect([flat.width, flat.height]).toEqual([width, height]);
        expect(flat.panels.reduce((sum, panel) => sum + panel, 0)).toBe(flat[flat.along]);
        expect(flat.panels.every((panel) => panel > 0)).toBe(true);
        // What does not divide evenly is less than a tick a panel, or 1/32 in where the guides round up.
        expect(Math.max(...flat.panels) - front[flat.along]).toBeLessThanOrEqual(flat.panels.length * 17);
      }),
    );
  });
});
