import type { Point } from "./point.js";

/**
 * What a die, a knife or a cutting machine cuts free: a closed line, and windows in it. Plain data in whole ticks, x to
 * the right and y down.
 *
 * The material lies on the same side of all its edges: `outer` has a positive area by the shoelace formula (clockwise to
 * the eye, since y points down), `windows` a negative one. Rings may touch themselves and each other at points; they
 * never cross or overlap.
 */
export interface Outline {
  readonly outer: Ring;
  readonly windows: readonly Ring[];
}

/** A closed line as the edges along it. Each starts where the one before ends, the first where the last one ends. */
export type Ring = readonly Edge[];

/** A straight line, or an arc where it has `through`. Never from a point to itself. */
export type Edge = LineEdge | ArcEdge;

/** A straight line to a point. */
export interface LineEdge {
  readonly to: Point;
}

/**
 * The arc of a circle to `to` by way of `through`, which is best near its middle. Three points give the circle without a
 * fraction in the data; with whole ticks an arc of up to half a circle is at most one tick off the ideal one. More than
 * that is better given as two arcs. Straight where the three points lie on a line.
 */
export interface ArcEdge {
  readonly to: Point;
  readonly through: Point;
}

/** An edge together with where it starts. */
export interface Span {
  readonly from: Point;
  readonly to: Point;
  /** `null` for a straight one. */
  readonly through: Point | null;
}

/**
 * The edges of a ring with their starts.
 *
 * @example
 * const ring = [{ to: { x: 8, y: 0 } }, { to: { x: 0, y: 0 }, through: { x: 4, y: 4 } }];
 * spansOf(ring)[0] // => { from: { x: 0, y: 0 }, to: { x: 8, y: 0 }, through: null }
 */
export function spansOf(ring: Ring): readonly Span[] {
  return ring.map((edge, index) => {
    const before = ring[index === 0 ? ring.length - 1 : index - 1] as Edge;
    return { from: before.to, to: edge.to, through: "through" in edge ? edge.through : null };
  });
}

/** The ring of edges that follow each other; the last must end where the first starts. */
function ringOf(spans: readonly Span[]): Ring {
  return spans.map(({ to, through }) => (through === null ? { to } : { to, through }));
}

/**
 * The same line run through the other way.
 *
 * @example
 * const there = [{ to: { x: 8, y: 0 } }, { to: { x: 8, y: 6 } }, { to: { x: 0, y: 0 } }];
 * reversedRing(there) // => [{ to: { x: 8, y: 6 } }, { to: { x: 8, y: 0 } }, { to: { x: 0, y: 0 } }]
 */
export function reversedRing(ring: Ring): Ring {
  return ringOf(
    spansOf(ring)
      .map(({ from, to, through }) => ({ from: to, to: from, through }))
      .reverse(),
  );
}

/**
 * All rings of an outline, the outer one first.
 *
 * @example
 * const triangle = [{ to: { x: 8, y: 0 } }, { to: { x: 8, y: 6 } }, { to: { x: 0, y: 0 } }];
 * ringsOf({ outer: triangle, windows: [] }).length // => 1
 */
export function ringsOf({ outer, windows }: Outline): readonly Ring[] {
  return [outer, ...windows];
}
