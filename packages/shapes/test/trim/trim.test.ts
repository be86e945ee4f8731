import { inches, TICKS_PER_MM } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  areaOf,
  boxOf,
  type Cut,
  cutLineOf,
  halvesOf,
  type Outline,
  outlineOf,
  perimeterOf,
  quartersOf,
  ringsOf,
  spansOf,
  type Trimmed,
  trim,
} from "../../src/index.js";
import { areaBySegments, circleOf, samplesOf } from "../dense-samples.js";
import { box, disc, lobed, pierced, polygonOutline } from "../plain-outlines.js";
import { anyOutline } from "../random-outline.js";

function areaOfAll(outlines: readonly Outline[]): number {
  return outlines.reduce((sum, outline) => sum + areaBySegments(outline), 0);
}

/** The area that rounding may add or take along all lines: a tick and a half. */
function slackOf(outline: Outline): number {
  return 1.5 * perimeterOf(outline) + 100;
}

describe("a flat trim", () => {
  test.each([1, 2, 5, 10, 19, 20, 25, 38])(
    "takes a segment of %d mm off a disc, as the formula says",
    (distance) => {
      const radius = 20;
      const whole = disc(0, 0, radius * TICKS_PER_MM);
      const cut: Cut = { from: "bottom", distance: distance * TICKS_PER_MM };
      const { outlines, flatEdges } = trim(whole, cut, "below");
      // Circular segment: A = r^2 acos((r - h) / r) - (r - h) sqrt(2 r h - h^2), chord 2 sqrt(2 r h - h^2).
      const half = Math.sqrt(2 * radius * distance - distance ** 2);
      const area = radius ** 2 * Math.acos((radius - distance) / radius) - (radius - distance) * half;
      expect(outlines.length).toBe(1);
      // Arcs through whole ticks hold to a tick along their whole length.
      const arc = 2 * radius * Math.acos((radius - distance) / radius);
      const off = areaOfAll(outlines) / TICKS_PER_MM ** 2 - area;
      expect(Math.abs(off)).toBeLessThan(arc / TICKS_PER_MM);
      expect(flatEdges.length).toBe(1);
      expect(Math.abs((flatEdges[0]?.length as number) / TICKS_PER_MM - 2 * half)).toBeLessThan(0.002);
      expect(boxOf(outlines[0] as Outline)).toMatchObject({
        y: (radius - distance) * TICKS_PER_MM,
        height: distance * TICKS_PER_MM,
      });
      const kept = trim(whole, cut, "above");
      const rest = Math.PI * radius ** 2 - area - areaOfAll(kept.outlines) / TICKS_PER_MM ** 2;
      expect(Math.abs(rest)).toBeLessThan((2 * Math.PI * radius - arc) / TICKS_PER_MM);
      expect(kept.flatEdges[0]?.length).toBe(flatEdges[0]?.length);
    },
  );

  test("lies exactly where it is wanted, level or upright", () => {
    const flower = lobed(14, 40_001);
    const { x, y, width, height } = boxOf(flower);
    for (const distance of [30, 10_161, 33_333]) {
      const top = trim(flower, { from: "top", distance }, "below");
      expect(new Set(top.flatEdges.flatMap(({ from, to }) => [from.y, to.y]))).toEqual(
        new Set([y + distance]),
      );
      const left = trim(flower, { from: "left", distance }, "right");
      expect(new Set(left.flatEdges.flatMap(({ from, to }) => [from.x, to.x]))).toEqual(
        new Set([x + distance]),
      );
      const right = trim(flower, { from: "right", distance }, "left");
      expect(Math.max(...right.outlines.map((part) => boxOf(part).x + boxOf(part).width))).toBe(
        x + width - distance,
      );
      const bottom = trim(flower, { from: "bottom", distance }, "above");
      expect(Math.max(...bottom.outlines.map((part) => boxOf(part).y + boxOf(part).height))).toBe(
        y + height - distance,
      );
    }
  });

  test("may be slanted, by a direction or by degrees", () => {
    const square = box(0, 0, 8000, 8000);
    const above = trim(square, { from: "centre", direction: { x: 1, y: 1 } }, "above");
    expect(above.outlines.map(areaOf)).toEqual([32_000_000]);
    expect(above.flatEdges).toEqual([
      expect.objectContaining({ length: expect.closeTo(8000 * Math.SQRT2, 6) }),
    ]);
    expect(above.outlines[0]?.outer.map(({ to }) => to)).toEqual(
      expect.arrayContaining([
        { x: 0, y: 0 },
        { x: 8000, y: 0 },
        { x: 8000, y: 8000 },
      ]),
    );
    const right = trim(square, { from: "centre", direction: { x: 1, y: 1 } }, "right");
    expect(right).toEqual(above);
    const left = trim(square, { from: "centre", direction: 45 }, "left");
    expect(left.outlines.map(areaOf)).toEqual([32_000_000]);
    // Through the middle of the lower side, so that as much is left as goes.
    const fromSide = trim(square, { from: "bottom", distance: 4000, direction: 30 }, "above");
    expect(areaOfAll(fromSide.outlines) / 64_000_000).toBeCloseTo(0.5, 3);
  });

  test("finds its flat edge where combining left an end two ticks beside it", () => {
    const round = disc(0, 0, 55_880);
    const cut: Cut = { from: "left", distance: 35_560, direction: -89 };
    const [above, below] = [trim(round, cut, "above"), trim(round, cut, "below")];
    expect(above.flatEdges.map(({ length }) => length)).toEqual(below.flatEdges.map(({ length }) => length));
    expect(above.flatEdges.length).toBe(1);
  });

  test("is measured across the cut from the centre, downwards or to the right", () => {
    const square = box(0, 0, 8000, 8000);
    const heights = (cut: Cut) => trim(square, cut, "above").outlines.map((part) => boxOf(part).height);
    expect(heights({ from: "centre", distance: 1000 })).toEqual([5000]);
    expect(heights({ from: "centre", distance: -1000 })).toEqual([3000]);
    const width = trim(square, { from: "centre", distance: 1000, direction: 90 }, "left").outlines[0];
    expect(boxOf(width as Outline).width).toBe(5000);
    expect(cutLineOf({ from: "centre", distance: 1000, direction: { x: 3, y: 4 } }, boxOf(square))).toEqual({
      through: { x: 4000 - 800, y: 4000 + 600 },
      along: { x: 3, y: 4 },
    });
    expect(cutLineOf({ from: "centre", direction: { x: -3, y: 4 } }, boxOf(square)).along).toEqual({
      x: 3,
      y: -4,
    });
    expect(cutLineOf({ from: "left", distance: 7 }, boxOf(square))).toEqual({
      through: { x: 7, y: 4000 },
      along: { x: 0, y: 1 },
    });
  });

  test("may leave all, nothing, or several parts with an edge each", () => {
    const square = box(0, 0, 8000, 8000);
    expect(trim(square, { from: "top", distance: -5 }, "above")).toEqual({ outlines: [], flatEdges: [] });
    expect(trim(square, { from: "top", distance: 9000 }, "above").outlines.map(areaOf)).toEqual([64_000_000]);
    const fork = polygonOutline(
      [
        [0, 0],
        [2, 0],
        [2, 6],
        [4, 6],
        [4, 0],
        [6, 0],
        [6, 8],
        [0, 8],
      ].map(([x, y]) => ({ x: 1000 * (x as number), y: 1000 * (y as number) })),
    );
    const tines = trim(fork, { from: "top", distance: 5000 }, "above");
    expect(tines.outlines.length).toBe(2);
    expect(tines.flatEdges.map(({ length }) => length)).toEqual([2000, 2000]);
    const ring = pierced(disc(0, 0, 20_000), disc(0, 0, 10_000));
    const arch = trim(ring, { from: "centre" }, "above");
    expect(arch.outlines.length).toBe(1);
    expect(arch.flatEdges.map(({ length }) => length)).toEqual([10_000, 10_000]);
  });

  test("lets a disc stand on a strip", () => {
    const circle = outlineOf({ shape: "circle", diameter: inches(2) });
    const { outlines, flatEdges } = trim(circle, { from: "bottom", distance: inches(1 / 4) }, "above");
    expect(boxOf(outlines[0] as Outline)).toEqual({ x: 0, y: 0, width: inches(2), height: inches(1.75) });
    expect(flatEdges[0]?.from.y).toBe(inches(1.75));
    // Half the chord is sqrt(1 - 0.75^2) in.
    expect(Math.abs((flatEdges[0]?.length as number) - inches(2) * Math.sqrt(1 - 0.75 ** 2))).toBeLessThan(2);
  });

  test.each([
    [{ from: "top", distance: 0.5 }, "above", "distance of a cut in whole ticks up to 10 m, found 0.5"],
    [
      { from: "top", distance: 5 },
      "left",
      "Expected above or below as the side to keep of a level cut, found left.",
    ],
    [{ from: "left", distance: 5 }, "above", "Expected left or right as the side to keep of an upright cut"],
    [{ from: "centre", direction: { x: 0, y: 0 } }, "above", "not both 0, found 0, 0"],
    [{ from: "centre", direction: { x: 1.5, y: 0 } }, "above", "found 1.5, 0"],
    [{ from: "centre", direction: Number.NaN }, "above", "in degrees, found NaN"],
  ] as const)("is refused with a reason: %o, %s", (cut, keep, message) => {
    const refused = () => trim(box(0, 0, 8000, 8000), cut, keep);
    expect(refused).toThrow(RangeError);
    expect(refused).toThrow(message);
  });
});

