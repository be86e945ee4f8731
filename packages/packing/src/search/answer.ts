import type { Bound, KindCount, Layout, Packing } from "../model.js";
import type { CompiledProblem } from "./compiled-problem.js";
import type { Draft } from "./draft.js";

/** Whether a plan is as good as its bound, so that no better one exists. */
export function reaches(problem: CompiledProblem, draft: Draft, bound: Bound | undefined): boolean {
  if (bound === undefined) return false;
  if (bound.aim === "fill") return BigInt(bound.value) === totals(problem, draft.placed).value;
  return draft.lacking === 0 && bound.cost !== null && BigInt(bound.cost) === costOf(draft);
}

function costOf(draft: Draft): bigint {
  return draft.layouts.reduce((sum, layout) => sum + BigInt(layout.run) * BigInt(layout.sheet.cost), 0n);
}

function totals(problem: CompiledProblem, placed: readonly number[]): { readonly value: bigint } {
  return {
    value: problem.kinds.reduce(
      (sum, kind) => sum + BigInt(placed[kind.index] ?? 0) * BigInt(kind.value),
      0n,
    ),
  };
}

/** A plan as it is given out. */
export function answer(
  problem: CompiledProblem,
  layouts: readonly Layout[],
  draft: Draft,
  bound: Bound,
  record: Packing["search"],
): Packing {
  const { mode, aim } = problem.source;
  const placed: KindCount[] = problem.kinds.map((kind) => ({
    kind: kind.id,
    count: draft.placed[kind.index] ?? 0,
  }));
  const missing: KindCount[] = problem.kinds
    .map((kind) => ({ kind: kind.id, count: kind.least - (draft.placed[kind.index] ?? 0) }))
    .filter((entry) => entry.count > 0);
  const cost = costOf(draft);
  const impossible = bound.aim === "all" && bound.cost === null;
  const outcome = missing.length === 0 ? "complete" : impossible ? "short" : "not-found";
  return {
    version: 1,
    mode,
    aim,
    outcome,
    layouts,
    placed,
    missing,
    sheets: layouts.reduce((sum, layout) => sum + layout.run, 0),
    cost: cost.toString(),
    value: totals(problem, draft.placed).value.toString(),
    bound,
    proven:
      outcome === "short" || ((outcome === "complete" || aim === "fill") && reaches(problem, draft, bound)),
    search: record,
  };
}
