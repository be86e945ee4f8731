import { type Outline, type Point, ringsOf, type Span, spansOf } from "../src/index.js";

/*
 * Measures of outlines by the functions of the machine, as an opinion of their own: from three points of a circle by its
 * linear equations, not by what the package does.
 */

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly r: number;
  /** Angles of the start and, going on in the direction of the arc, of the end. */
  readonly start: number;
  readonly end: number;
}

export function circleOf({ from, through, to }: Span): Circle | null {
  if (through === null) return null;
  // |p - c|^2 is the same for all three points: two linear equations for c.
  const a = 2 * (through.x - from.x);
  const b = 2 * (through.y - from.y);
  const c = 2 * (to.x - from.x);
  const d = 2 * (to.y - from.y);
  const e = through.x ** 2 - from.x ** 2 + through.y ** 2 - from.y ** 2;
  const f = to.x ** 2 - from.x ** 2 + to.y ** 2 - from.y ** 2;
  const determinant = a * d - b * c;
  if (determinant === 0) return null;
  const x = (e * d - b * f) / determinant;
  const y = (a * f - e * c) / determinant;
  const start = Math.atan2(from.y - y, from.x - x);
  const on = (point: Point) => {
    const turn = Math.atan2(point.y - y, point.x - x) - start;
    return turn < 0 ? turn + 2 * Math.PI : turn;
  };
  const end = on(to);
  const isPositive = on(through) < end;
  return {
    x,
    y,
    r: Math.hypot(from.x - x, from.y - y),
    start,
    end: start + (isPositive ? end : end - 2 * Math.PI),
  };
}

/** Points along all lines of an outline, about `step` ticks from each other, in ticks with fractions. */
export function samplesOf(outline: Outline, step: number): readonly Point[] {
  return ringsOf(outline).flatMap((ring) =>
    spansOf(ring).flatMap((span) => {
      const circle = circleOf(span);
      const length =
        circle === null
          ? Math.hypot(span.to.x - span.from.x, span.to.y - span.from.y)
          : circle.r * Math.abs(circle.end - circle.start);
      const count = Math.max(1, Math.ceil(length / step));
      return Array.from({ length: count }, (_, index) => {
        const part = index / count;
        if (circle === null) {
          return {
            x: span.from.x + (span.to.x - span.from.x) * part,
            y: span.from.y + (span.to.y - span.from.y) * part,
          };
        }
        const angle = circle.start + (circle.end - circle.start) * part;
        return { x: circle.x + circle.r * Math.cos(angle), y: circle.y + circle.r * Math.sin(angle) };
      });
    }),
  );
}

/** How far a point lies from the lines of an outline. */
export function distanceTo(outline: Outline, point: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const ring of ringsOf(outline)) {
    for (const span of spansOf(ring)) least = Math.min(least, distanceToSpan(span, point));
  }
  return least;
}

function distanceToSpan(span: Span, point: Point): number {
  const { from, to } = span;
  const ends = Math.min(
    Math.hypot(point.x - from.x, point.y - from.y),
    Math.hypot(point.x - to.x, point.y - to.y),
  );
  const circle = circleOf(span);
  if (circle === null) {
    const x = to.x - from.x;
    const y = to.y - from.y;
    const part = ((point.x - from.x) * x + (point.y - from.y) * y) / (x * x + y * y);
    if (part <= 0 || part >= 1) return ends;
    return Math.hypot(point.x - from.x - part * x, point.y - from.y - part * y);
  }
  const angle = Math.atan2(point.y - circle.y, point.x - circle.x);
  const low = Math.min(circle.start, circle.end);
  const turn = (((angle - low) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  if (turn > Math.abs(circle.end - circle.start)) return ends;
  return Math.min(ends, Math.abs(Math.hypot(point.x - circle.x, point.y - circle.y) - circle.r));
}

/** The area by Green's theorem: straight parts by the shoelace, circular segments by r^2 (t - sin t) / 2. */
export function areaBySegments(outline: Outline): number {
  let area = 0;
  for (const ring of ringsOf(outline)) {
    const origin = (ring[0] as { to: Point }).to;
    for (const span of spansOf(ring)) {
      const { from, to } = span;
      area += ((from.x - origin.x) * (to.y - origin.y) - (from.y - origin.y) * (to.x - origin.x)) / 2;
      const circle = circleOf(span);
      if (circle !== null) {
        const turn = circle.end - circle.start;
        area += (circle.r ** 2 * (turn - Math.sin(turn))) / 2;
      }
    }
  }
  return area;
}

/** The length of all lines. */
export function lengthByArcs(outline: Outline): number {
  return ringsOf(outline)
    .flatMap((ring) => spansOf(ring))
    .reduce((sum, span) => {
      const circle = circleOf(span);
      const { from, to } = span;
      return (
        sum +
        (circle === null
          ? Math.hypot(to.x - from.x, to.y - from.y)
          : circle.r * Math.abs(circle.end - circle.start))
      );
    }, 0);
}

/** Whether a point lies in the material, by counting crossings of a ray with chords far finer than a tick. */
export function holds(outline: Outline, point: Point): boolean {
  const fine = ringsOf(outline).map((ring) => samplesOf({ outer: ring, windows: [] }, 40));
  let isInside = false;
  for (const polygon of fine) {
    for (const [index, a] of polygon.entries()) {
      const b = polygon[(index + 1) % polygon.length] as Point;
      if (a.y > point.y !== b.y > point.y && point.x < a.x + ((point.y - a.y) * (b.x - a.x)) / (b.y - a.y)) {
        isInside = !isInside;
      }
    }
  }
  return isInside;
}
