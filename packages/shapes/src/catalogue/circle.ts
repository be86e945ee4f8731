import type { Ticks } from "@sheetwright/measure";
import type { Outline, Ring } from "../outline/outline.js";
import { checkSides, SMALLEST_LENGTH } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { axisOf } from "./path.js";

/** A disc. */
export interface CircleShape {
  readonly shape: "circle";
  readonly diameter: Ticks;
}

/** The catalogue's entry. */
export const circleEntry = {
  id: "circle",
  title: "Circle",
  about: "A round disc.",
  parameters: [sizeParameter("diameter", "How wide it is.", "0.01 mm")],
  symmetry: "upright and level; the same at any turn",
} as const satisfies CatalogueEntry;

/**
 * The outline of a disc: two arcs of half a circle.
 *
 * @internal
 */
export function circleOutline({ shape, diameter }: CircleShape): Outline {
  checkSides(shape, { diameter }, SMALLEST_LENGTH);
  return { outer: circleRing(diameter), windows: [] };
}

/**
 * A circle in whole ticks. Of an odd diameter the ends stand half a tick off its axes, which makes both arcs ones of the
 * same circle about the true centre, wider by a quarter of a tick over the diameter.
 *
 * @internal
 */
export function circleRing(diameter: Ticks): Ring {
  const axis = axisOf(diameter);
  return [
    { through: { x: diameter, y: axis }, to: { x: axis, y: diameter } },
    { through: { x: 0, y: axis }, to: { x: axis, y: 0 } },
  ];
}
