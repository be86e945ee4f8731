import { inches, millimetres, TICKS_PER_MM } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  areaOf,
  boxOf,
  difference,
  isInside,
  leastDistance,
  type Outline,
  offset,
  type Point,
  perimeterOf,
  ringsOf,
  shadowOf,
  spansOf,
} from "../../src/index.js";
import { areaBySegments, circleOf, distanceTo, lengthByArcs, samplesOf } from "../dense-samples.js";
import { box, disc, pierced } from "../plain-outlines.js";
import { anyConvexPolygon, anyOutlines } from "../random-outline.js";

/** Each case makes several shadows and measures all gaps between them. */
const fewer = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 4) };

const mm = (value: number) => millimetres(value);

/** An O and an i: a disc with a window, a stem and a dot, in millimetres from the top left. */
const letterO = pierced(disc(mm(10), mm(20), mm(10)), disc(mm(10), mm(20), mm(6)));
const stem = box(mm(24), mm(12), mm(28), mm(30));
const dot = disc(mm(26), mm(5), mm(3));

function areaOfAll(outlines: readonly Outline[]): number {
  return outlines.reduce((sum, outline) => sum + areaOf(outline), 0);
}

/** To a tick and a half along all lines. */
function expectArea(outlines: readonly Outline[], squareMillimetres: number): void {
  const off = areaOfAll(outlines) - squareMillimetres * TICKS_PER_MM ** 2;
  const perimeter = outlines.reduce((sum, part) => sum + perimeterOf(part), 0);
  expect(Math.abs(off)).toBeLessThan(1.5 * perimeter);
}

describe("a shadow layer", () => {
  test("shows a border all round and keeps wide windows", () => {
    const { outlines, windows, closedWindows, joined } = shadowOf([letterO], { border: mm(1), fill: mm(2) });
    expect(outlines.length).toBe(1);
    expect({ windows, closedWindows, joined }).toEqual({ windows: 1, closedWindows: 0, joined: 0 });
    expectArea(outlines, Math.PI * (11 ** 2 - 5 ** 2));
  });

  test("closes windows and bays that are narrower than the fill, and says so", () => {
    // A window of 12 mm less a border of 1 mm on both sides leaves 10 mm.
    expect(shadowOf([letterO], { border: mm(1), fill: mm(10.1) })).toMatchObject({
      windows: 0,
      closedWindows: 1,
    });
    expect(shadowOf([letterO], { border: mm(1), fill: mm(9.9) })).toMatchObject({
      windows: 1,
      closedWindows: 0,
    });
    expect(shadowOf([letterO], { border: mm(6), fill: 0 })).toMatchObject({ windows: 0, closedWindows: 1 });
    // A comb: gaps of 4 mm less the border.
    const comb = [0, 8, 16].map((x) => box(mm(x), 0, mm(x + 4), mm(20)));
    const open = shadowOf([...comb, box(0, mm(16), mm(20), mm(20))], { border: mm(1), fill: mm(1.9) });
    const shut = shadowOf([...comb, box(0, mm(16), mm(20), mm(20))], { border: mm(1), fill: mm(2.1) });
    const whole = areaOfAll(offset([box(0, 0, mm(20), mm(20))], mm(1)).outlines);
    expect(areaOfAll(open.outlines) / whole).toBeLessThan(0.9);
    expect(areaOfAll(shut.outlines) / whole).toBeGreaterThan(0.98);
  });

  test("has no windows where all are to be filled", () => {
    const { outlines, windows, closedWindows } = shadowOf([letterO], { border: mm(1), windows: "fill" });
    expect({ windows, closedWindows }).toEqual({ windows: 0, closedWindows: 1 });
    expectArea(outlines, Math.PI * 11 ** 2);
  });

  test("keeps parts apart or joins them, as is wanted", () => {
    const word = [letterO, stem, dot];
    const apart = shadowOf(word, { border: mm(1), fill: 0 });
    expect(apart).toMatchObject({ joined: 0 });
    expect(apart.outlines.length).toBe(3);
    // Between the stem and the dot 2 mm are left, between the O and the stem 2 mm.
    expect(shadowOf(word, { border: mm(1), fill: 0, join: mm(1.9) }).outlines.length).toBe(3);
    const joined = shadowOf(word, { border: mm(1), fill: 0, join: mm(2.1) });
    expect(joined.outlines.length).toBe(1);
    expect(joined.joined).toBe(2);
    // The neck between dot and stem is as wide as a line with its border.
    const neck = joined.outlines
      .flatMap((part) => samplesOf(part, 200))
      .filter(({ y }) => y > mm(9.5) && y < mm(10.5));
    const ofStem = neck.filter(({ x }) => x > mm(22)).map(({ x }) => x);
    expect(Math.min(...ofStem)).toBeGreaterThan(mm(24.9));
    expect(Math.max(...ofStem)).toBeLessThan(mm(27.1));
  });

  test("joins stems that are as near all along in the middle", () => {
    const stems = [box(0, 0, mm(4), mm(20)), box(mm(8), 0, mm(12), mm(20))];
    const { outlines } = shadowOf(stems, { border: mm(1), fill: 0, join: mm(2.5) });
    expect(outlines.length).toBe(1);
    const inside = (y: number) => isInside(outlines[0] as Outline, { x: mm(6), y: mm(y) });
    expect([8.9, 9.1, 10, 10.9, 11.1].map(inside)).toEqual([false, true, true, true, false]);
  });

  test("of a convex outline grows as Steiner's formula says", () => {
    fc.assert(
      fc.property(anyConvexPolygon, fc.integer({ min: 500, max: 10_000 }), (outline, border) => {
        const { outlines } = shadowOf([outline], { border });
        expect(outlines.length).toBe(1);
        // A + P d + pi d^2
        const area = areaBySegments(outline) + lengthByArcs(outline) * border + Math.PI * border ** 2;
        expectArea(outlines, area / TICKS_PER_MM ** 2);
      }),
    );
  });

  test.each([
    [{ border: 0 }, "the border of a shadow in whole ticks, at least 1"],
    [{ border: 1.5 }, "found 1.5"],
    [{ border: 5, fill: -1 }, "the width of gaps to fill in whole ticks, at least 0"],
    [{ border: 5, join: Number.NaN }, "the distance at which parts are joined"],
  ])("is refused with a reason: %o", (options, message) => {
    expect(() => shadowOf([stem], options)).toThrow(RangeError);
    expect(() => shadowOf([stem], options)).toThrow(message);
  });
});

