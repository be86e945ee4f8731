import { silenceableCodes } from "../checks/silenceable-codes.js";
import type { Project } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { fault } from "./fault.js";

/**
 * Finds silences of what cannot be silenced, and those without a reason.
 *
 * @internal
 */
export function checkSilences({ silences }: Project): readonly ProjectFault[] {
  return silences.flatMap(({ path, check, because }) => {
    const faults: ProjectFault[] = [];
    if (!silenceableCodes.includes(check)) {
      const expected = `one of ${silenceableCodes.join(", ")}`;
      const message = `Expected ${expected}, found "${check}": only warnings and notes can be silenced.`;
      faults.push(
        fault({ code: "not-a-word", path: `${path}.check`, found: String(check), expected, message }),
      );
    }
    if (because.trim() === "") {
      const message = "A silence needs a reason. Write one.";
      const place = `${path}.because`;
      faults.push(fault({ code: "missing", path: place, found: "nothing", expected: "a reason", message }));
    }
    return faults;
  });
}
