/**
 * The last step of a search: every layout keeps its pieces and is laid again in other ways, for larger leftovers and then
 * for fewer cuts. "First cut the piece that leaves the largest offcut" is common practice among makers. Layouts that
 * yield the same are laid the same, so that they merge into runs.
 */
import { arrange } from "../arrange.js";
import type { CutNode, Size } from "../model.js";
import { childrenOf } from "../placements.js";
import { bestFit } from "./best-fit.js";
import type { CompiledProblem } from "./compiled-problem.js";
import { type DraftLayout, layoutsOf, leftoverSpread, yieldKey } from "./draft.js";
import type { Meter } from "./meter.js";
import { randomStream } from "./random-stream.js";
import { PLAIN_STARTS, rulesOf } from "./rules.js";
import { turnedPieces } from "./turned-pieces.js";

/** The least and the most tries for one layout. */
const LEAST_TRIES = 2;
const MOST_TRIES = 60;

/** Layouts with more pieces are left as they are: laying them again takes longer than it is worth. */
const MOST_PIECES = 200;

/** The most pieces of a layout that are turned for a larger leftover, one after another. */
const MOST_TURNS = 8;

/** Returns the layouts with arranged trees; where it is stopped on the way, the rest is arranged only. */
export function* polishLayouts(
  problem: CompiledProblem,
  layouts: readonly DraftLayout[],
  narrowestHold: number,
  allTries: number,
  seed: number,
  meter: Meter,
): Generator<void, readonly DraftLayout[], void> {
  const known = new Map<string, CutNode>();
  const different = new Set(layouts.map(yieldKey)).size;
  const tries = Math.max(
    LEAST_TRIES,
    Math.min(MOST_TRIES, Math.floor(allTries / Math.max(1, 4 * different))),
  );
  const polished: DraftLayout[] = [];
  for (const layout of layouts) {
    const key = yieldKey(layout);
    let tree = known.get(key);
    if (tree === undefined) {
      tree = yield* polish(problem, layout, narrowestHold, tries, seed, meter);
      known.set(key, tree);
    }
    const best = tree;
    polished.push({ ...layout, tree: () => best });
  }
  return polished;
}

function* polish(
  problem: CompiledProblem,
  layout: DraftLayout,
  narrowestHold: number,
  tries: number,
  seed: number,
  meter: Meter,
): Generator<void, CutNode, void> {
  const { sheet } = layout;
  const size = { width: sheet.width, height: sheet.height };
  const smallest = problem.source.smallestOffcut;
  const longestCut = Number.isFinite(sheet.longestCut) ? sheet.longestCut : null;
  const finished = (tree: CutNode): CutNode =>
    arrange(tree, size, { kerf: problem.kerf, smallestOffcut: smallest, longestCut, narrowestHold });
  let best = finished(layout.tree());
  let score = scoreOf(best, size, problem.kerf);
  const wanted = problem.kinds.map((kind) => layout.counts.get(kind.index) ?? 0);
  const pieces = wanted.reduce((sum, count) => sum + count, 0);
  const stock = problem.sheets.map((entry) => (entry.index === sheet.index ? 1 : 0));
  if (pieces > MOST_PIECES) return best;
  for (let attempt = 0; attempt < tries && !meter.stopped; attempt++) {
    const random = randomStream(seed, attempt);
    const rules = rulesOf(attempt < PLAIN_STARTS ? attempt : Number.MAX_SAFE_INTEGER, random);
    const forest = yield* bestFit(problem, { wanted, stock }, { ...rules, oneByOne: false }, random, meter);
    const only = forest && layoutsOf(problem, forest)[0];
    if (only === undefined || wanted.some((count, kind) => (only.counts.get(kind) ?? 0) !== count)) continue;
    const tree = finished(only.tree());
    const other = scoreOf(tree, size, problem.kerf);
    if (other.leftover < score.leftover || (other.leftover === score.leftover && other.cuts >= score.cuts))
      continue;
    best = tree;
    score = other;
  }
  for (let rounds = 0; rounds < MOST_TURNS && !meter.stopped; rounds++) {
    const before = score;
    for (const turned of turnedPieces(problem, sheet, best)) {
      const tree = finished(turned);
      const other = scoreOf(tree, size, problem.kerf);
      if (other.leftover <= score.leftover) continue;
      best = tree;
      score = other;
      break;
    }
    if (score === before) break;
    yield;
  }
  return best;
}

/** {@link leftoverSpread} and the number of cuts. */
function scoreOf(
  node: CutNode,
  part: Size,
  kerf: number,
): { readonly leftover: number; readonly cuts: number } {
  return { leftover: leftoverSpread(node, part, kerf), cuts: cutsIn(node, part, kerf) };
}

function cutsIn(node: CutNode, part: Size, kerf: number): number {
  if (node.type !== "split") return 0;
  let cuts = node.parts.length - 1;
  const used = node.parts.reduce((sum, { size }) => sum + size, kerf * cuts);
  if (used < (node.axis === "x" ? part.width : part.height)) cuts++;
  return childrenOf(node, part, kerf).reduce((sum, child) => sum + cutsIn(child.node, child, kerf), cuts);
}
