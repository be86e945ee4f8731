import type { Demand } from "./best-fit.js";
import type { CompiledProblem } from "./compiled-problem.js";
import { type ConstrainedKind, constrainedFillSteps } from "./constrained-fill.js";
import { type Draft, draftOf, leftoverSpread } from "./draft.js";

/** A layout of one sheet as a plan. */
export interface ExactFill {
  readonly draft: Draft;
  /** True where no layout is worth more. */
  readonly exact: boolean;
  readonly steps: number;
}

/**
 * The most valuable plan for the aim `fill` with one single sheet, where the mode sets no limit on stages and cuts and
 * nothing belongs together. Undefined where the problem is another one.
 * @param mostSteps work that it may take, some tens of nanoseconds each.
 */
export function* exactFill(
  problem: CompiledProblem,
  demand: Demand,
  mostSteps: number,
): Generator<void, ExactFill | undefined, void> {
  const [sheet, ...others] = problem.sheets.filter((entry) => (demand.stock[entry.index] ?? 0) > 0);
  if (problem.source.aim !== "fill" || sheet === undefined || others.length > 0) return undefined;
  const isFree = !problem.shelf && problem.stages === Number.POSITIVE_INFINITY && problem.groups === 0;
  const isShort = Math.max(sheet.width, sheet.height) > sheet.longestCut;
  if (demand.stock[sheet.index] !== 1 || !isFree || isShort) return undefined;
  const used = problem.kinds.filter(
    (kind) => (demand.wanted[kind.index] ?? 0) > 0 && (kind.lays[sheet.index]?.length ?? 0) > 0,
  );
  if (used.length === 0 || problem.kinds.some((kind) => kind.least > 0)) return undefined;
  const kinds = used.map(
    (kind): ConstrainedKind => ({
      ways: (kind.lays[sheet.index] ?? []).map(({ width, height, form, turned }) => ({
        width,
        height,
        leaf: { type: "piece", shares: [{ kind: kind.id, form, turned, count: 1 }] },
      })),
      value: kind.value,
      most: demand.wanted[kind.index] ?? 0,
    }),
  );
  const { width, height } = sheet;
  const { tree, counts, exact, steps } = yield* constrainedFillSteps(
    width,
    height,
    problem.kerf,
    kinds,
    mostSteps,
  );
  const placed = new Map<number, number>();
  used.forEach((kind, i) => {
    const count = counts[i] ?? 0;
    if (count > 0) placed.set(kind.index, count);
  });
  if (placed.size === 0) return undefined;
  const spread = leftoverSpread(tree, { width, height }, problem.kerf);
  const draft = draftOf(problem, [{ sheet, run: 1, tree: () => tree, counts: placed, spread }]);
  return { draft, exact, steps };
}
