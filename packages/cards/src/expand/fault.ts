import type { ProjectFault } from "../project-fault.js";

/**
 * Makes a fault of a project that need not have come from a file; whoever read it from one fills in the place.
 *
 * @internal
 */
export function fault(
  told: Pick<ProjectFault, "code" | "path" | "found" | "expected" | "message"> & {
    readonly suggestion?: string | null;
  },
): ProjectFault {
  const { code, path, found, expected, message, suggestion = null } = told;
  return { code, path, line: null, column: null, found, expected, message, suggestion };
}
