// What shows of each layer, exactly. A sweep from left to right over the edges of all layers cuts the front into slabs in
// which nothing changes; in each the layers are gone through from the top down, and what shows of one is what the ones
// above have not covered yet. Whole numbers only; with n layers at most 2n slabs of n layers each, O(n^2) as long as few
// pieces of cover stay apart.

import type { Card, CardLayer } from "../expansion.js";
import type { SurfaceName } from "../project.js";

/** Areas of one surface in square ticks. */
export interface VisibleAreas {
  /** All of the surface. */
  readonly whole: bigint;
  /** What shows of the base. */
  readonly base: bigint;
  /** What shows of each layer of the card, in their order; nothing of those on other surfaces. */
  readonly layers: readonly bigint[];
}

/**
 * What can be seen of a surface of a card when all layers lie on it: of the base and of each layer, in square ticks. Base
 * and layers add up to the surface. What sticks out over it does not count. Throws a RangeError where the card has no such
 * surface.
 *
 * @example
 * const half = { surface: "front", x: 0, y: 0, width: 5, height: 4, piece: "1b", on: null, border: null, text: null };
 * const surfaces = [{ name: "front", width: 10, height: 4 }];
 * visibleAreas({ surfaces, layers: [half] }) // => { whole: 40n, base: 20n, layers: [20n] }
 * visibleAreas({ surfaces, layers: [half] }, "back") // throws RangeError: no back
 */
export function visibleAreas(
  { surfaces, layers: all }: Pick<Card, "surfaces" | "layers">,
  name: SurfaceName = "front",
): VisibleAreas {
  const front = surfaces.find((surface) => surface.name === name);
  if (front === undefined) throw new RangeError(`surface: the card has no ${name}.`);
  const layers = all.map((layer) => (layer.surface === name ? layer : { ...layer, width: 0, height: 0 }));
  const whole = BigInt(front.width) * BigInt(front.height);
  const areas = layers.map(() => 0n);
  const clip = (x: number) => Math.min(Math.max(x, 0), front.width);
  const edges = [...new Set(layers.flatMap(({ x, width }) => [clip(x), clip(x + width)]))].sort(
    (a, b) => a - b,
  );
  let covered = 0n;
  for (let index = 1; index < edges.length; index += 1) {
    const left = edges[index - 1] ?? 0;
    const width = BigInt((edges[index] ?? 0) - left);
    sweepSlab(layers, left, front.height, (layer, shows) => {
      const area = width * BigInt(shows);
      areas[layer] = (areas[layer] ?? 0n) + area;
      covered += area;
    });
  }
  return { whole, base: whole - covered, layers: areas };
}

/** Tells how much of each layer shows along a line from top to bottom just right of `left`. */
function sweepSlab(
  layers: readonly CardLayer[],
  left: number,
  bottom: number,
  tell: (layer: number, shows: number) => void,
): void {
  let cover: readonly Interval[] = [];
  for (let index = layers.length - 1; index >= 0; index -= 1) {
    const layer = layers[index];
    if (layer === undefined || layer.x > left || layer.x + layer.width <= left) continue;
    const span = { start: Math.max(layer.y, 0), end: Math.min(layer.y + layer.height, bottom) };
    if (span.start >= span.end) continue;
    const apart = cover.filter(({ start, end }) => end < span.start || start > span.end);
    const touched = cover.filter(({ start, end }) => end >= span.start && start <= span.end);
    const merged = touched.reduce(
      (all, { start, end }) => ({ start: Math.min(all.start, start), end: Math.max(all.end, end) }),
      span,
    );
    const before = touched.reduce((sum, { start, end }) => sum + end - start, 0);
    const shows = merged.end - merged.start - before;
    if (shows > 0) tell(index, shows);
    cover = [...apart, merged];
  }
}

interface Interval {
  readonly start: number;
  readonly end: number;
}
