import { describe, expect, test } from "vitest";
import { findCrossing } from "../../src/outline/find-crossing.js";

const points = (...list: readonly (readonly [number, number])[]) => list.map(([x, y]) => ({ x, y }));

describe("crossing lines", () => {
  test("are found in a bow tie", () => {
    expect(findCrossing([points([0, 0], [10, 10], [10, 0], [0, 10])])).not.toBeNull();
  });

  test("are found between two polygons, and where edges lie on each other", () => {
    const square = points([0, 0], [10, 0], [10, 10], [0, 10]);
    expect(findCrossing([square, points([5, 5], [20, 5], [20, 8])])).not.toBeNull();
    expect(findCrossing([square, points([10, 2], [20, 2], [20, 8], [10, 8])])).not.toBeNull();
    expect(findCrossing([square, points([2, 10], [8, 10], [5, 20])])).not.toBeNull();
  });

  test("are not what only touches: corners on corners and corners on edges", () => {
    const square = points([0, 0], [10, 0], [10, 10], [0, 10]);
    expect(findCrossing([square])).toBeNull();
    expect(findCrossing([square, points([10, 10], [20, 10], [20, 20])])).toBeNull();
    expect(findCrossing([square, points([10, 5], [20, 2], [20, 8])])).toBeNull();
  });

  test("are told exactly at 10 m, one tick apart", () => {
    const far = 16_000_000;
    const slope = points([0, 0], [far, far - 1], [0, far]);
    expect(findCrossing([slope, points([far / 2, 0], [far, 0], [far / 2, far / 2 - 1])])).toBeNull();
    expect(findCrossing([slope, points([far / 2, 0], [far, 0], [far / 2, far / 2 + 1])])).not.toBeNull();
  });
});
