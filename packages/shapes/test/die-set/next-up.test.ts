import { inches, millimetres } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { outlineOf } from "../../src/catalogue/outline-of.js";
import { ShapeError } from "../../src/catalogue/shape-error.js";
import { type Border, borderOf } from "../../src/die-set/border.js";
import { type Die, outlineOfDie } from "../../src/die-set/die.js";
import { DIE_STEP, dieSet } from "../../src/die-set/die-set.js";
import { nextUp } from "../../src/die-set/next-up.js";
import { flattenRing } from "../../src/flatten/flatten.js";
import { areaOf } from "../../src/measure/area.js";
import { boxOf } from "../../src/measure/box.js";
import { distanceFrom } from "../../src/measure/least-distance.js";
import { offset } from "../../src/offset/offset.js";
import { moved, quarterTurned } from "../../src/outline/move.js";
import type { Outline } from "../../src/outline/outline.js";
import { anyOutline, discAt, lobedDisc, rectangleOf } from "../random-outline.js";

/** A part of the usual number of cases, for what takes longer. */
const some = (share: number) => ({ numRuns: Math.ceil((fc.readConfigureGlobal()?.numRuns ?? 100) * share) });

const circle = (diameter: number) => outlineOf({ shape: "circle", diameter });
const square = (side: number) => outlineOf({ shape: "square", side });

function expectBorder({ least, most }: Border, wantedLeast: number, wantedMost = wantedLeast): void {
  expect(Math.abs(least - wantedLeast)).toBeLessThanOrEqual(1);
  expect(Math.abs(most - wantedMost)).toBeLessThanOrEqual(1);
}

describe("the border of an outline on another one", () => {
  test("of a circle in a circle is half the difference, exactly", () => {
    for (const [upper, lower] of [
      [40_640, 50_800],
      [100_001, 110_161],
      [millimetres(50), millimetres(90)],
    ] as const) {
      const half = Math.round((lower - upper) / 2);
      expect(borderOf(circle(upper), circle(lower))).toEqual({ least: half, most: half });
    }
  });

  test("of a square in a circle is least at its corners and most at the middles of its sides", () => {
    const border = borderOf(square(60_000), circle(100_000));
    expectBorder(border, 50_000 - 30_000 * Math.SQRT2, 20_000);
  });

  test("of a circle in a square is least at the middles of the sides and most at the corners", () => {
    expectBorder(borderOf(circle(60_000), square(100_000)), 20_000, 50_000 * Math.SQRT2 - 30_000);
  });

  test("of a rectangle in a rectangle is the smaller of both differences, and most at a corner", () => {
    const border = borderOf(rectangleOf(30_000, 40_000), rectangleOf(36_000, 48_000));
    expect(border).toEqual({ least: 3000, most: 5000 });
  });

  test("of a circle on a scalloped one is least at its valleys and most at its tips", () => {
    // Twelve half round lobes: valleys at 50 000 from the middle, tips at r (cos + sin) of pi / 12.
    const radius = 50_000;
    const half = radius * Math.sin(Math.PI / 12);
    const lobed = lobedDisc(12, radius, half);
    expectBorder(
      borderOf(discAt({ x: 0, y: 0 }, 40_000), lobed),
      10_000,
      radius * Math.cos(Math.PI / 12) + half - 40_000,
    );
  });

  test("where the upper one sticks out is less than nothing by how much it does", () => {
    expect(borderOf(circle(50_000), circle(40_000)).least).toBe(-5000);
    expect(borderOf(circle(50_000), circle(50_000)).least).toBe(0);
    // The corners of a square that is narrower than the circle.
    expectBorder({ ...borderOf(square(60_000), circle(70_000)), most: 0 }, 35_000 - 30_000 * Math.SQRT2, 0);
    expectBorder({ ...borderOf(rectangleOf(80_000, 10_000), square(60_000)), most: 0 }, -10_000, 0);
  });

  test("is what an outline that was grown shows, whatever its shape", () => {
    fc.assert(
      fc.property(anyOutline, fc.integer({ min: 100, max: 20_000 }), (outline, by) => {
        const bare: Outline = { outer: outline.outer, windows: [] };
        const [grown] = offset([bare], by).outlines;
        const border = borderOf(bare, grown as Outline);
        // Both boxes have the same middle, to a tick or two of rounding. Where bays close the most is more.
        expect(Math.abs(border.least - by)).toBeLessThanOrEqual(5);
        expect(border.most).toBeGreaterThanOrEqual(by - 5);
      }),
      some(0.5),
    );
  });

  test("is what a dense row of points finds", () => {
    fc.assert(
      fc.property(anyOutline, anyOutline, (one, other) => {
        const box = boxOf(one);
        const under = boxOf(other);
        fc.pre((box.width + under.width) % 2 === 0 && (box.height + under.height) % 2 === 0);
        const middled = moved(one, {
          x: under.x - box.x + (under.width - box.width) / 2,
          y: under.y - box.y + (under.height - box.height) / 2,
        });
        const { least, most } = borderOf(one, other);
        const away = (points: readonly { x: number; y: number }[], from: Outline) =>
          points.map((point) => distanceFrom({ outer: from.outer, windows: [] }, point).distance);
        const lower = away(flattenRing(other.outer, 30), middled);
        expect(Math.max(...lower)).toBeLessThanOrEqual(most + 2);
        if (least > 0) expect(Math.min(...lower)).toBeGreaterThanOrEqual(least - 2);
      }),
      some(0.5),
    );
  });
});

