import { describe, expect, test } from "vitest";
import {
  outlineOf,
  type Point,
  SAME_PITCH,
  type Scallops,
  type Shape,
  ShapeError,
  scallopsOf,
  spansOf,
} from "../../src/index.js";
import { arcOf, directionAt } from "../../src/outline/arc.js";
import { SIZES } from "./sized-shapes.js";

/** The valleys of an outline in their order: where it turns inwards. */
function valleysOf(shape: Shape): readonly Point[] {
  const spans = spansOf(outlineOf(shape).outer);
  return spans.flatMap((span, index) => {
    const next = spans[(index + 1) % spans.length] as typeof span;
    const end = directionAt(span, arcOf(span), "end");
    const start = directionAt(next, arcOf(next), "start");
    const isHollow = end.x * start.y - end.y * start.x < -0.02 || end.x * start.x + end.y * start.y < -0.5;
    return isHollow ? [span.to] : [];
  });
}

/** From each valley to the next. */
function pitchesOf(shape: Shape): readonly number[] {
  const valleys = valleysOf(shape);
  return valleys.map(({ x, y }, index) => {
    const next = valleys[(index + 1) % valleys.length] as Point;
    return Math.hypot(next.x - x, next.y - y);
  });
}

function reported(shape: Shape): Scallops {
  return scallopsOf(shape) as Scallops;
}

describe("scallops round a circle or an oval", () => {
  const shapes = SIZES.flatMap((size): readonly Shape[] => [
    { shape: "scalloped-circle", diameter: size },
    { shape: "scalloped-circle", diameter: size, pitch: Math.round(size / 9) },
    { shape: "scalloped-circle", diameter: size, count: 12, depth: Math.round(size / 20) },
    { shape: "scalloped-oval", width: size, height: Math.round(size * 0.8) },
    {
      shape: "scalloped-oval",
      width: Math.round(size * 0.55),
      height: size,
      pitch: Math.round(size / 12),
      depth: Math.round(size / 40),
    },
  ]);

  test("are as many as told, all within two ticks of the pitch told", () => {
    for (const shape of shapes) {
      const { count, rows } = reported(shape);
      const pitches = pitchesOf(shape);
      expect(pitches.length, JSON.stringify(shape)).toBe(count);
      expect(rows.length).toBe(1);
      for (const pitch of pitches) expect(Math.abs(pitch - (rows[0]?.pitch as number))).toBeLessThan(2);
    }
  });

  test("come as near to the wished pitch as a whole number of them can", () => {
    for (const diameter of SIZES) {
      const pitch = Math.round(diameter / 8);
      const { count, rows } = reported({ shape: "scalloped-circle", diameter, pitch });
      const off = (other: number) =>
        Math.abs(
          (reported({ shape: "scalloped-circle", diameter, count: other }).rows[0]?.pitch as number) - pitch,
        );
      const own = Math.abs((rows[0]?.pitch as number) - pitch);
      expect(own).toBeLessThanOrEqual(off(count - 1));
      expect(own).toBeLessThanOrEqual(off(count + 1));
    }
  });

  test("of an oval come as near to the wish as a multiple of four can", () => {
    const [width, height] = [162_560, 121_920];
    for (const pitch of [6_000, 10_160, 15_240, 20_320]) {
      const { count, rows } = reported({ shape: "scalloped-oval", width, height, pitch });
      const off = (other: number) =>
        Math.abs(
          (reported({ shape: "scalloped-oval", width, height, count: other }).rows[0]?.pitch as number) -
            pitch,
        );
      const own = Math.abs((rows[0]?.pitch as number) - pitch);
      expect(count % 4).toBe(0);
      expect(own).toBeLessThanOrEqual(off(count - 4));
      expect(own).toBeLessThanOrEqual(off(count + 4));
    }
  });

  test("of an oval as wide as high are those of a circle", () => {
    const oval = reported({
      shape: "scalloped-oval",
      width: 160_000,
      height: 160_000,
      count: 32,
      depth: 5_000,
    });
    const circle = reported({ shape: "scalloped-circle", diameter: 160_000, count: 32, depth: 5_000 });
    expect(oval.rows[0]?.pitch).toBeCloseTo(circle.rows[0]?.pitch as number, 2);
    expect(oval.depth).toBe(circle.depth);
  });

  test("have the depth asked for", () => {
    for (const depth of [900, 3_000, 7_001]) {
      const shape: Shape = { shape: "scalloped-circle", diameter: 160_000, count: 24, depth };
      const [first, second] = valleysOf(shape) as [Point, Point];
      const chord = 80_000 - Math.hypot((first.x + second.x) / 2 - 80_000, (first.y + second.y) / 2 - 80_000);
      expect(Math.abs(chord - depth)).toBeLessThan(1);
    }
  });

  test("are by default as deep as circles that touch", () => {
    // Common tangent in the valley: depth R sin(pi / n), up to the hair of room.
    for (const count of [5, 9, 15, 21, 60]) {
      const { depth } = reported({ shape: "scalloped-circle", diameter: 160_000, count });
      const touching = 80_000 * Math.sin(Math.PI / count);
      expect(depth).toBeLessThan(touching);
      expect(depth).toBeGreaterThan(touching - Math.sqrt(touching));
    }
  });
});

