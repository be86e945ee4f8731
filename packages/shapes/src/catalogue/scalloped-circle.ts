import type { Ticks } from "@sheetwright/measure";
import type { Edge, Outline } from "../outline/outline.js";
import type { Point } from "../outline/point.js";
import { cosineAndSine } from "../outline/sines.js";
import { checkCount, checkLength, checkSides } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { arcTo, mirroredUpright } from "./path.js";
import { placeOnCircle, type RoundPlace, roundPoint } from "./round-place.js";
import {
  type DepthRange,
  deepestTangent,
  depthParameter,
  depthWithin,
  LEAST_PITCH,
  leastPitch,
  MOST_SCALLOPS,
  pitchParameter,
  type Scallops,
  scallopArc,
  usualPitch,
} from "./scallop.js";
import { ShapeError } from "./shape-error.js";

/** A disc with an edge of scallops. */
export interface ScallopedCircleShape {
  readonly shape: "scalloped-circle";
  /** Of the circle that all scallops touch from inside. */
  readonly diameter: Ticks;
  /** How many scallops. Default: as many as come nearest to the pitch, and without one a multiple of four. */
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
    sizeParameter("diameter", "How wide the circle round all scallops is.", "6.4 mm"),
    {
      key: "count",
      kind: "count",
      meaning: "How many scallops it has.",
      default: "what comes nearest to the pitch; without one a multiple of four",
      range: "3 to 1000, each at least 1 mm wide; in place of a pitch",
    },
    pitchParameter("1 mm to a third of the diameter, at most 1000 scallops"),
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
  const help = "Use fewer, wider scallops.";
  checkCount(count, { shape, key: "count", least: 3, most: MOST_SCALLOPS, help });
  const range = depthsOf(diameter / 2, count);
  const depth = circle.depth === undefined ? range.deepest : depthWithin(shape, circle.depth, range);
  const halfPitch = halfPitchOf(diameter / 2, count, depth);
  if (circle.count !== undefined && 2 * halfPitch < LEAST_PITCH) {
    const expected = `scallops of at least ${LEAST_PITCH} ticks (1 mm)`;
    throw new ShapeError({ shape, key: "count", found: count, expected, help });
  }
  const place = placeOnCircle(diameter, count, "point", scallopArc(halfPitch, depth).radius);
  return { place, count, depth, halfPitch };
}

function nearestCount({ shape, diameter, pitch: given, depth }: ScallopedCircleShape): number {
  const pitch = given ?? usualPitch(diameter, Math.PI * diameter);
  checkLength(pitch, {
    shape,
    key: "pitch",
    least: leastPitch(Math.PI * diameter),
    most: Math.floor(diameter / 3),
    because: "a third of the diameter, and at most a thousand scallops",
    help: "Use narrower scallops, or say how many there should be.",
  });
  const radius = diameter / 2;
  const pitchOf = (count: number) =>
    2 *
    halfPitchOf(radius, count, Math.min(depth ?? Number.POSITIVE_INFINITY, depthsOf(radius, count).deepest));
  // Without a wish a multiple of four, which makes the box as wide and high as the circle.
  const [least, step] = given === undefined ? [8, 4] : [3, 1];
  // The pitch falls with the count.
  let count = least;
  while (count < MOST_SCALLOPS && pitchOf(count) > pitch) count += step;
  const fewer = count - step;
  return fewer >= least && pitchOf(fewer) - pitch < pitch - pitchOf(count) ? fewer : count;
}

function depthsOf(radius: number, count: number): DepthRange {
  const [c, s] = cosineAndSine(Math.PI / count);
  // Touching: depth R sin(pi/n), and so a half pitch of R (1 - sin) tan.
  const touching = radius * s;
  const tangent = (s / c) * deepestTangent((2 * Math.PI) / count, ((radius - touching) * s) / c);
  const deepest = (radius * tangent) / (1 + tangent);
  return { smooth: radius * (1 - c), deepest, hair: touching - deepest };
}

function halfPitchOf(radius: number, count: number, depth: number): number {
  const [c, s] = cosineAndSine(Math.PI / count);
  return ((radius - depth) * s) / c;
}
