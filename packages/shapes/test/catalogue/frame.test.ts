import { describe, expect, test } from "vitest";
import { areaOf, boxOf, middleOf, outlineOf, type Shape, ShapeError, symmetryOf } from "../../src/index.js";

const disc = (diameter: number): Shape => ({ shape: "circle", diameter });

describe("a frame", () => {
  test("is the outer shape less the window, middle on middle", () => {
    const ring = outlineOf({ shape: "frame", outer: disc(80_000), window: disc(60_000) });
    expect(areaOf(ring)).toBeCloseTo(areaOf(outlineOf(disc(80_000))) - areaOf(outlineOf(disc(60_000))), 3);
    const [window] = ring.windows;
    expect(boxOf({ outer: window as (typeof ring)["outer"], windows: [] })).toEqual({
      x: 10_000,
      y: 10_000,
      width: 60_000,
      height: 60_000,
    });
  });

  test("of two triangles has an even border", () => {
    const outer: Shape = { shape: "polygon", diameter: 80_000, sides: 3 };
    const window: Shape = { shape: "polygon", diameter: 50_000, sides: 3 };
    const { windows } = outlineOf({ shape: "frame", outer, window });
    const box = boxOf({ outer: windows[0] ?? [], windows: [] });
    // A triangle's sides lie half a radius from its middle: the border is half the difference of the radii.
    expect(Math.abs(60_000 - (box.y + box.height) - 7_500)).toBeLessThanOrEqual(1);
  });

  test("may have its window anywhere inside", () => {
    const card: Shape = { shape: "rectangle", width: 100_000, height: 140_000 };
    const { windows } = outlineOf({
      shape: "frame",
      outer: card,
      window: disc(40_000),
      at: { x: 8_000, y: 90_000 },
    });
    expect(boxOf({ outer: windows[0] ?? [], windows: [] })).toEqual({
      x: 8_000,
      y: 90_000,
      width: 40_000,
      height: 40_000,
    });
  });

  test("may be the outer shape of a frame with another window, but not overlap the first", () => {
    const card: Shape = { shape: "rectangle", width: 140_000, height: 100_000 };
    const one: Shape = { shape: "frame", outer: card, window: disc(40_000), at: { x: 10_000, y: 30_000 } };
    expect(
      outlineOf({ shape: "frame", outer: one, window: disc(40_000), at: { x: 90_000, y: 30_000 } }).windows
        .length,
    ).toBe(2);
    expect(() =>
      outlineOf({ shape: "frame", outer: one, window: disc(40_000), at: { x: 40_000, y: 30_000 } }),
    ).toThrow(ShapeError);
    expect(middleOf(one)).toEqual({ x: 70_000, y: 50_000 });
  });

  test.each([
    [1_600, true],
    [1_590, true],
    [1_610, false],
    [3_000, false],
  ])("whose window leaves 1 mm is made with a least bridge of %i ticks: %s", (leastBridge, isMade) => {
    const make = () => outlineOf({ shape: "frame", outer: disc(80_000), window: disc(76_800), leastBridge });
    if (isMade) expect(make().windows.length).toBe(1);
    else expect(make).toThrow(ShapeError);
  });

  test("is refused where the window lies outside, crosses the edge or is larger", () => {
    const at = (x: number, y: number) => () =>
      outlineOf({ shape: "frame", outer: disc(80_000), window: disc(20_000), at: { x, y } });
    expect(at(90_000, 0)).toThrow(ShapeError);
    expect(at(70_000, 30_000)).toThrow(ShapeError);
    expect(at(1, 1)).toThrow(ShapeError);
    expect(at(-5, 30_000)).toThrow(ShapeError);
    expect(() => outlineOf({ shape: "frame", outer: disc(20_000), window: disc(80_000) })).toThrow(
      ShapeError,
    );
    expect(at(30_000, 30_000)).not.toThrow();
  });

  test("is refused where the window would swallow another one", () => {
    const card: Shape = { shape: "square", side: 140_000 };
    const one: Shape = { shape: "frame", outer: card, window: disc(20_000) };
    expect(() => outlineOf({ shape: "frame", outer: one, window: disc(60_000) })).toThrow(
      "does not lie inside",
    );
  });

  test("says how much paper is left", () => {
    expect(() => outlineOf({ shape: "frame", outer: disc(80_000), window: disc(78_000) })).toThrow(
      "frame, window: found 1000 ticks of paper beside it, expected at least 2540 ticks of paper all round.",
    );
  });

  test("is as symmetric as both shapes", () => {
    const frame = (outer: Shape, window: Shape) => symmetryOf({ shape: "frame", outer, window });
    const hexagon: Shape = { shape: "polygon", diameter: 80_000, sides: 6 };
    const square: Shape = { shape: "square", side: 30_000 };
    expect(frame(hexagon, square)).toEqual({ upright: true, level: true, turns: 2 });
    expect(frame(disc(80_000), square).turns).toBe(4);
    expect(frame(disc(80_000), disc(40_000)).turns).toBe("any");
    expect(frame(hexagon, { shape: "heart", width: 30_000, height: 30_000 })).toEqual({
      upright: true,
      level: false,
      turns: 1,
    });
    expect(
      symmetryOf({ shape: "frame", outer: hexagon, window: square, at: { x: 15_000, y: 25_000 } }),
    ).toEqual({
      upright: false,
      level: true,
      turns: 1,
    });
  });
});
