import type { Demand } from "./best-fit.js";
import type { CompiledKind, CompiledProblem, CompiledSheet } from "./compiled-problem.js";
import { type ConstrainedKind, constrainedFillSteps } from "./constrained-fill.js";
import { type Draft, type DraftLayout, draftOf, leftoverSpread } from "./draft.js";

/** A layout of one sheet as a plan. */
export interface ExactFill {
  readonly draft: Draft;
  /** True where no layout is worth more. */
  readonly exact: boolean;
  readonly steps: number;
}

/** Sums of values beyond this are not exact. */
const MOST_SUM = Number.MAX_SAFE_INTEGER;

/** Sheets that are filled one after the other at most: of more, each would be left too little work. */
const MOST_SHEETS = 8;

/**
 * The most valuable plan for the aim `fill` with one single sheet, where the mode sets no limit on stages and cuts. Of few
 * sheets each is filled as well as can be with what those before it have left over, which is a good plan and no more: then
 * it is exact only where nothing is left over. Undefined where the problem is another one.
 * @param mostSteps work that it may take, some tens of nanoseconds each.
 */
export function* exactFill(
  problem: CompiledProblem,
  demand: Demand,
  mostSteps: number,
): Generator<void, ExactFill | undefined, void> {
  const isFree = !problem.shelf && problem.stages === Number.POSITIVE_INFINITY;
  const stock = problem.sheets.reduce((sum, sheet) => sum + (demand.stock[sheet.index] ?? 0), 0);
  if (problem.source.aim !== "fill" || !isFree || mostSteps === 0 || stock > MOST_SHEETS) return undefined;
  const sheets = problem.sheets
    .flatMap((sheet) => Array.from({ length: demand.stock[sheet.index] ?? 0 }, () => sheet))
    .sort((a, b) => b.width * b.height - a.width * a.height || a.index - b.index);
  const placed = problem.kinds.map(() => 0);
  const closed = new Set<number>();
  const layouts: DraftLayout[] = [];
  let steps = 0;
  let exact = true;
  for (const sheet of sheets) {
    if (Math.max(sheet.width, sheet.height) > sheet.longestCut) return undefined;
    const rest = problem.kinds.map(({ index, group }) =>
      closed.has(group) ? 0 : (demand.wanted[index] ?? 0) - (placed[index] ?? 0),
    );
    const kinds = constrainedKinds(problem, sheet, placed, rest);
    if (!hasExactSums(kinds)) return undefined;
    if (kinds.length === 0) continue;
    const { width, height } = sheet;
    const share = Math.floor(mostSteps / sheets.length);
    const found = yield* constrainedFillSteps(width, height, problem.kerf, kinds, share);
    steps += found.steps;
    exact &&= found.exact;
    const counts = new Map<number, number>();
    kinds.forEach(({ index }, i) => {
      const count = found.counts[i] ?? 0;
      if (count === 0) return;
      counts.set(index, (counts.get(index) ?? 0) + count);
      placed[index] = (placed[index] ?? 0) + count;
      // What belongs together comes from one sheet.
      const group = problem.kinds[index]?.group ?? -1;
      if (group >= 0) closed.add(group);
    });
    if (counts.size === 0) continue;
    const { tree } = found;
    const spread = leftoverSpread(tree, { width, height }, problem.kerf);
    layouts.push({ sheet, run: 1, tree: () => tree, counts, spread });
  }
  if (layouts.length === 0) return undefined;
  const draft = draftOf(problem, layouts);
  const isAll = problem.kinds.every(({ index }) => draft.placed[index] === (demand.wanted[index] ?? 0));
  // Where the least numbers cannot all be had, the fewest missing copies need not be those that lack the least value.
  return { draft, exact: exact && draft.lacking === 0 && (sheets.length === 1 || isAll), steps };
}

/** What may be cut from one sheet when some is placed and some is left; copies that must be there are kinds of their own. */
function constrainedKinds(
  problem: CompiledProblem,
  sheet: CompiledSheet,
  placed: readonly number[],
  rest: readonly number[],
): readonly (ConstrainedKind & { readonly index: number })[] {
  const used = problem.kinds.filter(
    ({ index, lays }) => (rest[index] ?? 0) > 0 && (lays[sheet.index]?.length ?? 0) > 0,
  );
  const bonus = used.some(({ index, least }) => least > (placed[index] ?? 0))
    ? used.reduce((sum, { index, value }) => sum + value * (rest[index] ?? 0), 1)
    : 0;
  return used.flatMap((kind) => {
    const missing = Math.max(0, kind.least - (placed[kind.index] ?? 0));
    return withLeast(kind, sheet, missing, rest[kind.index] ?? 0, bonus);
  });
}

/** A kind as one of limited copies; those that are still missing count more than all others together. */
function withLeast(
  kind: CompiledKind,
  sheet: CompiledSheet,
  missing: number,
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
  const least = Math.min(missing, wanted);
  return [part(kind.value + bonus, least), part(kind.value, wanted - least)].filter(({ most }) => most > 0);
}

function hasExactSums(kinds: readonly ConstrainedKind[]): boolean {
  return kinds.reduce((sum, { value, most }) => sum + value * most, 0) <= MOST_SUM;
}
