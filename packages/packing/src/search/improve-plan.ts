/**
 * One start of ruin and recreate: improves a plan until its work is done, towards one sheet less (aim `all`) or more
 * value (aim `fill`). Starts depend on the problem, the plan they begin with, the seed and their own number alone, so
 * they may be run in any order and place.
 */

import type { PieceLeaf } from "../model.js";
import type { Demand } from "./best-fit.js";
import type { CompiledProblem } from "./compiled-problem.js";
import { restOf } from "./demand.js";
import { type Draft, type DraftLayout, draftOf, isBetterDraft } from "./draft.js";
import { greatestCommonDivisor } from "./greatest-common-divisor.js";
import { isDue, type Meter } from "./meter.js";
import { improveMixes } from "./mixes/improve-mixes.js";
import type { RandomStream } from "./random-stream.js";
import { branchOf } from "./trees/branch.js";
import { layoutsOfTrees, spreadOf } from "./trees/layouts-of-trees.js";
import { RuinAndRecreate } from "./trees/ruin-recreate.js";
import type { PlannedSheet } from "./trees/working-plan.js";

/** Pieces on one sheet above which a step takes too long. */
const MOST_ON_ONE = 600;

/** Work for each copy that is improved, at least; of a larger plan the layouts with the most left over are taken. */
const WORK_PER_COPY = 2_000;

/** Copies that are improved at most. */
const MOST_COPIES = 6_000;

/** What a start came to. */
export interface Improvement {
  /** The best plan found, at least as good as the first. */
  readonly best: Draft;
  /** Ruin-and-recreate steps made. */
  readonly steps: number;
}

/** Copies that work is granted for at least: a plan of next to nothing may be far from the best one. */
const LEAST_COPIES = 10;

/** Work of one start by the size of the plan: small problems are through sooner. */
export function improvementWork(first: Draft, workFor100: number): number {
  const copies = first.placed.reduce((sum, count) => sum + count, 0);
  return Math.floor(workFor100 * Math.min(1, Math.max(LEAST_COPIES, copies) / 100));
}

/**
 * Runs one start, or as much of it as {@link Meter.stopped} allows.
 * @param isEnough whether a plan is so good that the start may end; called for each better plan.
 * @param triesMixes whether, of several sizes, mixes of sheets are tried one by one; else it only aims at a lower cost.
 */
export function* improvePlan(
  problem: CompiledProblem,
  demand: Demand,
  first: Draft,
  random: RandomStream,
  meter: Meter,
  work: number,
  isEnough: (draft: Draft) => boolean,
  triesMixes = true,
): Generator<void, Improvement, void> {
  const { kept, taken } = chooseLayouts(
    problem,
    first,
    Math.min(MOST_COPIES, Math.floor(work / WORK_PER_COPY)),
  );
  const isFill = problem.source.aim === "fill";
  // A plan of nothing may still become one.
  const isEmpty = kept.length === 0 && demand.stock.some((sheets) => sheets > 0);
  if (taken.length === 0 && !isEmpty) return { best: first, steps: 0 };
  const rest = restOf(problem, demand, kept);
  const engine = new RuinAndRecreate(problem, rest, random, meter);
  const numbers = new Map(problem.kinds.map((kind) => [kind.id, kind.index]));
  engine.load(taken.flatMap((layout) => sheetsOf(engine, layout, numbers)));
  const step = problem.sheets.reduce((all, sheet) => greatestCommonDivisor(all, sheet.cost), 0);
  const { plan } = engine;
  let best = first;
  let isWhole = engine.isComplete;
  const end = meter.work + work;
  const isOverMixes = triesMixes && !isFill && problem.sheets.length > 1;
  if (isWhole && isOverMixes) {
    const start = { problem, demand: rest, kept, best, trees: plan.trees };
    return yield* improveMixes(start, random, meter, end, isEnough);
  }
  if (isWhole && (isFill || !canCostLess(problem, demand, plan.cost, step))) return { best, steps: 0 };
  if (!isFill && isWhole) engine.setBudget(plan.cost - step);
  let { urgent, weight } = plan.open;
  while (meter.work < end) {
    engine.step();
    const isNearer = plan.open.urgent < urgent || (plan.open.urgent === urgent && plan.open.weight < weight);
    if (engine.isComplete || (!isWhole && isNearer)) {
      ({ urgent, weight } = plan.open);
      isWhole = engine.isComplete;
      const draft = draftOf(problem, [...kept, ...layoutsOfTrees(problem, plan.trees)]);
      if (isBetterDraft(problem, draft, best)) best = draft;
      if (isEnough(best)) break;
      if (isWhole && isOverMixes) {
        const start = { problem, demand: rest, kept, best, trees: plan.trees };
        const improved = yield* improveMixes(start, random, meter, end, isEnough);
        return { best: improved.best, steps: engine.steps + improved.steps };
      }
      if (isWhole) {
        if (isFill || !canCostLess(problem, demand, plan.cost, step)) break;
        engine.setBudget(plan.cost - step);
      }
    }
    if (isDue(meter)) {
      yield;
      if (meter.stopped) break;
    }
  }
  return { best, steps: engine.steps };
}

/** Whether some sheet is cheap enough for a plan that costs a step less. */
function canCostLess(problem: CompiledProblem, demand: Demand, cost: number, step: number): boolean {
  const budget = cost - step;
  if (step === 0 || budget >= cost) return false;
  return problem.sheets.some((sheet) => (demand.stock[sheet.index] ?? 0) > 0 && sheet.cost <= budget);
}

/** The layouts that are improved: all, or of many the worst filled ones, each sheet of a run for itself. */
function chooseLayouts(
  problem: CompiledProblem,
  first: Draft,
  most: number,
): {
  readonly kept: readonly DraftLayout[];
  readonly taken: readonly DraftLayout[];
} {
  const byWaste = first.layouts
    .map((layout) => ({ layout, use: piecesOn(layout), order: layout.spread }))
    .sort((a, b) => b.order - a.order);
  const kept: DraftLayout[] = [];
  const taken: DraftLayout[] = [];
  let copies = 0;
  for (const { layout, use } of byWaste) {
    const room = Math.floor((most - copies) / Math.max(1, use));
    const sheets = use > MOST_ON_ONE ? 0 : Math.min(layout.run, room);
    if (sheets > 0) taken.push({ ...layout, run: sheets });
    if (sheets < layout.run)
      kept.push({ ...layout, run: layout.run - sheets, spread: spreadOf(problem, layout) });
    copies += sheets * use;
  }
  return { kept, taken };
}

function piecesOn(layout: DraftLayout): number {
  let sum = 0;
  for (const count of layout.counts.values()) sum += count;
  return sum;
}

function sheetsOf(
  engine: RuinAndRecreate,
  layout: DraftLayout,
  numbers: ReadonlyMap<string, number>,
): readonly PlannedSheet[] {
  const { sheet, run } = layout;
  const { table } = engine;
  const branch = branchOf(layout.tree(), (leaf: PieceLeaf) => {
    const share = leaf.shares[0];
    const kind = numbers.get(share?.kind ?? "") ?? -1;
    const from = table.first[sheet.index * table.kinds + kind] ?? 0;
    const to = table.first[sheet.index * table.kinds + kind + 1] ?? 0;
    for (let lay = from; lay < to; lay++) {
      const own = table.lays[lay];
      if (own?.form === share?.form && own?.turned === share?.turned) return lay;
    }
    throw new RangeError(`The search laid ${share?.kind} in a way that ${sheet.id} does not allow.`);
  });
  return Array.from({ length: run }, () => ({ sheet, branch }));
}
