import type { Severity } from "./check.js";
import type { CheckCode } from "./project-checks.js";

/** Something a check found in a project. */
export interface Finding {
  readonly code: CheckCode;
  readonly severity: Severity;
  /** Where it stands in the project, such as `cards[2].front[0].seam`. */
  readonly path: string;
  /** All of it in full sentences, with what would help. */
  readonly message: string;
  /** The reason for which the project file silences it; `null` where it does not. */
  readonly silenced: string | null;
}

/** A finding as the check that makes it knows it. */
export type Found = Pick<Finding, "code" | "path" | "message">;