describe("a die set", () => {
  test("by 1/4 in shows 1/8 in a side between neighbours (common practice, no source: nested die step)", () => {
    expect(DIE_STEP).toBe(inches(0.25));
    const sets = [
      dieSet({ shape: "circle", diameter: inches(1) }, { from: inches(1), to: inches(4) }),
      dieSet({ shape: "square", side: inches(1) }, { from: inches(1), to: inches(4) }),
      dieSet({ shape: "rectangle", width: inches(2), height: inches(3) }, { from: inches(2), to: inches(4) }),
    ];
    for (const set of sets) {
      for (const [index, die] of set.slice(0, -1).entries()) {
        const { next } = nextUp(outlineOfDie(die), inches(1 / 8), set);
        expect(next?.die).toBe(set[index + 1]);
        expect(next?.border.least).toBe(inches(1 / 8));
        expect(next?.isTurned).toBe(false);
      }
    }
  });

  test("has every size of the range once, named and grown on both sides alike", () => {
    const set = dieSet(
      { shape: "oval", width: millimetres(50), height: millimetres(70) },
      { from: millimetres(30), to: millimetres(60), step: millimetres(10), unit: "mm" },
    );
    expect(set.map(({ name }) => name)).toEqual([
      "oval 30 x 50 mm",
      "oval 40 x 60 mm",
      "oval 50 x 70 mm",
      "oval 60 x 80 mm",
    ]);
    expect(set.map((die) => boxOf(outlineOfDie(die)).height / 1600)).toEqual([50, 60, 70, 80]);
    // A range that ends between two sizes keeps below its end.
    const short = dieSet({ shape: "circle", diameter: 9 }, { from: inches(1), to: inches(1.6) });
    expect(short.map(({ name }) => name)).toEqual(["circle 1 in", "circle 1 1/4 in", "circle 1 1/2 in"]);
  });

  test("refuses sizes that make no sense", () => {
    const disc = { shape: "circle", diameter: 9 } as const;
    expect(() => dieSet(disc, { from: 50, to: 40 })).toThrow("Exchange them");
    expect(() => dieSet(disc, { from: 0, to: 40 })).toThrow("from");
    expect(() => dieSet(disc, { from: 40, to: 80, step: 0 })).toThrow("step");
    expect(() => dieSet(disc, { from: 40, to: 80, step: -1 })).toThrow(RangeError);
    expect(() => dieSet(disc, { from: 40.5, to: 80 })).toThrow(RangeError);
    expect(() => dieSet(disc, { from: 40, to: 4_000_000, step: 1 })).toThrow("larger step");
    const flat = dieSet({ shape: "oval", width: 100_000, height: 10_000 }, { from: 50_000, to: 60_000 });
    expect(() => outlineOfDie(flat[0] as Die)).toThrow(ShapeError);
  });
});

