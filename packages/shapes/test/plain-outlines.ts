import type { Outline, Point, Ring } from "../src/index.js";

/** A closed line of straight edges through these points. */
function polygonRing(points: readonly Point[]): Ring {
  return points.map((_, index) => ({ to: points[(index + 1) % points.length] as Point }));
}

/** An outline of straight edges. */
export function polygonOutline(points: readonly Point[]): Outline {
  return { outer: polygonRing(points), windows: [] };
}

/** A rectangle by two of its corners. */
export function box(left: number, top: number, right: number, bottom: number): Outline {
  return polygonOutline([
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ]);
}

/** A disc of four arcs. */
export function disc(x: number, y: number, radius: number): Outline {
  const k = Math.round(radius * Math.SQRT1_2);
  return {
    outer: [
      { to: { x, y: y + radius }, through: { x: x + k, y: y + k } },
      { to: { x: x - radius, y }, through: { x: x - k, y: y + k } },
      { to: { x, y: y - radius }, through: { x: x - k, y: y - k } },
      { to: { x: x + radius, y }, through: { x: x + k, y: y - k } },
    ],
    windows: [],
  };
}

/** The lobed circle: lobes round the corners of a regular polygon, each touching its neighbours. */
export function lobed(count: number, radius: number): Outline {
  const step = (2 * Math.PI) / count;
  const lobe = radius * Math.sin(step / 2);
  const at = (distance: number, angle: number): Point => ({
    x: Math.round(distance * Math.cos(angle)),
    y: Math.round(distance * Math.sin(angle)),
  });
  const outer = Array.from({ length: count }, (_, index) => {
    const angle = index * step;
    const half = (Math.PI + step) / 2;
    const onLobe = (turn: number): Point => ({
      x: Math.round(radius * Math.cos(angle) + lobe * Math.cos(angle + turn)),
      y: Math.round(radius * Math.sin(angle) + lobe * Math.sin(angle + turn)),
    });
    return [
      { to: onLobe(0), through: onLobe(-half / 2) },
      { to: at(radius * Math.cos(step / 2), angle + step / 2), through: onLobe(half / 2) },
    ];
  });
  return { outer: outer.flat(), windows: [] };
}

/** One outline with the outer line of another as a window. */
export function pierced(outline: Outline, ...holes: readonly Outline[]): Outline {
  return {
    outer: outline.outer,
    windows: [...outline.windows, ...holes.map(({ outer }) => backwards(outer))],
  };
}

function backwards(ring: Ring): Ring {
  return ring
    .map((edge, index) => {
      const to = (ring[(index + ring.length - 1) % ring.length] as { to: Point }).to;
      return "through" in edge ? { to, through: edge.through } : { to };
    })
    .reverse();
}
