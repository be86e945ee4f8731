import type { Ticks } from "@sheetwright/measure";
import type { Edge, Outline } from "../outline/outline.js";
import { checkLength, checkSides } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { axisOf, ringOfPath } from "./path.js";

/** A door or window with a round top. */
export interface ArchShape {
  readonly shape: "arch";
  readonly width: Ticks;
  /** From the foot to the top of the arch. */
  readonly height: Ticks;
  /** How high the round top is. Default: half of the width, which is a half circle. */
  readonly rise?: Ticks | undefined;
}

/** The catalogue's entry. */
export const archEntry = {
  id: "arch",
  title: "Arch",
  about: "A rectangle with a round top, as a door or a window has it.",
  parameters: [
    sizeParameter("width", "How wide it is."),
    sizeParameter("height", "How high it is, from the foot to the top of the arch."),
    {
      key: "rise",
      kind: "length",
      meaning: "How high the round top is; less than half of the width makes a flatter arch.",
      default: "half of the width (a half circle), at most the height",
      range: "a twentieth of the width to half of it, and at most the height",
    },
  ],
  symmetry: "upright",
} as const satisfies CatalogueEntry;

/**
 * The outline of an arch.
 *
 * @internal
 */
export function archOutline({ shape, width, height, rise }: ArchShape): Outline {
  checkSides(shape, { width, height });
  const half = Math.floor(width / 2);
  const round = rise ?? Math.min(half, height);
  checkLength(round, {
    shape,
    key: "rise",
    least: Math.ceil(width / 20),
    most: Math.min(half, height),
    because: "a twentieth of the width to half of it, and at most the height",
    help: "Use half of the width for a half circle, less for a flatter arch.",
  });
  const edges: readonly Edge[] = [
    { through: { x: axisOf(width), y: 0 }, to: { x: width, y: round } },
    { to: { x: width, y: height } },
    { to: { x: 0, y: height } },
  ];
  return { outer: ringOfPath({ start: { x: 0, y: round }, edges }), windows: [] };
}
