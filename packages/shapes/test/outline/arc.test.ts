import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arcOf, type Span } from "../../src/index.js";
import { directionAt, lengthOf, pointOn } from "../../src/outline/arc.js";
import { circleOf } from "../dense-samples.js";

const place = fc.record({
  x: fc.integer({ min: -500_000, max: 500_000 }),
  y: fc.integer({ min: -500_000, max: 500_000 }),
});

const anySpan: fc.Arbitrary<Span> = fc
  .record({ from: place, through: place, to: place })
  .filter(({ from, through, to }) => new Set([from, through, to].map(({ x, y }) => `${x},${y}`)).size === 3);

describe("an arc by three points", () => {
  test("is the circle of Pythagoras' 3-4-5 triangle where they are its corners", () => {
    // A right angle stands on a diameter (Thales): the hypotenuse of 500 lies through the centre.
    const arc = arcOf({ from: { x: 0, y: 0 }, through: { x: 400, y: 0 }, to: { x: 400, y: 300 } });
    expect(arc?.centre).toEqual({ x: 200, y: 150 });
    expect(arc?.radius).toBe(250);
    expect(arc?.turn).toBeCloseTo(Math.PI, 14);
  });

  test("is straight where they lie on a line", () => {
    expect(arcOf({ from: { x: 0, y: 0 }, through: { x: 5, y: 5 }, to: { x: 10, y: 10 } })).toBeNull();
    expect(arcOf({ from: { x: 0, y: 0 }, through: null, to: { x: 10, y: 10 } })).toBeNull();
  });

  test("keeps its digits where it is nearly straight", () => {
    // A rise of one tick over 10 m: r = (c^2 / 4 + h^2) / 2h.
    const span = { from: { x: 0, y: 0 }, through: { x: 8_000_000, y: -1 }, to: { x: 16_000_000, y: 0 } };
    const arc = arcOf(span);
    expect(arc?.radius).toBe((8_000_000 ** 2 + 1) / 2);
    const quarter = pointOn(span, arc, 0.25);
    expect(quarter.x).toBeCloseTo(4_000_000, 6);
    expect(quarter.y).toBeCloseTo(-0.75, 6);
    expect(lengthOf(span)).toBeCloseTo(16_000_000, 5);
  });

  test("has its points on the circle that the linear equations give, and ends in its ends", () => {
    fc.assert(
      fc.property(anySpan, fc.double({ min: 0, max: 1, noNaN: true }), (span, part) => {
        const arc = arcOf(span);
        const circle = circleOf(span);
        if (arc === null || circle === null || circle.r > 1e9) return;
        expect(Math.abs(arc.radius - circle.r) / circle.r).toBeLessThan(1e-9);
        const point = pointOn(span, arc, part);
        const off = Math.hypot(point.x - circle.x, point.y - circle.y) - circle.r;
        expect(Math.abs(off)).toBeLessThan(1e-3 + circle.r * 1e-9);
        expect(Math.abs(arc.turn - (circle.end - circle.start))).toBeLessThan(1e-6);
        expect(pointOn(span, arc, 0)).toEqual(span.from);
        expect(pointOn(span, arc, 1)).toEqual(span.to);
      }),
    );
  });

  test("gives the same bits run through the other way", () => {
    fc.assert(
      fc.property(anySpan, fc.integer({ min: 1, max: 63 }), (span, sixtyFourth) => {
        const back: Span = { from: span.to, through: span.through, to: span.from };
        const [arc, other] = [arcOf(span), arcOf(back)];
        if (arc === null || other === null) return;
        // 64ths are exact, so that part and 1 - part meet.
        const there = pointOn(span, arc, sixtyFourth / 64);
        const again = pointOn(back, other, 1 - sixtyFourth / 64);
        expect(Math.round(there.x) - Math.round(again.x)).toBe(0);
        expect(Math.round(there.y) - Math.round(again.y)).toBe(0);
        expect(directionAt(span, arc, "start").x).toBeCloseTo(-directionAt(back, other, "end").x, 9);
      }),
    );
  });
});
