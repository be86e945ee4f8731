import fc from "fast-check";
import { expect, test } from "vitest";
import { boxesOverlap, segmentCrossesBox } from "../../src/drawing/box.js";
import { hatchLines } from "../../src/drawing/hatch-lines.js";
import { formatNumber } from "../../src/writer/format-number.js";

const side = fc.integer({ min: 0, max: 100_000 }).map((hundredths) => hundredths / 100);
const box = fc.record({ x: side, y: side, width: side, height: side });

test("hatching stays inside its box and rises at 45 degrees, on one grid for the whole page", () => {
  fc.assert(
    fc.property(
      fc.record({ x: side, y: side, width: side.map((s) => s / 10), height: side.map((s) => s / 10) }),
      (area) => {
        const path = hatchLines(area, 2, formatNumber);
        expect(path).toMatch(/^(M[\d.]+ [\d.]+L[\d.]+ [\d.]+)*$/);
        for (const [, ...coordinates] of path.matchAll(/M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)/g)) {
          const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = coordinates.map(Number);
          expect(Math.abs(x2 - x1 - (y1 - y2))).toBeLessThan(0.003);
          expect(Math.min(x1, x2) - area.x).toBeGreaterThan(-0.001);
          expect(Math.max(x1, x2) - area.x - area.width).toBeLessThan(0.001);
          expect(Math.min(y1, y2) - area.y).toBeGreaterThan(-0.001);
          expect(Math.max(y1, y2) - area.y - area.height).toBeLessThan(0.001);
          const onGrid = (x1 + y1) / (2 * Math.sqrt(2));
          expect(Math.abs(onGrid - Math.round(onGrid))).toBeLessThan(0.002);
        }
      },
    ),
  );
});

test("a segment crosses a box when some point of it lies inside", () => {
  expect(segmentCrossesBox(0, 0, 10, 10, { x: 4, y: 4, width: 2, height: 2 })).toBe(true);
  expect(segmentCrossesBox(0, 0, 10, 0, { x: 4, y: 0, width: 2, height: 2 })).toBe(false);
  expect(segmentCrossesBox(0, 1, 10, 1, { x: 4, y: 0, width: 2, height: 2 })).toBe(true);
  expect(segmentCrossesBox(0, 10, 10, 0, { x: 0, y: 0, width: 4, height: 4 })).toBe(false);
  expect(segmentCrossesBox(5, 5, 5, 5, { x: 4, y: 4, width: 2, height: 2 })).toBe(true);
  const point = fc.integer({ min: 0, max: 60 });
  fc.assert(
    fc.property(
      point,
      point,
      point,
      point,
      fc.record({ x: point, y: point, width: point, height: point }),
      (x1, y1, x2, y2, area) => {
        const inside = Array.from({ length: 997 }, (_, i) => i / 996).some((t) => {
          const x = x1 + (x2 - x1) * t;
          const y = y1 + (y2 - y1) * t;
          return (
            x > area.x + 0.1 &&
            x < area.x + area.width - 0.1 &&
            y > area.y + 0.1 &&
            y < area.y + area.height - 0.1
          );
        });
        if (inside) expect(segmentCrossesBox(x1, y1, x2, y2, area)).toBe(true);
        const away = { x: area.x - 0.1, y: area.y - 0.1, width: area.width + 0.2, height: area.height + 0.2 };
        if (segmentCrossesBox(x1, y1, x2, y2, area))
          expect(segmentCrossesBox(x2, y2, x1, y1, away)).toBe(true);
      },
    ),
  );
});

test("boxes overlap alike from both sides, and no longer once moved apart by the gap", () => {
  fc.assert(
    fc.property(box, box, side, (a, b, gap) => {
      expect(boxesOverlap(a, b, gap)).toBe(boxesOverlap(b, a, gap));
      const apart = { ...b, x: a.x + a.width + gap };
      expect(boxesOverlap(a, apart, gap)).toBe(false);
    }),
  );
});