describe("scallops along straight sides", () => {
  const shapes = SIZES.flatMap((size): readonly Shape[] => [
    { shape: "scalloped-square", side: size },
    { shape: "scalloped-rectangle", width: Math.round(size * 0.77), height: size },
    {
      shape: "scalloped-rectangle",
      width: size,
      height: Math.round(size * 0.6),
      pitch: Math.round(size / 12),
    },
    {
      shape: "scalloped-rectangle",
      width: size,
      height: Math.round(size * 0.9),
      pitch: Math.round(size / 10),
      depth: Math.round(size / 40),
    },
  ]);

  test("are a whole number a side and one round each corner, all within two ticks of the pitches told", () => {
    for (const shape of shapes) {
      const { count, rows } = reported(shape);
      const pitches = pitchesOf(shape);
      const [across, down] = rows as [(typeof rows)[0], (typeof rows)[0]];
      const title = JSON.stringify(shape);
      expect(pitches.length, title).toBe(count);
      expect(count, title).toBe(2 * (across.count + down.count) + 4);
      const valleys = valleysOf(shape);
      const found = (isLevel: boolean) =>
        pitches.filter((_, index) => {
          const [one, other] = [valleys[index] as Point, valleys[(index + 1) % valleys.length] as Point];
          return isLevel ? one.y === other.y : one.x === other.x;
        });
      expect(found(true).length, title).toBe(2 * across.count);
      expect(found(false).length, title).toBe(2 * down.count);
      for (const pitch of found(true)) expect(Math.abs(pitch - across.pitch), title).toBeLessThan(2);
      for (const pitch of found(false)) expect(Math.abs(pitch - down.pitch), title).toBeLessThan(2);
    }
  });

  test("of a square are alike on all sides", () => {
    for (const side of SIZES) {
      const [across, down] = reported({ shape: "scalloped-square", side }).rows;
      expect(across?.count).toBe(down?.count);
      expect(across?.pitch).toBeCloseTo(down?.pitch as number, 6);
    }
  });

  test("have pitches along width and height that agree within 2 %, or as nearly as any counts near the wish do", () => {
    // Half circles: the narrower pitch p takes a half of it at either end, and the depth; the other side shares what is left.
    const pitchesFor = (sides: readonly [number, number], counts: readonly [number, number]) => {
      const narrow = Math.min(sides[0] / (counts[0] + 2), sides[1] / (counts[1] + 2));
      return sides.map((side, index) => (side - 2 * narrow) / (counts[index] as number)) as [number, number];
    };
    const differenceOf = ([one, other]: readonly [number, number]) =>
      Math.max(one, other) / Math.min(one, other) - 1;
    let [within, all] = [0, 0];
    for (const width of [60_960, 81_280, 101_600, 127_000, 143_256]) {
      for (let height = width; height <= 280_000; height += 6_667) {
        const { rows } = reported({ shape: "scalloped-rectangle", width, height });
        const difference = differenceOf(rows.map(({ pitch }) => pitch) as [number, number]);
        const wish = Math.min(15_240, Math.floor(width / 5));
        const least = Array.from({ length: 900 }, (_, index) =>
          pitchesFor([width, height], [1 + (index % 30), 1 + Math.floor(index / 30)]),
        )
          .filter((pitches) => pitches.every((pitch) => Math.abs(pitch / wish - 1) <= 0.25))
          .reduce((best, pitches) => Math.min(best, differenceOf(pitches)), Number.POSITIVE_INFINITY);
        expect(difference, `${width} x ${height}`).toBeLessThanOrEqual(Math.max(SAME_PITCH, least + 0.001));
        all += 1;
        if (difference <= SAME_PITCH) within += 1;
      }
    }
    expect(within / all).toBeGreaterThan(0.8);
  });

  test("take the nearest pitch to the wish among those that agree", () => {
    // 4 x 5 1/2 in: 3/8 in goes 10.67 and 14.67 times; with a scallop at every corner 11 and 15 do it.
    const { rows } = reported({
      shape: "scalloped-rectangle",
      width: 162_560,
      height: 223_520,
      pitch: 15_240,
    });
    expect(rows.map(({ count }) => count)).toEqual([9, 13]);
    expect(rows.every(({ pitch }) => Math.abs(pitch / 15_240 - 1) < 0.04)).toBe(true);
  });

  test("are half circles as wide as the side says: n on a side of n pitches", () => {
    // side / round(side / wished pitch), with half a bump of each corner on either end: computed.
    const { rows, depth } = reported({ shape: "scalloped-square", side: 160_000, pitch: 16_000 });
    expect(rows[0]?.count).toBe(8);
    expect(Math.abs((rows[0]?.pitch as number) - 16_000)).toBeLessThan(1);
    expect(depth).toBeGreaterThan(8_000 - Math.sqrt(8_000));
    expect(depth).toBeLessThan(8_000);
  });
});

