import { inches, millimetres, TICKS_PER_MM } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { discOf, type Point, perforateLine, perforateWithHoles, pitchOf } from "../../src/index.js";

function lengthOf([from, to]: readonly [Point, Point]): number {
  return Math.hypot(to.x - from.x, to.y - from.y);
}

const anyPoint = fc.record({
  x: fc.integer({ min: -300_000, max: 300_000 }),
  y: fc.integer({ min: -300_000, max: 300_000 }),
});

const anyLine = fc.tuple(anyPoint, anyPoint).filter(([from, to]) => from.x !== to.x || from.y !== to.y);

describe("the pitch of perforations", () => {
  /* Print-trade perforation guides: teeth per inch and pitch in mm, the ends of ranges apart. */
  test.each([
    { tpi: 3, pitch: 8.47 },
    { tpi: 4, pitch: 6.35 },
    { tpi: 6, pitch: 4.233 },
    { tpi: 8, pitch: 3.175 },
    { tpi: 10, pitch: 2.54 },
    { tpi: 12, pitch: 2.117 },
    { tpi: 16, pitch: 1.587 },
    { tpi: 18, pitch: 1.411 },
    { tpi: 50, pitch: 0.508 },
    { tpi: 72, pitch: 0.353 },
  ])("of $tpi teeth per inch is $pitch mm, also along a line", ({ tpi, pitch }) => {
    expect(Math.abs(pitchOf({ teethPerInch: tpi }) / TICKS_PER_MM - pitch)).toBeLessThanOrEqual(
      pitch === 8.47 ? 0.005 : 0.00051,
    );
    // Ten inches with a cut at one end and a tie at the other hold a whole number exactly.
    const line = perforateLine(
      { x: 0, y: 0 },
      { x: inches(10), y: 0 },
      { teethPerInch: tpi, end: "tie", cutToTie: 1 },
    );
    expect(line.cuts.length).toBe(10 * tpi);
    expect(line.pitch).toBeCloseTo(pitchOf({ teethPerInch: tpi }), 6);
  });

  /* Philatelic perforation-gauge definitions: holes per 2 cm and pitch in mm. */
  test.each([
    { gauge: 2, pitch: 10 },
    { gauge: 7, pitch: 2.857 },
    { gauge: 10, pitch: 2 },
    { gauge: 10.5, pitch: 1.905 },
    { gauge: 11, pitch: 1.818 },
    { gauge: 12, pitch: 1.667 },
    { gauge: 14, pitch: 1.429 },
    { gauge: 16.5, pitch: 1.212 },
    { gauge: 18, pitch: 1.111 },
  ])("of gauge $gauge is $pitch mm, also along a line", ({ gauge, pitch }) => {
    expect(Math.abs(pitchOf({ gauge }) / TICKS_PER_MM - pitch)).toBeLessThanOrEqual(0.0005);
    // 40 cm hold whole numbers of all of these.
    const { holes, pitch: found } = perforateWithHoles(
      { x: 0, y: 0 },
      { x: millimetres(400), y: 0 },
      { gauge },
    );
    expect(holes.length).toBe(20 * gauge + 1);
    expect(found).toBeCloseTo(pitchOf({ gauge }), 6);
    expect(Math.abs((holes[0]?.diameter as number) - found / 2)).toBeLessThanOrEqual(1);
  });

  test.each([
    [{ teethPerInch: 0 }, "Expected a number of teeth per inch up to 127, found 0."],
    [{ teethPerInch: Number.NaN }, "found NaN"],
    [{ gauge: 101 }, "Expected a number of holes per 2 cm up to 100, found 101."],
    [{ gauge: -1 }, "found -1"],
  ])("is refused with a reason: %o", (wish, message) => {
    expect(() => pitchOf(wish)).toThrow(RangeError);
    expect(() => pitchOf(wish)).toThrow(message);
  });
});

