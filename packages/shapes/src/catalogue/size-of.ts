import type { Ticks } from "@sheetwright/measure";
import type { Shape } from "./shape.js";

/** The nominal outer size of a shape: the diameter of the circle round it, or width by height. */
export type NominalSize = { readonly diameter: Ticks } | { readonly width: Ticks; readonly height: Ticks };

/**
 * The size that a shape is called by: the diameter of the circle round it for circles, half circles, polygons, stars and
 * scalloped circles, width by height for all others. A frame has the size of its outer shape.
 *
 * @example
 * sizeOf({ shape: "polygon", sides: 6, diameter: 81280 }) // => { diameter: 81280 }
 * sizeOf({ shape: "scalloped-square", side: 81280 }) // => { width: 81280, height: 81280 }
 */
export function sizeOf(shape: Shape): NominalSize {
  if (shape.shape === "frame") return sizeOf(shape.outer);
  if ("diameter" in shape) return { diameter: shape.diameter };
  if ("side" in shape) return { width: shape.side, height: shape.side };
  return { width: shape.width, height: shape.height };
}
