/**
 * Several sizes of sheets: tries mixes of sheets that cost less than the best plan, one after the other. On each mix ruin
 * and recreate looks for a place for every piece until it no longer comes nearer; what lies on the sheets is carried over
 * from mix to mix.
 *
 * Costs are sums of few numbers, so between two that can be had there may be a wide gap: a search that only knows what
 * sheets may cost together, and frees one when it happens to come empty, rarely crosses it.
 */
import type { Demand } from "../best-fit.js";
import type { CompiledProblem } from "../compiled-problem.js";
import { type Draft, type DraftLayout, draftOf, isBetterDraft } from "../draft.js";
import { isDue, type Meter } from "../meter.js";
import type { RandomStream } from "../random-stream.js";
import { carryOver, type LooseTree, looseTrees } from "../trees/carry-over.js";
import type { CutTree } from "../trees/cut-tree.js";
import { layoutsOfTrees } from "../trees/layouts-of-trees.js";
import { RuinAndRecreate } from "../trees/ruin-recreate.js";
import { type ChosenMix, MixChoice } from "./mix-choice.js";
import { allMixes, mixOf, nearMixes, type SheetMix } from "./sheet-mixes.js";
import { sheetNeed } from "./sheet-need.js";

/** Steps without coming nearer after which a mix is left, for one copy; they grow with the square root of the copies. */
const PATIENCE = 60;

/** Share of all work that one try may take. */
const MOST_OF_WORK = 2 / 3;

/** What a search over mixes begins with. */
export interface MixStart {
  readonly problem: CompiledProblem;
  /** What the mixes are to give, and from what. */
  readonly demand: Demand;
  /** Layouts that stay as they are, besides. */
  readonly kept: readonly DraftLayout[];
  /** A plan with every piece, and the trees of its other layouts. */
  readonly best: Draft;
  readonly trees: readonly CutTree[];
}

/**
 * Runs until the work is done, no mix is cheaper or the plan is good enough.
 * @param end the meter's work at the end.
 */
export function* improveMixes(
  { problem, demand, kept, best: first, trees }: MixStart,
  random: RandomStream,
  meter: Meter,
  end: number,
  isEnough: (draft: Draft) => boolean,
): Generator<void, { readonly best: Draft; readonly steps: number }, void> {
  const work = end - meter.work;
  const keptCost = kept.reduce((sum, layout) => sum + layout.run * layout.sheet.cost, 0);
  const need = sheetNeed(problem, demand);
  let best = first;
  let loose = looseTrees(trees);
  let own = sheetsOf(problem, loose);
  const all = allMixes(problem, demand, need, best.cost - keptCost, meter);
  const mixesBelow = (cost: number): readonly SheetMix[] =>
    all?.filter((mix) => mix.cost < cost) ?? nearMixes(problem, demand, need, own, cost, random, meter);
  let mixes = mixesBelow(best.cost - keptCost);
  const choice = new MixChoice(random, need.area, mixOf(problem, own));
  let steps = 0;
  while (meter.work < end) {
    const cost = best.cost - keptCost;
    meter.work += mixes.length;
    const chosen = choice.choose(mixes, cost);
    if (chosen === undefined) break;
    // What did not help before is not begun with again, at times.
    const begin = chosen.tries > 0 && random.below(2) === 0 ? [] : loose;
    const most = Math.min(end, meter.work + work * MOST_OF_WORK * (1 + chosen.tries));
    const tried = yield* tryMix(problem, demand, chosen, begin, random, meter, most);
    steps += tried.engine.steps;
    loose = looseTrees(tried.engine.plan.trees);
    if (tried.engine.isComplete) {
      const layouts = [...kept, ...layoutsOfTrees(problem, tried.engine.plan.trees)];
      const draft = draftOf(problem, layouts);
      if (isBetterDraft(problem, draft, best)) best = draft;
      if (isEnough(best)) break;
      own = sheetsOf(problem, loose);
      mixes = mixesBelow(best.cost - keptCost);
    } else choice.failed(chosen, tried.open);
    if (meter.stopped) break;
  }
  return { best, steps };
}

/** Looks for a place for every piece on the sheets of one mix; `open` is the least area that was without a place. */
function* tryMix(
  problem: CompiledProblem,
  { wanted }: Demand,
  { mix, tries }: ChosenMix,
  begin: readonly LooseTree[],
  random: RandomStream,
  meter: Meter,
  end: number,
): Generator<void, { readonly engine: RuinAndRecreate; readonly open: number }, void> {
  const copies = wanted.reduce((sum, count) => sum + count, 0);
  const patience = PATIENCE * Math.sqrt(copies) * (1 + tries);
  const engine = new RuinAndRecreate(problem, { wanted, stock: mix.counts }, random, meter, true);
  engine.load(carryOver(problem, engine.table, mix.counts, begin));
  const { plan } = engine;
  let open = Number.POSITIVE_INFINITY;
  let nearest = 0;
  while (!engine.isComplete && meter.work < end && engine.steps - nearest < patience) {
    engine.step();
    if (plan.open.weight < open) {
      open = plan.open.weight;
      nearest = engine.steps;
    }
    if (isDue(meter)) {
      yield;
      if (meter.stopped) break;
    }
  }
  return { engine, open: Math.min(open, plan.open.weight) };
}

/** Sheets in use, by sheet index. */
function sheetsOf(problem: CompiledProblem, loose: readonly LooseTree[]): readonly number[] {
  return problem.sheets.map(({ index }) => loose.filter((tree) => tree.sheet.index === index).length);
}
