/** What a parameter of a shape is. Lengths are ticks. */
export type ParameterKind = "length" | "count" | "word" | "shape" | "point";

/** A parameter of a shape of the catalogue, told so that a command, a form or a page can be made from it. */
export interface ParameterEntry {
  readonly key: string;
  readonly kind: ParameterKind;
  /** What it means, as a maker says it. */
  readonly meaning: string;
  /** What it is where it is not given; `required` where it must be. */
  readonly default: string;
  /** What it may be. */
  readonly range: string;
  /** Whether it is the nominal size or a part of it, which `shapeOfSize` takes apart from the others. */
  readonly isSize?: true;
  /** The words of a word. */
  readonly words?: readonly string[];
}

/** A shape of the catalogue. Plain data. */
export interface CatalogueEntry {
  /** What a shape has as `shape`. */
  readonly id: string;
  readonly title: string;
  /** What it is, in one sentence. */
  readonly about: string;
  readonly parameters: readonly ParameterEntry[];
  /** How it is symmetric, in words; `symmetryOf` tells it of a shape. */
  readonly symmetry: string;
}

/**
 * The parameter that is a shape's outer size, or a part of it.
 *
 * @internal
 */
export function sizeParameter(key: string, meaning: string, least = "1 mm"): ParameterEntry {
  return { key, kind: "length", isSize: true, meaning, default: "required", range: `${least} to 10 m` };
}
