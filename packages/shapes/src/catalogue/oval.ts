import type { Ticks } from "@sheetwright/measure";
import { type Edge, type Outline, type Ring, spansOf } from "../outline/outline.js";
import { cosineAndSine, sine } from "../outline/sines.js";
import { checkSides } from "./check-parameter.js";
import { circleRing } from "./circle.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { axisOf, mirroredBoth, nearestOn } from "./path.js";
import { ShapeError } from "./shape-error.js";

/** A true ellipse. */
export interface OvalShape {
  readonly shape: "oval";
  readonly width: Ticks;
  readonly height: Ticks;
}

/** The catalogue's entry. */
export const ovalEntry = {
  id: "oval",
  title: "Oval",
  about: "A true ellipse, followed by arcs to within two ticks (about a thousandth of a mm).",
  parameters: [sizeParameter("width", "How wide it is."), sizeParameter("height", "How high it is.")],
  symmetry: "upright and level",
} as const satisfies CatalogueEntry;

/**
 * How far arcs may lie from the ellipse before their ends are rounded; with that it is less than two ticks.
 */
const ARC_ERROR: Ticks = 1;

/** The tips of narrower ones would be rounder than whole ticks can tell. */
const MOST_STRETCHED = 10;

/** So few are never enough for the formula to hold, which leaves out higher terms. */
const FEWEST_ARCS = 3;

/**
 * The outline of an ellipse.
 *
 * @internal
 */
export function ovalOutline({ shape, width, height }: OvalShape): Outline {
  checkSides(shape, { width, height });
  if (width > MOST_STRETCHED * height || height > MOST_STRETCHED * width) {
    throw new ShapeError({
      shape,
      key: width > height ? "width" : "height",
      found: Math.max(width, height),
      expected: "at most ten times the other side",
      help: "Make it rounder, or take a leaf.",
    });
  }
  if (width === height) return { outer: circleRing(width), windows: [] };
  const a = width / 2;
  const b = height / 2;
  const count = arcsOfQuarter(a, b);
  const pointAt = (angle: number) => {
    const [up, right] = cosineAndSine(angle);
    return nearestOn(a + a * right, b - b * up, { x: right / a, y: -up / b });
  };
  const step = Math.PI / 2 / count;
  const edges = Array.from({ length: count - 1 }, (_, index): Edge => {
    const middle = (index + 1) * step;
    return { through: pointAt(middle), to: pointAt(middle + step / 2) };
  });
  const ring = mirroredBoth({ start: pointAt(step / 2), edges }, width, height);
  return { outer: roundedOverAxes(ring, width, height), windows: [] };
}

/**
 * Makes arcs of the four edges that join mirror images: their middles are the ends of the axes, so that the oval is level and
 * upright there, and its box is exact. The curvature has its extremes there, which makes these arcs better than the others.
 */
function roundedOverAxes(ring: Ring, width: Ticks, height: Ticks): Ring {
  return spansOf(ring).map(({ from, to, through }) => {
    if (through !== null) return { through, to };
    const isLevel = from.y === to.y;
    const x = isLevel ? axisOf(width) : from.x > width / 2 ? width : 0;
    const y = isLevel ? (from.y > height / 2 ? height : 0) : axisOf(height);
    return { through: { x, y }, to };
  });
}

/** Places at which the error is looked at: it changes slowly. */
const LOOKS = 256;

/**
 * How many arcs a quarter of an ellipse takes, equal in the angle t of (a sin t, b cos t).
 *
 * An arc through the ends and the middle of a stretch of length s lies off by k' s^3 / (72 sqrt 3), where k' is the change of
 * the curvature along the curve: the remainder of interpolation at three points. With g = (ds/dt)^2 the curvature is
 * a b / g^(3/2), so that k' s^3 = 3/2 a b |a^2 - b^2| sin 2t g^(-3/2) (step)^3.
 */
function arcsOfQuarter(a: number, b: number): number {
  let most = 0;
  for (let look = 0; look <= LOOKS; look += 1) {
    const angle = (Math.PI / 2) * (look / LOOKS);
    const [up, right] = cosineAndSine(angle);
    const g = a * a * up * up + b * b * right * right;
    most = Math.max(most, sine(2 * angle) / (g * Math.sqrt(g)));
  }
  const change = 1.5 * a * b * Math.abs(a * a - b * b) * most;
  let count = FEWEST_ARCS;
  for (;;) {
    const step = Math.PI / 2 / count;
    if ((change * step * step * step) / (72 * Math.sqrt(3)) <= ARC_ERROR) return count;
    count += 1;
  }
}
