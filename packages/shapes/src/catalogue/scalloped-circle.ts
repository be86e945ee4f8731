import type { Ticks } from "@sheetwright/measure";
import type { Edge, Outline } from "../outline/outline.js";
import type { Point } from "../outline/point.js";
import { cosineAndSine } from "../outline/sines.js";
import { checkCount, checkLength, checkSides } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { arcTo, mirroredUpright } from "./path.js";
import { placeOnCircle, type RoundPlace, roundPoint } from "./round-place.js";
import {
  deepestTangent,
  depthParameter,
  depthWithin,
  LEAST_PITCH,
  MOST_SCALLOPS,
  pitchParameter,
  type Scallops,
  scallopArc,
  usualPitch,
} from "./scallop.js";

/** A disc with an edge of scallops. */
export interface ScallopedCircleShape {
  readonly shape: "scalloped-circle";
  /** Of the circle that all scallops touch from inside. */
  readonly diameter: Ticks;
  /** How many scallops. Default: as many as come nearest to the pitch. */
  readonly count?: number | undefined;
  /** How wide a scallop is meant to be from valley to valley. Default: 3/8 in, at most a fifth of the diameter. */
  readonly pitch?: Ticks | undefined;
  /** How far a scallop rises over the line between its valleys. Default: so far that neighbours touch, which makes the lobed circle. */
  readonly depth?: Ticks | undefined;
}

/** The catalogue's entry. */
export const scallopedCircleEntry = {
  id: "scalloped-circle",
  title: "Scalloped circle",
  about: "A disc with an edge of equal scallops; five or six make a flower.",
  parameters: [
    sizeParameter("diameter", "How wide the circle round all scallops is."),
    {
      key: "count",
      kind: "count",
      meaning: "How many scallops it has.",
      default: "what comes nearest to the pitch",
      range: "3 to 1000, each at least 1 mm wide; in place of a pitch",
    },
    pitchParameter("1 mm to a third of the diameter"),
    depthParameter,
  ],
  symmetry: "upright, with an even count level too; the same at as many turns as it has scallops",
} as const satisfies CatalogueEntry;

/**
 * The outline of a scalloped circle.
 *
 * By default it is the lobed circle: n circles that touch their neighbours, of radius rho = R sin(pi/n), their middles on a circle
 * of radius R, inside one of the diameter 2 (R + rho).
 *
 * @internal
 */
export function scallopedCircleOutline(shape: ScallopedCircleShape): Outline {
  const { place, count, depth, halfPitch } = solve(shape);
  const { radius, half } = scallopArc(halfPitch, depth);
  const outer = place.radius;
  // Valleys lie on a circle of their own.
  const valley = (outer - depth) / cosineAndSine(Math.PI / count)[0] / outer;
  const points = Array.from({ length: count + 1 }, (_, number) =>
    roundPoint(place, number, number % 2 === 0 ? 1 : valley),
  );
  const edges = points.slice(1).flatMap((to, index): readonly Edge[] => {
    // Half a scallop: down to the valley, or up to the top.
    const goesDown = index % 2 === 0;
    const [up, right] = cosineAndSine((Math.PI * (goesDown ? index : index + 1)) / count);
    const centre = {
      x: place.centre.x + (outer - radius) * right,
      y: place.centre.y - (outer - radius) * up,
    };
    const top = (Math.PI * (goesDown ? index : index + 1)) / count - Math.PI / 2;
    return goesDown
      ? arcTo({ centre, radius }, top, top + half, to)
      : arcTo({ centre, radius }, top - half, top, to);
  });
  return {
    outer: mirroredUpright({ start: points[0] as Point, edges }, place.width),
    windows: [],
  };
}

/**
 * How its scallops came out.
 *
 * @internal
 */
export function scallopedCircleScallops(shape: ScallopedCircleShape): Scallops {
  const { count, depth, halfPitch } = solve(shape);
  return { count, depth, rows: [{ along: "round", count, pitch: 2 * halfPitch }] };
}

/**
 * The middle of the circle round the scallops.
 *
 * @internal
 */
export function scallopedCircleMiddle(shape: ScallopedCircleShape): Point {
  return solve(shape).place.centre;
}

function solve(circle: ScallopedCircleShape): {
  readonly place: RoundPlace;
  readonly count: number;
  readonly depth: number;
  readonly halfPitch: number;
} {
  const { shape, diameter } = circle;
  checkSides(shape, { diameter }, 4 * LEAST_PITCH);
  const count = circle.count ?? nearestCount(circle);
  const range = {
    shape,
    key: circle.count === undefined ? "pitch" : "count",
    least: 3,
    most: Math.min(MOST_SCALLOPS, Math.max(3, Math.floor((3 * diameter) / LEAST_PITCH) - 3)),
    help: "Use fewer, wider scallops.",
  };
  checkCount(count, range);
  const { deepest, hair } = deepestOf(diameter / 2, count);
  const depth = depthWithin(shape, circle.depth, deepest, hair);
  const halfPitch = halfPitchOf(diameter / 2, count, depth);
  const place = placeOnCircle(diameter, count, "point", scallopArc(halfPitch, depth).radius);
  return { place, count, depth, halfPitch };
}

function nearestCount({
  shape,
  diameter,
  pitch = usualPitch(diameter),
  depth,
}: ScallopedCircleShape): number {
  checkLength(pitch, {
    shape,
    key: "pitch",
    least: LEAST_PITCH,
    most: Math.floor(diameter / 3),
    because: "a third of the diameter",
    help: "Use narrower scallops, or say how many there should be.",
  });
  const radius = diameter / 2;
  const pitchOf = (count: number) =>
    2 *
    halfPitchOf(radius, count, Math.min(depth ?? Number.POSITIVE_INFINITY, deepestOf(radius, count).deepest));
  // The pitch falls with the count.
  let count = 3;
  while (count < MOST_SCALLOPS && pitchOf(count) > pitch) count += 1;
  return count > 3 && pitchOf(count - 1) - pitch < pitch - pitchOf(count) ? count - 1 : count;
}

/** The depth at which neighbours touch, less a hair of room, and that hair. */
function deepestOf(radius: number, count: number): { readonly deepest: number; readonly hair: number } {
  const [c, s] = cosineAndSine(Math.PI / count);
  // Touching: depth R sin(pi/n), and so a half pitch of R (1 - sin) tan.
  const touching = radius * s;
  const tangent = (s / c) * deepestTangent((2 * Math.PI) / count, ((radius - touching) * s) / c);
  const deepest = (radius * tangent) / (1 + tangent);
  return { deepest, hair: touching - deepest };
}

function halfPitchOf(radius: number, count: number, depth: number): number {
  const [c, s] = cosineAndSine(Math.PI / count);
  return ((radius - depth) * s) / c;
}
