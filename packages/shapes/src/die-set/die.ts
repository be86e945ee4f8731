import { outlineOf } from "../catalogue/outline-of.js";
import type { Shape } from "../catalogue/shape.js";
import type { Outline } from "../outline/outline.js";

/** A die by its name: a shape of the catalogue or an outline of its own. */
export type Die = ShapeDie | OutlineDie;

/** A die of a shape of the catalogue. */
export interface ShapeDie {
  readonly name: string;
  readonly shape: Shape;
}

/** A die of any other outline. */
export interface OutlineDie {
  readonly name: string;
  readonly outline: Outline;
}

/**
 * What a die cuts.
 *
 * Throws a ShapeError where the parameters of its shape make no sense.
 *
 * @example
 * const die = { name: "large", shape: { shape: "circle", diameter: 81280 } };
 * boxOf(outlineOfDie(die)).width // => 81280
 */
export function outlineOfDie(die: Die): Outline {
  return "outline" in die ? die.outline : outlineOf(die.shape);
}
