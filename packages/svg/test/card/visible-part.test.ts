import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  freePart,
  isVisible,
  overlap,
  type Surface,
  shownSurfaces,
  visibleAt,
} from "../../src/card/visible-part.js";

const front: Surface = { x: 0, y: 0, width: 100, height: 60 };
const mat: Surface = { x: 10, y: 10, width: 80, height: 40 };
const panel: Surface = { x: 20, y: 20, width: 60, height: 20 };

const surface = fc.record({
  x: fc.nat(8),
  y: fc.nat(8),
  width: fc.integer({ min: 1, max: 8 }),
  height: fc.integer({ min: 1, max: 8 }),
});
const surfaces = fc.array(surface, { minLength: 1, maxLength: 6 });

/** The top surface at the middle of each unit cell, by painting them all. */
function painted(all: readonly Surface[]): Map<string, number> {
  const top = new Map<string, number>();
  all.forEach(({ x, y, width, height }, index) => {
    for (let i = x; i < x + width; i += 1)
      for (let j = y; j < y + height; j += 1) top.set(`${i} ${j}`, index);
  });
  return top;
}

describe("visibleAt", () => {
  test("gives both sides of a border, and the whole width above what lies on it", () => {
    expect(visibleAt([front, mat, panel], 1, 30)).toEqual([
      { from: 10, to: 20 },
      { from: 80, to: 90 },
    ]);
    expect(visibleAt([front, mat, panel], 1, 15)).toEqual([{ from: 10, to: 90 }]);
    expect(visibleAt([front, mat, panel], 1, 5)).toEqual([]);
  });

  test("is what is left after painting all of them", () => {
    fc.assert(
      fc.property(surfaces, fc.nat(15), (all, row) => {
        const top = painted(all);
        all.forEach((_, index) => {
          const stretches = visibleAt(all, index, row + 0.5);
          for (let x = 0; x < 16; x += 1) {
            const inside = stretches.some(({ from, to }) => from <= x && x + 1 <= to);
            expect(inside).toBe(top.get(`${x} ${row}`) === index);
          }
        });
      }),
    );
  });
});

describe("shownSurfaces", () => {
  test("tells which can be seen after painting all of them", () => {
    fc.assert(
      fc.property(surfaces, (all) => {
        const seen = new Set(painted(all).values());
        expect(shownSurfaces(all)).toEqual(all.map((_, index) => seen.has(index)));
      }),
    );
  });
});

describe("freePart", () => {
  test("is the whole of a surface that nothing lies on, else its largest side", () => {
    expect(freePart([front, mat], 1)).toEqual(mat);
    expect(freePart([front, { x: 0, y: 0, width: 70, height: 60 }], 0)).toEqual({
      x: 70,
      y: 0,
      width: 30,
      height: 60,
    });
    expect(freePart([front, front], 0)).toBe(null);
  });

  test("lies on its surface and under nothing", () => {
    fc.assert(
      fc.property(surfaces, (all) => {
        all.forEach((_, index) => {
          const part = freePart(all, index);
          if (part !== null) expect(isVisible(all, index, part)).toBe(true);
        });
      }),
    );
  });
});

test("surfaces that only touch do not overlap", () => {
  expect(overlap(mat, { x: 90, y: 10, width: 5, height: 5 })).toBe(false);
  expect(overlap(mat, { x: 89, y: 10, width: 5, height: 5 })).toBe(true);
});