/** Up to so many of a list, spread over it. */
function someOf<Value>(list: readonly Value[], count: number): readonly Value[] {
  const step = Math.max(1, list.length / count);
  return list.filter((_, index) => Math.floor(index / step) > Math.floor((index - 1) / step));
}

const anyShadow = fc.record({
  border: fc.integer({ min: 800, max: inches(1 / 4) }),
  fill: fc.oneof(fc.constant(0), fc.integer({ min: 800, max: inches(3 / 8) })),
});

describe("the shadow of any motif", () => {
  test("holds the motif grown by the border, and shows at least the border", () => {
    fc.assert(
      fc.property(anyOutlines, anyShadow, (motif, { border, fill }) => {
        const { outlines } = shadowOf(motif, { border, fill });
        const grown = offset(motif, border).outlines;
        const perimeter = grown.reduce((sum, part) => sum + perimeterOf(part), 0);
        // Slivers: less than a tick and a half along all lines.
        expect(areaOfAll(difference(grown, outlines))).toBeLessThanOrEqual(1.5 * perimeter);
        const shown = someOf(
          outlines.flatMap((part) => samplesOf(part, 4000)),
          24,
        ).map((point) => Math.min(...motif.map((part) => distanceTo(part, point))));
        expect(Math.min(...shown)).toBeGreaterThanOrEqual(border - 6);
        if (fill === 0) expect(Math.max(...shown)).toBeLessThanOrEqual(border + 6);
      }),
      fewer,
    );
  });

  test("leaves no gap that a disc of the fill's width cannot sweep", () => {
    fc.assert(
      fc.property(anyOutlines, anyShadow, (motif, { border, fill }) => {
        const { outlines } = shadowOf(motif, { border, fill });
        const radius = fill / 2;
        // A disc that touches the edge from outside reaches in nowhere else.
        const free = someOf(
          outlines.flatMap((part) => touching(part, radius)),
          24,
        ).map((centre) =>
          Math.min(...outlines.map((part) => (isInside(part, centre) ? 0 : distanceTo(part, centre)))),
        );
        expect(Math.min(radius, ...free)).toBeGreaterThanOrEqual(radius - 8);
      }),
      fewer,
    );
  });

  test("has parts no nearer to each other than those that are joined", () => {
    fc.assert(
      fc.property(anyOutlines, anyShadow, fc.integer({ min: 1, max: 20_000 }), (motif, { border }, join) => {
        const { outlines } = shadowOf(motif, { border, fill: 0, join });
        const gaps = outlines.flatMap((part, index) =>
          outlines.slice(index + 1).map((other) => leastDistance(part, other).distance),
        );
        expect(Math.min(Number.POSITIVE_INFINITY, ...gaps)).toBeGreaterThanOrEqual(join - 4);
        for (const part of motif) {
          const { x, y, width, height } = boxOf(part);
          const held = outlines
            .map(boxOf)
            .some(
              (whole) =>
                whole.x <= x - border + 3 &&
                whole.y <= y - border + 3 &&
                whole.x + whole.width >= x + width + border - 3 &&
                whole.y + whole.height >= y + height + border - 3,
            );
          expect(held).toBe(true);
        }
      }),
      fewer,
    );
  });
});

/** The centres of discs that touch the edges from outside in their middles. */
function touching(outline: Outline, radius: number): readonly Point[] {
  return ringsOf(outline)
    .flatMap(spansOf)
    .flatMap((span) => {
      const { from, to } = span;
      const chord = Math.hypot(to.x - from.x, to.y - from.y);
      // The direction of shorter edges is rounding.
      if (chord < 60) return [];
      const circle = circleOf(span);
      if (circle === null) {
        const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
        return [
          {
            x: middle.x + ((to.y - from.y) * radius) / chord,
            y: middle.y - ((to.x - from.x) * radius) / chord,
          },
        ];
      }
      const angle = (circle.start + circle.end) / 2;
      const reach = circle.r + Math.sign(circle.end - circle.start) * radius;
      return [{ x: circle.x + reach * Math.cos(angle), y: circle.y + reach * Math.sin(angle) }];
    });
}
