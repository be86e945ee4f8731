import type { Ticks } from "@sheetwright/measure";
import type { Outline } from "../outline/outline.js";
import { checkSides } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { axisOf, ringOfPath } from "./path.js";

/** Half a disc on its straight side. */
export interface HalfCircleShape {
  readonly shape: "half-circle";
  /** Of the whole circle: the length of the straight side. */
  readonly diameter: Ticks;
}

/** The catalogue's entry. */
export const halfCircleEntry = {
  id: "half-circle",
  title: "Half circle",
  about: "Half of a disc, standing on its straight side.",
  parameters: [sizeParameter("diameter", "How wide the whole circle is: the length of the straight side.")],
  symmetry: "upright",
} as const satisfies CatalogueEntry;

/**
 * The outline of half a disc.
 *
 * @internal
 */
export function halfCircleOutline({ shape, diameter }: HalfCircleShape): Outline {
  checkSides(shape, { diameter });
  const height = Math.floor(diameter / 2);
  const edge = { through: { x: axisOf(diameter), y: 0 }, to: { x: diameter, y: height } };
  return { outer: ringOfPath({ start: { x: 0, y: height }, edges: [edge] }), windows: [] };
}
