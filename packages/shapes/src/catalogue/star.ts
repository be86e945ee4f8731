import type { Ticks } from "@sheetwright/measure";
import type { Outline } from "../outline/outline.js";
import type { Point } from "../outline/point.js";
import { cosine } from "../outline/sines.js";
import { checkCount, checkLength, checkSides } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { mirroredUpright } from "./path.js";
import { throughPoints } from "./polygon.js";
import { placeOnCircle, roundPoint } from "./round-place.js";

/** A star. */
export interface StarShape {
  readonly shape: "star";
  /** Of the circle through its points. */
  readonly diameter: Ticks;
  /** Default: 5. */
  readonly points?: number | undefined;
  /** How far the notches lie inside the circle through the points. Default: that of the pentagram; from 6 points on, of the star of two triangles. */
  readonly depth?: Ticks | undefined;
}

/** The catalogue's entry. */
export const starEntry = {
  id: "star",
  title: "Star",
  about: "A star with straight edges and a point at the top.",
  parameters: [
    sizeParameter("diameter", "How wide the circle through its points is."),
    { key: "points", kind: "count", meaning: "How many points it has.", default: "5", range: "3 to 100" },
    {
      key: "depth",
      kind: "length",
      meaning: "How far the notches lie inside the circle through the points.",
      default: "0.618 of the radius (the pentagram); from 6 points on 0.423 (two triangles)",
      range: "from just inside the lines between the points to nine tenths of the radius",
    },
  ],
  symmetry: "upright, with an even number of points level too; the same at as many turns as it has points",
} as const satisfies CatalogueEntry;

/** The notches of the pentagram lie at cos 72 / cos 36 of the radius, those of the star of two triangles at 1 / sqrt 3. */
const PENTAGRAM_DEPTH = 1 - (3 - Math.sqrt(5)) / 2;
const HEXAGRAM_DEPTH = 1 - 1 / Math.sqrt(3);

/** So deep a notch at least that its star never looks like a polygon with rounding errors. */
const LEAST_NOTCH: Ticks = 16;

/**
 * The outline of a star.
 *
 * @internal
 */
export function starOutline(star: StarShape): Outline {
  const { points = 5 } = star;
  const { place, depth } = starPlace(star);
  const corners = Array.from({ length: points + 1 }, (_, number) =>
    roundPoint(place, number, number % 2 === 0 ? 1 : 1 - depth / place.radius),
  );
  return { outer: mirroredUpright(throughPoints(corners), place.width), windows: [] };
}

/**
 * The middle of the circle through the points.
 *
 * @internal
 */
export function starMiddle(star: StarShape): Point {
  return starPlace(star).place.centre;
}

function starPlace({ shape, diameter, points = 5, depth }: StarShape) {
  checkSides(shape, { diameter });
  checkCount(points, {
    shape,
    key: "points",
    least: 3,
    most: 100,
    help: "A star has a point or two more than two.",
  });
  const radius = diameter / 2;
  const limits = {
    shape,
    key: "depth",
    least: Math.ceil(radius * (1 - cosine(Math.PI / points))) + LEAST_NOTCH,
    most: Math.floor(radius * 0.9),
    because: "from the lines between the points to nine tenths of the radius",
    help: "Use shallower notches for broader points, deeper ones for finer points.",
  };
  if (depth !== undefined) checkLength(depth, limits);
  const notch = depth ?? radius * (points < 6 ? PENTAGRAM_DEPTH : HEXAGRAM_DEPTH);
  return { place: placeOnCircle(diameter, points, "point"), depth: notch };
}
