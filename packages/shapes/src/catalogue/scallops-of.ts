import type { Scallops } from "./scallop.js";
import { scallopedCircleScallops } from "./scalloped-circle.js";
import { scallopedOvalScallops } from "./scalloped-oval.js";
import { asRectangle, scallopedRectangleScallops } from "./scalloped-rectangle.js";
import type { Shape } from "./shape.js";

/**
 * How the scallops of a shape came out: how many, how wide and how deep; of a frame those of its outer shape. `null` for
 * shapes without. Throws a ShapeError as `outlineOf` does.
 *
 * @example
 * const { count, rows } = scallopsOf({ shape: "scalloped-square", side: 160000, pitch: 16000 });
 * count // => 36
 * rows.map(({ along, count, pitch }) => [along, count, Math.round(pitch)]) // => [["width", 8, 16000], ["height", 8, 16000]]
 * scallopsOf({ shape: "circle", diameter: 160000 }) // => null
 */
export function scallopsOf(shape: Shape): Scallops | null {
  switch (shape.shape) {
    case "scalloped-circle":
      return scallopedCircleScallops(shape);
    case "scalloped-oval":
      return scallopedOvalScallops(shape);
    case "scalloped-square":
      return scallopedRectangleScallops(asRectangle(shape));
    case "scalloped-rectangle":
      return scallopedRectangleScallops(shape);
    case "frame":
      return scallopsOf(shape.outer);
    default:
      return null;
  }
}
