// How high a heap of rectangles is where it is highest. A sweep from left to right over their edges cuts the heap into slabs
// in which nothing changes; in each the rectangles are gone through from the top edge down, and the sum of those that are
// under the line is kept. Whole ticks only; rectangles that merely touch do not lie on each other. With n rectangles at most
// 2n slabs of 2n edges each, sorted once: O(n^2).

import type { Size, Ticks } from "@sheetwright/measure";

/** Something flat that lies somewhere, with its thickness; all in ticks. */
export interface Slab extends Size {
  readonly x: Ticks;
  readonly y: Ticks;
  readonly thickness: Ticks;
}

/**
 * The greatest sum of thicknesses over one point, in ticks; 0 of nothing.
 *
 * @example
 * const base = { x: 0, y: 0, width: 10, height: 10, thickness: 3 };
 * const left = { x: 0, y: 0, width: 5, height: 10, thickness: 2 };
 * thickestPoint([base, left, { ...left, x: 5, thickness: 1 }]) // => 5
 * thickestPoint([]) // => 0
 */
export function thickestPoint(slabs: readonly Slab[]): Ticks {
  const edges = slabs
    .flatMap((slab) => [
      { y: slab.y, rise: slab.thickness, slab },
      { y: slab.y + slab.height, rise: -slab.thickness, slab },
    ])
    // What ends goes before what begins at the same place.
    .sort((a, b) => a.y - b.y || a.rise - b.rise);
  let most = 0;
  for (const x of new Set(slabs.map((slab) => slab.x))) {
    let height = 0;
    for (const { rise, slab } of edges) {
      if (slab.x > x || slab.x + slab.width <= x) continue;
      height += rise;
      most = Math.max(most, height);
    }
  }
  return most;
}
