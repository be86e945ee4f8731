import { inches, type Ticks } from "@sheetwright/measure";
import type { Edge, Outline } from "../outline/outline.js";
import { checkLength, checkSides, checkWord, SMALLEST_LENGTH } from "./check-parameter.js";
import { type CatalogueEntry, type ParameterEntry, sizeParameter } from "./entry.js";
import { arcTo, mirroredBoth } from "./path.js";

/** How corners are cut. */
export type CornerCut = "sharp" | "round" | "ticket";

/** A rectangle with sharp, round or hollow corners. */
export interface RectangleShape {
  readonly shape: "rectangle";
  readonly width: Ticks;
  readonly height: Ticks;
  /** Default: `sharp`, or `round` where a radius is given. */
  readonly corners?: CornerCut | undefined;
  /** Of round corners, or of the quarter circles cut out of ticket corners. Default: 1/4 in, in small shapes a quarter of the shorter side. */
  readonly radius?: Ticks | undefined;
}

/** A square with sharp, round or hollow corners. */
export interface SquareShape {
  readonly shape: "square";
  readonly side: Ticks;
  /** Default: `sharp`, or `round` where a radius is given. */
  readonly corners?: CornerCut | undefined;
  /** Of round corners, or of the quarter circles cut out of ticket corners. Default: 1/4 in, in small shapes a quarter of the side. */
  readonly radius?: Ticks | undefined;
}

const CORNERS: readonly CornerCut[] = ["sharp", "round", "ticket"];

/** Common practice, no source: corner punches are sold from 1/8 to 1/2 in. */
const USUAL_RADIUS: Ticks = inches(1 / 4);

const cornerParameters = [
  {
    key: "corners",
    kind: "word",
    meaning: "How the corners are cut: sharp, round, or hollow as on a ticket or an old label.",
    default: "sharp; round where a radius is given",
    range: "sharp, round or ticket",
    words: CORNERS,
  },
  {
    key: "radius",
    kind: "length",
    meaning: "The radius of round corners, or of the quarter circles cut out of ticket corners.",
    default: "1/4 in, at most a quarter of the shorter side",
    range: "0 to half of the shorter side; for ticket corners to two fifths of it",
  },
] as const satisfies readonly ParameterEntry[];

/** The catalogue's entry. */
export const rectangleEntry = {
  id: "rectangle",
  title: "Rectangle",
  about: "A rectangle with sharp or round corners, or with hollow ones as on a ticket.",
  parameters: [
    sizeParameter("width", "How wide it is.", "0.01 mm"),
    sizeParameter("height", "How high it is.", "0.01 mm"),
    ...cornerParameters,
  ],
  symmetry: "upright and level",
} as const satisfies CatalogueEntry;

/** The catalogue's entry. */
export const squareEntry = {
  id: "square",
  title: "Square",
  about: "A square with sharp or round corners, or with hollow ones as on a ticket.",
  parameters: [sizeParameter("side", "How long its sides are.", "0.01 mm"), ...cornerParameters],
  symmetry: "upright and level; the same at every quarter turn",
} as const satisfies CatalogueEntry;

/**
 * The outline of a rectangle.
 *
 * @internal
 */
export function rectangleOutline({ shape, width, height, corners, radius }: RectangleShape): Outline {
  checkSides(shape, { width, height }, SMALLEST_LENGTH);
  return cornered(shape, width, height, corners, radius);
}

/**
 * The outline of a square.
 *
 * @internal
 */
export function squareOutline({ shape, side, corners, radius }: SquareShape): Outline {
  checkSides(shape, { side }, SMALLEST_LENGTH);
  return cornered(shape, side, side, corners, radius);
}

function cornered(
  shape: string,
  width: Ticks,
  height: Ticks,
  wanted: CornerCut | undefined,
  given: Ticks | undefined,
): Outline {
  const corners = wanted ?? (given === undefined ? "sharp" : "round");
  checkWord(shape, "corners", corners, CORNERS);
  const shorter = Math.min(width, height);
  const radius = given ?? Math.min(USUAL_RADIUS, Math.floor(shorter / 4));
  checkLength(radius, {
    shape,
    key: "radius",
    most: Math.floor(corners === "ticket" ? (shorter * 2) / 5 : shorter / 2),
    because: corners === "ticket" ? "two fifths of the shorter side" : "half of the shorter side",
    help: "Use a smaller radius or a larger shape.",
  });
  const corner = corners === "sharp" || radius === 0 ? null : cornerOf(corners, width, radius);
  const edges: readonly Edge[] = corner ?? [{ to: { x: width, y: 0 } }];
  const start = { x: Math.floor(width / 2), y: 0 };
  return { outer: withoutAxisCorners(mirroredBoth({ start, edges }, width, height)), windows: [] };
}

function cornerOf(corners: "round" | "ticket", width: Ticks, radius: Ticks): readonly Edge[] {
  const end = { x: width, y: radius };
  const quarter =
    corners === "round"
      ? arcTo({ centre: { x: width - radius, y: radius }, radius }, -Math.PI / 2, 0, end)
      : arcTo({ centre: { x: width, y: 0 }, radius }, Math.PI, Math.PI / 2, end);
  return [{ to: { x: width - radius, y: 0 } }, ...quarter];
}

/** The quarters were joined in the middle of straight sides. */
function withoutAxisCorners(ring: readonly Edge[]): readonly Edge[] {
  return ring.filter((edge, index) => {
    const next = ring[(index + 1) % ring.length] as Edge;
    const before = ring[(index + ring.length - 1) % ring.length] as Edge;
    if ("through" in edge || "through" in next) return true;
    const isLevel = before.to.y === edge.to.y && edge.to.y === next.to.y;
    const isUpright = before.to.x === edge.to.x && edge.to.x === next.to.x;
    return !(isLevel || isUpright);
  });
}
