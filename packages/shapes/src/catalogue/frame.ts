import { inches, type Ticks } from "@sheetwright/measure";
import { isInside } from "../measure/inside.js";
import { leastDistance } from "../measure/least-distance.js";
import { moved } from "../outline/move.js";
import { type Edge, type Outline, type Ring, reversedRing } from "../outline/outline.js";
import type { Point } from "../outline/point.js";
import { checkLength } from "./check-parameter.js";
import type { CatalogueEntry } from "./entry.js";
import type { Shape } from "./shape.js";
import { ShapeError } from "./shape-error.js";

/** Any shape with a window of any shape. */
export interface FrameShape {
  readonly shape: "frame";
  readonly outer: Shape;
  /** Windows of its own are closed. */
  readonly window: Shape;
  /** Where the top left corner of the window's box lies from that of the outer one. Default: middle on middle. */
  readonly at?: Point | undefined;
  /** How much paper must be left round the window at least. Default: 1/16 in. */
  readonly leastBridge?: Ticks | undefined;
}

/** The catalogue's entry. */
export const frameEntry = {
  id: "frame",
  title: "Frame",
  about: "Any shape with a window of any shape: a ring, a frame, a shaker front.",
  parameters: [
    {
      key: "outer",
      kind: "shape",
      meaning: "The outer shape.",
      default: "required",
      range: "any shape, frames with windows of their own too",
    },
    {
      key: "window",
      kind: "shape",
      meaning: "The shape of the window.",
      default: "required",
      range: "any shape that fits",
    },
    {
      key: "at",
      kind: "point",
      meaning:
        "Where the top left corner of the window's box lies from the top left corner of the outer shape's.",
      default: "middle on middle",
      range: "anywhere inside",
    },
    {
      key: "leastBridge",
      kind: "length",
      meaning: "How much paper must be left round the window at least.",
      default: "1/16 in",
      range: "0.01 mm or more",
    },
  ],
  symmetry: "as far as both shapes are and the window lies in the middle",
} as const satisfies CatalogueEntry;

/** Common practice, no source: narrower frames tear and curl. */
const LEAST_BRIDGE: Ticks = inches(1 / 16);

/** Both outlines may be so far off the ideal ones. */
const EXACT: Ticks = 2;

/** An outline and its middle. */
export interface Middled {
  readonly outline: Outline;
  readonly middle: Point;
}

/**
 * The outline of a frame from those of its two shapes.
 *
 * @internal
 */
export function frameOutline(frame: FrameShape, outer: Middled, window: Middled): Outline {
  const { shape, leastBridge = LEAST_BRIDGE } = frame;
  checkLength(leastBridge, {
    shape,
    key: "leastBridge",
    least: 16,
    help: "A bridge has to hold the frame together.",
  });
  const at = frame.at ?? windowPlace(outer, window);
  for (const [axis, value] of Object.entries(at)) {
    checkLength(value, {
      shape,
      key: `at.${axis}`,
      help: "Give where the window's box begins, from the top left.",
    });
  }
  const opened = moved({ outer: window.outline.outer, windows: [] }, at);
  const bridge = bridgeRound(outer.outline, opened);
  if (bridge < leastBridge - EXACT) {
    const left =
      bridge < 0 ? "a window that does not lie inside" : `${Math.floor(bridge)} ticks of paper beside it`;
    throw new ShapeError({
      shape,
      key: "window",
      found: left,
      expected: `at least ${leastBridge} ticks of paper all round`,
      help: "Use a smaller window, move it, or allow a narrower bridge by leastBridge.",
    });
  }
  return {
    outer: outer.outline.outer,
    windows: [...outer.outline.windows, reversedRing(opened.outer)],
  };
}

/** How much paper there is at the narrowest place between a window and all other lines; less than 0 where it is not inside. */
function bridgeRound(outer: Outline, opened: Outline): number {
  const { distance } = leastDistance(outer, opened);
  const startOf = ([edge]: Ring) => (edge as Edge).to;
  // Lines that do not meet: all of a ring lies where one of its points does.
  const isInMaterial = isInside(outer, startOf(opened.outer));
  const opensAnother = outer.windows.some((window) => isInside(opened, startOf(window)));
  return isInMaterial && !opensAnother ? distance : -1;
}

/**
 * Where a window lies middle on middle, to half a tick.
 *
 * @internal
 */
export function windowPlace(outer: Middled, window: Middled): Point {
  return {
    x: Math.round(outer.middle.x - window.middle.x),
    y: Math.round(outer.middle.y - window.middle.y),
  };
}
