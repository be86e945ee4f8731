/**
 * What can be seen of rectangles and shapes that are painted one over another. All in ticks from the top left corner of the front, so
 * that nothing is decided by a rounded number.
 */

import type { Ticks } from "@sheetwright/measure";
import type { ShapeSlice } from "./shape-slices.js";

/** A rectangle, or a shape in its box, that is painted over those before it in a list. */
export interface Surface {
  readonly x: Ticks;
  readonly y: Ticks;
  readonly width: Ticks;
  readonly height: Ticks;
  /** Of a shape; absent: a whole rectangle. */
  readonly slices?: readonly ShapeSlice[] | undefined;
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
  let left = [...surelyAt(surface, y)];
  for (let over = index + 1; over < surfaces.length && left.length > 0; over += 1) {
    const other = surfaces[over];
    if (other === undefined || !liesAt(other, y)) continue;
    for (const over of perhapsAt(other, y)) {
      const parts: Stretch[] = [];
      for (const { from, to } of left) {
        if (from < Math.min(to, over.from)) parts.push({ from, to: Math.min(to, over.from) });
        if (Math.max(from, over.to) < to) parts.push({ from: Math.max(from, over.to), to });
      }
      left = parts;
    }
  }
  return left;
}

/** Where a surface is at a height for sure. */
function surelyAt({ x, width, slices }: Surface, y: Ticks): readonly Stretch[] {
  if (slices === undefined) return [{ from: x, to: x + width }];
  return slices.find(({ from, to }) => from <= y && y <= to)?.inner ?? [];
}

/** Where a surface may be at a height. */
function perhapsAt({ x, width, slices }: Surface, y: Ticks): readonly Stretch[] {
  if (slices === undefined) return [{ from: x, to: x + width }];
  return slices.flatMap(({ from, to, outer }) => (from <= y && y <= to ? outer : []));
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
    if (other !== undefined && mayCover(other, part)) return false;
  }
  return true;
}

/** True where two rectangles share some area. */
export function overlap(a: Surface, b: Surface): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** True unless a surface surely leaves a rectangle free. */
function mayCover(surface: Surface, part: Surface): boolean {
  if (!overlap(surface, part)) return false;
  return (
    surface.slices === undefined ||
    surface.slices.some(
      ({ from, to, outer }) =>
        from < part.y + part.height &&
        part.y < to &&
        outer.some((stretch) => stretch.from < part.x + part.width && part.x < stretch.to),
    )
  );
}

function contains(outer: Surface, inner: Surface): boolean {
  const isPaper = (outer.slices ?? []).every(
    (band) =>
      band.from >= inner.y + inner.height ||
      inner.y >= band.to ||
      band.inner.some(({ from, to }) => from <= inner.x && inner.x + inner.width <= to),
  );
  return (
    isPaper &&
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
  const slices = surfaces.flatMap((surface) => surface.slices ?? []);
  const edges = [
    ...new Set([...edgeHeights(surfaces), ...slices.flatMap(({ from, to }) => [from, to])]),
  ].sort((a, b) => a - b);
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
  if (surface.slices !== undefined) {
    const inside = middlePart(surface);
    return isVisible(surfaces, index, inside) ? inside : null;
  }
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

/** Of the box of a shape, what lies inside most shapes: about the square in a circle. */
function middlePart({ x, y, width, height }: Surface): Surface {
  const [across, down] = [Math.floor(width / 6), Math.floor(height / 6)];
  return { x: x + across, y: y + down, width: width - 2 * across, height: height - 2 * down };
}

function areaOf({ width, height }: Surface): number {
  return Math.max(0, width) * Math.max(0, height);
}