describe("scallops that cannot be", () => {
  const refused: readonly (readonly [string, Shape, string])[] = [
    [
      "wider than a third of the circle",
      { shape: "scalloped-circle", diameter: 30_000, pitch: 10_001 },
      "pitch",
    ],
    ["narrower than 1 mm", { shape: "scalloped-circle", diameter: 30_000, pitch: 1_599 }, "pitch"],
    ["two of them", { shape: "scalloped-circle", diameter: 30_000, count: 2 }, "count"],
    ["too many of them", { shape: "scalloped-circle", diameter: 30_000, count: 90 }, "count"],
    [
      "deeper than touching",
      { shape: "scalloped-circle", diameter: 160_000, count: 20, depth: 12_600 },
      "depth",
    ],
    [
      "flatter than the circle",
      { shape: "scalloped-circle", diameter: 160_000, count: 20, depth: 1_100 },
      "depth",
    ],
    [
      "flatter than the tip of the oval",
      { shape: "scalloped-oval", width: 160_000, height: 80_000, count: 24, depth: 900 },
      "depth",
    ],
    [
      "no multiple of four round an oval",
      { shape: "scalloped-oval", width: 160_000, height: 120_000, count: 30 },
      "count",
    ],
    [
      "deeper than touching on an oval",
      { shape: "scalloped-oval", width: 160_000, height: 120_000, count: 40, depth: 7_000 },
      "depth",
    ],
    ["round a needle", { shape: "scalloped-oval", width: 160_000, height: 50_000 }, "width"],
    ["wider than a quarter of the side", { shape: "scalloped-square", side: 40_000, pitch: 10_001 }, "pitch"],
    [
      "deeper than half circles along a side",
      { shape: "scalloped-square", side: 160_000, pitch: 16_000, depth: 6_001 },
      "depth",
    ],
    ["more than a thousand", { shape: "scalloped-square", side: 1_600_000, pitch: 6_000 }, "pitch"],
  ];

  test.each(refused)("are refused: %s", (_, shape, key) => {
    expect(() => outlineOf(shape)).toThrow(ShapeError);
    expect(() => scallopsOf(shape)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ key }) }),
    );
  });

  test("a shape without scallops has none to tell of", () => {
    expect(scallopsOf({ shape: "heart", width: 40_000, height: 40_000 })).toBeNull();
    const outer = { shape: "scalloped-circle", diameter: 81_280, count: 15 } as const;
    expect(scallopsOf({ shape: "frame", outer, window: { shape: "circle", diameter: 40_000 } })?.count).toBe(
      15,
    );
  });
});
