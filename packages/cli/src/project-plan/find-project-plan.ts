import type { Project } from "@sheetwright/cards";
import { type Plan, planAsync, verifyPlan } from "@sheetwright/planner";
import type { Io } from "../io.js";
import { showProgress } from "../plan/show-progress.js";
import { WrongPlan } from "../plan/wrong-plan.js";
import type { SearchOptions } from "../request/shared-options.js";
import { withPacker } from "../threads/with-packer.js";

/**
 * Searches for a plan of a project and re-proves it. Ends early when the signal says so, with the best plan so far.
 * Rejects with {@link WrongPlan}.
 */
export async function findProjectPlan(project: Project, request: SearchOptions, io: Io): Promise<Plan> {
  const { effort, seed } = request;
  const progress = showProgress(io.stderr);
  const plan = await withPacker(request, io, (packer) =>
    planAsync(project, {
      effort,
      seed,
      packer,
      onProgress: ({ group, groups, progress: step }) => {
        progress.show(step, groups === 1 ? "" : `papers ${group + 1} of ${groups}, `);
      },
      ...(io.signal === undefined ? {} : { signal: io.signal }),
      ...(io.pause === undefined ? {} : { pause: io.pause }),
    }),
  ).finally(progress.clear);
  const findings = verifyPlan(project, plan);
  if (findings.length > 0) throw new WrongPlan(findings);
  return plan;
}
