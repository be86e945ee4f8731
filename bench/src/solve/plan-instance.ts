import { type Packing, type Problem, pack, verify } from "@sheetwright/packing";
import type { PlanTask, Solved } from "./solve-task.js";

/** Plans an instance by `pack`; `verify` judges the plan and re-proves its bound. */
export function planInstance({ problem, effort, seed }: PlanTask, now: () => number): Solved {
  const began = now();
  const packing = pack(problem, { effort, seed });
  const seconds = now() - began;
  const { bound, search } = packing;
  const all = bound.aim === "all";
  const { steps } = search as { readonly steps?: number };
  const whole = problem.aim === "fill" || packing.outcome === "complete";
  return {
    sheets: whole ? packing.sheets : null,
    sheetArea: sheetAreaOf(problem, packing),
    pieceArea: pieceAreaOf(problem, packing),
    value: all ? null : Number(packing.value),
    bounds: {
      sheets: all ? bound.sheets : null,
      sheetArea: all && bound.cost !== null ? Number(bound.cost) : null,
      value: all ? null : Number(bound.value),
    },
    proven: whole && packing.proven,
    work: search.work,
    steps: steps ?? null,
    seconds,
    tries: {},
    faults: verify(problem, packing).map(({ path, message }) => `${path}: ${message}`),
  };
}

function sheetAreaOf({ sheets }: Problem, { layouts }: Packing): number {
  return layouts.reduce((sum, { sheet, run }) => {
    const size = sheets.find(({ id }) => id === sheet);
    return sum + run * (size ? size.width * size.height : 0);
  }, 0);
}

/** Every kind of a published instance has one form. */
function pieceAreaOf({ kinds }: Problem, { placed }: Packing): number {
  return placed.reduce((sum, { count }, i) => {
    const form = kinds[i]?.forms[0];
    return sum + count * (form ? form.width * form.height : 0);
  }, 0);
}
