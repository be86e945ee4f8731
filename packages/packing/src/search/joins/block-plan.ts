/**
 * A start that plans with blocks: pieces are joined along sides they have in common until fewer are left, blocks and pieces
 * are planned together, and at last the pieces are set free again. Fewer, larger parts are planned sooner, and what was
 * joined wastes nothing.
 *
 * The idea is that of blocks in loading containers (M. Eley, Solving container loading problems by block arrangement,
 * European J. Operational Research 141, 2002), here for parts that share a whole side.
 */
import { demandOf } from "../demand.js";
import { type Draft, isBetterDraft } from "../draft.js";
import { type Improvement, improvePlan } from "../improve-plan.js";
import { oneStart } from "../one-start.js";
import { exactLayoutsOf } from "../repeat-layouts.js";
import { SHELF_RULES } from "../shelves.js";
import { layTable } from "../trees/lay-table.js";
import { piecesAsBlocks } from "./block.js";
import { blockProblem } from "./block-problem.js";
import { blankSheets, joinBlocks, longestJoin } from "./join-blocks.js";
import type { JoinStart } from "./join-start.js";

/** Parameters of the start; one set serves all problems. */
const TUNING = {
  /** Blocks that are left of the pieces, one of these numbers each round, and of few pieces no less than such a part. */
  blocks: [60, 90, 120, 160],
  most: 0.75,
  /** Rounds, each with other blocks. */
  rounds: 2,
  /** Share of the work for the rounds; the rest is for the pieces set free. */
  share: 0.75,
  /** First plans of a round. */
  starts: 12,
};

/** Runs the start, or as much of it as the meter's `stopped` allows. */
export function* blockPlan(start: JoinStart): Generator<void, Improvement, void> {
  const { problem, demand, first, work, random, meter, isEnough, mixes } = start;
  const end = meter.work + work;
  let best = first;
  let steps = 0;
  for (let round = 0; round < TUNING.rounds; round++) {
    const found = yield* planBlocks(start, (work * TUNING.share) / TUNING.rounds);
    steps += found.steps;
    if (found.draft && isBetterDraft(problem, found.draft, best)) best = found.draft;
    if (meter.stopped || isEnough(best)) return { best, steps };
  }
  const free = yield* improvePlan(
    problem,
    demand,
    best,
    random,
    meter,
    Math.max(0, end - meter.work),
    isEnough,
    mixes,
  );
  return { best: free.best, steps: steps + free.steps };
}

/** One round: other blocks, and a plan with them. */
function* planBlocks(
  { problem, demand, seed, random, meter, isEnough, mixes }: JoinStart,
  work: number,
): Generator<void, { readonly draft: Draft | undefined; readonly steps: number }, void> {
  const end = meter.work + work;
  const pieces = piecesAsBlocks(problem, demand.wanted);
  const drawn = TUNING.blocks[random.below(TUNING.blocks.length)] as number;
  const least = Math.min(drawn, Math.ceil(pieces.length * TUNING.most));
  const sheets = blankSheets(problem, demand, pieces.length);
  const joined = joinBlocks(pieces, sheets, problem.kerf, longestJoin(problem), random, least);
  meter.work += joined.work + pieces.length;
  const all = [...joined.whole.map(({ block }) => block), ...joined.left];
  const blocks = blockProblem(problem, layTable(problem, demand.wanted), all);
  if (blocks === undefined) return { draft: undefined, steps: 0 };
  const own = { wanted: demandOf(blocks.problem).wanted, stock: demand.stock };
  const exact = exactLayoutsOf(blocks.problem);
  let plan: Draft | undefined;
  for (let number = 0; number < TUNING.starts; number++) {
    const made = yield* oneStart(blocks.problem, own, SHELF_RULES.length + number, seed, meter, exact);
    if (meter.stopped) return { draft: undefined, steps: 0 };
    if (made && (plan === undefined || isBetterDraft(blocks.problem, made, plan))) plan = made;
  }
  if (plan === undefined) return { draft: undefined, steps: 0 };
  const isGood = (draft: Draft): boolean => {
    const pieceDraft = blocks.expand(draft);
    return pieceDraft !== undefined && isEnough(pieceDraft);
  };
  const rest = Math.max(0, end - meter.work);
  const { best, steps } = yield* improvePlan(blocks.problem, own, plan, random, meter, rest, isGood, mixes);
  return { draft: blocks.expand(best), steps };
}
