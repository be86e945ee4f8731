import { inches } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { smallestBridge, smallestGap, type ThinPlace, thinPlaces } from "../../src/bridge/thin-places.js";
import { outlineOf } from "../../src/catalogue/outline-of.js";
import { union } from "../../src/clip/combine.js";
import { inscribedCircle } from "../../src/measure/inscribed-circle.js";
import { isInside } from "../../src/measure/inside.js";
import { distanceFrom } from "../../src/measure/least-distance.js";
import { offset } from "../../src/offset/offset.js";
import { mirrored, moved, quarterTurned } from "../../src/outline/move.js";
import { type Edge, type Outline, type Ring, reversedRing } from "../../src/outline/outline.js";
import { distance } from "../../src/outline/point.js";
import { anyOutline, discAt, lobedDisc, rectangleOf, roundedRectangle } from "../random-outline.js";

const ring = (...corners: readonly (readonly [number, number])[]): Ring =>
  corners.map(([x, y]): Edge => ({ to: { x, y } }));
const bare = (outer: Ring): Outline => ({ outer, windows: [] });
const framed = ({ outer }: Outline, ...windows: readonly Outline[]): Outline => ({
  outer,
  windows: windows.map((window) => reversedRing(window.outer)),
});
/** A part of the usual number of cases, for what takes longer. */
const some = (share: number) => ({ numRuns: Math.ceil((fc.readConfigureGlobal()?.numRuns ?? 100) * share) });

const widths = (places: readonly ThinPlace[]) =>
  places.map(({ kind, width }) => `${kind} ${Math.round(width)}`);
const widthOf = (place: ThinPlace | null) => place?.width ?? Number.NaN;

/** Two triangles that meet over a waist of the given width, along x. */
const hourGlass = (waist: number) =>
  bare(
    ring(
      [0, 0],
      [50_000, 40_000 - waist / 2],
      [100_000, 0],
      [100_000, 80_000],
      [50_000, 40_000 + waist / 2],
      [0, 80_000],
    ),
  );

/** Teeth of one width with gaps of another, below a bar. */
function comb(teeth: number, tooth: number, gap: number, length: number, bar: number): Outline {
  const corners: [number, number][] = [[0, 0]];
  const width = teeth * tooth + (teeth - 1) * gap;
  corners.push([width, 0]);
  for (let n = teeth - 1; n >= 0; n -= 1) {
    const left = n * (tooth + gap);
    if (n < teeth - 1) corners.push([left + tooth, bar]);
    corners.push([left + tooth, bar + length], [left, bar + length]);
    if (n > 0) corners.push([left, bar]);
  }
  return bare(ring(...corners));
}

