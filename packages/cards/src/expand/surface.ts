import type { Size, Ticks } from "@sheetwright/measure";
import type { Outline } from "@sheetwright/shapes";
import type { Sides, SurfaceName } from "../project.js";

/** A rectangle on a surface of a card, from its top left corner, in ticks. */
export interface Rectangle extends Size {
  readonly x: Ticks;
  readonly y: Ticks;
}

/** What carries a layer: a surface of the card, or the whole of another layer. */
export interface Surface extends Rectangle {
  readonly surface: SurfaceName;
  /** Index of the layer; of the first band where bands carry as one; `null` for the surface itself. */
  readonly on: number | null;
  /** Index after the last layer that it is made of, with the covers of its seams; 0 for the surface itself. */
  readonly until: number;
  /** What a maker calls it: `the front of the card`, `the 1b mat`. */
  readonly words: string;
  /** A mat must show. */
  readonly isMat: boolean;
  /** What it is cut to, where it lies on the surface of the card; absent for a rectangle. */
  readonly outline?: readonly Outline[] | undefined;
}

/**
 * How far a rectangle lies from the edges of another one; negative where it sticks out.
 *
 * @internal
 */
export function distances(inner: Rectangle, outer: Rectangle): Sides {
  return {
    left: inner.x - outer.x,
    right: outer.x + outer.width - inner.x - inner.width,
    top: inner.y - outer.y,
    bottom: outer.y + outer.height - inner.y - inner.height,
  };
}
