/** What is wrong with a parameter of a shape, as data. */
export interface ShapeProblem {
  /** The name of the shape, such as `star`. */
  readonly shape: string;
  /** The parameter, such as `depth`. */
  readonly key: string;
  /** What was given; ticks where it is a length. */
  readonly found: unknown;
  /** What would be right, in words. */
  readonly expected: string;
  /** What to do. */
  readonly help: string;
}

/**
 * Says that a shape cannot be made from the numbers that were given: which shape and parameter, what was found, what was
 * expected, and what would help. A RangeError with these as data.
 *
 * @example
 * outlineOf({ shape: "circle", diameter: -5 }) // throws ShapeError: circle, diameter: found -5 ticks
 */
export class ShapeError extends RangeError {
  override readonly name = "ShapeError";
  readonly problem: ShapeProblem;

  constructor(problem: ShapeProblem, foundInWords: string = String(problem.found)) {
    super(
      `${problem.shape}, ${problem.key}: found ${foundInWords}, expected ${problem.expected}. ${problem.help}`,
    );
    this.problem = problem;
  }
}
