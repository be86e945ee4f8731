import type { Ticks } from "@sheetwright/measure";
import type { Edge, Outline } from "../outline/outline.js";
import type { Point } from "../outline/point.js";
import { checkCount, checkSides, checkWord } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { mirroredUpright } from "./path.js";
import { placeOnCircle, type RoundPlace, roundPoint } from "./round-place.js";

/** A regular polygon. */
export interface PolygonShape {
  readonly shape: "polygon";
  /** Of the circle through its corners. */
  readonly diameter: Ticks;
  readonly sides: number;
  /** Whether a corner or a side is at the top. Default: a side where the number of sides is a multiple of four, else a corner. */
  readonly up?: "point" | "flat" | undefined;
}

/** The catalogue's entry. */
export const polygonEntry = {
  id: "polygon",
  title: "Polygon",
  about: "A regular polygon: triangle, pentagon, hexagon, octagon and so on.",
  parameters: [
    sizeParameter("diameter", "How wide the circle through its corners is."),
    {
      key: "sides",
      kind: "count",
      meaning: "How many sides it has.",
      default: "required",
      range: "3 to 100",
    },
    {
      key: "up",
      kind: "word",
      meaning: "Whether a corner (point) or a side (flat) is at the top.",
      default: "flat where the number of sides is a multiple of four, else point",
      range: "point or flat",
      words: ["point", "flat"],
    },
  ],
  symmetry: "upright, with an even number of sides level too; the same at as many turns as it has sides",
} as const satisfies CatalogueEntry;

/**
 * The outline of a regular polygon.
 *
 * @internal
 */
export function polygonOutline(shape: PolygonShape): Outline {
  const { sides } = shape;
  const place = polygonPlace(shape);
  const right = place.numbers
    .filter((number) => number <= sides)
    .map((number) => roundPoint(place, number, 1));
  return { outer: mirroredUpright(throughPoints(right), place.width), windows: [] };
}

/**
 * The middle of the circle through the corners.
 *
 * @internal
 */
export function polygonMiddle(shape: PolygonShape): Point {
  return polygonPlace(shape).centre;
}

function polygonPlace({
  shape,
  diameter,
  sides,
  up = sides % 4 === 0 ? "flat" : "point",
}: PolygonShape): RoundPlace {
  checkSides(shape, { diameter });
  checkCount(sides, {
    shape,
    key: "sides",
    least: 3,
    most: 100,
    help: "For more sides take a circle.",
  });
  checkWord(shape, "up", up, ["point", "flat"]);
  return placeOnCircle(diameter, sides, up);
}

/**
 * A path of straight edges.
 *
 * @internal
 */
export function throughPoints(points: readonly Point[]): { start: Point; edges: readonly Edge[] } {
  return { start: points[0] as Point, edges: points.slice(1).map((to) => ({ to })) };
}
