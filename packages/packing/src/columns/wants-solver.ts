import type { Effort, Problem } from "../model.js";
import { checkProblem } from "../problem/check-problem.js";
import { BUDGETS } from "../search/budget.js";
import { compileProblem } from "../search/compiled-problem.js";
import { wantsColumns } from "./wants-columns.js";

/**
 * Whether {@link pack} would have a use for a solver of linear programs: where all copies are wanted and outnumber their
 * kinds. Takes about as long as reading the problem, so that a solver need be loaded only where this is true. False for a
 * problem or an effort that is none.
 *
 * @example
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 1, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "cream", width: 12, height: 12 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * wantsSolver(problem, "standard") // => false
 */
export function wantsSolver(problem: Problem, effort: Effort): boolean {
  const budget = BUDGETS[effort];
  if (budget === undefined || checkProblem(problem).length > 0) return false;
  return wantsColumns(compileProblem(problem), budget);
}
