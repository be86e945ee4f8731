import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type CutPath,
  endOf,
  nearestFirst,
  type Point,
  rectangleOutline,
} from "../../src/cutter/cut-path.js";

const line = (x1: number, y1: number, x2: number, y2: number): CutPath => ({
  points: [
    [x1, y1],
    [x2, y2],
  ],
  closed: false,
});

describe("rectangleOutline", () => {
  test("runs clockwise for pieces, the other way for windows (y points down)", () => {
    const signedArea = ({ points }: CutPath) =>
      points.reduce((sum, [x, y], i) => {
        const [nextX, nextY] = points[(i + 1) % points.length] ?? [0, 0];
        return sum + x * nextY - nextX * y;
      }, 0) / 2;
    expect(signedArea(rectangleOutline({ x: 1, y: 2, width: 3, height: 4 }, true))).toBe(12);
    expect(signedArea(rectangleOutline({ x: 1, y: 2, width: 3, height: 4 }, false))).toBe(-12);
  });
});

describe("nearestFirst", () => {
  test("goes on with the nearest path, turning open ones and starting closed ones where that is nearer", () => {
    const square = rectangleOutline({ x: 10, y: 10, width: 5, height: 5 }, true);
    const ordered = nearestFirst([line(50, 50, 40, 40), square, line(9, 9, 0, 1)], [0, 0]);
    expect(ordered[0]?.points).toEqual([
      [0, 1],
      [9, 9],
    ]);
    expect(ordered[1]?.points[0]).toEqual([10, 10]);
    expect(ordered[2]?.points).toEqual([
      [40, 40],
      [50, 50],
    ]);
  });

  test("keeps every path, each step going to the nearest there is", () => {
    const coordinate = fc.nat(100);
    const paths = fc.array(
      fc.oneof(
        fc.tuple(coordinate, coordinate, coordinate, coordinate).map((at) => line(...at)),
        fc
          .record({
            x: coordinate,
            y: coordinate,
            width: fc.integer({ min: 1, max: 9 }),
            height: fc.integer({ min: 1, max: 9 }),
          })
          .map((box) => rectangleOutline(box, true)),
      ),
      { maxLength: 12 },
    );
    const keyOf = ({ points, closed }: CutPath) => `${closed} ${points.map(String).sort().join(" ")}`;
    fc.assert(
      fc.property(paths, (all) => {
        const ordered = nearestFirst(all, [0, 0]);
        expect(ordered.map(keyOf).sort()).toEqual(all.map(keyOf).sort());
        let at: Point = [0, 0];
        ordered.forEach((path, i) => {
          const distance = ([x, y]: Point) => (x - at[0]) ** 2 + (y - at[1]) ** 2;
          const starts = ordered
            .slice(i)
            .flatMap(({ points, closed }): readonly (Point | undefined)[] =>
              closed ? points : [points[0], points.at(-1)],
            )
            .map((point) => distance(point as Point));
          expect(distance(path.points[0] as Point)).toBe(Math.min(...starts));
          at = endOf(path);
        });
      }),
    );
  });
});
