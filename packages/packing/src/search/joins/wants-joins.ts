import type { Budget } from "../budget.js";
import type { CompiledProblem } from "../compiled-problem.js";

/** More copies than these take too long to join. */
const MOST_COPIES = 600;

/**
 * Whether a search has a start that joins pieces: where all pieces are wanted from several sizes of sheets, so that a plan
 * may have to be without any waste, and cuts have no stages to keep to.
 */
export function wantsJoins(problem: CompiledProblem, budget: Budget): boolean {
  const { source, stages, shelf, groups, sheets, kinds } = problem;
  if (budget.joins <= 0 || source.aim !== "all" || groups > 0) return false;
  if (shelf || stages !== Number.POSITIVE_INFINITY || sheets.length < 2) return false;
  const copies = kinds.reduce((sum, kind) => sum + kind.quantity, 0);
  return copies > 1 && copies <= MOST_COPIES && kinds.every((kind) => kind.fits || kind.quantity === 0);
}