describe("a line of cuts and ties", () => {
  const from = { x: 0, y: 0 };
  const to = { x: inches(1), y: 0 };

  test("begins and ends with a cut at free edges, with a tie at corners that must hold", () => {
    const wish = { teethPerInch: 8, cutToTie: 3 } as const;
    // round((25.4 + 0.79375) / 3.175) = 8 cuts with 7 ties.
    const cuts = perforateLine(from, to, wish);
    expect(cuts.cuts.length).toBe(8);
    expect(cuts.cuts[0]?.[0]).toEqual(from);
    expect(cuts.cuts[7]?.[1]).toEqual(to);
    // Eight cuts of three parts and seven ties of one make 31 parts.
    expect(cuts.cut).toBeCloseTo((inches(1) * 3) / 31, 6);
    expect(cuts.tie).toBeCloseTo(inches(1) / 31, 6);
    const ties = perforateLine(from, to, { ...wish, start: "tie", end: "tie" });
    expect(ties.cuts.length).toBe(8);
    expect(ties.cuts[0]?.[0]).toEqual({ x: Math.round(inches(1) / 33), y: 0 });
    expect(ties.cuts[7]?.[1]).toEqual({ x: Math.round((inches(1) * 32) / 33), y: 0 });
    const both = perforateLine(from, to, { ...wish, end: "tie" });
    expect(both.pitch).toBe(inches(1 / 8));
    expect(both.cuts[0]?.[0]).toEqual(from);
    expect(both.cuts[7]?.[1].x).toBeLessThan(inches(1));
  });

  test("is one cut where the line is short", () => {
    const { cuts } = perforateLine(from, { x: 1000, y: 0 }, { teethPerInch: 8 });
    expect(cuts).toEqual([[from, { x: 1000, y: 0 }]]);
  });

  test("is whole, on the line and equal for any line", () => {
    fc.assert(
      fc.property(
        anyLine,
        fc.integer({ min: 3, max: 40 }),
        fc.integer({ min: 1, max: 4 }),
        fc.constantFrom("cut" as const, "tie" as const),
        fc.constantFrom("cut" as const, "tie" as const),
        ([a, b], teethPerInch, cutToTie, start, end) => {
          const { cuts, pitch, cut, tie } = perforateLine(a, b, { teethPerInch, cutToTie, start, end });
          const length = lengthOf([a, b]);
          expect(Math.max(...cuts.map((each) => Math.abs(lengthOf(each) - cut)))).toBeLessThan(2);
          const between = cuts
            .slice(1)
            .map(([next], index) => lengthOf([cuts[index]?.[1] as Point, next]) - tie);
          expect(Math.max(0, ...between.map(Math.abs))).toBeLessThan(2);
          const off = cuts
            .flat()
            .map(({ x, y }) => Math.abs((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x)) / length);
          expect(Math.max(...off)).toBeLessThanOrEqual(0.75);
          const first = lengthOf([a, cuts[0]?.[0] as Point]);
          const last = lengthOf([cuts.at(-1)?.[1] as Point, b]);
          expect(Math.abs(first - (start === "tie" ? tie : 0))).toBeLessThan(1);
          expect(Math.abs(last - (end === "tie" ? tie : 0))).toBeLessThan(1);
          expect(cut / tie).toBeCloseTo(cutToTie, 6);
          // No other whole number fits the wish better, counted in pitches.
          const ties = cuts.length - 1 + (start === "tie" ? 1 : 0) + (end === "tie" ? 1 : 0);
          const wished = pitchOf({ teethPerInch });
          const asWished = ((cuts.length * cutToTie + ties) * wished) / (1 + cutToTie);
          if (cuts.length > 1) expect(Math.abs(length - asWished)).toBeLessThanOrEqual(wished / 2 + 1e-6);
          expect(pitch).toBeCloseTo(cut + tie, 6);
        },
      ),
    );
  });

  test("is refused with a reason", () => {
    expect(() => perforateLine(from, from, { teethPerInch: 8 })).toThrow(
      "two different points, found one from 0, 0",
    );
    expect(() => perforateLine(from, to, { teethPerInch: 72, cutToTie: 20 })).toThrow("found 20");
    expect(() => perforateLine(from, to, { teethPerInch: 8, cutToTie: 0 })).toThrow("found 0");
    expect(() => perforateWithHoles(from, to, { gauge: 10, diameter: 3200 })).toThrow("Half of the pitch");
  });
});

describe("a line of holes", () => {
  test("has one at each end and equal steps between", () => {
    fc.assert(
      fc.property(anyLine, fc.integer({ min: 4, max: 36 }), ([a, b], half) => {
        const { holes, pitch } = perforateWithHoles(a, b, { gauge: half / 2 });
        expect(holes[0]?.centre).toEqual(a);
        expect(holes.at(-1)?.centre).toEqual(b);
        const steps = holes
          .slice(1)
          .map(({ centre }, index) => lengthOf([holes[index]?.centre as Point, centre]) - pitch);
        expect(Math.max(...steps.map(Math.abs))).toBeLessThan(2);
        const count = lengthOf([a, b]) / pitchOf({ gauge: half / 2 });
        if (holes.length > 2) expect(Math.abs(count - (holes.length - 1))).toBeLessThanOrEqual(0.5);
      }),
    );
  });

  test("can be drawn as outlines", () => {
    const { holes } = perforateWithHoles({ x: 0, y: 0 }, { x: 6400, y: 0 }, { gauge: 10, diameter: 1000 });
    expect(holes.map(discOf).map(({ outer }) => outer.map(({ to }) => to.x))).toEqual([
      [500, -500],
      [3700, 2700],
      [6900, 5900],
    ]);
  });
});
