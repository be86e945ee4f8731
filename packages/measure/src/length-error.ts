/** What can be wrong with the text of a length. */
export type LengthCode =
  | "empty"
  | "not-a-length"
  | "decimal-comma"
  | "zero-denominator"
  | "improper-fraction"
  | "decimal-with-fraction"
  | "fraction-in-metric"
  | "unknown-unit"
  | "extra-text"
  | "negative"
  | "zero"
  | "too-long";

/**
 * Where and why a text stops being a length.
 *
 * @internal
 */
export interface LengthFault {
  readonly code: LengthCode;
  readonly at: number;
  readonly found: string;
  readonly expected: string;
  readonly help: string;
}

/** One thing wrong with the text of a length, as plain data, so that many can be collected and shown. */
export interface LengthProblem {
  readonly code: LengthCode;
  /** Where the text stands in the caller's input, such as `cards[2].front[0].border`; empty if not given. */
  readonly path: string;
  /** The text as it was given. */
  readonly text: string;
  /** The column of the fault in the text, counted from 1. */
  readonly at: number;
  /** What stands there; empty where the text has ended. */
  readonly found: string;
  readonly expected: string;
  /** A sentence that says what would help. */
  readonly help: string;
  /** All of this as full sentences, without the path. */
  readonly message: string;
}

/**
 * A length that could not be read: a fault of the person who wrote it, not of the program. `details` holds
 * the same as plain data.
 *
 * @example
 * parseLength("8,5", { unit: "in" }) // throws LengthError: Write 8.5 with a dot.
 */
export class LengthError extends Error implements LengthProblem {
  override readonly name = "LengthError";
  readonly code: LengthCode;
  readonly path: string;
  readonly text: string;
  readonly at: number;
  readonly found: string;
  readonly expected: string;
  readonly help: string;
  readonly details: LengthProblem;

  constructor(problem: LengthProblem) {
    super(problem.message);
    this.code = problem.code;
    this.path = problem.path;
    this.text = problem.text;
    this.at = problem.at;
    this.found = problem.found;
    this.expected = problem.expected;
    this.help = problem.help;
    this.details = problem;
  }
}
