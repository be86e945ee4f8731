/** What can be wrong with a project, as data. */

import type { ProjectFaultCode } from "./checks/fault-checks.js";

/** One mistake in a project. */
export interface ProjectFault {
  readonly code: ProjectFaultCode;
  /** Where the value stands, such as `cards[2].front[0].border`; empty for the file as a whole. */
  readonly path: string;
  /** The shelf file that it stands in, by the name it was given under; absent where it stands in the project itself. */
  readonly file?: string | undefined;
  /** Line in the file, from 1; `null` where the project did not come from a file. */
  readonly line: number | null;
  /** Column in that line, from 1; `null` where the project did not come from a file. */
  readonly column: number | null;
  /** The value found, in short; empty where there is none. */
  readonly found: string;
  readonly expected: string;
  /** The whole story in full sentences: what is wrong, by how much, what would help. Without the place. */
  readonly message: string;
  /** The word that was probably meant; `null` where none is near. */
  readonly suggestion: string | null;
}

/**
 * A project that contradicts itself, with every mistake found; thrown only where the project did not come from a file.
 *
 * @example
 * const fault = { code: "too-large", path: "cards[0].front[1].size", line: null, column: null };
 * const error = new ProjectError([{ ...fault, found: "6 x 3 in", expected: "at most 5 x 7 in", message: "It is too wide." }]);
 * error.path // => "cards[0].front[1].size"
 * error.message // => "cards[0].front[1].size: It is too wide."
 */
export class ProjectError extends Error {
  override readonly name = "ProjectError";
  readonly code = "project";
  /** The path of the first fault. */
  readonly path: string;
  readonly details: readonly ProjectFault[];

  /** Takes at least one fault. */
  constructor(faults: readonly ProjectFault[]) {
    const [first] = faults;
    super(faults.map(({ path, message }) => `${path}: ${message}`).join("\n"));
    this.path = first?.path ?? "";
    this.details = faults;
  }
}