const anyCut: fc.Arbitrary<Cut> = fc.record({
  from: fc.constantFrom("top", "bottom", "left", "right", "centre"),
  distance: fc.oneof(
    fc.integer({ min: -20_000, max: 100_000 }),
    fc.integer({ min: 0, max: 20 }).map((n) => n * 5080),
  ),
  direction: fc.oneof(
    fc.constant(undefined),
    fc.integer({ min: -180, max: 180 }),
    fc
      .record({ x: fc.integer({ min: -9, max: 9 }), y: fc.integer({ min: -9, max: 9 }) })
      .filter(({ x, y }) => x !== 0 || y !== 0),
  ),
});

describe("a trim that rounding once left a tick beyond", () => {
  test("ends on its upright cut", () => {
    const places =
      "18744,-15991 14064,-15991 14064,-5230 22533,-5230 24130,0 84152,43192 14067,19605 715,24119";
    const corners = `${places} -17313,16808 -23078,7047 -45264,-34555 -5742,-64413`
      .split(" ")
      .map((place) => {
        const [x, y] = place.split(",").map(Number) as [number, number];
        return { to: { x, y } };
      });
    const cut = { from: "right", distance: 99_993 } as const;
    const outline = { outer: corners, windows: [] };
    expect(trim(outline, cut, "right").outlines.map(boxOf)[0]?.x).toBe(84_152 - 99_993);
    const [left] = trim(outline, cut, "left").outlines.map(boxOf);
    expect((left?.x ?? 0) + (left?.width ?? 0)).toBe(84_152 - 99_993);
  });
});

