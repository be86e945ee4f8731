import { type Packing, type Problem, verify } from "@sheetwright/packing";
import type { Packer } from "@sheetwright/planner";
import type { Io } from "../io.js";
import type { PlanRequest } from "../request/plan-request.js";
import { withPacker } from "../threads/with-packer.js";
import { explainNoFit } from "./explain-no-fit.js";
import { showProgress } from "./show-progress.js";
import { WrongPlan } from "./wrong-plan.js";

/** A plan that was proven right, and with too few sheets what more of them would give. */
export interface FoundPlan {
  readonly packing: Packing;
  /** A plan for all pieces that fit, from as many sheets as it takes; `null` where none was needed or time was up. */
  readonly unlimited: Packing | null;
}

/**
 * Searches for a plan and re-proves it. Where the sheets on hand are not enough, searches once more without that limit, to
 * say how many would be. Ends early when the signal says so, with the best plan so far. Rejects with {@link WrongPlan}.
 */
export function findPlan(problem: Problem, request: PlanRequest, io: Io): Promise<FoundPlan> {
  return withPacker(request, io, (packer) => searchPlan(problem, request, packer, io));
}

async function searchPlan(
  problem: Problem,
  request: PlanRequest,
  packer: Packer,
  io: Io,
): Promise<FoundPlan> {
  const search = async (asked: Problem): Promise<Packing> => {
    const progress = showProgress(io.stderr);
    const packing = await packer(asked, {
      effort: request.effort,
      seed: request.seed,
      narrowestHold: request.hold,
      onProgress: progress.show,
      ...(io.signal === undefined ? {} : { signal: io.signal }),
      ...(io.pause === undefined ? {} : { pause: io.pause }),
    }).finally(progress.clear);
    const findings = verify(asked, packing);
    if (findings.length > 0) throw new WrongPlan(findings);
    return packing;
  };
  const packing = await search(problem);
  const enough = withoutLimit(problem, packing, request);
  const unlimited = enough === null || io.signal?.aborted === true ? null : await search(enough);
  return { packing, unlimited };
}

/** The same pieces but those that fit nowhere, from as many sheets as it takes; `null` where that would tell nothing. */
function withoutLimit(problem: Problem, packing: Packing, request: PlanRequest): Problem | null {
  const limited = problem.sheets.some((sheet) => (sheet.stock ?? null) !== null);
  if (packing.outcome === "complete" || !limited) return null;
  const unfit = new Set(explainNoFit(problem, request.unit).map((one) => one.kind));
  const kinds = problem.kinds.filter((kind) => !unfit.has(kind.id));
  if (packing.missing.every((one) => unfit.has(one.kind))) return null;
  return { ...problem, kinds, sheets: problem.sheets.map(({ stock: _, ...sheet }) => sheet) };
}