describe("the next die up", () => {
  const circles = dieSet({ shape: "circle", diameter: 9 }, { from: inches(1), to: inches(4) });
  const scalloped = dieSet(
    { shape: "scalloped-circle", diameter: inches(3), count: 18 },
    { from: inches(1), to: inches(4) },
  );

  test("may be of another shape: scallops under a plain circle, where their valleys show the border", () => {
    const disc = circle(inches(2));
    const { next } = nextUp(disc, inches(1 / 8), scalloped);
    expect(next).not.toBe(null);
    const border = next?.border as Border;
    expect(border.least).toBeGreaterThanOrEqual(inches(1 / 8) - 4);
    // One size up is too small by the depth of the scallops.
    expect(nextUp(disc, inches(1 / 8), circles).next?.die.name).toBe("circle 2 1/4 in");
    expect(boxOf(outlineOfDie(next?.die as Die)).width).toBeGreaterThan(inches(2.25) + 4);
    expect(border.most).toBeGreaterThan(border.least);
  });

  test("is the one that takes the least paper, of all shapes of the list, in whatever order", () => {
    const list = [...circles, ...scalloped, { name: "own", outline: square(inches(2.3)) }];
    // A square of 2.3 in is more than a circle of 2 1/4 in.
    expect(nextUp(circle(inches(2)), inches(1 / 8), list).next?.die.name).toBe("circle 2 1/4 in");
    expect(nextUp(square(inches(2)), inches(3 / 16), list).next?.die.name).toMatch(/circle 3/);
    expect(nextUp(square(inches(2)), inches(3 / 16), [...list].reverse()).next?.die.name).toMatch(/circle 3/);
    expect(nextUp(square(inches(2)), inches(1 / 8), list).next?.die.name).toBe("own");
  });

  test("may be a wide one turned to be high", () => {
    const list: readonly Die[] = [{ name: "wide", outline: rectangleOf(inches(5), inches(4)) }];
    const tall = rectangleOf(inches(3.75), inches(4.75));
    expect(nextUp(tall, inches(1 / 8), list).next).toEqual({
      die: list[0],
      isTurned: true,
      border: { least: inches(1 / 8), most: Math.round(inches(1 / 8) * Math.SQRT2) },
    });
    expect(nextUp(quarterTurned(tall, 1), inches(1 / 8), list).next?.isTurned).toBe(false);
  });

  test("says how much is missing where none shows the border", () => {
    const { next, nearest, missing } = nextUp(circle(inches(3.5)), inches(1), circles);
    expect(next).toBe(null);
    expect(nearest?.die.name).toBe("circle 4 in");
    expect(nearest?.border.least).toBe(inches(0.25));
    expect(missing).toBe(inches(0.75));
    // Even the largest is too small to hold it.
    expect(nextUp(circle(inches(5)), inches(0.25), circles).missing).toBe(inches(0.75));
    expect(nextUp(circle(inches(5)), inches(0.25), [])).toEqual({
      next: null,
      nearest: null,
      missing: inches(0.25),
    });
  });

  test("refuses a border that is none", () => {
    for (const reveal of [-1, 0.5, Number.NaN, 20_000_000]) {
      expect(() => nextUp(circle(5000), reveal, circles)).toThrow(RangeError);
    }
  });

  test("shows the border, and no smaller die of the list does", () => {
    const sorts = [
      circles,
      scalloped,
      dieSet({ shape: "square", side: 9 }, { from: inches(1), to: inches(4) }),
    ];
    const anyDies = fc.shuffledSubarray(sorts.flat(), { minLength: 6, maxLength: 12 });
    const anyUpper = fc.record({
      shape: fc.constantFrom("circle", "square", "hexagon"),
      size: fc.integer({ min: inches(0.75), max: inches(3) }),
    });
    fc.assert(
      fc.property(
        anyDies,
        anyUpper,
        fc.integer({ min: 0, max: inches(0.5) }),
        (dies, { shape, size }, reveal) => {
          const upper =
            shape === "circle"
              ? circle(size)
              : shape === "square"
                ? square(size)
                : outlineOf({ shape: "polygon", sides: 6, diameter: size });
          const { next, nearest, missing } = nextUp(upper, reveal, dies);
          const area = next === null ? Number.POSITIVE_INFINITY : areaOf(outlineOfDie(next.die));
          if (next !== null)
            expect(borderOf(upper, outlineOfDie(next.die)).least).toBeGreaterThanOrEqual(reveal - 4);
          for (const die of dies) {
            const { least } = borderOf(upper, outlineOfDie(die));
            if (areaOf(outlineOfDie(die)) < area) expect(least).toBeLessThan(reveal - 4);
            if (nearest !== null) expect(least).toBeLessThanOrEqual(reveal - missing);
          }
        },
      ),
      some(0.4),
    );
  });
});
