import type { Expansion } from "../expansion.js";
import type { Project } from "../project.js";
import { ProjectError, type ProjectFault } from "../project-fault.js";
import { workOutProject } from "./work-out-project.js";

/**
 * Works a project out: where each layer of each card lies, to the tick, and the pieces to cut for all copies, labelled by
 * the number of the design, a letter in the order the card is stacked in, and the purpose (`3b mat`). All plain data, and
 * the same for the same project. Throws a ProjectError with all that {@link findProjectFaults} finds.
 */
export function expandProject(project: Project): Expansion {
  const { expansion, faults } = workOutProject(project);
  if (faults.length > 0) throw new ProjectError(faults);
  return expansion;
}

/**
 * Finds everything in which a project contradicts itself: layers or borders that vanish, layers too large for what
 * carries them, papers that are not there, grain that cannot be had, numbers out of their range. Never throws. Lines and
 * columns are `null`: only whoever read the file knows them.
 */
export function findProjectFaults(project: Project): readonly ProjectFault[] {
  return workOutProject(project).faults;
}
