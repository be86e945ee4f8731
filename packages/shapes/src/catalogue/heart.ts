import type { Ticks } from "@sheetwright/measure";
import type { Outline } from "../outline/outline.js";
import { angleOf, cosineAndSine } from "../outline/sines.js";
import { checkSides } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { arcTo, axisOf, mirroredUpright, pointOf } from "./path.js";
import { ShapeError } from "./shape-error.js";

/** A heart. */
export interface HeartShape {
  readonly shape: "heart";
  readonly width: Ticks;
  readonly height: Ticks;
}

/** The catalogue's entry. */
export const heartEntry = {
  id: "heart",
  title: "Heart",
  about: "A heart of two round lobes whose sides swell a little on their way to the point.",
  parameters: [
    sizeParameter("width", "How wide it is."),
    {
      ...sizeParameter("height", "How high it is, from the tops of the lobes to the point."),
      range: "two thirds of the width to twice the width",
    },
  ],
  symmetry: "upright",
} as const satisfies CatalogueEntry;

/**
 * The lobes' radius in halves of the width. At one half the lobes would touch in a needle-thin cleft; this much more lets
 * them meet in an open one, about a sixth of the width deep.
 */
const LOBE = 0.52;

/** How far before a straight side its swelling one leaves the lobe, in radians, and at most in parts of the way there. */
const SWELL = 0.36;
const MOST_SWELL = 0.5;

/**
 * The outline of a heart.
 *
 *      half of it, from the cleft      the lobe: radius r = 0.52 a, touching the top and the side of the box
 *         _ _                          the side: a larger circle that touches the lobe from outside at the angle s below
 *      \ /   \                         the level and runs through the point; its centre S and radius R follow from
 *       C  L  |  - s                   |S - T| = R and S = L - (R - r) v, v the direction of s:
 *       |    /                         R = (|m|^2 + 2 r m v + r^2) / (2 (m v + r)), m = L - T.
 *       |  /                           Both have one tangent where they meet.
 *       T
 *
 * @internal
 */
export function heartOutline({ shape, width, height }: HeartShape): Outline {
  checkSides(shape, { width, height });
  if (3 * height < 2 * width || height > 2 * width) {
    throw new ShapeError({
      shape,
      key: "height",
      found: height,
      expected: "two thirds of the width to twice the width",
      help: "A heart is about as high as it is wide.",
    });
  }
  const axis = axisOf(width);
  const half = width / 2;
  const radius = LOBE * half;
  const lobe = { centre: { x: width - radius, y: radius }, radius };
  const out = half - radius;
  const below = height - radius;
  const straight =
    angleOf(below, out) + angleOf(Math.sqrt(out * out + below * below - radius * radius), radius);
  const leave = straight - Math.min(SWELL, MOST_SWELL * straight);
  const [vx, vy] = cosineAndSine(leave);
  const along = out * vx - below * vy;
  const large = (out * out + below * below + 2 * radius * along + radius * radius) / (2 * (along + radius));
  const side = {
    centre: { x: lobe.centre.x - (large - radius) * vx, y: radius - (large - radius) * vy },
    radius: large,
  };
  const tip = { x: axis, y: height };
  const arrive = angleOf(half - side.centre.x, height - side.centre.y);
  const rise = Math.sqrt(radius * radius - out * out);
  const cleft = { x: axis, y: Math.round(radius - rise) };
  const top = { x: Math.round(width - radius), y: 0 };
  const widest = { x: width, y: Math.round(radius) };
  const path = {
    start: cleft,
    edges: [
      ...arcTo(lobe, angleOf(-out, -rise), -Math.PI / 2, top),
      ...arcTo(lobe, -Math.PI / 2, 0, widest),
      ...arcTo(lobe, 0, leave, pointOf(lobe, leave)),
      ...arcTo(side, leave, arrive, tip),
    ],
  };
  return { outer: mirroredUpright(path, width), windows: [] };
}