describe("trims of any outline", () => {
  test("lie on the kept side, add up to the whole, and have the same flat edges on both sides", () => {
    fc.assert(
      fc.property(anyOutline, anyCut, (outline, cut) => {
        const { through, along } = cutLineOf(cut, boxOf(outline));
        const length = Math.hypot(along.x, along.y);
        // Positive below the line, or to the left of an upright one.
        const off = ({ x, y }: { x: number; y: number }) =>
          (along.x * (y - through.y) - along.y * (x - through.x)) / length;
        const isUpright = along.x === 0;
        const first = trim(outline, cut, isUpright ? "right" : "above");
        const second = trim(outline, cut, isUpright ? "left" : "below");
        for (const [side, { outlines }] of [
          [-1, first],
          [1, second],
        ] as const) {
          const beyond = outlines.flatMap((part) => samplesOf(part, 2000)).map((point) => -side * off(point));
          expect(Math.max(0, ...beyond)).toBeLessThanOrEqual(3);
          const ends = outlines.flatMap(ringsOf).flatMap((ring) => ring.map(({ to }) => -side * off(to)));
          expect(Math.max(0, ...ends)).toBeLessThanOrEqual(along.x * along.y === 0 ? 0 : 1.5);
        }
        const sum = areaOfAll(first.outlines) + areaOfAll(second.outlines);
        expect(Math.abs(sum - areaBySegments(outline))).toBeLessThanOrEqual(slackOf(outline));
        // An edge of the outline itself along the cut has material on one side only.
        const hasOwn = ringsOf(outline)
          .flatMap(spansOf)
          .some((span) => {
            // Neither does what cuts only a few ticks off an arc, since arcs are cut as chords.
            const circle = circleOf(span);
            return circle === null
              ? Math.abs(off(span.from)) < 40 && Math.abs(off(span.to)) < 40
              : Math.abs(Math.abs(off(circle)) - circle.r) < 40;
          });
        const flat = ({ flatEdges }: Trimmed) => flatEdges.reduce((total, edge) => total + edge.length, 0);
        if (!hasOwn) expect(Math.abs(flat(first) - flat(second))).toBeLessThanOrEqual(40);
      }),
    );
  });

  test("into halves and quarters add up to the whole", () => {
    fc.assert(
      fc.property(anyOutline, fc.integer({ min: 0, max: 179 }), (outline, degrees) => {
        const whole = areaBySegments(outline);
        const halves = halvesOf(outline, degrees);
        expect(Math.abs(areaOfAll(halves.flatMap(({ outlines }) => outlines)) - whole)).toBeLessThanOrEqual(
          slackOf(outline),
        );
        const { topLeft, topRight, bottomLeft, bottomRight } = quartersOf(outline);
        const quarters = [topLeft, topRight, bottomLeft, bottomRight];
        expect(Math.abs(areaOfAll(quarters.flatMap(({ outlines }) => outlines)) - whole)).toBeLessThanOrEqual(
          2 * slackOf(outline),
        );
        const { x, y, width, height } = boxOf(outline);
        for (const part of topLeft.outlines.map(boxOf)) {
          expect(part.x + part.width).toBeLessThanOrEqual(Math.floor(x + width / 2) + 1);
          expect(part.y + part.height).toBeLessThanOrEqual(Math.floor(y + height / 2) + 1);
        }
      }),
    );
  });

  test("of a disc in halves and quarters are half circles and quarters", () => {
    const radius = 20_000;
    for (const degrees of [0, 90, 30, 45, 117]) {
      for (const { outlines, flatEdges } of halvesOf(disc(0, 0, radius), degrees)) {
        expect(areaOfAll(outlines) / ((Math.PI * radius ** 2) / 2)).toBeCloseTo(1, 4);
        expect(flatEdges.length).toBe(1);
        expect(Math.abs((flatEdges[0]?.length as number) - 2 * radius)).toBeLessThan(3);
      }
    }
    for (const { outlines, flatEdges } of Object.values(quartersOf(disc(0, 0, radius)))) {
      expect(areaOfAll(outlines) / ((Math.PI * radius ** 2) / 4)).toBeCloseTo(1, 4);
      expect(flatEdges.map(({ length }: { length: number }) => length)).toEqual([radius, radius]);
    }
  });
});
