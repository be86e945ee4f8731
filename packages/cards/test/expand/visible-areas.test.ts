import { describe, expect, test } from "vitest";
import { type CardLayer, visibleAreas } from "../../src/index.js";

function layer(x: number, y: number, width: number, height: number): CardLayer {
  const border = { left: 0, right: 0, top: 0, bottom: 0 };
  return { surface: "front", x, y, width, height, piece: "", on: null, border, text: null };
}

const surfaces = [{ name: "front", width: 10, height: 8 }] as const;

describe("visible areas", () => {
  test("of an empty front are all of the base", () => {
    expect(visibleAreas({ surfaces, layers: [] })).toEqual({ whole: 80n, base: 80n, layers: [] });
  });

  test("of a mat is the frame round what lies on it", () => {
    expect(visibleAreas({ surfaces, layers: [layer(1, 1, 8, 6), layer(2, 2, 6, 4)] })).toEqual({
      whole: 80n,
      base: 32n,
      layers: [24n, 24n],
    });
  });

  test("of layers that cross is what the later one leaves", () => {
    expect(visibleAreas({ surfaces, layers: [layer(0, 3, 10, 2), layer(4, 0, 2, 8)] })).toEqual({
      whole: 80n,
      base: 48n,
      layers: [16n, 16n],
    });
  });

  test("of a layer that several others cover together is nothing", () => {
    const layers = [layer(2, 2, 4, 4), layer(0, 0, 4, 8), layer(4, 0, 4, 8)];
    expect(visibleAreas({ surfaces, layers }).layers).toEqual([0n, 32n, 32n]);
  });

  test("count only what lies on the front", () => {
    expect(visibleAreas({ surfaces, layers: [layer(-5, -5, 8, 8), layer(8, 6, 100, 100)] })).toEqual({
      whole: 80n,
      base: 67n,
      layers: [9n, 4n],
    });
  });

  test("stay exact beyond what a float can count", () => {
    const side = 16_000_000;
    const layers = [layer(1, 1, side - 1, side - 1)];
    expect(visibleAreas({ surfaces: [{ name: "front", width: side, height: side }], layers })).toEqual({
      whole: 256_000_000_000_000n,
      base: 31_999_999n,
      layers: [255_999_968_000_001n],
    });
  });

  test("of many layers take no long time", () => {
    const layers = Array.from({ length: 600 }, (_, index) =>
      layer(index, index, 1200 - 2 * index, 1200 - 2 * index),
    );
    const { base, layers: areas } = visibleAreas({
      surfaces: [{ name: "front", width: 1200, height: 1200 }],
      layers,
    });
    expect(base).toBe(0n);
    expect(areas[0]).toBe(4n * 1199n);
    expect(areas[599]).toBe(4n);
  });
});
