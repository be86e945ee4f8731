/**
 * A start that joins pieces along sides they have in common, again and again by lot. A plan of joins alone is without any
 * waste; sheets that come out whole otherwise are kept as they are, and what is left is planned as usual.
 */
import type { Demand } from "../best-fit.js";
import type { CompiledProblem, CompiledSheet } from "../compiled-problem.js";
import { restOf } from "../demand.js";
import { type Draft, type DraftLayout, draftOf, isBetterDraft } from "../draft.js";
import { type Improvement, improvePlan } from "../improve-plan.js";
import { isDue, type Meter } from "../meter.js";
import { oneStart } from "../one-start.js";
import type { RandomStream } from "../random-stream.js";
import type { ExactLayouts } from "../repeat-layouts.js";
import { SHELF_RULES } from "../shelves.js";
import type { Branch } from "../trees/branch.js";
import { CutTree, cutRules } from "../trees/cut-tree.js";
import { type LayTable, layTable } from "../trees/lay-table.js";
import { layoutsOfTrees } from "../trees/layouts-of-trees.js";
import { type Block, piecesAsBlocks } from "./block.js";
import { type BlankSheet, type Joined, joinBlocks } from "./join-blocks.js";

/** First plans made of what is left. */
const REST_STARTS = 24;

/** What a start that joins pieces begins with. */
export interface JoinStart {
  readonly problem: CompiledProblem;
  readonly demand: Demand;
  readonly first: Draft;
  /** Pairs looked at, at most. */
  readonly joins: number;
  /** Work of ruin and recreate on what is left. */
  readonly work: number;
  readonly seed: number;
  readonly random: RandomStream;
  readonly meter: Meter;
  readonly exact: ExactLayouts;
  readonly isEnough: (draft: Draft) => boolean;
  readonly mixes: boolean;
}

/** Runs the start, or as much of it as {@link Meter.stopped} allows. */
export function* joinedPlan(start: JoinStart): Generator<void, Improvement, void> {
  const { problem, demand, first, joins, random, meter, isEnough } = start;
  const pieces = piecesAsBlocks(problem, demand.wanted);
  const table = layTable(problem, demand.wanted);
  const sheets = problem.sheets.map(({ index, width, height }): BlankSheet => {
    return { index, width, height, count: Math.min(pieces.length, demand.stock[index] ?? 0) };
  });
  const longestCut = Math.min(...problem.sheets.map((sheet) => sheet.longestCut));
  let best = first;
  let most = 0;
  let kept: readonly DraftLayout[] = [];
  const end = meter.work + joins;
  while (meter.work < end) {
    const joined = joinBlocks(pieces, sheets, problem.kerf, longestCut, random);
    meter.work += joined.work + pieces.length;
    const area = joined.whole.reduce((sum, { block }) => sum + block.width * block.height, 0);
    if (area > most) {
      const layouts = wholeLayouts(problem, table, joined);
      if (layouts !== undefined) {
        most = area;
        kept = layouts;
        const draft = draftOf(problem, layouts);
        if (joined.left.length === 0 && isBetterDraft(problem, draft, best)) best = draft;
        if (isEnough(best)) return { best, steps: 0 };
      }
    }
    if (isDue(meter)) {
      yield;
      if (meter.stopped) return { best, steps: 0 };
    }
  }
  if (kept.length === 0) return { best, steps: 0 };
  return yield* withRest(start, kept, best);
}

/** Plans what some layouts leave, and improves that plan alone. */
function* withRest(
  { problem, demand, work, seed, random, meter, exact, isEnough, mixes }: JoinStart,
  kept: readonly DraftLayout[],
  known: Draft,
): Generator<void, Improvement, void> {
  const rest = restOf(problem, demand, kept);
  const whole = (draft: Draft): Draft => draftOf(problem, [...kept, ...draft.layouts]);
  let plan: Draft | undefined;
  for (let number = 0; number < REST_STARTS; number++) {
    const draft = yield* oneStart(problem, rest, SHELF_RULES.length + number, seed, meter, exact);
    if (meter.stopped) return { best: known, steps: 0 };
    if (draft && (plan === undefined || isBetterDraft(problem, whole(draft), whole(plan)))) plan = draft;
  }
  if (plan === undefined) return { best: known, steps: 0 };
  const isGood = (draft: Draft): boolean => isEnough(whole(draft));
  const { best, steps } = yield* improvePlan(problem, rest, plan, random, meter, work, isGood, mixes);
  const found = whole(best);
  return { best: isBetterDraft(problem, found, known) ? found : known, steps };
}

/** The sheets that came out whole as layouts; undefined where a piece may not lie so on its sheet. */
function wholeLayouts(
  problem: CompiledProblem,
  table: LayTable,
  { whole }: Joined,
): readonly DraftLayout[] | undefined {
  const rules = cutRules(problem, table);
  const trees: CutTree[] = [];
  for (const { sheet: index, block, turned } of whole) {
    const sheet = problem.sheets[index] as CompiledSheet;
    const branch = branchOfBlock(table, sheet, block, turned);
    if (branch === undefined) return undefined;
    const tree = new CutTree(rules, sheet);
    tree.write(branch);
    tree.refresh();
    trees.push(tree);
  }
  return layoutsOfTrees(problem, trees);
}

/** A block as it lies on a sheet; undefined where one of its pieces may not lie so there. */
function branchOfBlock(
  table: LayTable,
  sheet: CompiledSheet,
  { width, height, of }: Block,
  turned: boolean,
): Branch | undefined {
  if (typeof of === "number") {
    const row = sheet.index * table.kinds + of;
    const [across, down] = turned ? [height, width] : [width, height];
    for (let lay = table.first[row] as number; lay < (table.first[row + 1] as number); lay++) {
      if (table.width[lay] === across && table.height[lay] === down) return { axis: undefined, lay };
    }
    return undefined;
  }
  const axis = (of.axis === "x") !== turned ? "x" : "y";
  const parts = [
    branchOfBlock(table, sheet, of.first, of.firstTurned !== turned),
    branchOfBlock(table, sheet, of.second, of.secondTurned !== turned),
  ];
  const children: Branch[] = [];
  for (const part of parts) {
    if (part === undefined) return undefined;
    if (part.axis === axis) children.push(...part.children);
    else children.push(part);
  }
  return { axis, children };
}
