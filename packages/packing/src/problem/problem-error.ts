/** One thing that is wrong with a problem, as data. */
export interface ProblemFinding {
  /** Stable name of the fault. */
  readonly code: ProblemFaultCode;
  /** Where, such as `kinds[2].forms[0].width`. */
  readonly path: string;
  /** A full sentence for a person. */
  readonly message: string;
  readonly found: unknown;
  readonly expected: string;
}

/** The faults that {@link checkProblem} can find. */
export type ProblemFaultCode =
  | "not-an-object"
  | "not-a-list"
  | "not-text"
  | "not-a-length"
  | "not-a-count"
  | "not-one-of"
  | "duplicate-id"
  | "unknown-sheet"
  | "duplicate-sheet"
  | "no-form"
  | "nothing-usable"
  | "trim-not-cuttable"
  | "least-over-quantity"
  | "hidden-outside"
  | "unlimited"
  | "too-many"
  | "not-yet";

/**
 * Thrown by {@link pack} and its kin for a problem that cannot be understood. What cannot be planned, such as too little
 * stock, is a result and never an error.
 *
 * @example
 * pack({ kinds: [], sheets: [], mode: "shelf", aim: "most" }) // throws ProblemError: one of all, fill
 */
export class ProblemError extends Error {
  override readonly name = "ProblemError";
  /** Code of the first finding. */
  readonly code: ProblemFaultCode;
  /** Path of the first finding. */
  readonly path: string;
  /** All findings. */
  readonly details: readonly ProblemFinding[];

  /** Takes at least one finding. */
  constructor(findings: readonly ProblemFinding[]) {
    const first = findings[0];
    if (first === undefined) throw new RangeError("A ProblemError needs at least one finding.");
    const shown = findings.slice(0, 10).map((finding) => finding.message);
    if (findings.length > 10) shown.push(`${findings.length - 10} more of the kind follow.`);
    super(shown.join("\n"));
    this.code = first.code;
    this.path = first.path;
    this.details = findings;
  }
}
