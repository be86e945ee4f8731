import type { Demand } from "./best-fit.js";
import type { CompiledKind, CompiledProblem, CompiledSheet } from "./compiled-problem.js";
import { type ConstrainedKind, constrainedFillSteps } from "./constrained-fill.js";
import { type Draft, draftOf, leftoverSpread } from "./draft.js";

/** A layout of one sheet as a plan. */
export interface ExactFill {
  readonly draft: Draft;
  /** True where no layout is worth more. */
  readonly exact: boolean;
  readonly steps: number;
}

/** Sums of values beyond this are not exact. */
const MOST_SUM = Number.MAX_SAFE_INTEGER;

/**
 * The most valuable plan for the aim `fill` with one single sheet, where the mode sets no limit on stages and cuts; what
 * belongs together comes from one sheet anyway. Undefined where the problem is another one.
 * @param mostSteps work that it may take, some tens of nanoseconds each.
 */
export function* exactFill(
  problem: CompiledProblem,
  demand: Demand,
  mostSteps: number,
): Generator<void, ExactFill | undefined, void> {
  const [sheet, ...others] = problem.sheets.filter((entry) => (demand.stock[entry.index] ?? 0) > 0);
  if (problem.source.aim !== "fill" || sheet === undefined || others.length > 0) return undefined;
  const isFree = !problem.shelf && problem.stages === Number.POSITIVE_INFINITY;
  const isShort = Math.max(sheet.width, sheet.height) > sheet.longestCut;
  if (demand.stock[sheet.index] !== 1 || !isFree || isShort || mostSteps === 0) return undefined;
  const used = problem.kinds.filter(
    (kind) => (demand.wanted[kind.index] ?? 0) > 0 && (kind.lays[sheet.index]?.length ?? 0) > 0,
  );
  const kinds = used.flatMap((kind) =>
    withLeast(kind, sheet, demand.wanted[kind.index] ?? 0, bonusOf(used, demand)),
  );
  if (kinds.length === 0 || !hasExactSums(kinds)) return undefined;
  const { width, height } = sheet;
  const { tree, counts, exact, steps } = yield* constrainedFillSteps(
    width,
    height,
    problem.kerf,
    kinds,
    mostSteps,
  );
  const placed = new Map<number, number>();
  kinds.forEach(({ index }, i) => {
    const count = (placed.get(index) ?? 0) + (counts[i] ?? 0);
    if (count > 0) placed.set(index, count);
  });
  if (placed.size === 0) return undefined;
  const spread = leftoverSpread(tree, { width, height }, problem.kerf);
  const draft = draftOf(problem, [{ sheet, run: 1, tree: () => tree, counts: placed, spread }]);
  // Where the least numbers cannot all be had, the fewest missing copies need not be those that lack the least value.
  return { draft, exact: exact && draft.lacking === 0, steps };
}

/** What a copy that must be there counts for besides its value: more than all values together. */
function bonusOf(used: readonly CompiledKind[], demand: Demand): number {
  if (used.every((kind) => kind.least === 0)) return 0;
  return used.reduce((sum, kind) => sum + kind.value * (demand.wanted[kind.index] ?? 0), 1);
}

/** A kind as one of limited copies; those that must be there at least are a kind of their own. */
function withLeast(
  kind: CompiledKind,
  sheet: CompiledSheet,
  wanted: number,
  bonus: number,
): readonly (ConstrainedKind & { readonly index: number })[] {
  const part = (value: number, most: number) => ({
    index: kind.index,
    ways: (kind.lays[sheet.index] ?? []).map(({ width, height, form, turned }) => ({
      width,
      height,
      leaf: { type: "piece" as const, shares: [{ kind: kind.id, form, turned, count: 1 }] },
    })),
    value,
    most,
  });
  const least = Math.min(kind.least, wanted);
  return [part(kind.value + bonus, least), part(kind.value, wanted - least)].filter(({ most }) => most > 0);
}

function hasExactSums(kinds: readonly ConstrainedKind[]): boolean {
  return kinds.reduce((sum, { value, most }) => sum + value * most, 0) <= MOST_SUM;
}
