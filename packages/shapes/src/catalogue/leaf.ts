import type { Ticks } from "@sheetwright/measure";
import type { Outline } from "../outline/outline.js";
import { checkSides } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { axisOf, ringOfPath } from "./path.js";

/** A leaf of two arcs, pointed at both ends. */
export interface LeafShape {
  readonly shape: "leaf";
  readonly width: Ticks;
  readonly height: Ticks;
}

/** The catalogue's entry. */
export const leafEntry = {
  id: "leaf",
  title: "Leaf",
  about: "A leaf of two arcs, pointed at both ends: upright, or lying where it is wider than high.",
  parameters: [sizeParameter("width", "How wide it is."), sizeParameter("height", "How high it is.")],
  symmetry: "upright and level",
} as const satisfies CatalogueEntry;

/**
 * The outline of a leaf.
 *
 * @internal
 */
export function leafOutline({ shape, width, height }: LeafShape): Outline {
  checkSides(shape, { width, height });
  const x = axisOf(width);
  const y = axisOf(height);
  const [top, right, bottom, left] = [
    { x, y: 0 },
    { x: width, y },
    { x, y: height },
    { x: 0, y },
  ] as const;
  const outer =
    width <= height
      ? ringOfPath({
          start: top,
          edges: [
            { through: right, to: bottom },
            { through: left, to: top },
          ],
        })
      : ringOfPath({
          start: left,
          edges: [
            { through: top, to: right },
            { through: bottom, to: left },
          ],
        });
  return { outer, windows: [] };
}