describe("the smallest bridge", () => {
  test("of an hour-glass is its waist, between its two corners", () => {
    for (const waist of [2, 200, 3000, 12_000]) {
      const place = smallestBridge(hourGlass(waist));
      expect(place?.width).toBe(waist);
      expect([place?.from.x, place?.to.x]).toEqual([50_000, 50_000]);
      expect(widthOf(smallestBridge(quarterTurned(hourGlass(waist), 1)))).toBe(waist);
      expect(widthOf(smallestBridge(mirrored(hourGlass(waist))))).toBe(waist);
    }
  });

  test("of a waist between hollow arcs is the distance of their circles", () => {
    const outline = bare([
      { to: { x: 80_000, y: 0 } },
      { to: { x: 80_000, y: 60_000 } },
      { to: { x: 60_000, y: 60_000 } },
      { to: { x: 20_000, y: 60_000 }, through: { x: 40_000, y: 40_000 } },
      { to: { x: 0, y: 60_000 } },
      { to: { x: 0, y: 0 } },
      { to: { x: 20_000, y: 0 } },
      { to: { x: 60_000, y: 0 }, through: { x: 40_000, y: 20_000 } },
    ]);
    // Both half circles have a radius of 20 000 and stand 60 000 apart.
    expect(widthOf(smallestBridge(outline))).toBeCloseTo(20_000, 6);
    expect(smallestBridge(outline)?.from.x).toBeCloseTo(40_000, 6);
  });

  test("of two discs grown together is their common chord, that of two windows grown together a gap", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10_000, max: 60_000 }),
        fc.integer({ min: 10_000, max: 60_000 }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (one, other, part) => {
          // Apart enough that both middles lie beyond the chord, near enough that there is one.
          const near = Math.sqrt(Math.abs(one * one - other * other)) * 1.05 + 1000;
          const apart = Math.round(near + (one + other - near) * part);
          fc.pre(apart < one + other - 100);
          const [grown] = union([discAt({ x: 0, y: 0 }, one), discAt({ x: apart, y: 0 }, other)]);
          const along = (apart + (one * one - other * other) / apart) / 2;
          const chord = 2 * Math.sqrt(one * one - along * along);
          // Each line may be off by three ticks, so that each crossing moves by up to the sum over the sine of their angle.
          const room = 2 + (2 * (3 + 3)) / ((apart * (chord / 2)) / (one * other));
          expect(Math.abs(widthOf(smallestBridge(grown as Outline)) - chord)).toBeLessThan(room);
          const sheet = moved(rectangleOf(900_000, 900_000), { x: -450_000, y: -450_000 });
          const gap = smallestGap({ outer: sheet.outer, windows: [reversedRing((grown as Outline).outer)] });
          expect(Math.abs(widthOf(gap) - chord)).toBeLessThan(room);
        },
      ),
    );
  });

  test("of a ring is its width, of one whose window stands aside the narrow side", () => {
    const disc = discAt({ x: 0, y: 0 }, 40_640);
    expect(widthOf(smallestBridge(framed(disc, discAt({ x: 0, y: 0 }, 35_560))))).toBeCloseTo(5080, 0);
    const aside = smallestBridge(framed(disc, discAt({ x: 3000, y: 0 }, 35_560)));
    expect(widthOf(aside)).toBeCloseTo(2080, 1);
    expect(Math.max(aside?.from.x ?? 0, aside?.to.x ?? 0)).toBeCloseTo(40_640, 0);
  });

  test("of a frame is the side that its window comes nearest to, also at a corner or an arc", () => {
    const sheet = rectangleOf(100_000, 80_000);
    const at = (x: number, y: number) => framed(sheet, moved(rectangleOf(50_000, 40_000), { x, y }));
    expect(widthOf(smallestBridge(at(2000, 10_000)))).toBe(2000);
    expect(widthOf(smallestBridge(at(25_000, 39_000)))).toBe(1000);
    // A diamond points at the side.
    const diamond = bare(ring([50_000, 1500], [70_000, 40_000], [50_000, 70_000], [30_000, 40_000]));
    expect(widthOf(smallestBridge(framed(sheet, diamond)))).toBe(1500);
    expect(widthOf(smallestBridge(framed(sheet, discAt({ x: 50_000, y: 30_500 }, 30_000))))).toBeCloseTo(
      500,
      3,
    );
    // The corner of a window near a round edge.
    const round = framed(
      discAt({ x: 0, y: 0 }, 50_000),
      moved(rectangleOf(60_000, 70_000), { x: -30_000, y: -35_000 }),
    );
    expect(widthOf(smallestBridge(round))).toBeCloseTo(
      50_000 - Math.sqrt(30_000 * 30_000 + 35_000 * 35_000),
      3,
    );
  });

  test("lies between two windows where they are near", () => {
    const sheet = rectangleOf(100_000, 80_000);
    const one = moved(rectangleOf(20_000, 40_000), { x: 20_000, y: 20_000 });
    expect(widthOf(smallestBridge(framed(sheet, one, moved(one, { x: 21_000, y: 0 }))))).toBe(1000);
    const discs = framed(
      sheet,
      discAt({ x: 30_000, y: 40_000 }, 15_000),
      discAt({ x: 61_200, y: 40_000 }, 15_000),
    );
    expect(widthOf(smallestBridge(discs))).toBeCloseTo(1200, 6);
  });

  test("of a strip is its width, also where it stands slanting, of a comb that of its teeth", () => {
    expect(widthOf(smallestBridge(rectangleOf(80_000, 3000)))).toBe(3000);
    // 3-4-5: 30 000 long towards (4, 3), 2500 wide towards (-3, 4). And one whose corners are rounded.
    expect(
      widthOf(smallestBridge(bare(ring([0, 0], [24_000, 18_000], [22_500, 20_000], [-1500, 2000])))),
    ).toBeCloseTo(2500, 6);
    const slanted = bare(ring([0, 0], [24_001, 18_007], [22_500, 20_008], [-1501, 2001]));
    expect(Math.abs(widthOf(smallestBridge(slanted)) - 2501)).toBeLessThan(3);
    expect(widthOf(smallestBridge(comb(9, 1600, 2400, 30_000, 8000)))).toBe(1600);
  });

  test("is none in what is widest in its middle: a disc, a square, a lobed circle, convex polygons, an oval", () => {
    for (const outline of [
      discAt({ x: 0, y: 0 }, 40_640),
      rectangleOf(40_000, 40_000),
      roundedRectangle(40_000, 40_000, 8000),
      lobedDisc(12, 40_640, 10_000),
      lobedDisc(7, 40_640, 5000),
      bare(ring([0, 0], [60_000, 0], [20_000, 50_000])),
      outlineOf({ shape: "oval", width: 90_000, height: 60_000 }),
      outlineOf({ shape: "polygon", sides: 6, diameter: 81_280 }),
      outlineOf({ shape: "circle", diameter: 81_281 }),
    ]) {
      expect(smallestBridge(outline)).toBe(null);
    }
    expect(smallestGap(discAt({ x: 0, y: 0 }, 40_640))).toBe(null);
    expect(smallestGap(rectangleOf(40_000, 40_000))).toBe(null);
  });

  test("runs between parallel sides as far as they face each other, in a trapezium too", () => {
    const trapezium = bare(ring([0, 0], [60_000, 0], [50_000, 20_000], [10_000, 20_001]));
    expect(Math.abs(widthOf(smallestBridge(trapezium)) - 20_000)).toBeLessThan(1.5);
    expect(widthOf(smallestBridge(outlineOf({ shape: "rectangle", width: 60_000, height: 40_000 })))).toBe(
      40_000,
    );
  });

  test("is 0 where an outline touches itself", () => {
    const squares = bare(
      ring([0, 0], [50, 0], [50, 50], [100, 50], [100, 100], [50, 100], [50, 50], [0, 50]).map(({ to }) => ({
        to: { x: to.x * 100, y: to.y * 100 },
      })),
    );
    expect(widthOf(smallestBridge(squares))).toBe(0);
    expect(widthOf(smallestGap(squares))).toBe(0);
    const touching = framed(rectangleOf(60_000, 60_000), discAt({ x: 30_000, y: 20_000 }, 20_000));
    expect(widthOf(smallestBridge(touching))).toBe(0);
  });
});

