import { bestFit, type Demand } from "./best-fit.js";
import { useCheaperSheets } from "./cheaper-sheets.js";
import type { CompiledProblem } from "./compiled-problem.js";
import type { Forest } from "./cut-forest.js";
import { type Draft, type DraftLayout, draftOf, layoutsOf } from "./draft.js";
import type { Meter } from "./meter.js";
import { randomStream } from "./random-stream.js";
import { type ExactLayouts, repeatLayouts } from "./repeat-layouts.js";
import { rulesOf } from "./rules.js";
import { fillShelves, SHELF_RULES } from "./shelves.js";

/** Copies that are still placed one by one; above it, layouts are repeated first. */
export const MOST_SINGLE_COPIES = 400;

/**
 * One start of the search, independent of all others: shelves first, then best fit by the rules of its number, every
 * third one with repeated layouts before it. Undefined where it was stopped on the way.
 */
export function* oneStart(
  problem: CompiledProblem,
  demand: Demand,
  start: number,
  seed: number,
  meter: Meter,
  exact: ExactLayouts,
): Generator<void, Draft | undefined, void> {
  const copies = demand.wanted.reduce((sum, count) => sum + count, 0);
  const kinds = demand.wanted.filter((count) => count > 0).length;
  // Only copies can be repeated: many kinds of few copies each are placed one by one however many they are.
  const mostSingle = Math.max(MOST_SINGLE_COPIES, 4 * kinds);
  const many = copies > mostSingle;
  const shelf = SHELF_RULES[start];
  const random = randomStream(seed, start);
  const rules = rulesOf(Math.max(0, start - SHELF_RULES.length), random);
  let layouts: readonly DraftLayout[] = [];
  let rest = demand;
  if (many || (shelf === undefined && start % 3 === 1)) {
    const repeated = yield* repeatLayouts(problem, demand, rules, random, meter, exact, {
      untilCopies: many ? mostSingle / 2 : 0,
      leastRun: start % 2 === 0 ? 2 : 1,
      greedy: start % 4 < 2,
    });
    if (repeated === undefined) return undefined;
    layouts = repeated.layouts;
    rest = repeated.rest;
  }
  let forest: Forest | undefined;
  if (shelf) {
    forest = fillShelves(problem, rest, shelf, meter);
    yield;
  } else {
    forest = yield* bestFit(problem, rest, rules, random, meter);
  }
  if (forest === undefined) return undefined;
  const all = [...layouts, ...layoutsOf(problem, forest)];
  if (problem.sheets.length === 1 || problem.source.aim === "fill") return draftOf(problem, all);
  const moved = yield* useCheaperSheets(problem, demand, all, rules, random, meter);
  return moved && draftOf(problem, moved);
}
