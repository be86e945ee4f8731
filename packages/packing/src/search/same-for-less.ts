import type { Problem } from "../model.js";
import type { Progress } from "../progress.js";
import type { CompiledProblem } from "./compiled-problem.js";
import { type Draft, draftOf } from "./draft.js";

/** A search with the aim `all`. */
type CostSearch = (
  problem: Problem,
) => Generator<Progress, { readonly best: Draft; readonly cancelled: boolean }, boolean | undefined>;

/**
 * The pieces of a plan from cheaper sheets, where a search for all of them finds any: a plan made for the most value does
 * not look at what its sheets cost.
 */
export function* sameForLess(
  problem: CompiledProblem,
  plan: Draft,
  searchFor: CostSearch,
): Generator<Progress, { readonly best: Draft; readonly cancelled: boolean }, boolean | undefined> {
  const used = plan.layouts.reduce((sum, layout) => sum + layout.run, 0);
  const choice = problem.sheets.filter((sheet) => sheet.stock > 0).length;
  if (plan.cost === 0 || (used === 1 && choice === 1)) return { best: plan, cancelled: false };
  const kinds = problem.source.kinds.map(({ least: _, ...kind }, i) => {
    return { ...kind, quantity: plan.placed[i] ?? 0 };
  });
  const { best, cancelled } = yield* searchFor({ ...problem.source, kinds, aim: "all" });
  const isLess = best.lacking === 0 && best.cost < plan.cost;
  return { best: isLess ? draftOf(problem, best.layouts) : plan, cancelled };
}