describe("the smallest gap", () => {
  test("of a comb is that between its teeth, of a slot its width", () => {
    expect(widthOf(smallestGap(comb(9, 2400, 1600, 30_000, 8000)))).toBe(1600);
    const slot = framed(
      rectangleOf(100_000, 80_000),
      moved(rectangleOf(50_000, 800), { x: 20_000, y: 20_000 }),
    );
    expect(widthOf(smallestGap(slot))).toBe(800);
  });

  test("lies at the mouth of a bay, between its two corners", () => {
    // A square bay of 40 000 with a mouth of 3000.
    const bay = bare(
      ring(
        [0, 0],
        [80_000, 0],
        [80_000, 80_000],
        [41_500, 80_000],
        [41_500, 60_000],
        [60_000, 60_000],
        [60_000, 20_000],
        [20_000, 20_000],
        [20_000, 60_000],
        [38_500, 60_000],
        [38_500, 80_000],
        [0, 80_000],
      ),
    );
    expect(widthOf(smallestGap(bay))).toBe(3000);
  });

  test("is that of the bridge where paper and air change places", () => {
    const window = moved(hourGlass(700), { x: 50_000, y: 50_000 });
    expect(widthOf(smallestGap(framed(rectangleOf(300_000, 200_000), window)))).toBe(700);
  });
});

