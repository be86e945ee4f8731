import { keepsShelfRule, longestCut, stageDepth } from "../arrange/cut-rules.js";
import type { WorkLeft } from "../bounds/pattern-program.js";
import type { CutNode } from "../model.js";
import { type CompiledProblem, type CompiledSheet, MOST_ON_SHEET } from "../search/compiled-problem.js";
import { isDue, type Meter } from "../search/meter.js";
import { bestUnlimitedLayout } from "../search/unlimited-copies.js";
import { type PatternRows, patternOf } from "./pattern.js";
import { gainOf, type PatternPool, type PatternUse, type PoolProgram } from "./pattern-pool.js";
import { mostStripWork, stripFiller } from "./strip-layouts.js";

/** Elementary steps that count as one place looked at. */
const STEPS_PER_PLACE = 32;

/** What looks for patterns, made once for a problem and the sheets that are looked at. */
export interface PatternMakers {
  /** Two stages, three stages, any number of stages: each looks further and takes longer. */
  readonly levels: readonly (readonly PatternMaker[])[];
}

/** Looks for the best pattern of one sheet in one way. */
interface PatternMaker {
  readonly sheet: CompiledSheet;
  readonly work: number;
  readonly best: (
    prices: Float64Array,
    left?: Float64Array,
  ) => { counts: Float64Array; tree: CutNode } | undefined;
}

/** Steps that one layout of any number of stages may take, as a share of the work for all. */
const DEEP_SHARE = 1 / 200;
/** Evaluations of all strips that may take a larger share of the work are too slow to be of use. */
const MOST_SHARE = 1 / 10;
/** Prices for layouts of any number of stages are whole; the dearest piece has about this one. */
const WHOLE_PRICE = 1_000_000;

/** Prepares what an amount of work for all affords; yields after each sheet. */
export function* patternMakers(
  problem: CompiledProblem,
  rows: PatternRows,
  sheets: readonly CompiledSheet[],
  allWork: number,
): Generator<void, PatternMakers, void> {
  const ways = sheets.flatMap((sheet) =>
    (["y", "x"] as const)
      // The first cuts go all across the sheet.
      .filter((axis) => (axis === "y" ? sheet.width : sheet.height) <= sheet.longestCut)
      .map((axis) => ({ sheet, axis })),
  );
  const strips = function* (stacks: boolean): Generator<void, readonly PatternMaker[], void> {
    const most = ways.reduce(
      (sum, { sheet, axis }) => sum + mostStripWork(problem, rows, sheet, axis, stacks),
      0,
    );
    const makers: PatternMaker[] = [];
    if (most > MOST_SHARE * allWork) return makers;
    for (const { sheet, axis } of ways) {
      const filler = stripFiller(problem, rows, sheet, axis, stacks);
      if (filler) makers.push({ sheet, ...filler });
      yield;
    }
    return makers;
  };
  const two = yield* strips(false);
  if (problem.shelf || problem.stages < 4) return { levels: [two] };
  const isFree = problem.stages === Number.POSITIVE_INFINITY;
  const deep = isFree ? sheets.map((sheet) => deepMaker(problem, rows, sheet, DEEP_SHARE * allWork)) : [];
  return { levels: [two, yield* strips(true), deep] };
}

/** Layouts of any number of stages, by a raster as large as the steps allow. */
function deepMaker(
  problem: CompiledProblem,
  rows: PatternRows,
  sheet: CompiledSheet,
  mostSteps: number,
): PatternMaker {
  const lays = rows.kinds.flatMap((kind, row) =>
    (kind.lays[sheet.index] ?? []).map((lay) => ({
      row,
      width: lay.width,
      height: lay.height,
      leaf: {
        type: "piece",
        shares: [{ kind: kind.id, form: lay.form, turned: lay.turned, count: 1 }],
      } as const,
    })),
  );
  return {
    sheet,
    work: mostSteps * 4,
    best: (prices) => {
      let dearest = 0;
      for (const price of prices) dearest = Math.max(dearest, price);
      if (dearest <= 0) return undefined;
      const pieces = lays.map((lay) => ({
        ...lay,
        value: Math.floor(((prices[lay.row] as number) / dearest) * WHOLE_PRICE),
      }));
      const { tree, counts: copies } = bestUnlimitedLayout(
        sheet.width,
        sheet.height,
        problem.kerf,
        pieces,
        mostSteps,
      );
      const counts = new Float64Array(rows.kinds.length);
      copies.forEach((count, i) => {
        const { row } = lays[i] as (typeof lays)[number];
        counts[row] = (counts[row] as number) + count;
      });
      return { counts, tree };
    },
  };
}

/** Whether a tree keeps all rules of a problem. */
function mayCut(problem: CompiledProblem, sheet: CompiledSheet, tree: CutNode): boolean {
  return (
    stageDepth(tree) <= problem.stages &&
    longestCut(tree, sheet, problem.kerf) <= sheet.longestCut &&
    (!problem.shelf || keepsShelfRule(tree))
  );
}

/** How far to look for patterns. */
export interface Reach {
  /** Copies by row that a pattern may have at most. */
  readonly left?: Float64Array | undefined;
  /** Levels of {@link PatternMakers} that are used. */
  readonly levels: number;
}

/**
 * Adds patterns to a pool as long as they make its program cheaper, by the best prices so far. Yields after fixed amounts of
 * work.
 */
export function* generatePatterns(
  problem: CompiledProblem,
  rows: PatternRows,
  makers: PatternMakers,
  pool: PatternPool,
  program: PoolProgram,
  reach: Reach,
  work: WorkLeft,
  meter: Meter,
): Generator<void, PatternUse, void> {
  let use = program.solve();
  let level = 0;
  const tiny = 1e-6 * problem.sheets.reduce((most, sheet) => Math.max(most, sheet.cost), 1);
  let before = work.left;
  while (work.left > 0 && level < Math.min(reach.levels, makers.levels.length)) {
    let isBetter = false;
    for (const maker of makers.levels[level] ?? []) {
      const layout = maker.best(use.prices, reach.left);
      work.left -= maker.work;
      if (layout === undefined || !mayCut(problem, maker.sheet, layout.tree)) continue;
      if (layout.counts.reduce((sum, count) => sum + count, 0) > MOST_ON_SHEET) continue;
      const pattern = patternOf(rows, maker.sheet, layout.counts, layout.tree);
      if (gainOf(pattern, use.prices) > tiny && pool.add(pattern)) isBetter = true;
    }
    meter.work += Math.ceil((before - work.left) / STEPS_PER_PLACE);
    before = work.left;
    if (isDue(meter)) {
      yield;
      if (meter.stopped) break;
    }
    if (isBetter) use = program.solve();
    else level++;
  }
  meter.work += Math.ceil((before - work.left) / STEPS_PER_PLACE);
  return use;
}
