/**
 * A start that joins pieces along sides they have in common, again and again by lot. A plan of joins alone is without any
 * waste; sheets that come out whole otherwise are kept as they are, and what is left is planned as usual.
 */
import type { CompiledSheet } from "../compiled-problem.js";
import { restOf } from "../demand.js";
import { type Draft, type DraftLayout, draftOf, isBetterDraft } from "../draft.js";
import type { Improvement } from "../improve-plan.js";
import { isDue, type Meter } from "../meter.js";
import { oneStart } from "../one-start.js";
import { SHELF_RULES } from "../shelves.js";
import { layTable } from "../trees/lay-table.js";
import { piecesAsBlocks } from "./block.js";
import { blockPlan } from "./block-plan.js";
import { branchOfBlock, layoutsOfBranches } from "./branch-of-block.js";
import { blankSheets, joinBlocks, longestJoin } from "./join-blocks.js";
import type { JoinStart } from "./join-start.js";

/**
 * Tries without one whole sheet after which there are no more: of the published instances with up to 100 pieces (family
 * ortmann-vs) three fill their first sheet later.
 */
const TRIES_IN_VAIN = 500;

/** Pairs that a try counts for at least: with few pieces it is not the pairs that take the time. */
const LEAST_PAIRS = 400;

/** First plans made of what is left. */
const REST_STARTS = 24;

/** Runs the start, or as much of it as {@link Meter.stopped} allows. */
export function* joinedPlan(start: JoinStart): Generator<void, Improvement, void> {
  const { problem, demand, first, joins, random, meter, isEnough } = start;
  const pieces = piecesAsBlocks(problem, demand.wanted);
  const table = layTable(problem, demand.wanted);
  const sheets = blankSheets(problem, demand, pieces.length);
  const longestCut = longestJoin(problem);
  let best = first;
  let most = 0;
  let kept: readonly DraftLayout[] = [];
  const end = meter.work + joins;
  for (let tries = 0; meter.work < end && (most > 0 || tries < TRIES_IN_VAIN); tries++) {
    const joined = joinBlocks(pieces, sheets, problem.kerf, longestCut, random);
    // No two sides are alike, whatever is drawn.
    if (joined.work === 0) break;
    meter.work += Math.max(LEAST_PAIRS, joined.work + pieces.length);
    const area = joined.whole.reduce((sum, { block }) => sum + block.width * block.height, 0);
    if (area > most) {
      const layouts = layoutsOfBranches(
        problem,
        table,
        joined.whole.map(({ sheet: index, block, turned }) => {
          const sheet = problem.sheets[index] as CompiledSheet;
          return { sheet, branch: branchOfBlock(table, sheet, block, turned) };
        }),
      );
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
  start: JoinStart,
  kept: readonly DraftLayout[],
  known: Draft,
): Generator<void, Improvement, void> {
  const { problem, demand, seed, meter, exact, isEnough } = start;
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
  const { best, steps } = yield* blockPlan({ ...start, demand: rest, first: plan, isEnough: isGood });
  const found = whole(best);
  return { best: isBetterDraft(problem, found, known) ? found : known, steps };
}
