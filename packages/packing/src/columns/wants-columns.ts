import type { Budget } from "../search/budget.js";
import type { CompiledProblem } from "../search/compiled-problem.js";

/** Copies for each kind from which on layouts are worth repeating. */
const COPIES_PER_KIND = 2;

/** More kinds than these make the linear program slower than it is worth. */
const MOST_KINDS = 400;

/** Whether a search has a start with columns: where all copies are wanted and outnumber their kinds. */
export function wantsColumns(problem: CompiledProblem, budget: Budget): boolean {
  if (budget.columns <= 0 || problem.source.aim !== "all" || problem.groups > 0) return false;
  const wanted = problem.kinds.filter((kind) => kind.quantity > 0 && kind.fits);
  const copies = wanted.reduce((sum, kind) => sum + kind.quantity, 0);
  return wanted.length > 1 && wanted.length <= MOST_KINDS && copies >= COPIES_PER_KIND * wanted.length;
}