describe("thin places", () => {
  test("are all those below a width, of paper and of air, the narrowest first", () => {
    const places = thinPlaces(comb(4, 1600, 800, 30_000, 8000), 2000);
    expect(widths(places)).toEqual([
      "gap 800",
      "gap 800",
      "gap 800",
      "bridge 1600",
      "bridge 1600",
      "bridge 1600",
      "bridge 1600",
    ]);
    expect(thinPlaces(comb(4, 1600, 800, 30_000, 8000), 800)).toEqual([]);
    expect(thinPlaces(rectangleOf(90_000, 80_000), inches(0.25))).toEqual([]);
    expect(() => thinPlaces(rectangleOf(9, 8), 0)).toThrow(RangeError);
    expect(() => thinPlaces(rectangleOf(9, 8), Number.NaN)).toThrow(RangeError);
  });

  test("are the necks of all lobes that are more than half round, the tag's hole and the middles of a frame's sides", () => {
    for (const count of [4, 5, 6, 12, 30]) {
      // Lobes that are higher than half their chord.
      const chord = 2 * 60_000 * Math.sin(Math.PI / count);
      const necks = thinPlaces(lobedDisc(count, 60_000, chord * 0.55), chord + 3);
      const bridges = necks.filter(({ kind }) => kind === "bridge");
      expect(bridges.length).toBe(count);
      for (const { width } of bridges) expect(Math.abs(width - chord)).toBeLessThan(1.5);
    }
    const tag = outlineOf({ shape: "tag", width: 60_000, height: 120_000 });
    expect(thinPlaces(tag, 12_000).length).toBe(1);
    const window = moved(rectangleOf(76_000, 96_000), { x: 2000, y: 2000 });
    const sides = thinPlaces(framed(rectangleOf(80_000, 100_000), window), 2540);
    expect(widths(sides)).toEqual(["bridge 2000", "bridge 2000", "bridge 2000", "bridge 2000"]);
    const middles = sides.map(({ from, to }) => `${(from.x + to.x) / 2}, ${(from.y + to.y) / 2}`).sort();
    expect(middles).toEqual(["1000, 50000", "40000, 1000", "40000, 99000", "79000, 50000"]);
  });

  test("have their ends on the line, their middle in the paper or in the air, and nothing nearer", () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        for (const { kind, width, from, to } of thinPlaces(outline, 60_000)) {
          expect(distanceFrom(outline, from).distance).toBeLessThan(0.1);
          expect(distanceFrom(outline, to).distance).toBeLessThan(0.1);
          expect(Math.abs(distance(from, to) - width)).toBeLessThan(1.1);
          if (width < 5) continue;
          const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
          expect(isInside(outline, middle)).toBe(kind === "bridge");
          expect(Math.abs(distanceFrom(outline, middle).distance - width / 2)).toBeLessThan(3);
        }
      }),
      some(0.5),
    );
  });
});

describe("an inward offset", () => {
  test("splits an outline or opens a ring at half its smallest bridge, not before", () => {
    const sheet = rectangleOf(100_000, 80_000);
    for (const outline of [
      hourGlass(3000),
      hourGlass(12_000),
      framed(discAt({ x: 0, y: 0 }, 40_640), discAt({ x: 3000, y: 0 }, 35_560)),
      framed(sheet, moved(rectangleOf(50_000, 40_000), { x: 2000, y: 10_000 })),
      framed(sheet, discAt({ x: 30_000, y: 40_000 }, 15_000), discAt({ x: 61_200, y: 40_000 }, 15_000)),
    ]) {
      const width = widthOf(smallestBridge(outline));
      const parts = (by: number) => {
        const { outlines } = offset([outline], -Math.round(by));
        return `${outlines.length} with ${outlines.reduce((sum, { windows }) => sum + windows.length, 0)} windows`;
      };
      expect(parts(width / 2 - 5)).toBe(`1 with ${outline.windows.length} windows`);
      expect(parts(width / 2 + 5)).not.toBe(`1 with ${outline.windows.length} windows`);
    }
  });

  test("leaves any outline whole up to half its smallest bridge, or to its widest place", () => {
    fc.assert(
      fc.property(anyOutline, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (outline, part) => {
        const bridge = smallestBridge(outline);
        const room = inscribedCircle(outline).radius;
        const most = bridge === null ? room : Math.min(room, bridge.width / 2);
        const by = Math.floor(most * part) - 8;
        fc.pre(by > 0);
        const { outlines } = offset([outline], -by);
        expect(outlines.length).toBe(1);
        expect(outlines[0]?.windows.length).toBe(outline.windows.length);
      }),
      some(0.4),
    );
  });
});
