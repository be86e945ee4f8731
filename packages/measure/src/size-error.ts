import type { LengthCode } from "./length-error.js";

/** What can be wrong with the text of a size: all that can be wrong with a length, and these. */
export type SizeCode = LengthCode | "unknown-name" | "not-two-lengths";

/** One thing wrong with the text of a size, as plain data, so that many can be collected and shown. */
export interface SizeProblem {
  readonly code: SizeCode;
  /** Where the text stands in the caller's input; empty if not given. */
  readonly path: string;
  /** The text as it was given. */
  readonly text: string;
  /** Which of the two lengths is wrong; absent where it is the text as a whole. */
  readonly side?: "width" | "height";
  /** The column of the fault in the text, counted from 1. */
  readonly at: number;
  /** What stands there; empty where the text has ended. */
  readonly found: string;
  readonly expected: string;
  /** A sentence that says what would help. */
  readonly help: string;
  /** Ids of named sizes that may be meant, the nearest first. */
  readonly suggestions: readonly string[];
  /** All of this as full sentences, without the path. */
  readonly message: string;
}

/**
 * A size that could not be read: a fault of the person who wrote it, not of the program. `details` holds the
 * same as plain data.
 *
 * @example
 * parseSize("us-leter", { unit: "in" }) // throws SizeError: Did you mean us-letter?
 */
export class SizeError extends Error implements Omit<SizeProblem, "side"> {
  override readonly name = "SizeError";
  readonly code: SizeCode;
  readonly path: string;
  readonly text: string;
  readonly side: "width" | "height" | undefined;
  readonly at: number;
  readonly found: string;
  readonly expected: string;
  readonly help: string;
  readonly suggestions: readonly string[];
  readonly details: SizeProblem;

  constructor(problem: SizeProblem) {
    super(problem.message);
    this.code = problem.code;
    this.path = problem.path;
    this.text = problem.text;
    this.side = problem.side;
    this.at = problem.at;
    this.found = problem.found;
    this.expected = problem.expected;
    this.help = problem.help;
    this.suggestions = problem.suggestions;
    this.details = problem;
  }
}
