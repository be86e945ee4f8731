import { describe, expect, test } from "vitest";
import { outlineOf, type Shape, ShapeError } from "../../src/index.js";

/** A shape as a caller without types might give it. */
function odd(shape: object): Shape {
  return shape as unknown as Shape;
}

const REFUSED: readonly (readonly [string, Shape, string, string])[] = [
  ["a circle of nothing", { shape: "circle", diameter: 0 }, "circle", "diameter"],
  ["a fraction of a tick", { shape: "circle", diameter: 100.5 }, "circle", "diameter"],
  ["a size that is no number", { shape: "oval", width: Number.NaN, height: 3_000 }, "oval", "width"],
  ["a size that is missing", odd({ shape: "oval", width: 3_000 }), "oval", "height"],
  ["an oval like a needle", { shape: "oval", width: 1_600, height: 16_001 }, "oval", "height"],
  ["a size as text", odd({ shape: "square", side: "3000" }), "square", "side"],
  ["an endless size", { shape: "arch", width: 5_000, height: Number.POSITIVE_INFINITY }, "arch", "height"],
  ["more than 10 m", { shape: "circle", diameter: 16_000_001 }, "circle", "diameter"],
  [
    "round corners beyond the middle",
    { shape: "rectangle", width: 9_000, height: 5_000, radius: 2_501 },
    "rectangle",
    "radius",
  ],
  [
    "ticket corners that nearly meet",
    { shape: "square", side: 5_000, corners: "ticket", radius: 2_001 },
    "square",
    "radius",
  ],
  ["a word that is none", odd({ shape: "square", side: 5_000, corners: "wavy" }), "square", "corners"],
  ["two sides", { shape: "polygon", diameter: 5_000, sides: 2 }, "polygon", "sides"],
  ["half a side", { shape: "polygon", diameter: 5_000, sides: 5.5 }, "polygon", "sides"],
  ["a star without notches", { shape: "star", diameter: 50_000, points: 5, depth: 4_700 }, "star", "depth"],
  ["a star of needles", { shape: "star", diameter: 50_000, points: 5, depth: 22_501 }, "star", "depth"],
  ["a heart as flat as a leaf", { shape: "heart", width: 9_000, height: 5_999 }, "heart", "height"],
  ["a heart as long as a carrot", { shape: "heart", width: 5_000, height: 10_001 }, "heart", "height"],
  [
    "an arch higher than a half circle",
    { shape: "arch", width: 5_000, height: 9_000, rise: 2_501 },
    "arch",
    "rise",
  ],
  ["a drop without a point", { shape: "drop", width: 5_000, height: 5_499 }, "drop", "height"],
  ["a tag cut to a spear", { shape: "tag", width: 5_000, height: 9_000, cut: 2_001 }, "tag", "cut"],
  ["a hole as wide as the tag", { shape: "tag", width: 50_000, height: 90_000, hole: 20_000 }, "tag", "hole"],
  [
    "a hole over the edge",
    { shape: "tag", width: 50_000, height: 90_000, hole: 9_000, holeFromTop: 6_000 },
    "tag",
    "holeFromTop",
  ],
  [
    "notches that meet",
    { shape: "banner", width: 50_000, height: 9_000, tail: "both", notch: 20_001 },
    "banner",
    "notch",
  ],
  [
    "a window over the edge",
    {
      shape: "frame",
      outer: { shape: "circle", diameter: 50_000 },
      window: { shape: "square", side: 36_000 },
    },
    "frame",
    "window",
  ],
  ["a name that is none", odd({ shape: "blob" }), "shape", "shape"],
];

describe("numbers that make no sense", () => {
  test.each(REFUSED)("are refused: %s", (_, shape, name, key) => {
    expect(() => outlineOf(shape)).toThrow(RangeError);
    expect(() => outlineOf(shape)).toThrow(ShapeError);
    expect(() => outlineOf(shape)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ shape: name, key }) }),
    );
  });

  test("say what, what was found, what was expected and what would help", () => {
    expect(() => outlineOf({ shape: "rectangle", width: 9_600, height: 6_400, radius: 4_000 })).toThrow(
      "rectangle, radius: found 4000 ticks (2.5 mm), expected a whole number of ticks from 0 ticks (0 mm) to " +
        "3200 ticks (2 mm) (half of the shorter side). Use a smaller radius or a larger shape.",
    );
    expect(() => outlineOf({ shape: "star", diameter: 81_280, points: 2 })).toThrow(
      "star, points: found 2, expected a whole number from 3 to 100. ",
    );
  });

  test("at the ends of their ranges shapes are still made", () => {
    const kept: readonly Shape[] = [
      { shape: "circle", diameter: 16 },
      { shape: "square", side: 16 },
      { shape: "oval", width: 1_600, height: 16_000 },
      { shape: "rectangle", width: 9_000, height: 5_000, radius: 2_500 },
      { shape: "polygon", diameter: 1_600, sides: 100 },
      { shape: "heart", width: 9_000, height: 6_000 },
      { shape: "heart", width: 5_000, height: 10_000 },
      { shape: "tag", width: 1_600, height: 1_600 },
      { shape: "scalloped-circle", diameter: 6_400 },
      { shape: "scalloped-oval", width: 6_400, height: 6_400 },
      { shape: "scalloped-square", side: 8_000 },
      { shape: "scalloped-square", side: 16_000_000 },
      { shape: "scalloped-circle", diameter: 16_000_000 },
    ];
    for (const shape of kept) expect(outlineOf(shape).outer.length, shape.shape).toBeGreaterThan(1);
  });
});
