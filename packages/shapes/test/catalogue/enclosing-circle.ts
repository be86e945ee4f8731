import type { Point } from "../../src/index.js";

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** The smallest circle round points (Welzl 1991, as nested loops). */
export function enclosingCircle(points: readonly Point[]): Circle {
  const outside = (circle: Circle, point: Point) =>
    Math.hypot(point.x - circle.x, point.y - circle.y) > circle.r * (1 + 1e-12) + 1e-9;
  // A fixed shuffle keeps the loops short.
  const shuffled = points
    .map((point, index) => ({ point, key: (index * 7919) % 10_007 }))
    .sort((a, b) => a.key - b.key)
    .map(({ point }) => point);
  let circle: Circle = { x: 0, y: 0, r: -1 };
  for (const [i, p] of shuffled.entries()) {
    if (!outside(circle, p)) continue;
    circle = { x: p.x, y: p.y, r: 0 };
    for (const [j, q] of shuffled.slice(0, i).entries()) {
      if (!outside(circle, q)) continue;
      circle = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2, r: Math.hypot(p.x - q.x, p.y - q.y) / 2 };
      for (const s of shuffled.slice(0, j)) if (outside(circle, s)) circle = through(p, q, s);
    }
  }
  return circle;
}

function through(p: Point, q: Point, s: Point): Circle {
  const [ax, ay, bx, by] = [q.x - p.x, q.y - p.y, s.x - p.x, s.y - p.y];
  const d = 2 * (ax * by - ay * bx);
  const [a, b] = [ax * ax + ay * ay, bx * bx + by * by];
  const [x, y] = [(by * a - ay * b) / d, (ax * b - bx * a) / d];
  return { x: p.x + x, y: p.y + y, r: Math.hypot(x, y) };
}
