import { describe, expect, test } from "vitest";
import { clip } from "../../src/clip/clip.js";
import { findCrossing, withCrossingsAsCorners } from "../../src/outline/find-crossing.js";

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

describe("crossings as corners", () => {
  test("let edges cross at corners only", () => {
    const cross = [points([0, 4], [10, 4], [10, 6], [0, 6]), points([4, 0], [6, 0], [6, 10], [4, 10])];
    const [level, upright] = withCrossingsAsCorners(cross);
    expect(level).toEqual(points([0, 4], [4, 4], [6, 4], [10, 4], [10, 6], [6, 6], [4, 6], [0, 6]));
    expect(upright).toHaveLength(8);
    expect(findCrossing([level ?? []])).toBeNull();
  });

  test("join a corner that lies a hair beyond an edge to that edge", () => {
    // The corner (2188, 9267) lies 0.1 tick beyond the line from (2233, 9299) to (2009, 9139).
    const edge = points([2233, 9299], [2009, 9139], [2009, 9600]);
    const corner = points([2116, 9203], [2188, 9267], [2268, 9318], [2268, 9100]);
    expect(findCrossing([edge, corner])).not.toBeNull();
    const joined = clip("union", withCrossingsAsCorners([edge, corner])).map(({ outer }) => outer);
    expect(findCrossing(joined)).toBeNull();
  });

  test("leave what only touches as it is", () => {
    const square = points([0, 0], [10, 0], [10, 10], [0, 10]);
    const other = points([10, 5], [20, 2], [20, 8]);
    expect(withCrossingsAsCorners([square, other])).toEqual([square, other]);
  });
});
