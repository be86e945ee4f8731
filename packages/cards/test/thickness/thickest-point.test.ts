import fc from "fast-check";
import { expect, it, test } from "vitest";
import { type Slab, thickestPoint } from "../../src/index.js";

const slab = (x: number, y: number, width: number, height: number, thickness: number): Slab => ({
  x,
  y,
  width,
  height,
  thickness,
});

it("adds up what lies on each other, and not what merely touches", () => {
  expect(thickestPoint([slab(0, 0, 4, 4, 1), slab(4, 0, 4, 4, 1), slab(0, 4, 8, 4, 1)])).toBe(1);
  expect(thickestPoint([slab(0, 0, 4, 4, 1), slab(3, 3, 4, 4, 2)])).toBe(3);
  expect(thickestPoint([slab(0, 0, 9, 1, 1), slab(0, 0, 1, 9, 2), slab(8, 0, 1, 9, 4)])).toBe(5);
});

const small = fc.integer({ min: 0, max: 6 });
const slabs = fc.array(
  fc
    .tuple(small, small, small, small, small)
    .map(([x, y, width, height, thickness]) => slab(x, y, width + 1, height + 1, thickness)),
  { maxLength: 8 },
);

test("agrees with counting every unit square", () => {
  fc.assert(
    fc.property(slabs, (all) => {
      let most = 0;
      for (let x = 0; x < 14; x += 1) {
        for (let y = 0; y < 14; y += 1) {
          const over = all.filter(
            (one) => one.x <= x && x < one.x + one.width && one.y <= y && y < one.y + one.height,
          );
          most = Math.max(
            most,
            over.reduce((sum, { thickness }) => sum + thickness, 0),
          );
        }
      }
      expect(thickestPoint(all)).toBe(most);
    }),
  );
});

test("one more never makes it less", () => {
  fc.assert(
    fc.property(slabs, slabs, (all, more) => {
      expect(thickestPoint([...all, ...more])).toBeGreaterThanOrEqual(thickestPoint(all));
    }),
  );
});
