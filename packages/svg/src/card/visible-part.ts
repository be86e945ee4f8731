/**
 * What can be seen of rectangles that are painted one over another. All in ticks from the top left corner of the front, so
 * that nothing is decided by a rounded number.
 */

import type { Ticks } from "@sheetwright/measure";

/** A rectangle that is painted over those before it in a list. */
export interface Surface {
  readonly x: Ticks;
  readonly y: Ticks;
  readonly width: Ticks;
  readonly height: Ticks;
}

/** A stretch from left to right. */
export interface Stretch {
  readonly from: Ticks;
  readonly to: Ticks;
}

/** The stretches of `surfaces[index]` that can be seen at the height `y`, from left to right. */
export function visibleAt(surfaces: readonly Surface[], index: number, y: Ticks): readonly Stretch[] {
  const surface = surfaces[index];
  if (surface === undefined || !liesAt(surface, y)) return [];
  let left: Stretch[] = [{ from: surface.x, to: surface.x + surface.width }];
  for (let over = index + 1; over < surfaces.length && left.length > 0; over += 1) {
    const other = surfaces[over];
    if (other === undefined || !liesAt(other, y)) continue;
    const right = other.x + other.width;
    const parts: Stretch[] = [];
    for (const { from, to } of left) {
      if (from < Math.min(to, other.x)) parts.push({ from, to: Math.min(to, other.x) });
      if (Math.max(from, right) < to) parts.push({ from: Math.max(from, right), to });
    }
    left = parts;
  }
  return left;
}

function liesAt({ y, height }: Surface, at: Ticks): boolean {
  return y < at && at < y + height;
}

/** True where the whole of a rectangle lies on `surfaces[index]` and nothing is painted over it. */
export function isVisible(surfaces: readonly Surface[], index: number, part: Surface): boolean {
  const surface = surfaces[index];
  if (surface === undefined || !contains(surface, part)) return false;
  for (let over = index + 1; over < surfaces.length; over += 1) {
    const other = surfaces[over];
    if (other !== undefined && overlap(other, part)) return false;
  }
  return true;
}

/** True where two rectangles share some area. */
export function overlap(a: Surface, b: Surface): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

function contains(outer: Surface, inner: Surface): boolean {
  return (
    outer.x <= inner.x &&
    outer.y <= inner.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}

/** The heights at which edges of the surfaces lie, in order, each once. */
export function edgeHeights(surfaces: readonly Surface[]): readonly Ticks[] {
  const all = surfaces.flatMap(({ y, height }) => [y, y + height]);
  return [...new Set(all)].sort((a, b) => a - b);
}

/** Whether anything of each surface can be seen. */
export function shownSurfaces(surfaces: readonly Surface[]): readonly boolean[] {
  const edges = edgeHeights(surfaces);
  return surfaces.map(({ y, height }, index) =>
    edges.some((edge, i) => {
      const next = edges[i + 1];
      // Between two edges nothing changes, so any height there tells; half ticks are as good as whole ones.
      return (
        next !== undefined &&
        edge >= y &&
        next <= y + height &&
        visibleAt(surfaces, index, (edge + next) / 2).length > 0
      );
    }),
  );
}

/** The largest part of a surface beside all that is painted over it; `null` where nothing of it is left. */
export function freePart(surfaces: readonly Surface[], index: number): Surface | null {
  const surface = surfaces[index];
  if (surface === undefined) return null;
  const over = surfaces.slice(index + 1).filter((other) => overlap(other, surface));
  if (over.length === 0) return surface;
  const right = surface.x + surface.width;
  const bottom = surface.y + surface.height;
  const left = over.reduce((least, { x }) => Math.min(least, x), right);
  const top = over.reduce((least, { y }) => Math.min(least, y), bottom);
  const far = over.reduce((most, { x, width }) => Math.max(most, x + width), surface.x);
  const low = over.reduce((most, { y, height }) => Math.max(most, y + height), surface.y);
  const parts: readonly Surface[] = [
    { ...surface, width: left - surface.x },
    { ...surface, x: far, width: right - far },
    { ...surface, height: top - surface.y },
    { ...surface, y: low, height: bottom - low },
  ];
  const best = parts.reduce((most, part) => (areaOf(part) > areaOf(most) ? part : most));
  return areaOf(best) > 0 ? best : null;
}

function areaOf({ width, height }: Surface): number {
  return Math.max(0, width) * Math.max(0, height);
}
