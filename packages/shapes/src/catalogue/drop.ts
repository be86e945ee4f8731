import type { Ticks } from "@sheetwright/measure";
import type { Outline } from "../outline/outline.js";
import { angleOf } from "../outline/sines.js";
import { checkSides } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { arcTo, axisOf, mirroredUpright, pointOf } from "./path.js";
import { ShapeError } from "./shape-error.js";

/** A drop: a disc with a point. */
export interface DropShape {
  readonly shape: "drop";
  /** Of the round part. */
  readonly width: Ticks;
  /** From the point to the bottom. */
  readonly height: Ticks;
}

/** The catalogue's entry. */
export const dropEntry = {
  id: "drop",
  title: "Drop",
  about: "A drop: round below, with straight sides that run into a point at the top.",
  parameters: [
    sizeParameter("width", "How wide it is: the diameter of the round part."),
    { ...sizeParameter("height", "How high it is, with the point."), range: "1.1 times the width to 10 m" },
  ],
  symmetry: "upright",
} as const satisfies CatalogueEntry;

/** A point lower than this would be no point. */
const LEAST_HEIGHT = 1.1;

/**
 * The outline of a drop.
 *
 * @internal
 */
export function dropOutline({ shape, width, height }: DropShape): Outline {
  checkSides(shape, { width, height });
  if (height < LEAST_HEIGHT * width) {
    throw new ShapeError({
      shape,
      key: "height",
      found: height,
      expected: "at least 1.1 times the width",
      help: "Make it higher or narrower, or take a circle.",
    });
  }
  const radius = width / 2;
  const circle = { centre: { x: radius, y: height - radius }, radius };
  // The tangent from the tip touches where the radius and the line to the tip meet at the angle of cosine r / distance.
  const distance = height - radius;
  const angle = angleOf(radius, Math.sqrt(distance * distance - radius * radius)) - Math.PI / 2;
  const side = { x: width, y: height - Math.ceil(radius) };
  const bottom = { x: axisOf(width), y: height };
  const path = {
    start: { x: axisOf(width), y: 0 },
    edges: [
      { to: pointOf(circle, angle) },
      ...arcTo(circle, angle, 0, side),
      ...arcTo(circle, 0, Math.PI / 2, bottom),
    ],
  };
  return { outer: mirroredUpright(path, width), windows: [] };
}
