import { type Edge, type Outline, type Ring, reversedRing } from "./outline.js";
import type { Point } from "./point.js";

/**
 * The outline so far to the right and down.
 *
 * @example
 * const square = outlineOf({ shape: "rectangle", width: 300, height: 300 });
 * boxOf(moved(square, { x: 10, y: 20 })) // => { x: 10, y: 20, width: 300, height: 300 }
 */
export function moved(outline: Outline, by: Point): Outline {
  return mapped(outline, ({ x, y }) => ({ x: x + by.x, y: y + by.y }));
}

/**
 * The outline turned by so many quarter turns to the right about the origin, exactly.
 *
 * @example
 * const bar = outlineOf({ shape: "rectangle", width: 300, height: 100 });
 * boxOf(quarterTurned(bar, 1)) // => { x: -100, y: 0, width: 100, height: 300 }
 */
export function quarterTurned(outline: Outline, turns: 0 | 1 | 2 | 3): Outline {
  let result = outline;
  for (let turn = 0; turn < turns; turn += 1) result = mapped(result, ({ x, y }) => ({ x: 0 - y, y: x }));
  return result;
}

/**
 * The outline seen in an upright mirror on the line x = 0, exactly: left is right.
 *
 * @example
 * const bar = outlineOf({ shape: "rectangle", width: 300, height: 100 });
 * boxOf(mirrored(bar)) // => { x: -300, y: 0, width: 300, height: 100 }
 */
export function mirrored(outline: Outline): Outline {
  const { outer, windows } = mapped(outline, ({ x, y }) => ({ x: 0 - x, y }));
  return { outer: reversedRing(outer), windows: windows.map(reversedRing) };
}

function mapped({ outer, windows }: Outline, move: (point: Point) => Point): Outline {
  const ring = (edges: Ring): Ring =>
    edges.map((edge: Edge) =>
      "through" in edge ? { to: move(edge.to), through: move(edge.through) } : { to: move(edge.to) },
    );
  return { outer: ring(outer), windows: windows.map(ring) };
}
